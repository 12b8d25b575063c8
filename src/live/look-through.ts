import { type BookState, type CellAddress, declarationOf, isFormula } from '../book/index.js';
import type { TypedRows } from './typed-rows.js';

/** Does any cell or column of the book hold a formula? */
export function holdsFormulas(state: BookState): boolean {
  for (const sheet of state.sheets.values()) {
    for (const column of sheet.columns.values()) if (column.formula !== undefined) return true;
    for (const row of sheet.rows.values())
      for (const id in row.cells) if (isFormula(row.cells[id])) return true;
  }
  return false;
}

/** Planning cells of sheets that do not count, for another sheet of their kind stands before them: they are blank. */
export function planningOfIdleSheets(state: BookState, counting: TypedRows): CellAddress[] {
  const found: CellAddress[] = [];
  for (const { id: sheet, kind, rows, columnOrder } of state.sheets.values()) {
    if (kind === 'own' || counting.kindOf(sheet) !== undefined) continue;
    const planning = columnOrder.ids.filter((column) => declarationOf(kind, column)?.role === 'planning');
    for (const row of rows.keys()) for (const column of planning) found.push({ sheet, row, column });
  }
  return found;
}
