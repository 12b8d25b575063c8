import {
  type BookState,
  type ColumnDeclaration,
  type ColumnType,
  declarationOf,
  type Layout,
  titleOfColumn,
  toShown,
} from '../book/index.js';

/** A column as it is shown: what the kind declares, with what the person changed. */
export interface ColumnView {
  readonly id: string;
  readonly title: string;
  readonly role: 'kept' | 'planning' | 'own';
  readonly type: ColumnType;
  readonly unit: string | undefined;
  readonly help: string;
  readonly hidden: boolean;
  readonly pinned: boolean;
  readonly width: number | undefined;
  readonly decimals: number | undefined;
  /** Low and high columns of a figure with a range. */
  readonly range: readonly [string, string] | undefined;
  /** Name by which formulas call the whole column. */
  readonly name: string;
  /** Of an own column: the formula that fills blank cells, as shown. */
  readonly formula: string | undefined;
  readonly declaration: ColumnDeclaration | undefined;
}

/** The columns of a sheet in the book's order, hidden ones too. */
export function columnViews(state: BookState, layout: Layout, sheetId: string): ColumnView[] {
  const sheet = state.sheets.get(sheetId);
  if (!sheet) return [];
  return sheet.columnOrder.ids.map((id) => {
    const declaration = declarationOf(sheet.kind, id);
    const column = sheet.columns.get(id) ?? {};
    return {
      id,
      title: titleOfColumn(sheet, id),
      role: declaration?.role ?? 'own',
      type: declaration?.type ?? 'any',
      unit: declaration?.unit,
      help: declaration?.help ?? 'A column of your own: text, numbers, dates or formulas.',
      hidden: column.hidden ?? declaration?.hidden ?? false,
      pinned: column.pinned ?? false,
      width: column.width ?? declaration?.width,
      decimals: declaration?.decimals,
      range: declaration?.range,
      name: layout.nameOf(sheetId, id) ?? id,
      formula:
        declaration || column.formula === undefined ? undefined : toShown(column.formula, sheetId, layout),
      declaration,
    };
  });
}
