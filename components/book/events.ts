import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { Conflict } from '../../src/storage/index.js';
import type { KeepStatus } from '../../src/storage/status.js';

/** A cell of the book that a person selected. */
export interface SelectedCell {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** Events of `<croft-book>`; each bubbles and leaves shadow roots. */
export interface BookEvents {
  /** A book is open (again: another one may take the first one's place). */
  'croft-ready': CustomEvent<{ readonly live: LiveBook; readonly key: string | null }>;
  /** Something in the book changed. */
  'croft-change': CustomEvent<BookChange>;
  /** How the book stands with storage. */
  'croft-status': CustomEvent<KeepStatus>;
  /** A book or a file could not be opened, or the formula engine could not be loaded. */
  'croft-problem': CustomEvent<{ readonly problems: readonly Problem[] }>;
  /** What two copies set each its own way and nobody has decided yet. */
  'croft-conflicts': CustomEvent<readonly Conflict[]>;
  /** The selected cell of the book changed. */
  'croft-select': CustomEvent<SelectedCell | null>;
}

export function tell<K extends keyof BookEvents>(
  from: HTMLElement,
  name: K,
  detail: BookEvents[K]['detail'],
): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}
