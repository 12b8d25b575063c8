import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

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
  /** The book as JSON text. */
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
  aside: { key: number; value: AsideRecord & { readonly nr?: number }; indexes: { book: string } };
}

export type KeepDatabase = IDBPDatabase<KeepSchema>;

/** One database for all books. `lost` is called when the connection ends without our doing. */
export const openKeepDatabase = (name: string, lost: () => void): Promise<KeepDatabase> =>
  openDB<KeepSchema>(name, 1, {
    upgrade(db) {
      db.createObjectStore('books', { keyPath: 'id' });
      db.createObjectStore('snapshots', { keyPath: 'book' });
      // The number is in the index, so that a book's updates come in the order in which they were kept.
      db.createObjectStore('updates', { keyPath: 'nr', autoIncrement: true }).createIndex('book', [
        'book',
        'nr',
      ] as never);
      for (const store of ['versions', 'aside'] as const)
        db.createObjectStore(store, { keyPath: 'nr', autoIncrement: true }).createIndex('book', 'book');
    },
    blocking(_current, _blocked, event) {
      // Another tab wants to remove or upgrade the database: it must not wait for us.
      (event.target as IDBDatabase | null)?.close();
      lost();
    },
    terminated: lost,
  });
