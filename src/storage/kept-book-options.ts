import type { BookDoc, Change } from '../book/types.js';
import type { BookCopy } from './merging.js';
import type { ParseBook } from './opening.js';
import type { KeepStatus } from './status.js';

/** The open book, as far as keeping it goes: a `LiveBook`, or what stands for it. */
export interface EditableBook {
  /** Shows edits made elsewhere; they are not put into this copy's history. */
  applyRemote(changes: readonly Change[]): void;
  /** The book as it stands; asked after a merge, so that what is kept is what is shown. */
  toJSON?(): BookDoc;
  /**
   * Calls back after each edit, before anything else can happen; may return what ends that. All but those
   * of origin `remote` were made on this page (typed, undone, redone) and are stored from here.
   */
  on(
    event: 'change',
    listener: (event: { readonly changes: readonly Change[]; readonly origin: string }) => void,
  ): unknown;
}

export interface KeptBookOptions {
  readonly id: string;
  readonly parseBook: ParseBook;
  /** The book to begin with when none is kept under the id; with its state, where it came from a file that has one. */
  readonly start: () => BookDoc | BookCopy | Promise<BookDoc | BookCopy>;
  /** Name of the database. */
  readonly database?: string;
  readonly onStatus?: (status: KeepStatus) => void;
  /** Milliseconds since 1970; for tests. */
  readonly now?: () => number;
  /** Milliseconds before saving is tried again, by failures in a row. Default: 1 s, doubling up to 30 s. */
  readonly retryAfter?: (failures: number) => number;
}
