import { STARTING_SHEETS } from './blank.js';
import { KINDS } from './kinds/index.js';
import { keysAfter } from './order.js';
import type { BookDoc, SheetDoc } from './types.js';

/** A book with every kind of sheet that this version knows: those it lacks come in empty, after the others. */
export function complete(book: BookDoc): BookDoc {
  const there = Object.values(book.sheets);
  const missing = STARTING_SHEETS.filter((kind) => !there.some((sheet) => sheet.kind === kind));
  if (missing.length === 0) return book;
  const last =
    there
      .map(({ order }) => order)
      .sort()
      .at(-1) ?? null;
  const keys = keysAfter(last, missing.length);
  const added: Record<string, SheetDoc> = {};
  for (const [i, kind] of missing.entries()) {
    // An own sheet may have taken the usual id.
    const id = Object.hasOwn(book.sheets, kind) ? `${kind}-sheet` : kind;
    added[id] = { kind, title: KINDS[kind].title, order: keys[i]!, columns: {}, rows: {} };
  }
  return { ...book, sheets: { ...book.sheets, ...added } };
}
