import type { CroftBook } from '../book/croft-book.js';
import type { SelectedCell } from '../book/events.js';

/** A picture asks that the row behind something drawn be shown; it bubbles and leaves shadow roots. */
export type ShowEvent = CustomEvent<SelectedCell>;

/** Selects a cell in its book, then says `croft-show`, for the page to bring its sheet into view. */
export function showCell(from: HTMLElement, book: CroftBook | null, cell: SelectedCell): void {
  book?.select(cell);
  from.dispatchEvent(new CustomEvent('croft-show', { detail: cell, bubbles: true, composed: true }));
}
