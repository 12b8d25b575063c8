import type { StoreNames } from 'idb';
import { ok, type Result } from '../problem.js';
import {
  type AsideRecord,
  type BookEntry,
  type KeepDatabase,
  type KeepSchema,
  type KeptBytes,
  openKeepDatabase,
} from './keep-database.js';
import { storageProblem } from './keep-problems.js';
import {
  addVersion,
  dropVersion,
  entryOf,
  nameVersion,
  newestFirst,
  type VersionEntry,
} from './keep-versions.js';
import { shortDigest } from './plain.js';
import { mergedState } from './replica.js';

const DIGEST_BYTES = 8;
const kept = (book: string, bytes: Uint8Array): KeptBytes => ({
  book,
  bytes,
  digest: shortDigest(bytes, DIGEST_BYTES),
});
const isWhole = ({ bytes, digest }: KeptBytes): boolean =>
  bytes instanceof Uint8Array && shortDigest(bytes, DIGEST_BYTES) === digest;
const everyOf = (book: string, after = 0): IDBKeyRange =>
  IDBKeyRange.bound([book, after], [book, Number.POSITIVE_INFINITY], after > 0);

/** What is kept of a book: state bytes to merge in order. */
export interface LoadedBook {
  readonly updates: readonly Uint8Array[];
  /** Number of the last update read; see `loadSince`. */
  readonly upTo: number;
  /** How many records are not what was written; they are left out of `updates`. */
  readonly damaged: number;
}

/** What the lists show of a book that is saved. */
export interface BookLabel {
  readonly title: string;
  readonly at: number;
}

/**
 * Books kept in the browser's IndexedDB. Whatever writes resolves only when the transaction has completed
 * with strict durability, and rejects with the browser's error otherwise (see `storageProblem`).
 */
export class Keep {
  readonly #name: string;
  #db: Promise<KeepDatabase> | undefined;
  /** The same, once it is open. */
  #ready: KeepDatabase | undefined;

  constructor(name: string) {
    this.#name = name;
  }

  async list(): Promise<BookEntry[]> {
    return (await (await this.#open()).getAll('books')).sort((a, b) => b.updatedAt - a.updatedAt);
  }

  /** Undefined when no such book is kept. */
  async load(book: string): Promise<LoadedBook | undefined> {
    return this.loadSince(book, -1);
  }

  /** What was kept since the updates up to number `upTo` were read; all of it, where they were compacted since. */
  async loadSince(book: string, upTo: number): Promise<LoadedBook | undefined> {
    const tx = (await this.#open()).transaction(['snapshots', 'updates']);
    const [snapshot, updates] = await Promise.all([
      tx.objectStore('snapshots').get(book),
      tx
        .objectStore('updates')
        .index('book')
        .getAll(everyOf(book, Math.max(upTo, 0))),
      tx.done,
    ]);
    if (!snapshot) return undefined;
    // Where its number makes no sense it is read again, which does no harm.
    const isRead = upTo >= 0 && snapshot.upTo <= upTo;
    const records: KeptBytes[] = isRead ? updates : [snapshot, ...updates];
    const whole = records.filter(isWhole);
    return {
      updates: whole.map(({ bytes }) => bytes),
      upTo: updates.at(-1)?.nr ?? Math.max(Number(snapshot.upTo) || 0, upTo),
      damaged: records.length - whole.length,
    };
  }

  /** Keeps a new book; false (and nothing written) when one is kept under this id already. */
  async create(book: string, state: Uint8Array, label: BookLabel): Promise<boolean> {
    const tx = await this.#write(['books', 'snapshots']);
    const snapshots = tx.objectStore('snapshots');
    const taken = (await snapshots.getKey(book)) !== undefined;
    if (!taken) {
      await Promise.all([
        tx.objectStore('books').put({ id: book, title: label.title, updatedAt: label.at }),
        snapshots.put({ ...kept(book, state), upTo: 0 }),
        tx.done,
      ]);
    } else await tx.done;
    return !taken;
  }

  /**
   * Keeps one more update; false (and nothing kept) when the book is no longer kept, so must be created.
   *
   * With the database open, everything is asked for, and the transaction committed, before this returns its
   * promise: then it completes even if the page is closed at that moment.
   */
  async append(book: string, update: Uint8Array, label: BookLabel): Promise<boolean> {
    const tx = transactionOn(this.#ready ?? (await this.#open()), ['books', 'snapshots', 'updates']);
    const asked = [
      tx.objectStore('snapshots').getKey(book),
      tx.objectStore('updates').add(kept(book, update)),
      tx.objectStore('books').put({ id: book, title: label.title, updatedAt: label.at }),
      tx.done,
    ] as const;
    tx.commit();
    const [snapshot, nr] = await Promise.all(asked);
    if (snapshot === undefined) await this.#takeBack(book, nr);
    return snapshot !== undefined;
  }

  /** An update without a book to add it to. */
  async #takeBack(book: string, nr: number): Promise<void> {
    const tx = await this.#write(['books', 'snapshots', 'updates']);
    await tx.objectStore('updates').delete(nr);
    if ((await tx.objectStore('snapshots').getKey(book)) === undefined)
      await tx.objectStore('books').delete(book);
    await tx.done;
  }

  /**
   * Merges a book's updates into one snapshot: one transaction, which another tab's append comes before or
   * after. Does nothing when any byte is damaged.
   */
  async compact(book: string): Promise<void> {
    const tx = await this.#write(['snapshots', 'updates']);
    const updates = tx.objectStore('updates');
    const [snapshot, records] = await Promise.all([
      tx.objectStore('snapshots').get(book),
      updates.index('book').getAll(everyOf(book)),
    ]);
    const last = records.at(-1)?.nr;
    if (snapshot && last !== undefined && [snapshot, ...records].every(isWhole)) {
      const state = mergedState([snapshot, ...records].map(({ bytes }) => bytes));
      if (state)
        await Promise.all([
          tx.objectStore('snapshots').put({ ...kept(book, state), upTo: last }),
          ...records.map(({ nr }) => updates.delete(nr!)),
        ]);
    }
    await tx.done;
  }

  /** Whether anything is kept of a book whose beginning is gone: edits or earlier versions. */
  async hasRemains(book: string): Promise<boolean> {
    return (await this.waiting(book)) > 0 || (await this.versions(book)).length > 0;
  }

  /** How many updates wait to be compacted. */
  async waiting(book: string): Promise<number> {
    return (await this.#open()).countFromIndex('updates', 'book', everyOf(book));
  }

  /** The kept versions of a book, newest first. */
  async versions(book: string): Promise<VersionEntry[]> {
    const records = await (await this.#open()).getAllFromIndex('versions', 'book', book);
    return records.map(entryOf).sort(newestFirst);
  }

  /** The JSON text of a version. */
  async loadVersion(id: number): Promise<string | undefined> {
    return (await (await this.#open()).get('texts', id))?.json;
  }

  /** Keeps a version; with a name it stays until it is removed. See `addVersion`. */
  async saveVersion(book: string, json: string, label: BookLabel, name?: string): Promise<VersionEntry> {
    const record = { book, at: label.at, title: label.title, ...(name !== undefined && { name }) };
    return addVersion(await this.#open(), record, json);
  }

  /** Gives a version a name, or another one; false when it is no longer kept. */
  async nameVersion(id: number, name: string): Promise<boolean> {
    return nameVersion(await this.#open(), id, name);
  }

  async removeVersion(id: number): Promise<void> {
    return dropVersion(await this.#open(), id);
  }

  /** Starts a book over from `state`. Everything that was kept before is put aside, not removed. */
  async startOver(book: string, state: Uint8Array, label: BookLabel, why: string): Promise<void> {
    const tx = await this.#write(['books', 'snapshots', 'updates', 'aside']);
    const [snapshots, updates] = [tx.objectStore('snapshots'), tx.objectStore('updates')];
    const [snapshot, records] = await Promise.all([
      snapshots.get(book),
      updates.index('book').getAll(everyOf(book)),
    ]);
    const old: KeptBytes[] = snapshot ? [snapshot, ...records] : records;
    await Promise.all([
      ...old.map(({ bytes }) => tx.objectStore('aside').add({ book, at: label.at, why, bytes })),
      ...records.map(({ nr }) => updates.delete(nr!)),
      snapshots.put({ ...kept(book, state), upTo: records.at(-1)?.nr ?? snapshot?.upTo ?? 0 }),
      tx.objectStore('books').put({ id: book, title: label.title, updatedAt: label.at }),
    ]);
    await tx.done;
  }

  /** Bytes that were put aside, oldest first. */
  async aside(book: string): Promise<AsideRecord[]> {
    return (await this.#open()).getAllFromIndex('aside', 'book', book);
  }

  /** Removes everything kept of a book, its versions too. */
  async remove(book: string): Promise<void> {
    const tx = await this.#write(['books', 'snapshots', 'updates', 'versions', 'texts', 'aside']);
    const versions = tx.objectStore('versions');
    const aside = tx.objectStore('aside');
    const [updateKeys, versionKeys, asideKeys] = await Promise.all([
      tx.objectStore('updates').index('book').getAllKeys(everyOf(book)),
      versions.index('book').getAllKeys(book),
      aside.index('book').getAllKeys(book),
    ]);
    await Promise.all([
      tx.objectStore('books').delete(book),
      tx.objectStore('snapshots').delete(book),
      ...updateKeys.map((key) => tx.objectStore('updates').delete(key)),
      ...versionKeys.flatMap((key) => [versions.delete(key), tx.objectStore('texts').delete(key)]),
      ...asideKeys.map((key) => aside.delete(key)),
    ]);
    await tx.done;
  }

  async close(): Promise<void> {
    const db = this.#db;
    this.#db = undefined;
    this.#ready = undefined;
    (await db)?.close();
  }

  /** The connection; opened again when the browser or another tab ended it. */
  #open(): Promise<KeepDatabase> {
    if (this.#db) return this.#db;
    const forget = () => {
      if (this.#db !== opening) return;
      this.#db = undefined;
      this.#ready = undefined;
    };
    const opening = openKeepDatabase(this.#name, forget);
    this.#db = opening;
    opening.then((db) => {
      if (this.#db === opening) this.#ready = db;
    }, forget);
    return opening;
  }

  async #write<Stores extends KeepStores>(stores: Stores) {
    return transactionOn(await this.#open(), stores);
  }
}

type KeepStores = ArrayLike<StoreNames<KeepSchema>>;

function transactionOn<Stores extends KeepStores>(db: KeepDatabase, stores: Stores) {
  const tx = db.transaction(stores, 'readwrite', { durability: 'strict' });
  // Whoever awaits `done` still hears of it; a request that failed before must not leave it unheard.
  tx.done.catch(() => {});
  return tx;
}

/** Opens the books kept in this browser. Refuses where the browser keeps nothing (a private window, say). */
export async function openKeep(name = 'croftsheet'): Promise<Result<Keep>> {
  try {
    // Where storage is forbidden, some browsers throw as soon as it is named.
    if (typeof indexedDB === 'undefined') return { ok: false, problem: storageProblem(undefined) };
    const keep = new Keep(name);
    await keep.list();
    return ok(keep);
  } catch (error) {
    return { ok: false, problem: storageProblem(error) };
  }
}
