import type { LiveBook } from '../../src/live/live-book.js';

const KEY = 'croft-hide-used-up';

/** Whether lots that are used up are left out, as the person last chose; a table to read does so unless told not to. */
export function hidesUsedUp(usual: boolean): boolean {
  try {
    const chosen = localStorage.getItem(KEY);
    return chosen === null ? usual : chosen === 'yes';
  } catch {
    // A page may be allowed no storage.
    return usual;
  }
}

export function rememberUsedUp(hide: boolean): void {
  try {
    localStorage.setItem(KEY, hide ? 'yes' : 'no');
  } catch {
    // Then it holds for this view only.
  }
}

/** A lot of which nothing is left; a lot without a count is not one. */
export const isUsedUp = (live: LiveBook, sheet: string, row: string): boolean =>
  live.value(sheet, row, 'left') === 0;

/** The rows of a Shelf of which nothing is left, as far as that is known. */
export const usedUpLots = (live: LiveBook, sheet: string): string[] =>
  live.isPlanned && live.sheetOfKind('shelf') === sheet
    ? live.rowIds(sheet).filter((row) => isUsedUp(live, sheet, row))
    : [];
