import type { CellAddress, CellValue } from '../book/index.js';

/** Rows by sheet. */
export type RowsBySheet = Map<string, Set<string>>;

export const keyOf = (a: CellAddress): string => `${a.sheet}/${a.row}/${a.column}`;

export const sameValue = (a: CellValue, b: CellValue): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The rows of a sheet in such a map, to add to. */
export function rowsOf(map: RowsBySheet, sheet: string): Set<string> {
  let rows = map.get(sheet);
  if (!rows) {
    rows = new Set();
    map.set(sheet, rows);
  }
  return rows;
}

export function byRow(cells: readonly CellAddress[]): RowsBySheet {
  const rows: RowsBySheet = new Map();
  for (const { sheet, row } of cells) rowsOf(rows, sheet).add(row);
  return rows;
}
