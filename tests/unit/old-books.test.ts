import { readFileSync } from 'node:fs';
import { type IDBPDatabase, openDB } from 'idb';
import { afterEach, describe, expect, it } from 'vitest';
import { KINDS, parseBook } from '../../src/book/index.js';
import type { SheetKind } from '../../src/book/types.js';
import { openBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { BookReplica, KeptBook, openACopy, openKeep } from '../../src/storage/index.js';
import { newDatabase } from './storage-support.js';

const read = (name: string): string => readFileSync(`tests/fixtures/${name}`, 'utf8');

type Plain = { readonly [key: string]: unknown };
interface Saved {
  readonly settings: Plain;
  readonly sheets: {
    readonly [id: string]: { readonly kind: SheetKind; readonly columns?: Plain; readonly rows: Plain };
  };
}

/** Cells whose figures were reckoned by hand from the entries of the file (how: beside each). */
type Figures = { readonly [cell: string]: unknown };

const LARCH_HOLLOW: Figures = {
  // 2 of 3 shares, in per cent.
  'household/p1/part_of_table': 200 / 3,
  // 20 quarts, less 1 that was drawn from this lot by name.
  'shelf/lotA/left': 19,
  // 8 pints, less 3 quarts, which are 6 pints.
  'shelf/lotB/left': 2,
  'shelf/lotA/cTwice': 38,
  // 13 days of February, 31 + 30 + 31 + 30 + 31 + 31 of the months to August, and 1.
  'shelf/lotA/days_left': 198,
  'draws/d1/took_from': '6 pint jars (put up 2024-09-01, cellar)',
  // 19 quarts and 2 pints.
  'foods/f1/on_hand': 20,
  'foods/f1/use_per_week': 2,
  // 30 and 42 pounds from 12 plants.
  'harvest/h1/per_plant_so_far': 2.5,
  'harvest/h2/per_plant_so_far': 6,
  'harvest/h2/pounds_so_far': 72,
  // 28 pounds of carrots at 2 a time; 20 quarts of tomatoes at 1.
  'dishes/e2/enough_for': 14,
  'dishes/e1/enough_for': 20,
  'facts/k1/own_seasons': 1,
  // The range from lot A to lot C spans these two, now that lot C stands above lot A: 40 + 20.
  'sheetNotes/n1/cC': 60,
  // 5 + 7 + 0.5, by range and by the column's name.
  'sheetNotes/n2/cC': 12.5,
  'sheetNotes/n3/cC': 5,
  'sheetNotes/n5/cC': 12.5,
};

const WILLOW_STREET: Figures = {
  // 6 of 6 + 7 + 3 shares.
  'household/p01/part_of_table': 37.5,
  // 8 bags less 3 + 4 + 1; 10 less 3 + 3.
  'shelf/lot01/left': 0,
  'shelf/lot02/left': 4,
  // 45 pounds less 5 + 4 + 5 + 6 + 5; 60 less 12 + 10 + 11 + 12 + 3 + 10.
  'shelf/lot06/left': 20,
  'shelf/lot07/left': 2,
  // Four cups are a quart; six pints are twelve cups.
  'food-math/r3/answer': 4,
  'food-math/r4/answer': 12,
  'food-math/r8/answer': '2026-05-08',
};

const FILES: readonly (readonly [string, Figures])[] = [
  ['books/version-0.croft.json', { 'shelf/r1/left': 5, 'notes/n1/double': 4 }],
  ['book-version-1.json', WILLOW_STREET],
  ['books/version-2.croft.json', LARCH_HOLLOW],
];

const opened: LiveBook[] = [];
afterEach(() => {
  for (const live of opened.splice(0)) live.close();
});

function open(text: string): LiveBook {
  const parsed = parseBook(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const live = openBook(parsed.book, { asOf: '2026-02-15' });
  opened.push(live);
  return live;
}

function expectFigures(live: LiveBook, figures: Figures): void {
  for (const [cell, value] of Object.entries(figures)) {
    const [sheet, row, column] = cell.split('/') as [string, string, string];
    const shown = live.value(sheet, row, column);
    if (typeof value === 'number') expect(shown, cell).toBeCloseTo(value, 9);
    else expect(shown, cell).toBe(value);
  }
}

describe('a book file of an earlier version', () => {
  it.each(FILES)('%s opens with every entry as it was', (name) => {
    const text = read(name);
    const before = JSON.parse(text) as Saved;
    const live = open(text);
    const after = JSON.parse(JSON.stringify(live.toJSON())) as Saved;
    expect(after.settings).toEqual(before.settings);
    for (const [id, sheet] of Object.entries(before.sheets)) {
      expect(after.sheets[id]!.rows, id).toEqual(sheet.rows);
      expect(after.sheets[id]!.columns, id).toEqual(sheet.columns ?? {});
    }
  });

  it.each(FILES)('%s shows the figures that its entries come to', (name, figures) => {
    expectFigures(open(read(name)), figures);
  });

  it.each(FILES)('%s has every planning column of every kind of sheet', (name) => {
    const live = open(read(name));
    const kinds = new Set<string>();
    for (const { id, kind } of live.sheets()) {
      kinds.add(kind);
      const there = live.columns(id).filter(({ role }) => role === 'planning');
      const declared = KINDS[kind as SheetKind].columns.filter(({ role }) => role === 'planning');
      expect(new Set(there.map((column) => column.id))).toEqual(new Set(declared.map((column) => column.id)));
    }
    for (const kind of Object.keys(KINDS)) if (kind !== 'own') expect(kinds).toContain(kind);
  });

  it.each(FILES)('%s is the same again after it is saved by this version', (name) => {
    const live = open(read(name));
    const again = open(JSON.stringify(live.toJSON()));
    expect(again.toJSON()).toEqual(live.toJSON());
  });
});

describe('a file that was saved for merging by an earlier version', () => {
  const text = read('books/version-2-for-merging.croft.json');

  it('opens with its entries and its history, and figures follow', async () => {
    const copy = await openACopy(text, parseBook);
    if (!copy.ok) throw new Error(JSON.stringify(copy.problems));
    expect(copy.copy.state).toBeInstanceOf(Uint8Array);
    const live = openBook(copy.copy.doc, { asOf: '2026-02-15' });
    opened.push(live);
    expectFigures(live, LARCH_HOLLOW);
    expect(live.value('shelf', 'lotC', 'note')).toBe('Washed sand');
    expect(live.rowIds('shelf')).not.toContain('lotGone');
  });

  it('shares its past with the copy it was saved from, so that only what is new comes over', async () => {
    const copy = await openACopy(text, parseBook);
    if (!copy.ok) throw new Error(JSON.stringify(copy.problems));
    const earlier = parseBook(read('books/version-2.croft.json'));
    if (!earlier.ok) throw new Error(JSON.stringify(earlier.problems));
    const replica = BookReplica.fromBook(earlier.book);
    const merged = replica.merge(copy.copy.state!);
    expect(merged.ok && merged.value).toEqual([
      { path: ['sheets', 'shelf', 'rows', 'lotC', 'cells', 'note'], to: 'Washed sand', was: undefined },
    ]);
  });
});

describe('what an earlier version stored in the browser', () => {
  interface Stored {
    readonly version: number;
    readonly stores: { readonly [store: string]: readonly Plain[] };
  }
  /** The stores of database version 1. */
  const asItWas = (db: IDBPDatabase): void => {
    db.createObjectStore('books', { keyPath: 'id' });
    db.createObjectStore('snapshots', { keyPath: 'book' });
    db.createObjectStore('updates', { keyPath: 'nr', autoIncrement: true }).createIndex('book', [
      'book',
      'nr',
    ]);
    for (const store of ['versions', 'aside'])
      db.createObjectStore(store, { keyPath: 'nr', autoIncrement: true }).createIndex('book', 'book');
  };
  const bytes = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && 'base64' in value
      ? Uint8Array.from(Buffer.from(String(value.base64), 'base64'))
      : value;

  it('opens with the edits that were kept after the first state, and goes on being saved', async () => {
    const { version, stores } = JSON.parse(read('books/stored-version-2.json')) as Stored;
    const database = newDatabase();
    const options = {
      id: 'larchhollow',
      database,
      parseBook,
      start: () => {
        throw new Error('the stored book was not found');
      },
    };
    const db = await openDB(database, version, { upgrade: asItWas });
    for (const [store, records] of Object.entries(stores))
      for (const record of records)
        await db.put(
          store,
          Object.fromEntries(Object.entries(record).map(([key, value]) => [key, bytes(value)])),
        );
    db.close();
    const kept = await KeptBook.open(options);
    if (!kept.ok) throw new Error(kept.problem.message);
    expect(kept.value.notice).toBeUndefined();
    const live = openBook(kept.value.doc, { asOf: '2026-02-15' });
    opened.push(live);
    // 40 pounds of carrots, less 12, less 3 of the draw that was kept as an update.
    expect(live.value('shelf', 'lotC', 'left')).toBe(25);
    expect(live.value('shelf', 'lotC', 'note')).toBe('Washed sand');
    expect(live.setting('cushion')).toBe(5);
    const keep = await openKeep(database);
    if (!keep.ok) throw new Error(keep.problem.message);
    const versions = await keep.value.versions('larchhollow');
    const first = versions.find(({ at }) => at === Date.UTC(2026, 1, 15, 9));
    const earlier = parseBook(await keep.value.loadVersion(first!.id));
    expect(earlier.ok && earlier.book.sheets.draws!.rows).toHaveProperty('d3');
    expect(earlier.ok && earlier.book.sheets.draws!.rows).not.toHaveProperty('d4');
    await keep.value.close();
    kept.value.attach(live);
    live.set('shelf', 'lotC', 'note', 'Sifted');
    expect(await kept.value.flush()).toBe(true);
    await kept.value.close();
    const again = await KeptBook.open(options);
    expect(again.ok && again.value.doc.sheets.shelf!.rows.lotC!.cells.note).toBe('Sifted');
    if (again.ok) await again.value.close();
  });
});
