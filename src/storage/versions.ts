import type { BookDoc } from '../book/types.js';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import type { Keep } from './keep.js';
import { storageProblem } from './keep-problems.js';
import { newestFirst, type VersionEntry } from './keep-versions.js';
import { type ParseBook, readVersion } from './opening.js';

/** Earlier versions of one book. */
export interface BookVersions {
  /** False: they are in the page's memory only, and gone when it is closed. */
  readonly lasting: boolean;
  /** Newest first. */
  list(): Promise<Result<readonly VersionEntry[]>>;
  read(id: number): Promise<Result<BookDoc>>;
  /** Keeps the book as it is now, under a name; it stays until it is removed. */
  keepNow(name: string): Promise<Result<VersionEntry>>;
  /** Gives a version a name, or another one: then it is not thinned away. */
  rename(id: number, name: string): Promise<Result<undefined>>;
  remove(id: number): Promise<Result<undefined>>;
}

/** Longest name of a version, in characters. */
export const MAX_VERSION_NAME = 80;

const gone = () =>
  refuse('version-gone', say`This version is no longer kept, or cannot be read.`, say`Choose another one.`);

const checkedName = (name: string): Result<string> => {
  const trimmed = name.trim();
  if (trimmed === '')
    return refuse(
      'version-unnamed',
      say`A version that is to stay needs a name.`,
      say`Write one, as in “before canning season”.`,
    );
  return trimmed.length > MAX_VERSION_NAME
    ? refuse(
        'version-name-long',
        say`That name has ${trimmed.length} characters; ${MAX_VERSION_NAME} is the most.`,
        say`Shorten it.`,
      )
    : ok(trimmed);
};

/** Versions in the browser's storage. */
export class KeptVersions implements BookVersions {
  readonly lasting = true;
  readonly #keep: Keep;
  readonly #id: string;
  readonly #parseBook: ParseBook;
  readonly #book: () => BookDoc;
  readonly #now: () => number;

  constructor(keep: Keep, id: string, parseBook: ParseBook, book: () => BookDoc, now: () => number) {
    this.#keep = keep;
    this.#id = id;
    this.#parseBook = parseBook;
    this.#book = book;
    this.#now = now;
  }

  list(): Promise<Result<readonly VersionEntry[]>> {
    return tried(() => this.#keep.versions(this.#id));
  }

  async read(id: number): Promise<Result<BookDoc>> {
    const doc = await readVersion(this.#keep, id, this.#parseBook);
    return doc ? ok(doc) : gone();
  }

  async keepNow(name: string): Promise<Result<VersionEntry>> {
    const checked = checkedName(name);
    if (!checked.ok) return checked;
    const book = this.#book();
    const label = { title: book.title, at: this.#now() };
    return tried(() => this.#keep.saveVersion(this.#id, JSON.stringify(book), label, checked.value));
  }

  async rename(id: number, name: string): Promise<Result<undefined>> {
    const checked = checkedName(name);
    if (!checked.ok) return checked;
    const there = await tried(() => this.#keep.nameVersion(id, checked.value));
    if (!there.ok) return there;
    return there.value ? ok(undefined) : gone();
  }

  remove(id: number): Promise<Result<undefined>> {
    return tried(async () => {
      await this.#keep.removeVersion(id);
      return undefined;
    });
  }
}

async function tried<T>(work: () => Promise<T>): Promise<Result<T>> {
  try {
    return ok(await work());
  } catch (error) {
    const { code, mend } = storageProblem(error);
    return refuse(
      code,
      say`The browser’s storage could not do that with this version; the book is as it was.`,
      mend,
    );
  }
}

/** Versions of a book that is not kept: in memory, for as long as the page is open. */
export class PageVersions implements BookVersions {
  readonly lasting = false;
  readonly #book: () => BookDoc;
  readonly #now: () => number;
  readonly #docs = new Map<number, BookDoc>();
  #entries: VersionEntry[] = [];
  #next = 1;

  /** Begins with the book as it was opened. */
  constructor(book: () => BookDoc, now: () => number = Date.now) {
    this.#book = book;
    this.#now = now;
    this.#add();
  }

  async list(): Promise<Result<readonly VersionEntry[]>> {
    return ok([...this.#entries].sort(newestFirst));
  }

  async read(id: number): Promise<Result<BookDoc>> {
    const doc = this.#docs.get(id);
    return doc ? ok(doc) : gone();
  }

  async keepNow(name: string): Promise<Result<VersionEntry>> {
    const checked = checkedName(name);
    return checked.ok ? ok(this.#add(checked.value)) : checked;
  }

  async rename(id: number, name: string): Promise<Result<undefined>> {
    const checked = checkedName(name);
    if (!checked.ok) return checked;
    if (!this.#docs.has(id)) return gone();
    this.#entries = this.#entries.map((each) => (each.id === id ? { ...each, name: checked.value } : each));
    return ok(undefined);
  }

  async remove(id: number): Promise<Result<undefined>> {
    this.#docs.delete(id);
    this.#entries = this.#entries.filter((each) => each.id !== id);
    return ok(undefined);
  }

  #add(name?: string): VersionEntry {
    const doc = this.#book();
    const entry = {
      id: this.#next++,
      at: this.#now(),
      title: doc.title,
      ...(name !== undefined && { name }),
    };
    this.#docs.set(entry.id, doc);
    this.#entries.push(entry);
    return entry;
  }
}
