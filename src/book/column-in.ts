import { type ColumnDeclaration, type ColumnType, declarationOf } from './kinds/index.js';
import { ownTypeOf, type TakenColumn, takenDeclaration, takenOf } from './own-column.js';
import type { SheetState } from './state.js';

/** The declaration of a column of this sheet: its kind's, or that of the planning column it shows; undefined for one that the person fills in. */
export const declaredIn = (sheet: SheetState, column: string): ColumnDeclaration | undefined =>
  sheet.kind === 'own' ? takenDeclaration(sheet.columns.get(column)) : declarationOf(sheet.kind, column);

/** The planning column that a column of this sheet shows; only sheets of one's own have such. */
export const takenIn = (sheet: SheetState, column: string): TakenColumn | undefined =>
  sheet.kind === 'own' ? takenOf(sheet.columns.get(column)) : undefined;

/** How what is typed into a column of this sheet is read. */
export const entryTypeIn = (sheet: SheetState, column: string): ColumnType =>
  declaredIn(sheet, column)?.type ?? ownTypeOf(sheet.columns.get(column));
