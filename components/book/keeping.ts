import { type BookDoc, parseBook } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { BookCopy, BookEntry, EditableBook, KeepStatus, KeptBook } from '../../src/storage/index.js';
import { say } from '../../src/words/index.js';
import { SourceFailure } from './source.js';

export const NOT_KEPT: KeepStatus = {
  state: 'not kept',
  get message() {
    return say`Changes here are not kept: they are gone when the page is closed.`;
  },
};

export const OPENING: KeepStatus = {
  state: 'opening',
  get message() {
    return say`Opening the book.`;
  },
};

export const NO_BOOK: KeepStatus = {
  state: 'not kept',
  get message() {
    return say`No book is open.`;
  },
};

/** Storage and its libraries are loaded only where a book is kept, or a file opened or saved. */
export const loadStorage = () => import('../../src/storage/index.js');

/** The open book as storage sees it: undo and redo are edits to be kept like any other. */
export const editable = (live: LiveBook): EditableBook => ({
  applyRemote: (changes) => live.applyRemote(changes),
  toJSON: () => live.toJSON(),
  on: (_event, listener) =>
    live.on('change', ({ changes, origin }) => {
      if (changes.length > 0) listener({ changes, origin: origin === 'remote' ? 'remote' : 'local' });
    }),
});

/** The books kept in a database of this browser, latest edited first; none where storage cannot be read. */
export async function booksKept(database: string | undefined): Promise<readonly BookEntry[]> {
  const { openKeep } = await loadStorage();
  const keep = await openKeep(database);
  if (!keep.ok) return [];
  const books = await keep.value.list();
  await keep.value.close();
  return books;
}

export type OpenedKept =
  | { readonly ok: true; readonly kept: KeptBook }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Opens the book kept under a key; `start` gives the one to begin with, or throws a `SourceFailure`. */
export async function openKept(
  key: string,
  database: string | undefined,
  start: () => Promise<BookDoc | BookCopy>,
  onStatus: (status: KeepStatus) => void,
): Promise<OpenedKept> {
  const { KeptBook } = await loadStorage();
  try {
    const opened = await KeptBook.open({
      id: key,
      parseBook,
      start,
      onStatus,
      ...(database !== undefined && { database }),
    });
    return opened.ok ? { ok: true, kept: opened.value } : { ok: false, problems: [opened.problem] };
  } catch (error) {
    if (error instanceof SourceFailure) return { ok: false, problems: error.problems };
    throw error;
  }
}
