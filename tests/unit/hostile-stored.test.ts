import { afterEach, describe, expect, it, vi } from 'vitest';
import { parseBook } from '../../src/book/parse.js';
import { BookReplica, openKeep } from '../../src/storage/index.js';
import { shortDigest } from '../../src/storage/plain.js';
import { aBook, newDatabase, openTab, rawDatabase, type Tab } from './storage-support.js';

type Stored = Record<string, unknown>;
/** What becomes of a stored record; undefined removes it. */
type Harm = (record: Stored) => Stored | undefined;

const tabs: Tab[] = [];
afterEach(async () => {
  for (const { kept } of tabs.splice(0)) await kept.close();
  expect(({} as Stored).polluted).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
});

async function open(name: string): Promise<Tab> {
  const tab = await openTab(name);
  tabs.push(tab);
  return tab;
}

const versionsOf = async (name: string): Promise<number> => {
  const db = await rawDatabase(name);
  const count = await db.count('versions');
  db.close();
  return count;
};

/** A book with two saved edits, a version after the first of them, and nothing open any more. */
async function storedBook(): Promise<string> {
  const name = newDatabase();
  const first = await openTab(name);
  first.book.set('r1', 'count', 30);
  await first.kept.close();
  const second = await openTab(name);
  // Opening keeps a version, beside what it does for the person.
  await expect.poll(() => versionsOf(name)).toBeGreaterThan(0);
  second.book.set('r2', 'food', 'pears');
  second.book.set('r1', 'note', 'typed last');
  await second.kept.flush();
  await second.kept.close();
  return name;
}

/** Does harm to the last record of a store; answers its bytes, before and after. */
async function harm(
  name: string,
  store: string,
  how: Harm,
  which = -1,
): Promise<{ was: unknown; is: unknown }> {
  const db = await rawDatabase(name);
  const keys = await db.getAllKeys(store);
  const key = keys.at(which)!;
  const record = (await db.get(store, key)) as Stored;
  const harmed = how({ ...record });
  if (harmed) await db.put(store, harmed);
  else await db.delete(store, key);
  db.close();
  return { was: record.bytes, is: harmed?.bytes };
}

const bytesOf = ({ bytes }: Stored): Uint8Array => bytes as Uint8Array;
const withBytes = (record: Stored, bytes: Uint8Array): Stored => ({
  ...record,
  bytes,
  digest: shortDigest(bytes, 8),
});
const flipped =
  (at: (length: number) => number): Harm =>
  (record) => {
    const bytes = bytesOf(record).slice();
    bytes[at(bytes.length)]! ^= 0x20;
    return { ...record, bytes };
  };

/** Bytes that are not what was written. */
const DAMAGE: readonly (readonly [string, Harm])[] = [
  ['the first byte turned over', flipped(() => 0)],
  ['a byte in the middle turned over', flipped((length) => length >> 1)],
  ['the last byte turned over', flipped((length) => length - 1)],
  ['the end cut off', (record) => ({ ...record, bytes: bytesOf(record).slice(0, -3) })],
  ['all but a byte cut off', (record) => ({ ...record, bytes: bytesOf(record).slice(0, 1) })],
  ['nothing left', (record) => ({ ...record, bytes: new Uint8Array() })],
  ['more after the end', (record) => ({ ...record, bytes: new Uint8Array([...bytesOf(record), 7]) })],
  ['zeros', (record) => ({ ...record, bytes: new Uint8Array(bytesOf(record).length) })],
  ['another digest', (record) => ({ ...record, digest: '0000000000000000' })],
  ['no digest', ({ digest: _, ...record }) => record],
  ['a digest that is a number', (record) => ({ ...record, digest: 12 })],
  ['text in place of bytes', (record) => ({ ...record, bytes: 'tomatoes' })],
  ['a list in place of bytes', (record) => ({ ...record, bytes: [...bytesOf(record)] })],
  ['a buffer in place of bytes', (record) => ({ ...record, bytes: bytesOf(record).slice().buffer })],
  ['an object in place of bytes', (record) => ({ ...record, bytes: { length: 4, polluted: true } })],
  ['null in place of bytes', (record) => ({ ...record, bytes: null })],
  ['no bytes', ({ bytes: _, ...record }) => record],
  // Whole as far as the digest goes, and yet no edit.
  ['text with its digest', (record) => withBytes(record, new TextEncoder().encode('{"format":"x"}'))],
  ['noise with its digest', (record) => withBytes(record, new Uint8Array(64).fill(0xff))],
];

/** After whatever happened, the book is there to be edited, and what is typed now is kept. */
async function expectGoesOn(name: string, tab: Tab): Promise<void> {
  tab.book.set('r2', 'note', 'typed after');
  expect(await tab.kept.flush()).toBe(true);
  expect(tab.statuses.at(-1)?.state).toBe('saved');
  const again = await open(name);
  expect(again.book.cell('r2', 'note')).toBe('typed after');
  expect(again.kept.notice).toBeUndefined();
}

const aside = async (name: string): Promise<unknown[]> => {
  const db = await rawDatabase(name);
  const records = (await db.getAll('aside')) as Stored[];
  db.close();
  return records.map(({ bytes }) => bytes);
};

describe('a stored edit that is damaged', () => {
  it.each(DAMAGE)('%s: costs that edit alone, says so, and stays aside', async (_what, how) => {
    const name = await storedBook();
    const { is } = await harm(name, 'updates', how);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-partly-read');
    expect(tab.kept.notice?.message).toBe(
      'Some of the stored edits are damaged and were left out; all others are here.',
    );
    expect(tab.kept.status.message).toContain('Look whether the last things you typed are there');
    expect(tab.book.cell('r1', 'count')).toBe(30);
    if (is !== undefined) expect(await aside(name)).toContainEqual(is);
    await expectGoesOn(name, tab);
  });

  it('that is gone without a trace costs nothing else', async () => {
    const name = await storedBook();
    await harm(name, 'updates', () => undefined);
    const tab = await open(name);
    expect(tab.book.cell('r1', 'count')).toBe(30);
    await expectGoesOn(name, tab);
  });
});

describe('a stored book whose beginning is damaged', () => {
  it.each(DAMAGE)('%s: opens as the last good version, says so, and stays aside', async (_what, how) => {
    const name = await storedBook();
    const { is } = await harm(name, 'snapshots', how);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-recovered');
    expect(tab.kept.notice?.message).toMatch(
      /^The stored book could not be read\. This is the last good version, from \w+ \d+, \d{4} at \d\d:\d\d\.$/,
    );
    expect(tab.kept.status.message).toContain('Enter again what you changed after that');
    expect(tab.book.cell('r1', 'count')).toBe(30);
    if (is !== undefined) expect(await aside(name)).toContainEqual(is);
    await expectGoesOn(name, tab);
  });

  it('that is gone is not taken for a new book: the last good version opens', async () => {
    const name = await storedBook();
    await harm(name, 'snapshots', () => undefined);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-recovered');
    expect(tab.book.cell('r1', 'count')).toBe(30);
    expect((await aside(name)).length).toBeGreaterThan(0);
    await expectGoesOn(name, tab);
  });

  it.each([
    ['text', 'x'],
    ['less than nothing', -7],
    ['no number', Number.NaN],
    ['far off', 1e12],
    ['nothing', null],
  ])('but for its number, which is %s: opens with every edit', async (_what, upTo) => {
    const name = await storedBook();
    await harm(name, 'snapshots', (record) => ({ ...record, upTo }));
    const tab = await open(name);
    expect(tab.kept.notice).toBeUndefined();
    expect(tab.book.cell('r1', 'count')).toBe(30);
    expect(tab.book.cell('r1', 'note')).toBe('typed last');
    await expectGoesOn(name, tab);
  });
});

describe('stored versions that are damaged', () => {
  const harmSnapshot = (name: string) =>
    harm(
      name,
      'snapshots',
      flipped(() => 0),
    );
  const texts: readonly (readonly [string, unknown])[] = [
    ['cut off', '{"format":"croftsheet-book","version":1,"sh'],
    ['empty', ''],
    ['null', null],
    ['a number', 5],
    ['bytes', new Uint8Array([1, 2, 3])],
    ['some other JSON', '{"name":"x"}'],
    ['hostile', '{"format":"croftsheet-book","version":1,"__proto__":{"polluted":true}}'],
  ];

  it.each(texts)('with a text that is %s: the one before it opens', async (_what, json) => {
    const name = await storedBook();
    await open(name);
    await expect.poll(() => versionsOf(name)).toBeGreaterThan(1);
    await tabs.pop()!.kept.close();
    await harm(name, 'texts', (record) => ({ ...record, json }));
    await harmSnapshot(name);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-recovered');
    expect(tab.book.cell('r1', 'count')).toBe(30);
    await expectGoesOn(name, tab);
  });

  it('all of them: the book is shown as it was at first, says so, and nothing is removed', async () => {
    const name = await storedBook();
    const db = await rawDatabase(name);
    await db.clear('texts');
    db.close();
    const { is } = await harmSnapshot(name);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-unreadable');
    expect(tab.kept.notice?.message).toContain('no earlier version of it either');
    expect(tab.book.cell('r1', 'count')).toBe(24);
    expect(await aside(name)).toContainEqual(is);
    await expectGoesOn(name, tab);
  });

  it.each([
    ['text', 'yesterday'],
    ['no number', Number.NaN],
    ['beyond all dates', 1e300],
    ['nothing', null],
  ])('with a time that is %s: still opens, and is not thought lost', async (_what, at) => {
    const name = await storedBook();
    const db = await rawDatabase(name);
    for (const record of (await db.getAll('versions')) as Stored[])
      await db.put('versions', { ...record, at, title: 7 });
    db.close();
    await harmSnapshot(name);
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-recovered');
    expect(tab.kept.notice?.message).toContain('This is the last good version');
    expect(tab.book.cell('r1', 'count')).toBe(30);
    await expectGoesOn(name, tab);
  });
});

describe('a stored list of books that is damaged', () => {
  it.each<readonly [string, Harm]>([
    ['a title that is a number', (record) => ({ ...record, title: 5 })],
    ['no time', ({ updatedAt: _, ...record }) => record],
    ['nothing but its id', ({ id }) => ({ id })],
    ['nothing at all', () => undefined],
  ])('%s: the book opens, and the list can be read', async (_what, how) => {
    const name = await storedBook();
    await harm(name, 'books', how);
    const keep = await openKeep(name);
    expect(keep.ok && Array.isArray(await keep.value.list())).toBe(true);
    if (keep.ok) await keep.value.close();
    const tab = await open(name);
    expect(tab.book.cell('r1', 'note')).toBe('typed last');
    await expectGoesOn(name, tab);
  });
});

describe('stored edits that are whole and hostile', () => {
  const hostile: readonly (readonly [string, readonly string[], unknown])[] = [
    ['a sheet of no known kind', ['sheets', 'shelf', 'kind'], 'nonsense'],
    ['a sheet called __proto__', ['sheets', '__proto__'], { kind: 'own', polluted: true }],
    ['a sheet whose order is none', ['sheets', 'shelf', 'order'], 'not a key!'],
    ['a cell that holds a list', ['sheets', 'shelf', 'rows', 'r1', 'cells', 'note'], ['a', 'b']],
    ['a book without a title', ['title'], ''],
    ['a format of something else', ['format'], 'x'],
  ];

  it.each(hostile)('%s: the last good version opens', async (_what, path, to) => {
    const name = await storedBook();
    const db = await rawDatabase(name);
    const [snapshot, ...updates] = [
      ...((await db.getAll('snapshots')) as Stored[]),
      ...((await db.getAll('updates')) as Stored[]),
    ];
    const replica = BookReplica.fromState(...[snapshot!, ...updates].map(bytesOf));
    if (!replica.ok) throw new Error(replica.problem.message);
    replica.value.apply([{ path, to: to as never, was: undefined }]);
    await db.put('snapshots', withBytes(snapshot!, replica.value.encode()));
    db.close();
    const tab = await open(name);
    expect(tab.kept.notice?.code).toBe('book-recovered');
    expect(parseBook(tab.book.doc).ok).toBe(true);
    expect(tab.book.cell('r1', 'count')).toBe(30);
    await expectGoesOn(name, tab);
  });
});

describe('what another page says on the channel of the tabs', () => {
  it.each([
    ['no message', 'hello'],
    ['null', null],
    ['an edit that is none', { kind: 'update', update: new Uint8Array([9, 9, 9, 9]), kept: true }],
    ['an edit without bytes', { kind: 'update', update: 'x', kept: false }],
    ['a greeting that is none', { kind: 'hello', vector: new Uint8Array([255, 255, 255]) }],
  ])('%s: changes nothing that was entered, and the book goes on', async (_what, message) => {
    const name = await storedBook();
    const tab = await open(name);
    const channel = new BroadcastChannel(`${name}/b1`);
    channel.postMessage(message);
    await new Promise((done) => setTimeout(done, 50));
    channel.close();
    expect(tab.book.cell('r1', 'note')).toBe('typed last');
    expect(tab.book.cell('r2', 'food')).toBe('pears');
    await expectGoesOn(name, tab);
  });
});

describe('two pages that keep nothing', () => {
  const unkept = async (name: string, people: number): Promise<Tab> => {
    const tab = await openTab(name, { start: () => ({ ...aBook(), settings: { people } }) });
    tabs.push(tab);
    return tab;
  };

  it('hear each other where they began with one book, and leave each other alone where not', async () => {
    vi.stubGlobal('indexedDB', undefined);
    try {
      const name = newDatabase();
      const [one, same, other] = [await unkept(name, 4), await unkept(name, 4), await unkept(name, 5)];
      one.book.set('r1', 'count', 7);
      other.book.set('r1', 'note', 'in another book');
      await expect.poll(() => same.book.cell('r1', 'count')).toBe(7);
      await new Promise((done) => setTimeout(done, 50));
      expect([one, same, other].map(({ book }) => book.doc.settings.people)).toEqual([4, 4, 5]);
      expect([one, same, other].map(({ book }) => book.cell('r1', 'count'))).toEqual([7, 7, 24]);
      expect([one, same].map(({ book }) => book.cell('r1', 'note'))).toEqual([undefined, undefined]);
      expect(other.book.cell('r1', 'note')).toBe('in another book');
    } finally {
      vi.unstubAllGlobals();
    }
  });
});
