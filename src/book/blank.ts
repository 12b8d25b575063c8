import { say } from '../words/index.js';
import { newId } from './ids.js';
import { KINDS } from './kinds/index.js';
import { firstKeys } from './order.js';
import { BOOK_FORMAT, BOOK_VERSION, type BookDoc, SHEET_KINDS, type SheetDoc } from './types.js';

/** The sheets of every book, in their usual order. */
export const STARTING_SHEETS = SHEET_KINDS.filter((kind) => kind !== 'own');

/** A new household's book: its sheets, empty. Each sheet's id is its kind. */
export function blankBook(title = say`Our book`, id = newId('b')): BookDoc {
  const keys = firstKeys(STARTING_SHEETS.length);
  const sheets: Record<string, SheetDoc> = {};
  for (const [i, kind] of STARTING_SHEETS.entries()) {
    sheets[kind] = { kind, title: KINDS[kind].title, order: keys[i]!, columns: {}, rows: {} };
  }
  return { format: BOOK_FORMAT, version: BOOK_VERSION, id, title, references: 'by id', settings: {}, sheets };
}
