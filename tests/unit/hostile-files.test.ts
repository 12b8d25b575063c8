/** Books in which a hand, or another program, left something odd: they open, and nothing of them is lost. */
import { afterEach, describe, expect, it } from 'vitest';
import {
  changedRows,
  closeAll,
  contentOf,
  edited,
  expectWhole,
  type Loose,
  open,
} from '../support/hostile-book.js';

afterEach(closeAll);

describe('files with something odd in them open, and the rest is as it was', () => {
  const odd: readonly (readonly [name: string, edit: (book: Loose) => void, touched: readonly string[]])[] = [
    [
      'unknown fields everywhere',
      (b) => {
        b.other = [1, { a: 2 }];
        b.sheets.shelf!.more = 1;
        b.sheets.shelf!.rows.l1!.seen = { by: 'x' };
      },
      [],
    ],
    [
      'unknown settings',
      ({ settings }) => {
        settings.zzz = '=1+1';
      },
      [],
    ],
    [
      'a setting that cannot be read',
      ({ settings }) => {
        settings.basis = '__proto__';
        settings.as_of = '=1';
      },
      [],
    ],
    [
      'cells of columns that are not there',
      ({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.zz = '=1';
      },
      [],
    ],
    [
      'a value under a planning column',
      ({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.left = 99;
      },
      [],
    ],
    [
      'a formula under a planning column',
      ({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.left = '=1/0';
      },
      [],
    ],
    [
      'a planning column said to be one’s own',
      ({ sheets }) => {
        sheets.shelf!.columns.left = { own: true, formula: '=1' };
      },
      [],
    ],
    [
      'a kept column with a formula',
      ({ sheets }) => {
        sheets.shelf!.columns.count = { formula: '=5' };
      },
      [],
    ],
    [
      'two sheets of one title',
      ({ sheets }) => {
        sheets.snotes!.title = 'Shelf';
      },
      [],
    ],
    [
      'a title of signs',
      ({ sheets }) => {
        sheets.snotes!.title = `a[b]'!:*?/\\"<img src=x onerror=alert(1)>`;
      },
      [],
    ],
    [
      'every row in one place',
      ({ sheets }) => {
        for (const row of Object.values(sheets.shelf!.rows)) row.order = 'a0';
      },
      [],
    ],
    [
      'the last key there is',
      ({ sheets }) => {
        sheets.shelf!.rows.l3!.order = `z${'z'.repeat(26)}`;
      },
      [],
    ],
    [
      'an allotment to lots that are not there',
      ({ sheets }) => {
        sheets.draws!.rows.d1 = { order: 'a0', cells: { food: 'rice' }, allotted: { none: 3 } };
      },
      ['draws/d1'],
    ],
    [
      'a second, empty shelf',
      ({ sheets }) => {
        sheets.zzz = { kind: 'shelf', title: 'Second', order: 'zz0', columns: {}, rows: {} };
        sheets.zzz.order = `z${'z'.repeat(26)}`;
      },
      [],
    ],
    [
      'script as text',
      ({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.note = '<img src=x onerror=alert(1)>';
      },
      ['shelf/l1'],
    ],
    [
      'signs that turn text round',
      ({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.place = '\u202ecellar\u2066\u0000\ud800';
      },
      ['shelf/l1'],
    ],
    [
      'a formula of 6,000 terms',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = `=${'1+'.repeat(6000)}1`;
      },
      ['snotes/n3'],
    ],
    [
      'a formula of 9,000 brackets',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = `=${'('.repeat(9000)}1${')'.repeat(9000)}`;
      },
      ['snotes/n3'],
    ],
    [
      'a formula of signs',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = '=)(*&^%$#@!';
      },
      ['snotes/n3'],
    ],
    [
      'a formula that gives a thousand million letters',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = '=REPT("x",1e9)';
      },
      ['snotes/n3'],
    ],
    [
      'a formula that spreads',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = '={1,2;3,4}';
      },
      ['snotes/n3'],
    ],
    [
      'references to __proto__',
      ({ sheets }) => {
        sheets.snotes!.rows.n3!.cells.cb = '=[__proto__@n1]+[constructor]+[toString.valueOf@n1]';
      },
      ['snotes/n3'],
    ],
    [
      'sheets whose ids differ by capitals',
      ({ sheets }) => {
        sheets.SHELF = { kind: 'own', title: 'Mine', order: 'b05', columns: {}, rows: {} };
      },
      [],
    ],
  ];

  it.each(odd)('%s', (_name, edit, touched) => {
    const text = edited(edit);
    const live = open(text);
    expect(changedRows(live).filter((row) => !touched.includes(row))).toEqual([]);
    expectWhole(live);
    // Nothing that the file held is lost, whether it means anything or not.
    expect(contentOf(live)).toEqual(JSON.parse(text));
    // The rest goes on working, and undo comes back.
    live.insertRows('draws', [{ date: '2026-01-10', food: 'peas', way: 'frozen', amount: 2 }]);
    expect(live.value('shelf', 'l3', 'left')).toBe(28);
    live.undo();
    expect(contentOf(live)).toEqual(JSON.parse(text));
  });
});
