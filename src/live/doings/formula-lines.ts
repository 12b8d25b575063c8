import { mapParts, type StoredReference } from '../../book/formula/stored.js';
import { isFormula, type SheetState, type StateLayout, toShown } from '../../book/index.js';
import type { BookReading } from '../book-reading.js';
import { storedRaw } from '../engine-sync.js';

/**
 * One formula as a person thinks of it: the formula of a whole column, or the same formula in cells that
 * stand one under another.
 */
export interface FormulaLine {
  /** The same as long as it begins at the same cell. */
  readonly key: string;
  readonly sheet: string;
  readonly column: string;
  /** The rows that it fills, in the book's order; none where every cell of its column holds something else. */
  readonly rows: readonly string[];
  /** It belongs to the column, and fills every cell that is blank. */
  readonly whole: boolean;
  /** As stored in its first row. */
  readonly stored: string;
  /** As the person sees it there. */
  readonly shown: string;
}

/** The formula with its rows said by how far off they are: the same for formulas that were filled down. */
function relative(stored: string, sheet: SheetState, row: string, layout: StateLayout): string {
  const own = layout.rowIndex(sheet.id, row);
  const end = (r: StoredReference): string => {
    if (r.row === undefined || r.fixedRow) return `${r.sheet}.${r.fixedColumn}${r.column}@${r.row}`;
    const at = layout.rowIndex(r.sheet ?? sheet.id, r.row);
    return `${r.sheet}.${r.fixedColumn}${r.column}@${at < 0 ? r.row : at - own}`;
  };
  return mapParts(stored, ({ from, to, text }) =>
    from.byName ? text : `<${end(from)}${to ? `:${end(to)}` : ''}>`,
  );
}

/** The formulas of one sheet, column by column and from top to bottom. */
export function linesOfSheet(live: BookReading, sheet: SheetState): FormulaLine[] {
  const { layout } = live.inside;
  const runs = new Map<string, { rows: string[]; like: string; stored: string; last: number }[]>();
  for (const [at, row] of sheet.rowOrder.ids.entries()) {
    const cells = sheet.rows.get(row)!.cells;
    for (const column in cells) {
      const stored = cells[column];
      if (!isFormula(stored) || storedRaw(sheet, row, column) !== stored || !sheet.columnOrder.has(column))
        continue;
      const like = relative(stored, sheet, row, layout);
      const there = runs.get(column) ?? [];
      const run = there.at(-1);
      if (run && run.last === at - 1 && run.like === like) {
        run.rows.push(row);
        run.last = at;
      } else there.push({ rows: [row], like, stored, last: at });
      runs.set(column, there);
    }
  }
  return sheet.columnOrder.ids.flatMap((column): FormulaLine[] => {
    const place = { sheet: sheet.id, column };
    const lines = (runs.get(column) ?? []).map(({ rows, stored }): FormulaLine => {
      const key = `${sheet.id}/${column}/${rows[0]}`;
      return { ...place, key, rows, whole: false, stored, shown: toShown(stored, sheet.id, layout) };
    });
    const stored = sheet.columns.get(column)?.formula;
    if (stored === undefined) return lines;
    const rows = sheet.rowOrder.ids.filter((row) => sheet.rows.get(row)!.cells[column] === undefined);
    // A formula that a file holds for a column of the kind fills nothing.
    if (rows[0] !== undefined && storedRaw(sheet, rows[0], column) !== stored) return lines;
    const key = `${sheet.id}/${column}`;
    const shown = toShown(stored, sheet.id, layout);
    return [{ ...place, key, rows, whole: true, stored, shown }, ...lines];
  });
}

/** Every formula of the book, sheet by sheet. */
export function formulaLines(live: BookReading): FormulaLine[] {
  const { state } = live.inside;
  return state.sheetIds().flatMap((id) => linesOfSheet(live, state.sheets.get(id)!));
}
