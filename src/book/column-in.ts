import { type ColumnDeclaration, type ColumnType, declarationOf } from './kinds/index.js';
import { ownTypeOf, takenDeclaration } from './own-column.js';
import type { SheetState } from './state.js';

/** The declaration of a column of this sheet: its kind's, or that of the planning column it shows; undefined for one that the person fills in. */
export const declaredIn = (sheet: SheetState, column: string): ColumnDeclaration | undefined =>
  declarationOf(sheet.kind, column) ?? takenDeclaration(sheet.columns.get(column));

/** How what is typed into a column of this sheet is read. */
export const entryTypeIn = (sheet: SheetState, column: string): ColumnType =>
  declaredIn(sheet, column)?.type ?? ownTypeOf(sheet.columns.get(column));
