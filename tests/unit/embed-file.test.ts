import { beforeAll, describe, expect, test, vi } from 'vitest';
import { askedOf, type FileDoc, warnOfMissing } from '../../components/embed/asked-of-file.js';
import { blankBook, parseBook } from '../../src/book/index.js';
import { type EmbedOptions, embedOf } from '../../src/live/embed/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

const SHOWN = ['food', 'put_up_on', 'count', 'left'];
let live: LiveBook;
beforeAll(() => {
  live = openBook(blankBook());
  live.insertRows('shelf', [
    { food: 'tomatoes', way: 'canned', container: 'quart jar', count: 28, put_up_on: '2025-08-27' },
    { food: 'carrots', way: 'cellared', container: 'pound', count: 72, put_up_on: '2025-10-12' },
    { food: 'potatoes', way: 'cellared', container: 'pound', count: 300, put_up_on: '2025-09-28' },
  ]);
});

const file = (options: EmbedOptions = {}): FileDoc =>
  JSON.parse(embedOf(live, 'shelf', { columns: SHOWN, ...options }).json) as FileDoc;
const keepAsOf = (options: EmbedOptions): string =>
  /keep-as="([^"]*)"/.exec(
    embedOf(live, 'shelf', { columns: SHOWN, open: ['count'], ...options }).html,
  )?.[1] ?? '';

describe('a file made for a web page', () => {
  test('shows the columns that are asked for, in that order, and no others', () => {
    const all = askedOf(file(), null, [])!;
    expect(all.columns.map(({ id }) => id)).toEqual(SHOWN);
    const two = askedOf(file(), 'shelf', ['left', 'food', 'banana'])!;
    expect(two.columns.map(({ title }) => title)).toEqual(['Left', 'Food']);
    expect(two.rows.map(({ cells }) => cells)).toEqual(all.rows.map(({ cells }) => [cells[3], cells[0]]));
    expect(askedOf(file(), 'shelf', ['banana'])?.columns).toHaveLength(SHOWN.length);
  });

  test('says to whoever keeps the page which columns are not there', () => {
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    warnOfMissing(['food', 'left'], file().shown!);
    expect(warn).not.toHaveBeenCalled();
    warnOfMissing(['food', 'banana', 'pear'], file().shown!);
    expect(warn.mock.calls.flat()).toEqual([expect.stringContaining('no column banana, pear')]);
    warn.mockRestore();
  });

  test('is found by id, kind or title; another sheet is worked out, and one that is not there is said at once', () => {
    const open = file({ open: ['count'], title: 'What we have' });
    for (const name of ['shelf', 'Shelf']) expect(askedOf(open, name, [])?.title, name).toBe('What we have');
    expect(askedOf(open, 'foods', [])).toBeNull();
    expect(() => askedOf(open, 'cellar', [])).toThrow('There is no sheet called “cellar”');
    expect(askedOf(live.toJSON(), 'cellar', [])).toBeNull();
  });

  test('holds the table alone while no cell is open, and can be read as a book', () => {
    const closed = file();
    expect(Object.values(closed.sheets).map(({ rows }) => Object.keys(rows).length)).toEqual([0]);
    expect(Object.keys(closed.settings)).toEqual(['as_of']);
    expect(closed.shown?.rows).toHaveLength(live.rowIds('shelf').length);
    const { shown: _shown, ...book } = closed;
    expect(parseBook(book).ok).toBe(true);
    expect(Object.keys(file({ open: ['count'] }).sheets)).toContain('draws');
  });

  test('goes with one element that names it and the sheet', () => {
    const { htmlFor } = embedOf(live, 'foods', { columns: ['food'] });
    expect(htmlFor('/our "foods".json')).toBe(
      '<croft-embed sheet="foods" src="/our &quot;foods&quot;.json"></croft-embed>',
    );
    expect(embedOf(live, 'shelf', { open: ['count'], keepAs: 'ours' }).htmlFor('/a.json')).toContain(
      'keep-as="ours"',
    );
  });
});

test('two posts of one sheet keep a reader’s numbers apart; new figures in the same post leave them', () => {
  const names = [{}, { columns: ['food', 'count'] }, { open: ['count', 'food'] }, { title: 'May' }].map(
    keepAsOf,
  );
  names.push(keepAsOf({ rows: live.rowIds('shelf').slice(0, 2) }));
  expect(new Set(names).size).toBe(5);
  const [first] = live.rowIds('shelf');
  live.set('shelf', first!, 'count', 3);
  expect(keepAsOf({})).toBe(names[0]);
  // Those of another day are another post’s, or the same one’s anew: all but the day is the same.
  const later = openBook(live.toJSON(), { today: () => 20_000 });
  const [, name] =
    /keep-as="([^"]*)"/.exec(embedOf(later, 'shelf', { columns: SHOWN, open: ['count'] }).html) ?? [];
  expect(name).toBe(`${names[0]?.slice(0, -10)}2024-10-04`);
  expect(name).not.toBe(names[0]);
});
