import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BOOK_VERSION } from '../../src/book/index.js';
import { blankBook, openBook, parseBook } from '../../src/core.js';
import { startingBook } from '../support/random-book.js';

type Plain = Record<string, unknown>;
const saved = (): Plain => JSON.parse(JSON.stringify(startingBook().toJSON()));

function problems(json: unknown) {
  const parsed = parseBook(json);
  if (parsed.ok) throw new Error('It was read.');
  return parsed.problems;
}

/** A copy of a good book with one part replaced. */
function spoiled(path: string, to: unknown): Plain {
  const book = saved();
  const keys = path.split('.');
  let part = book;
  for (const key of keys.slice(0, -1)) part = part[key] as Plain;
  part[keys.at(-1)!] = to;
  return book;
}

describe('a book file', () => {
  it('is read back as it was, with fields that this version does not know', () => {
    const book = spoiled('later', { anything: [1, 2] });
    (((book.sheets as Plain).shelf as Plain).rows as Record<string, Plain>).l1!.colour = 'red';
    const parsed = parseBook(JSON.stringify(book));
    expect(parsed.ok && openBook(parsed.book).toJSON()).toEqual(book);
  });

  it('of an older version is brought up to date', () => {
    const old: Plain = { ...saved(), version: 0 };
    for (const sheet of Object.values(old.sheets as Record<string, Plain>)) delete sheet.columns;
    const parsed = parseBook(old);
    expect(parsed.ok && parsed.book.version).toBe(BOOK_VERSION);
  });

  it('of version 1, kept from then, opens whole and with the sheets that came later', () => {
    const old = readFileSync('tests/fixtures/book-version-1.json', 'utf8');
    const parsed = parseBook(old);
    if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
    const before = JSON.parse(old) as { sheets: Record<string, { rows: Plain }> };
    for (const [id, { rows }] of Object.entries(before.sheets))
      expect(parsed.book.sheets[id]!.rows).toEqual(rows);
    expect(openBook(parsed.book).sheetOfKind('beds')).toBe('beds');
  });

  it('written by hand with references by position gets references that hold', () => {
    const book = blankBook('By hand', 'bhand');
    const { references: _, ...plain } = book;
    const rows = {
      r1: { order: 'a0', cells: { x: 2, y: '=A1*10' } },
      r2: { order: 'a1', cells: { x: 5, y: '=SUM(A1:A2)' } },
    };
    const columns = { x: { own: true, title: 'X', order: 'a0' }, y: { own: true, title: 'Y', order: 'a1' } };
    const parsed = parseBook({
      ...plain,
      sheets: { ...book.sheets, mine: { kind: 'own', title: 'Mine', order: 'a9', columns, rows } },
    });
    const live = openBook(parsed.ok ? parsed.book : book);
    expect([live.value('mine', 'r1', 'y'), live.value('mine', 'r2', 'y')]).toEqual([20, 7]);
    live.insertRows('mine', [{}], 'r1');
    expect([live.typed('mine', 'r1', 'y'), live.value('mine', 'r2', 'y')]).toEqual(['=A2*10', 7]);
  });
});

describe('a bad book file is refused with where, what and how to mend it', () => {
  it.each([
    ['truncated', '{"format":"croftsheet-book","version":1,"sh', 'truncated', 'stops in the middle'],
    ['empty', '', 'truncated', 'stops in the middle'],
    ['not JSON', 'food,count\ntomato,3', 'not-json', 'not a book'],
    ['a list', '[1,2]', 'not-a-book', 'not a book'],
    ['null', 'null', 'not-a-book', 'not a book'],
    ['of something else', '{"name":"x"}', 'not-a-book', 'format'],
    ['of a newer version', JSON.stringify(spoiled('version', 99)), 'newer-version', 'version 99'],
    ['without a version', JSON.stringify(spoiled('version', 'one')), 'no-version', 'version'],
    [
      'with a prototype in it',
      '{"format":"croftsheet-book","version":1,"__proto__":{"polluted":1}}',
      'hostile-key',
      '__proto__',
    ],
  ])('%s', (_what, text, code, words) => {
    const [first] = problems(text);
    expect(first).toMatchObject({ code });
    expect(first!.message).toContain(words);
    expect(first!.mend.length).toBeGreaterThan(5);
    expect(({} as Plain).polluted).toBeUndefined();
  });

  it.each([
    ['sheets.shelf.rows.l1.order', 7, 'sheets.shelf.rows.l1.order'],
    ['sheets.shelf.rows.l1.cells.count', { a: 1 }, 'sheets.shelf.rows.l1.cells.count'],
    ['sheets.shelf.kind', 'cupboard', 'sheets.shelf.kind'],
    ['sheets.shelf.rows', [], 'sheets.shelf.rows'],
    ['sheets.foods.title', '', 'sheets.foods.title'],
    ['settings.basis', null, 'settings.basis'],
    ['sheets.shelf.rows.l1.order', 'zzz!', 'sheets.shelf.rows.l1.order'],
    ['sheets.shelf.rows.bad id', { order: 'a0', cells: {} }, 'sheets.shelf.rows.bad id'],
  ])('wrong at %s', (path, to, where) => {
    const found = problems(spoiled(path, to));
    expect(found.map((problem) => problem.where?.path)).toContain(where);
  });

  it('names every wrong place at once, up to fifty', () => {
    const rows = Object.fromEntries(Array.from({ length: 80 }, (_, i) => [`r${i}`, { order: 'a0' }]));
    expect(problems(spoiled('sheets.shelf.rows', rows))).toHaveLength(50);
  });

  it('too deep to be a book', () => {
    let deep: unknown = 1;
    for (let i = 0; i < 5000; i++) deep = { x: deep };
    expect(problems(spoiled('deep', deep))[0]).toMatchObject({ code: 'hostile-key' });
  });
});
