import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { parseBook } from '../../src/book/parse.js';
import { KeptBook, PageVersions } from '../../src/storage/index.js';
import { shortDigest } from '../../src/storage/plain.js';
import { BookReplica } from '../../src/storage/replica.js';
import { aBook, newDatabase, openTab } from './storage-support.js';

const MINUTE = 60_000;

/** A database as the first release made it, by its own words and not by ours. */
async function firstRelease(name: string): Promise<void> {
  const db = await openDB(name, 1, {
    upgrade(made) {
      made.createObjectStore('books', { keyPath: 'id' });
      made.createObjectStore('snapshots', { keyPath: 'book' });
      made
        .createObjectStore('updates', { keyPath: 'nr', autoIncrement: true })
        .createIndex('book', ['book', 'nr']);
      for (const store of ['versions', 'aside'])
        made.createObjectStore(store, { keyPath: 'nr', autoIncrement: true }).createIndex('book', 'book');
    },
  });
  const replica = BookReplica.fromBook(aBook());
  const bytes = replica.encode();
  let update: Uint8Array = bytes;
  replica.onUpdate((each) => {
    update = each;
  });
  replica.apply([{ path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'count'], to: 23, was: 24 }]);
  const kept = (each: Uint8Array) => ({ book: 'b1', bytes: each, digest: shortDigest(each, 8) });
  await db.put('books', { id: 'b1', title: 'Our shelf', updatedAt: 5 });
  await db.put('snapshots', { ...kept(bytes), upTo: 0 });
  await db.add('updates', kept(update));
  await db.add('versions', { book: 'b1', at: 1000, title: 'Our shelf', json: JSON.stringify(aBook()) });
  await db.add('versions', {
    book: 'b1',
    at: 2000,
    title: 'Older title',
    json: JSON.stringify({ ...aBook(), title: 'Older title' }),
  });
  db.close();
}

const listed = async ({ kept }: { kept: KeptBook }) => {
  const all = await kept.earlier.list();
  if (!all.ok) throw new Error(all.problem.message);
  return all.value;
};

describe('a database of the first release', () => {
  it('opens with its book, its edits and every version', async () => {
    const name = newDatabase();
    await firstRelease(name);
    const tab = await openTab(name, { now: () => 3000 });
    expect(tab.kept.notice).toBeUndefined();
    expect(tab.book.cell('r1', 'count')).toBe(23);
    const old = (await listed(tab)).filter(({ at }) => at <= 2000);
    expect(old.map(({ title }) => title)).toEqual(['Older title', 'Our shelf']);
    for (const { id, title } of old) {
      const read = await tab.kept.earlier.read(id);
      expect(read.ok && read.value.title).toBe(title);
    }
    await tab.kept.earlier.rename(old[0]!.id, 'from the first release');
    await tab.kept.close();
    const again = await openTab(name, { now: () => 4000 });
    expect((await listed(again)).map((each) => each.name)).toContain('from the first release');
    await again.kept.close();
  });
});

describe('named versions', () => {
  it('stay while a year of those without a name is thinned out', async () => {
    let now = 0;
    const tab = await openTab(newDatabase(), { now: () => now });
    const made = await tab.kept.earlier.keepNow('  before canning season ');
    expect(made.ok && made.value.name).toBe('before canning season');
    for (let i = 1; i <= 40; i++) {
      now = i * 9 * 24 * 60 * MINUTE;
      tab.book.set('r1', 'count', i);
      await tab.kept.flush();
      // Three close to each other, neither newest nor oldest: without names they would be the first to go.
      if (i === 20)
        for (const name of ['one', 'two', 'three']) {
          await tab.kept.earlier.keepNow(name);
          now += MINUTE;
        }
    }
    await expect.poll(async () => (await listed(tab)).filter(({ at }) => at === now).length).toBe(1);
    const all = await listed(tab);
    expect(all.filter(({ name }) => name === undefined).length).toBeLessThanOrEqual(10);
    expect(all.map(({ name }) => name).filter(Boolean)).toEqual([
      'three',
      'two',
      'one',
      'before canning season',
    ]);
    expect(all.at(-1)).toMatchObject({ name: 'before canning season', at: 0 });
    const read = await tab.kept.earlier.read(all.at(-1)!.id);
    expect(read.ok && read.value.sheets.shelf!.rows.r1!.cells.count).toBe(24);
    await tab.kept.close();
  });

  it('are kept even when nothing has changed, renamed, and removed only by hand', async () => {
    const tab = await openTab(newDatabase(), { now: () => 5000 });
    await tab.kept.earlier.keepNow('one');
    await tab.kept.earlier.keepNow('two');
    const [two, one] = (await listed(tab)).filter(({ name }) => name !== undefined);
    expect([one?.name, two?.name]).toEqual(['one', 'two']);
    expect((await tab.kept.earlier.rename(one!.id, 'first')).ok).toBe(true);
    await tab.kept.earlier.remove(two!.id);
    expect((await listed(tab)).map(({ name }) => name).filter(Boolean)).toEqual(['first']);
    expect((await tab.kept.earlier.read(two!.id)).ok).toBe(false);
    expect(await tab.kept.earlier.rename(two!.id, 'x')).toMatchObject({ problem: { code: 'version-gone' } });
    for (const name of ['  ', 'x'.repeat(81)]) expect((await tab.kept.earlier.keepNow(name)).ok).toBe(false);
    await tab.kept.close();
  });
});

describe('a book that is not kept', () => {
  it('has versions for as long as the page is open, and says so', async () => {
    let doc = aBook();
    const versions = new PageVersions(() => doc);
    expect(versions.lasting).toBe(false);
    doc = { ...doc, title: 'Changed' };
    const made = await versions.keepNow('later');
    doc = { ...doc, title: 'Changed again' };
    const all = await versions.list();
    expect(all.ok && all.value.map(({ name, title }) => [name, title])).toEqual([
      ['later', 'Changed'],
      [undefined, 'Our shelf'],
    ]);
    const read = made.ok ? await versions.read(made.value.id) : undefined;
    expect(read?.ok && read.value.title).toBe('Changed');
  });

  it('for want of storage has them too', async () => {
    const opened = await KeptBook.open({ id: 'b1', database: newDatabase(), parseBook, start: aBook });
    expect(opened.ok && opened.value.earlier.lasting).toBe(true);
    if (opened.ok) await opened.value.close();
    const { indexedDB } = globalThis;
    Reflect.deleteProperty(globalThis, 'indexedDB');
    try {
      const without = await KeptBook.open({ id: 'b1', database: newDatabase(), parseBook, start: aBook });
      expect(without.ok && without.value.earlier.lasting).toBe(false);
      if (without.ok) await without.value.close();
    } finally {
      globalThis.indexedDB = indexedDB;
    }
  });
});
