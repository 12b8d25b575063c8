import { blankBook } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';

/** The day that random books are looked at. */
export const AS_OF = '2026-02-15';

/** A small book with two foods, lots, draws, own columns with formulas and an own sheet. */
export function startingBook(): LiveBook {
  const live = openBook(blankBook('Test', 'btest'), { asOf: AS_OF });
  live.apply({
    do: 'insert rows',
    sheet: 'household',
    before: null,
    rows: [
      { id: 'p1', cells: { name: 'Ada', share: 1 } },
      { id: 'p2', cells: { name: 'Ben', share: 0.5 } },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'foods',
    before: null,
    rows: [
      {
        id: 'f1',
        cells: {
          food: 'Tomatoes',
          way: 'canned',
          counted_in: 'quart jar',
          comes_from: 'ground',
          crops: 'tomato 3',
          fresh_from: '08-01',
          fresh_to: '09-18',
        },
      },
      {
        id: 'f2',
        cells: {
          food: 'Peas',
          way: 'frozen',
          counted_in: 'pint freezer bag',
          own_use: 1.5,
          next_supply: '2026-07-01',
        },
      },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'shelf',
    before: null,
    rows: [
      {
        id: 'l1',
        cells: {
          food: 'tomato',
          way: 'canned',
          container: 'quart',
          count: 20,
          put_up_on: '2025-09-01',
          place: 'cellar',
        },
      },
      {
        id: 'l2',
        cells: {
          food: 'tomatoes',
          way: 'canned',
          container: 'pint',
          count: 9,
          put_up_on: '2024-09-01',
          place: 'cellar',
        },
      },
      {
        id: 'l3',
        cells: {
          food: 'peas',
          way: 'frozen',
          container: 'pint freezer bag',
          count: 30,
          put_up_on: '2025-07-01',
          place: 'freezer',
        },
      },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'beds',
    before: null,
    rows: [
      { id: 'b1', cells: { crop: 'tomato', plants: 20 } },
      { id: 'b2', cells: { crop: 'green pea' } },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'harvest',
    before: null,
    rows: [{ id: 'h1', cells: { date: '2025-08-20', crop: 'tomato', amount: 30 } }],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'batches',
    before: null,
    rows: [{ id: 'q1', cells: { food: 'tomatoes', way: 'canned', container: 'quart' } }],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'facts',
    before: null,
    rows: [{ id: 'k1', cells: { figure: 'tomato, yield', season: 2024, pounds: 120, plants: 12 } }],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'dishes',
    before: null,
    rows: [
      { id: 'e1', cells: { dish: 'Stew', serves: 2, food: 'tomatoes', amount: 2, measure: 'cup' } },
      { id: 'e2', cells: { dish: 'Stew', food: 'peas', amount: 1 } },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'week',
    before: null,
    rows: [
      { id: 'm1', cells: { date: '2026-02-16', meal: 'supper', dish: 'Stew' } },
      { id: 'm2', cells: { date: '2026-02-17', meal: 'supper', dish: 'Stew' } },
    ],
  });
  live.apply({ do: 'set setting', setting: 'last_frost', typed: '05-24' });
  live.apply({ do: 'set setting', setting: 'first_frost', typed: '09-18' });
  live.apply({
    do: 'add column',
    sheet: 'shelf',
    column: 'cown',
    before: null,
    title: 'Twice',
    formula: '=Left*2',
  });
  live.apply({ do: 'add sheet', sheet: 'snotes', title: 'Notes' });
  live.apply({ do: 'add column', sheet: 'snotes', column: 'ca', before: null, title: 'A' });
  live.apply({ do: 'add column', sheet: 'snotes', column: 'cb', before: null, title: 'B' });
  live.apply({
    do: 'insert rows',
    sheet: 'snotes',
    before: null,
    rows: [
      { id: 'n1', cells: { ca: 1, cb: '=SUM(A1:A3)' } },
      { id: 'n2', cells: { ca: 2, cb: '=Shelf!G1' } },
      { id: 'n3', cells: { ca: 3 } },
    ],
  });
  return live;
}

/** Every value that the book shows, by sheet, row and column. */
export function shown(live: LiveBook): Record<string, unknown> {
  const values: Record<string, unknown> = {};
  for (const { id: sheet } of live.sheets()) {
    const columns = live.columns(sheet).map(({ id }) => id);
    for (const row of live.rowIds(sheet)) {
      for (const column of columns) {
        const value = live.value(sheet, row, column);
        if (value !== null) values[`${sheet}/${row}/${column}`] = value;
      }
    }
  }
  return values;
}
