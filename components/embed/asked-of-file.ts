import type { BookDoc } from '../../src/book/types.js';
import type { ShownTable } from '../../src/live/embed/index.js';
import { say } from './said.js';

/** So many characters of a name are said again: an address may ask for anything. */
const NAMED = 80;

/** A book that may bring the table to show first, as `src` names one. */
export type FileDoc = BookDoc & { readonly shown?: ShownTable };

/**
 * The table that a file brings, as an element asks for it; null where it brings none, or where another sheet of its
 * book is asked for: that has to be worked out.
 *
 * @param sheet id, kind or title of the sheet; null for the one that the file was made for.
 * @throws Error where the file has no such sheet.
 */
export function askedOf(doc: FileDoc, sheet: string | null, columns: readonly string[]): ShownTable | null {
  const { shown } = doc;
  if (!shown) return null;
  if (sheet !== null && sheet !== shown.sheet) {
    const found = idOf(doc, sheet);
    if (found === undefined)
      throw new Error(
        say`There is no sheet called “${sheet.slice(0, NAMED)}” in these figures: check its name.`,
      );
    if (found !== shown.sheet) return null;
  }
  return cutTo(shown, columns);
}

/** A sheet by its id, its kind or its title, in that order, as everywhere. */
function idOf({ sheets }: BookDoc, name: string): string | undefined {
  const all = Object.entries(sheets ?? {});
  const lower = name.toLowerCase();
  const found =
    all.find(([id]) => id === name) ??
    all.find(([, { kind }]) => kind === lower) ??
    all.find(([, { title }]) => title.toLowerCase() === lower);
  return found?.[0];
}

/** Only these columns, in this order; all where none of them is there, since a table without any shows nothing. */
function cutTo(shown: ShownTable, columns: readonly string[]): ShownTable {
  const at = columns.map((id) => shown.columns.findIndex((column) => column.id === id)).filter((i) => i >= 0);
  if (at.length === 0) return shown;
  return {
    ...shown,
    columns: at.map((i) => shown.columns[i]!),
    rows: shown.rows.map(({ id, cells }) => ({ id, cells: at.map((i) => cells[i] ?? '') })),
  };
}

/** Whether a file brings what its table shows, and no rows behind it: it was made with no column open. */
export const isTableAlone = ({ sheets }: FileDoc, { sheet, rows }: ShownTable): boolean =>
  rows.length > 0 && Object.keys(sheets[sheet]?.rows ?? {}).length === 0;

/** Tells whoever keeps the page which columns that it asks for are not there. */
export function warnOfMissing(columns: readonly string[], table: ShownTable): void {
  const missing = columns.filter((id) => !table.columns.some((column) => column.id === id));
  if (missing.length > 0)
    console.warn(`<croft-embed>: “${table.title}” has no column ${missing.join(', ')} to show.`);
}
