import type { ShownTable } from './shown-table.js';

/**
 * Name under which a reader's own numbers are kept unless the page gives another: two posts of one sheet that show
 * or open other columns, other rows of a choice (ids), have another title, or the figures of another day, do not
 * share it. Where newer figures are pasted over those of another day, what a reader kept is found by all but the day.
 */
export function keepName(
  book: string,
  { sheet, title, columns, day }: ShownTable,
  rows: readonly string[] = [],
): string {
  const made = [title, ...columns.map(({ id, open }) => (open ? `${id} open` : id)), ...rows].join('\n');
  return `${book}/${sheet}/${wordOf(made)} ${day}`;
}

/** A short word that differs where two texts do, but for a chance of one in billions (FNV-1a, 32 bits). */
export function wordOf(text: string): string {
  let word = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) word = Math.imul(word ^ text.charCodeAt(i), 0x01000193);
  return (word >>> 0).toString(36);
}
