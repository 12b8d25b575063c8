import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { vi } from 'vitest';
import { parseBook } from '../../src/book/parse.js';
import type { BookDoc, Change, Json, Raw } from '../../src/book/types.js';
import type { EditableBook, KeepStatus, KeptBookOptions } from '../../src/storage/index.js';
import { KeptBook } from '../../src/storage/index.js';
import { changed } from '../property/storage-books.js';

/** A book with every kind of sheet, and two lots. */
export const aBook = (): BookDoc => {
  const parsed = parseBook(TWO_LOTS);
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  return parsed.book;
};

const TWO_LOTS = {
  format: 'croftsheet-book',
  version: 1,
  id: 'b1',
  title: 'Our shelf',
  references: 'by id',
  settings: { people: 4 },
  sheets: {
    shelf: {
      kind: 'shelf',
      title: 'Shelf',
      order: 'a0',
      columns: {},
      rows: {
        r1: { order: 'a0', cells: { food: 'tomatoes', count: 24 } },
        r2: { order: 'a1', cells: { food: 'peaches', count: 12 } },
      },
    },
    draws: { kind: 'draws', title: 'Draws', order: 'a1', columns: {}, rows: {} },
  },
};

type Listener = Parameters<EditableBook['on']>[1];

/** The smallest open book: shows what it is told and reports what is edited. */
export class TestBook implements EditableBook {
  doc: BookDoc;
  readonly #listeners = new Set<Listener>();
  constructor(doc: BookDoc) {
    this.doc = doc;
  }
  on(_event: 'change', listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
  applyRemote(changes: readonly Change[]): void {
    this.#apply(changes, 'remote');
  }
  edit(path: string, to: Json | undefined): void {
    this.#apply([{ path: path.split('/'), to, was: undefined }], 'local');
  }
  set(row: string, column: string, raw: Raw | undefined): void {
    this.edit(`sheets/shelf/rows/${row}/cells/${column}`, raw);
  }
  cell(row: string, column: string): Raw | undefined {
    return this.doc.sheets.shelf?.rows[row]?.cells[column];
  }
  #apply(changes: readonly Change[], origin: 'local' | 'remote') {
    this.doc = changed(this.doc, changes);
    for (const listener of this.#listeners) listener({ changes, origin });
  }
}

export interface Tab {
  readonly kept: KeptBook;
  readonly book: TestBook;
  readonly statuses: KeepStatus[];
}

/** A tab that shows book `b1`. */
export async function openTab(database: string, options: Partial<KeptBookOptions> = {}): Promise<Tab> {
  const statuses: KeepStatus[] = [];
  const opened = await KeptBook.open({
    id: 'b1',
    database,
    parseBook,
    start: aBook,
    retryAfter: () => 20,
    onStatus: (status) => statuses.push(status),
    ...options,
  });
  if (!opened.ok) throw new Error(opened.problem.message);
  const book = new TestBook(opened.value.doc);
  opened.value.attach(book);
  return { kept: opened.value, book, statuses };
}

/** The database as bytes, past everything that guards it. */
export const rawDatabase = (name: string) => openDB(name);

export const newDatabase = (): string => `test-${crypto.randomUUID()}`;

/** Makes every write fail as a browser does; returns what ends that. */
export function failWrites(errorName: string): () => void {
  const fail = () => {
    throw new DOMException('no more', errorName);
  };
  const spies = (['add', 'put'] as const).map((name) =>
    vi.spyOn(IDBObjectStore.prototype, name).mockImplementation(fail),
  );
  return () => {
    for (const spy of spies) spy.mockRestore();
  };
}
