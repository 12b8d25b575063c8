import { differences } from '../book/differences.js';
import type { Parsed } from '../book/parse.js';
import { BOOK_VERSION, type BookDoc } from '../book/types.js';
import { ok, type Problem, type Result, refuse, standing } from '../problem.js';
import { dayOfMoment, say, timeOfMoment } from '../words/index.js';
import { type Keep, type LoadedBook, openKeep } from './keep.js';
import { storageProblem } from './keep-problems.js';
import type { BookCopy } from './merging.js';
import { BookReplica, isUpdate } from './replica.js';
import { type KeepStatus, keepStatus } from './status.js';

/** Checks that something is a book: `parseBook`, handed in by whoever opens it. */
export type ParseBook = (json: unknown) => Parsed;

export interface OpenedBook {
  readonly doc: BookDoc;
  readonly replica: BookReplica;
  /** See `LoadedBook.upTo`. */
  readonly upTo: number;
  /** What the person must know about how it was opened. */
  readonly notice?: Problem;
}

const aside = () =>
  say`The stored bytes are put aside on this device, not removed. If you have a newer copy as a file, open that.`;

/** Opens the book that is kept, or keeps a new one. What cannot be read is put aside, never removed. */
export async function openStored(
  keep: Keep,
  id: string,
  parseBook: ParseBook,
  start: () => Promise<BookCopy>,
  now: () => number,
): Promise<Result<OpenedBook>> {
  let loaded = await keep.load(id);
  if (!loaded) {
    if (await keep.hasRemains(id))
      return ok(await recover(keep, id, parseBook, start, now, refuse('state-gone', '', '')));
    const { doc, state } = await start();
    const replica = BookReplica.fromBook(doc, state);
    if (await keep.create(id, replica.encode(), { title: doc.title, at: now() }))
      return ok({ doc, replica, upTo: 0 });
    // Another tab was quicker: its book is the one.
    loaded = (await keep.load(id))!;
  }
  let read = readLoaded(loaded, parseBook);
  if (!read.ok && read.problem.code === 'state-unreadable') {
    // Whole by its digest and yet no edit: one such record must not cost all the others.
    const updates = loaded.updates.filter(isUpdate);
    loaded = { ...loaded, updates, damaged: loaded.damaged + loaded.updates.length - updates.length };
    read = readLoaded(loaded, parseBook);
  }
  if (read.ok ? loaded.damaged === 0 : read.problem.code === 'book-newer') return read;
  return ok(await recover(keep, id, parseBook, start, now, read));
}

function readLoaded(loaded: LoadedBook, parseBook: ParseBook): Result<OpenedBook> {
  const replica = BookReplica.fromState(...loaded.updates);
  if (!replica.ok) return replica;
  const book = replica.value.toBook();
  if (typeof book.version === 'number' && book.version > BOOK_VERSION)
    return refuse(
      'book-newer',
      say`The stored book was written by a newer version of this page.`,
      say`Reload the page to get that version. The stored book is left as it is.`,
    );
  const parsed = parseBook(book);
  if (!parsed.ok) return { ok: false, problem: parsed.problems[0]! };
  return ok({ doc: parsed.book, replica: replica.value, upTo: loaded.upTo });
}

async function recover(
  keep: Keep,
  id: string,
  parseBook: ParseBook,
  start: () => Promise<BookCopy>,
  now: () => number,
  read: Result<OpenedBook>,
): Promise<OpenedBook> {
  const found = read.ok ? partly(read.value) : await lastGood(keep, id, parseBook, start);
  const label = { title: found.doc.title, at: now() };
  await keep.startOver(id, found.replica.encode(), label, found.notice.code);
  return { ...found, upTo: (await keep.load(id))?.upTo ?? 0 };
}

type Found = { readonly doc: BookDoc; readonly replica: BookReplica; readonly notice: Problem };

const partly = ({ doc, replica }: OpenedBook): Found => ({
  doc,
  replica,
  notice: standing(
    'book-partly-read',
    () => say`Some of the stored edits are damaged and were left out; all others are here.`,
    () => `${say`Look whether the last things you typed are there.`} ${aside()}`,
  ),
});

async function lastGood(
  keep: Keep,
  id: string,
  parseBook: ParseBook,
  start: () => Promise<BookCopy>,
): Promise<Found> {
  for (const version of await keep.versions(id)) {
    const doc = await readVersion(keep, version.id, parseBook);
    if (!doc) continue;
    return {
      doc,
      replica: BookReplica.fromBook(doc),
      notice: standing(
        'book-recovered',
        () => lastGoodFrom(version.at),
        () => `${say`Enter again what you changed after that.`} ${aside()}`,
      ),
    };
  }
  const { doc, state } = await start();
  return {
    doc,
    replica: BookReplica.fromBook(doc, state),
    notice: standing(
      'book-unreadable',
      () => say`The stored book could not be read, and no earlier version of it either.`,
      () => `${say`The page shows the book as it was at first.`} ${aside()}`,
    ),
  };
}

/** Without the day where the stored time is none. */
const lastGoodFrom = (at: number): string =>
  Number.isNaN(new Date(at).getTime())
    ? say`The stored book could not be read. This is the last good version.`
    : say`The stored book could not be read. This is the last good version, from ${dayOfMoment(at)} at ${timeOfMoment(at)}.`;

/** The book of a kept version, or undefined when it is gone or is no book. */
export async function readVersion(
  keep: Keep,
  version: number,
  parseBook: ParseBook,
): Promise<BookDoc | undefined> {
  try {
    const parsed = parseBook(JSON.parse((await keep.loadVersion(version)) ?? 'null'));
    return parsed.ok ? parsed.book : undefined;
  } catch {
    return undefined;
  }
}

/** What parsing changed of a stored book (an older version brought up to date) becomes an edit like any other. */
export const takeOverParsed = ({ doc, replica }: OpenedBook): void =>
  replica.apply(differences(replica.toBook(), doc));

export interface AnyhowOpened {
  readonly opened: OpenedBook;
  /** Undefined where nothing can be kept. */
  readonly keep: Keep | undefined;
  readonly status: KeepStatus;
  /** The whole book is still to be saved. */
  readonly unsaved: boolean;
}

/** Opens the book whether or not it can be kept; refuses only one that a newer version wrote. */
export async function openAnyhow(
  database: string | undefined,
  id: string,
  parseBook: ParseBook,
  start: () => Promise<BookCopy>,
  now: () => number,
): Promise<Result<AnyhowOpened>> {
  const unkept = async (keep: Keep | undefined, status: KeepStatus): Promise<Result<AnyhowOpened>> => {
    const { doc, state } = await start();
    const opened = { doc, replica: BookReplica.fromBook(doc, state), upTo: 0 };
    return ok({ opened, keep, status, unsaved: keep !== undefined });
  };
  const keep = await openKeep(database);
  if (!keep.ok) return unkept(undefined, keepStatus('not kept', keep.problem));
  try {
    const opened = await openStored(keep.value, id, parseBook, start, now);
    if (!opened.ok) {
      await keep.value.close();
      return opened;
    }
    const status = keepStatus('saved', opened.value.notice);
    return ok({ opened: opened.value, keep: keep.value, status, unsaved: false });
  } catch (error) {
    const problem = storageProblem(error);
    // Full storage refuses writing only: what is on the page is tried again. Anything else may hide a stored
    // book that must not be written over.
    return problem.code === 'storage-full'
      ? unkept(keep.value, keepStatus('could not save', problem))
      : unkept(undefined, keepStatus('not kept', problem));
  }
}
