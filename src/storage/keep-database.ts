import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';

export interface BookEntry {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly updatedAt: number;
}

/** Bytes with a digest of them, so that damage shows. */
export interface KeptBytes {
  readonly book: string;
  readonly bytes: Uint8Array;
  readonly digest: string;
}

export interface VersionRecord {
  readonly book: string;
  readonly at: number;
  readonly title: string;
  /** Given by a person; such a version is never thinned away. */
  readonly name?: string;
}

/** The book of a version as JSON text, apart from the record, so that listing versions reads no books. */
export interface VersionText {
  readonly nr: number;
  readonly json: string;
}

/** Bytes that could not be read, kept for whoever may still get something out of them. */
export interface AsideRecord {
  readonly book: string;
  readonly at: number;
  readonly why: string;
  readonly bytes: Uint8Array;
}

export interface KeepSchema extends DBSchema {
  books: { key: string; value: BookEntry };
  /** `upTo`: number of the last update that went into it. */
  snapshots: { key: string; value: KeptBytes & { readonly upTo: number } };
  updates: { key: number; value: KeptBytes & { readonly nr?: number }; indexes: { book: [string, number] } };
  versions: { key: number; value: VersionRecord & { readonly nr?: number }; indexes: { book: string } };
  texts: { key: number; value: VersionText };
  aside: { key: number; value: AsideRecord & { readonly nr?: number }; indexes: { book: string } };
}

export type KeepDatabase = IDBPDatabase<KeepSchema>;

/** Of the database's shape: 2 keeps a version's text apart, and lets versions have names. */
const SHAPE = 2;

type Upgrade = IDBPTransaction<KeepSchema, StoreNames<KeepSchema>[], 'versionchange'>;

function firstShape(db: KeepDatabase): void {
  db.createObjectStore('books', { keyPath: 'id' });
  db.createObjectStore('snapshots', { keyPath: 'book' });
  // The number is in the index, so that a book's updates come in the order in which they were kept.
  db.createObjectStore('updates', { keyPath: 'nr', autoIncrement: true }).createIndex('book', [
    'book',
    'nr',
  ] as never);
  for (const store of ['versions', 'aside'] as const)
    db.createObjectStore(store, { keyPath: 'nr', autoIncrement: true }).createIndex('book', 'book');
}

/** One version after another, so that not all books are in memory at once. */
async function textsApart(tx: Upgrade): Promise<void> {
  const texts = tx.objectStore('texts');
  for (let at = await tx.objectStore('versions').openCursor(); at; at = await at.continue()) {
    const { json, ...record } = at.value as VersionRecord & { readonly json?: string };
    await Promise.all([texts.put({ nr: at.primaryKey, json: json ?? '' }), at.update(record)]);
  }
}

/** One database for all books. `lost` is called when the connection ends without our doing. */
export const openKeepDatabase = (name: string, lost: () => void): Promise<KeepDatabase> =>
  openDB<KeepSchema>(name, SHAPE, {
    async upgrade(db, from, _to, tx) {
      if (from < 1) firstShape(db);
      if (from < 2) {
        db.createObjectStore('texts', { keyPath: 'nr' });
        await textsApart(tx);
      }
    },
    blocking(_current, _blocked, event) {
      // Another tab wants to remove or upgrade the database: it must not wait for us.
      (event.target as IDBDatabase | null)?.close();
      lost();
    },
    terminated: lost,
  });
