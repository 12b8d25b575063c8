import type { Command, Typed } from '../../src/book/index.js';

/** A block written from a place on, as pasted: what falls outside the sheet is left out. */
export function setCells(
  sheet: string,
  rows: readonly string[],
  columns: readonly string[],
  top: number,
  left: number,
  block: readonly (readonly Typed[])[],
): Command | undefined {
  const from = columns.length === 0 ? 0 : left % columns.length;
  const cells = block.flatMap((line, i) =>
    line.flatMap((typed, j) => {
      const [row, column] = [rows[top + i], columns[from + j]];
      return row !== undefined && column !== undefined ? [{ row, column, typed }] : [];
    }),
  );
  return cells.length > 0 ? { do: 'set cells', sheet, cells } : undefined;
}
