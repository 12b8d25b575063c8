import { newId } from './ids.js';
import { KINDS } from './kinds/index.js';
import { firstKeys } from './order.js';
import { BOOK_FORMAT, BOOK_VERSION, type BookDoc, type SheetDoc } from './types.js';

const STARTING_SHEETS = ['household', 'shelf', 'draws', 'foods'] as const;

/** A new household's book: its sheets, empty. Each sheet's id is its kind. */
export function blankBook(title = 'Our book', id = newId('b')): BookDoc {
  const keys = firstKeys(STARTING_SHEETS.length);
  const sheets: Record<string, SheetDoc> = {};
  for (const [i, kind] of STARTING_SHEETS.entries()) {
    sheets[kind] = { kind, title: KINDS[kind].title, order: keys[i]!, columns: {}, rows: {} };
  }
  return { format: BOOK_FORMAT, version: BOOK_VERSION, id, title, references: 'by id', settings: {}, sheets };
}
