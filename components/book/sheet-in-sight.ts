import type { CroftBook } from './croft-book.js';

/** Id of the sheet that is in sight in the book's own part of the page; of several, the one in which a cell is selected. */
export function sheetInSight(book: CroftBook | null): string | undefined {
  const selected = book?.selected?.sheet;
  const shown = [...(book?.querySelectorAll('croft-sheet') ?? [])]
    .filter((each) => each.checkVisibility())
    .map(({ sheet }) => sheet);
  return selected !== undefined && (shown.length === 0 || shown.includes(selected)) ? selected : shown[0];
}
