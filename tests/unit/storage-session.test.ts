import { afterEach, describe, expect, it, vi } from 'vitest';
import { blankBook } from '../../src/book/blank.js';
import { parseBook } from '../../src/book/parse.js';
import { BOOK_VERSION } from '../../src/book/types.js';
import { openBook } from '../../src/live/live-book.js';
import { differences, KeptBook, openKeep, type VersionEntry } from '../../src/storage/index.js';
import { BookReplica } from '../../src/storage/replica.js';
import { aBook, failWrites, newDatabase, openTab, rawDatabase, type Tab } from './storage-support.js';

const tabs: Tab[] = [];
const tab = async (...of: Parameters<typeof openTab>): Promise<Tab> => {
  const opened = await openTab(...of);
  tabs.push(opened);
  return opened;
};
afterEach(async () => {
  vi.restoreAllMocks();
  for (const { kept } of tabs.splice(0)) await kept.close();
  vi.unstubAllGlobals();
});

const versionsOf = async ({ kept }: Tab): Promise<readonly VersionEntry[]> => {
  const listed = await kept.earlier.list();
  return listed.ok ? listed.value : [];
};
const states = ({ statuses }: Tab): string[] => statuses.map(({ state }) => state);

describe('an edited book', () => {
  it('is there after a reload, whole', async () => {
    const name = newDatabase();
    const first = await tab(name);
    first.book.set('r1', 'count', 23);
    first.book.edit('sheets/shelf/rows/r3', { order: 'a2', cells: { food: 'beans' }, later: [1, null] });
    first.book.edit('sheets/shelf/rows/r2', undefined);
    first.book.edit('title', 'Cellar');
    await first.kept.close();
    const again = await tab(name);
    expect(again.book.doc).toEqual(first.book.doc);
    expect(again.book.cell('r1', 'count')).toBe(23);
  });

  it('says saving at once, and saved only when another connection finds the edit', async () => {
    const name = newDatabase();
    const found: unknown[] = [];
    const read = async () => {
      const keep = await openKeep(name);
      const loaded = keep.ok ? await keep.value.load('b1') : undefined;
      const replica = BookReplica.fromState(...loaded!.updates);
      return replica.ok && replica.value.toBook().sheets.shelf!.rows.r1!.cells.count;
    };
    const first = await tab(name, {
      onStatus: ({ state }) => {
        if (state === 'saved') found.push(read());
      },
    });
    found.length = 0;
    first.book.set('r1', 'count', 23);
    expect(first.kept.status.state).toBe('saving');
    await Promise.resolve();
    await Promise.resolve();
    expect(first.kept.status.state).toBe('saving');
    expect(await first.kept.flush()).toBe(true);
    expect(first.kept.status).toMatchObject({ state: 'saved', message: 'Saved on this device.' });
    expect(await Promise.all(found)).toEqual([23]);
  });

  it('goes through opening, saved, saving and saved', async () => {
    const first = await tab(newDatabase());
    first.book.set('r1', 'count', 23);
    first.book.set('r1', 'count', 22);
    await first.kept.flush();
    expect(states(first).filter((state, i, all) => state !== all[i - 1])).toEqual([
      'opening',
      'saved',
      'saving',
      'saved',
    ]);
  });
});

describe('a live book', () => {
  it('is kept with what was undone and redone, and shows what another tab did', async () => {
    const name = newDatabase();
    const start = () => blankBook('Our shelf', 'b1');
    const live = async () => {
      const opened = await KeptBook.open({ id: 'b1', database: name, parseBook, start });
      if (!opened.ok) throw new Error(opened.problem.message);
      const book = openBook(opened.value.doc);
      opened.value.attach(book);
      return { kept: opened.value, book };
    };
    const [a, b] = [await live(), await live()];
    const { rows } = a.book.insertRows('shelf', [{ food: 'tomatoes', count: 24 }, { food: 'peaches' }]);
    a.book.set('shelf', rows[0]!, 'count', 20);
    a.book.undo();
    a.book.set('shelf', rows[1]!, 'count', 7);
    a.book.undo();
    a.book.redo();
    a.book.addColumn('shelf', 'Jar lids');
    await vi.waitFor(() => expect(b.book.toJSON()).toEqual(a.book.toJSON()));
    b.book.removeRows('shelf', [rows[1]!]);
    b.book.undo();
    b.book.set('shelf', rows[0]!, 'note', 'lids bulge');
    await vi.waitFor(() => expect(a.book.toJSON()).toEqual(b.book.toJSON()));
    await a.kept.close();
    await b.kept.close();
    const again = await live();
    expect(again.book.toJSON()).toEqual(a.book.toJSON());
    expect(again.book.value('shelf', rows[0]!, 'count')).toBe(24);
    expect(again.book.value('shelf', rows[1]!, 'count')).toBe(7);
    await again.kept.close();
  });
});

describe('storage that does not keep', () => {
  it('is told when it is full, with what to do, and is tried again', async () => {
    const name = newDatabase();
    const first = await tab(name);
    const end = failWrites('QuotaExceededError');
    first.book.set('r1', 'count', 23);
    expect(await first.kept.flush()).toBe(false);
    expect(first.kept.status).toMatchObject({ state: 'could not save', problem: { code: 'storage-full' } });
    expect(first.kept.status.message).toContain('Save a copy');
    first.book.set('r1', 'count', 22);
    expect(first.kept.status.state).toBe('could not save');
    end();
    await vi.waitFor(() => expect(first.kept.status.state).toBe('saved'));
    await first.kept.close();
    expect((await tab(name)).book.cell('r1', 'count')).toBe(22);
  });

  it('is told when it is full from the start, and the new book is kept once there is room', async () => {
    const name = newDatabase();
    const end = failWrites('QuotaExceededError');
    const first = await tab(name);
    expect(first.kept.status.state).not.toBe('saved');
    first.book.set('r1', 'count', 23);
    await first.kept.flush();
    expect(first.kept.status.state).toBe('could not save');
    end();
    await vi.waitFor(() => expect(first.kept.status.state).toBe('saved'));
    await first.kept.close();
    expect((await tab(name)).book.cell('r1', 'count')).toBe(23);
  });

  it('lets the book be edited where there is no storage at all', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const first = await tab(newDatabase());
    expect(first.kept.status).toMatchObject({ state: 'not kept', problem: { code: 'storage-refused' } });
    first.book.set('r1', 'count', 23);
    expect(first.book.cell('r1', 'count')).toBe(23);
    expect(await first.kept.flush()).toBe(false);
    expect(first.kept.status.state).toBe('not kept');
  });

  it('keeps the whole book again when it was cleared under the page', async () => {
    const name = newDatabase();
    const first = await tab(name);
    first.book.set('r1', 'count', 23);
    await first.kept.flush();
    await new Promise((done) => {
      indexedDB.deleteDatabase(name).onsuccess = done;
    });
    first.book.set('r2', 'count', 11);
    await first.kept.flush();
    expect(first.kept.status).toMatchObject({ state: 'saved', problem: { code: 'storage-cleared' } });
    await first.kept.close();
    const again = await tab(name);
    expect([again.book.cell('r1', 'count'), again.book.cell('r2', 'count')]).toEqual([23, 11]);
  });
});

describe('stored bytes that are damaged', () => {
  /** Overwrites the bytes of the first record of a store. */
  async function damage(name: string, store: 'snapshots' | 'updates'): Promise<Uint8Array> {
    const db = await rawDatabase(name);
    const [record] = await db.getAll(store);
    const bytes = record.bytes.slice();
    bytes.fill(255, 3, 12);
    await db.put(store, { ...record, bytes });
    db.close();
    return bytes;
  }

  it('fall back to the last good version, say so, and stay aside', async () => {
    const name = newDatabase();
    let now = 1_000_000;
    const first = await tab(name, { now: () => now });
    first.book.set('r1', 'count', 23);
    now += 3_600_000;
    await first.kept.flush();
    await vi.waitFor(async () => expect(await versionsOf(first)).toHaveLength(2));
    first.book.set('r1', 'count', 22);
    await first.kept.close();
    const bytes = await damage(name, 'snapshots');

    const again = await tab(name, { now: () => now });
    expect(again.book.cell('r1', 'count')).toBe(23);
    expect(again.kept.notice).toMatchObject({ code: 'book-recovered' });
    expect(again.kept.status.message).toContain('last good version');
    const keep = await openKeep(name);
    const aside = keep.ok ? await keep.value.aside('b1') : [];
    expect(aside.map((record) => record.bytes)).toContainEqual(bytes);
    again.book.set('r1', 'count', 21);
    await again.kept.close();
    const third = await tab(name, { now: () => now });
    expect(third.book.cell('r1', 'count')).toBe(21);
    expect(third.kept.notice).toBeUndefined();
  });

  it('cost only the damaged edit when all others can be read', async () => {
    const name = newDatabase();
    const first = await tab(name);
    first.book.set('r1', 'count', 23);
    await first.kept.close();
    const second = await tab(name);
    second.book.set('r2', 'count', 11);
    await second.kept.close();
    await damage(name, 'updates');
    const again = await tab(name);
    expect(again.kept.notice).toMatchObject({ code: 'book-partly-read' });
    expect(again.book.cell('r2', 'count')).toBe(11);
    expect(again.book.cell('r1', 'count')).toBe(24);
  });

  it('show the book as it was at first when no version can be read either', async () => {
    const name = newDatabase();
    await (await tab(name)).kept.close();
    await damage(name, 'snapshots');
    const db = await rawDatabase(name);
    await db.clear('versions');
    db.close();
    const again = await tab(name);
    expect(again.kept.notice).toMatchObject({ code: 'book-unreadable' });
    expect(again.book.doc).toEqual(aBook());
  });

  it('leave a book that a newer version wrote as it is', async () => {
    const name = newDatabase();
    const first = await tab(name);
    first.book.edit('version', BOOK_VERSION + 1);
    await first.kept.close();
    const again = await KeptBook.open({ id: 'b1', database: name, parseBook, start: aBook });
    expect(again).toMatchObject({ ok: false, problem: { code: 'book-newer' } });
    const keep = await openKeep(name);
    expect(keep.ok && (await keep.value.aside('b1'))).toEqual([]);
  });
});

describe('two tabs on one book', () => {
  it('show and keep the edits of both', async () => {
    const name = newDatabase();
    const [a, b] = [await tab(name), await tab(name)];
    a.book.set('r1', 'count', 23);
    b.book.set('r1', 'note', 'lids bulge');
    b.book.edit('sheets/draws/rows/d1', { order: 'a0', cells: { count: 1 } });
    await vi.waitFor(() => {
      for (const { book } of [a, b]) {
        expect(book.cell('r1', 'count')).toBe(23);
        expect(book.cell('r1', 'note')).toBe('lids bulge');
      }
    });
    expect(a.book.doc).toEqual(b.book.doc);
    await a.kept.close();
    await b.kept.close();
    expect((await tab(name)).book.doc).toEqual(a.book.doc);
  });

  it('agree on a cell that both set, and keep that one', async () => {
    const name = newDatabase();
    const [a, b] = [await tab(name), await tab(name)];
    a.book.set('r1', 'count', 1);
    b.book.set('r1', 'count', 2);
    await Promise.all([a.kept.flush(), b.kept.flush()]);
    await vi.waitFor(() => {
      expect(a.book.cell('r1', 'count')).toBe(b.book.cell('r1', 'count'));
    });
    await a.kept.close();
    await b.kept.close();
    expect((await tab(name)).book.cell('r1', 'count')).toBe(a.book.cell('r1', 'count'));
  });

  it('start one book, not two, when both are opened at once', async () => {
    const name = newDatabase();
    const [a, b] = await Promise.all([
      tab(name, { start: () => ({ ...aBook(), title: 'First' }) }),
      tab(name, { start: () => ({ ...aBook(), title: 'Second' }) }),
    ]);
    expect(a.book.doc).toEqual(b.book.doc);
  });

  it('keep what one of them could not save', async () => {
    const name = newDatabase();
    const a = await tab(name, { retryAfter: () => 60_000 });
    const end = failWrites('UnknownError');
    a.book.set('r1', 'count', 23);
    await a.kept.flush();
    expect(a.kept.status.state).toBe('could not save');
    end();
    const b = await tab(name);
    await vi.waitFor(() => expect(b.book.cell('r1', 'count')).toBe(23));
    await b.kept.close();
    const c = await tab(name);
    expect(c.book.cell('r1', 'count')).toBe(23);
  });

  it('see when shown again what was kept while they slept', async () => {
    const name = newDatabase();
    const page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
    vi.stubGlobal('document', page);
    vi.stubGlobal('window', new EventTarget());
    const a = await tab(name);
    vi.stubGlobal('BroadcastChannel', undefined);
    const b = await tab(name);
    b.book.set('r1', 'count', 23);
    await b.kept.flush();
    expect(a.book.cell('r1', 'count')).toBe(24);
    page.dispatchEvent(new Event('visibilitychange'));
    await vi.waitFor(() => expect(a.book.cell('r1', 'count')).toBe(23));
  });
});

describe('versions and copies', () => {
  it('give back an earlier version as edits', async () => {
    let now = 1_000_000;
    const first = await tab(newDatabase(), { now: () => now });
    now += 3_600_000;
    first.book.set('r1', 'count', 1);
    await first.kept.flush();
    await vi.waitFor(async () => expect(await versionsOf(first)).toHaveLength(2));
    const oldest = (await versionsOf(first)).at(-1)!;
    const version = await first.kept.earlier.read(oldest.id);
    expect(version).toEqual({ ok: true, value: aBook() });
    expect(version.ok && differences(first.book.doc, version.value)).toEqual([
      { path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'count'], to: 24, was: 1 },
    ]);
  });

  it('merge a copy that was edited elsewhere, and keep what came of it', async () => {
    const name = newDatabase();
    const [home, away] = [await tab(name), await tab(newDatabase())];
    home.book.set('r1', 'count', 20);
    away.book.set('r1', 'note', 'from away');
    away.book.edit('sheets/shelf/rows/r2', undefined);
    const merged = await home.kept.mergeCopy({ doc: away.book.doc, state: away.kept.state() });
    expect(merged).toMatchObject({ ok: true, value: { conflicts: [] } });
    expect(home.book.doc.sheets.shelf!.rows).toEqual({
      r1: { order: 'a0', cells: { food: 'tomatoes', count: 20, note: 'from away' } },
    });
    await home.kept.close();
    expect((await tab(name)).book.doc).toEqual(home.book.doc);
  });

  it('refuse to merge another book', async () => {
    const home = await tab(newDatabase());
    expect(await home.kept.mergeCopy({ doc: blankBook('Hill House', 'b2') })).toMatchObject({
      ok: false,
      problem: { code: 'other-book' },
    });
  });
});
