import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type KeptCopy, readKept, writeKept } from '../../components/embed/kept-copy.js';
import { sheetTitle } from '../../components/embed/sheet-title.js';
import { type PageTable, withoutPage } from '../../components/embed/written-cells.js';
import { type BookDoc, blankBook, parseBook } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { planMerge } from '../../src/storage/merge-plan.js';
import { BookReplica } from '../../src/storage/replica.js';

/** A page's table of one food as the book that is made of it. */
function tableBook(title: string, food: string): BookDoc & { readonly page_table: PageTable } {
  const live = openBook(blankBook(title, 'table'));
  const done = live.apply({
    do: 'add sheet',
    sheet: 'table',
    title,
    columns: [
      { id: 'c1', title: 'Food' },
      { id: 'c2', title: 'Pounds' },
      { id: 'c3', title: 'Each', as: { formula: '=Pounds/6' } },
    ],
    rows: [
      { id: 'r1', cells: { c1: food, c2: 300 } },
      { id: 'r2', cells: { c1: 'In all', c2: '=SUM(B1:B1)' } },
    ],
  });
  expect(done).toMatchObject({ ok: true });
  const page_table = { sheet: 'table', language: 'en', cells: {}, formulas: {}, texts: {} };
  return { ...live.toJSON(), page_table };
}

test('tables of a page that are taken home are books of their own, each the same whenever it is taken', () => {
  const [beds, cellar] = [tableBook('Attic', 'Beans'), tableBook('Cellar', 'Potatoes')];
  const [one, again, other] = [
    withoutPage(beds, 'https://a.example/', 'a'),
    withoutPage(beds, 'https://a.example/', 'a'),
    withoutPage(cellar, 'https://a.example/', 'a'),
  ] as const;
  for (const [book, source] of [
    [one, beds],
    [other, cellar],
  ] as const) {
    const parsed = parseBook(book);
    expect(parsed.ok).toBe(true);
    const live = openBook(book);
    const [sheet] = live.sheets().filter(({ kind }) => kind === 'own');
    expect(sheet?.title).toBe(source.title);
    expect(['c1', 'c2', 'c3'].map((id) => live.typed(sheet!.id, 'r2', id))).toEqual([
      'In all',
      '=SUM(B1)',
      '=Pounds/6',
    ]);
    expect(live.column(sheet!.id, 'c3')?.formula).toBe('=Pounds/6');
  }
  const merge = (mine: BookDoc, theirs: BookDoc) =>
    planMerge(BookReplica.fromBook(mine), { doc: theirs }, parseBook);
  expect(merge(one, other)).toMatchObject({ ok: false, problem: { code: 'other-book' } });
  expect(merge(one, again)).toMatchObject({ ok: true, value: { edits: [], conflicts: [] } });
});

test('what a page says over its table is made a title that a book takes', () => {
  const live = openBook(blankBook());
  const long = 'All that we put up this year, and what of it is left on the shelf on the first of May';
  for (const [i, caption] of ['Beds', 'shelf', 'What is left: May?', '[*]', '1/2 bushels', long].entries()) {
    const title = sheetTitle(
      caption,
      live.sheets().map((each) => each.title),
    );
    expect(live.apply({ do: 'add sheet', sheet: `s${i}`, title }), caption).toMatchObject({ ok: true });
  }
  expect(sheetTitle('Beds', ['Beds', 'beds 2'])).toBe('Beds 3');
  expect(sheetTitle('What is left: May?', [])).toBe('What is left May');
});

describe('a reader’s copy under a name that ends in a day', () => {
  const kept = new Map<string, string>();
  let here: string[] = [];
  beforeEach(() => {
    kept.clear();
    here = [];
    const local = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => kept.set(key, text),
      removeItem: (key: string) => kept.delete(key),
    };
    vi.stubGlobal(
      'localStorage',
      new Proxy(local, {
        ownKeys: () => [...kept.keys()],
        getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
      }),
    );
    vi.stubGlobal('CSS', { escape: (text: string) => text });
    vi.stubGlobal('document', {
      querySelector: (asked: string) => here.find((name) => asked.includes(`"${name}"`)) ?? null,
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  const [MAY, JUNE] = ['b1/shelf/word 2026-05-04', 'b1/shelf/word 2026-06-01'];
  const copy = { digest: 'd', book: {}, table: { columns: [], rows: [], cautions: [] }, page: '/post' };
  const keep = () => writeKept(MAY, copy as unknown as KeptCopy);

  test('is found where newer figures are pasted over those of that day, and goes on under the new name', () => {
    keep();
    expect(readKept(JUNE, '/post')?.digest).toBe('d');
    expect([...kept.keys()]).toEqual([`croft-embed ${JUNE}`]);
    expect(readKept(JUNE, '/post')?.digest).toBe('d');
  });

  test('is no other post’s, no other table’s, and stays that of an element that still has its name', () => {
    keep();
    expect(readKept(JUNE, '/another')).toBeNull();
    expect(readKept('b1/shelf/other 2026-06-01', '/post')).toBeNull();
    expect(readKept('b1/shelf/word', '/post')).toBeNull();
    here = [MAY, JUNE];
    expect(readKept(JUNE, '/post')).toBeNull();
    expect([...kept.keys()]).toEqual([`croft-embed ${MAY}`]);
  });
});
