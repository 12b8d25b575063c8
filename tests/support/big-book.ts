import { type BookDoc, blankBook, type RowDoc } from '../../src/book/index.js';

/** A small generator with a seed, so that every run times the same book. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const WAYS = ['canned', 'frozen', 'dried', 'cellared'] as const;
const CONTAINERS = {
  canned: ['quart jar', 'pint jar'],
  frozen: ['pint freezer bag', 'quart freezer bag'],
  dried: ['pint jar', 'quart jar'],
  cellared: ['pound', 'pound'],
};
const NAMES = [
  'tomato',
  'snap bean',
  'sweet corn',
  'beet',
  'carrot',
  'peach',
  'pear',
  'apple',
  'green pea',
  'spinach',
  'pepper',
  'plum',
  'cherry',
  'pumpkin',
  'potato',
];

const iso = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

/** A made-up book of so many lots and draws over sixty food lines, all drawn oldest first. */
export function bigBook(lots: number, draws: number): BookDoc {
  const book = blankBook('Big', 'bbig');
  const random = seeded(7);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const lines = NAMES.flatMap((food) => WAYS.map((way) => ({ food, way })));
  const rows = (count: number, make: (i: number) => RowDoc['cells']): Record<string, RowDoc> =>
    Object.fromEntries(
      Array.from({ length: count }, (_, i) => [`r${i}`, { order: orderKey(i), cells: make(i) }]),
    );
  const foods = rows(lines.length, (i) => ({
    ...lines[i]!,
    counted_in: CONTAINERS[lines[i]!.way][0]!,
    fresh_from: '07-01',
    fresh_to: '09-15',
  }));
  const shelf = rows(lots, () => {
    const line = pick(lines);
    return {
      ...line,
      container: pick(CONTAINERS[line.way]),
      count: 5 + Math.floor(random() * 40),
      put_up_on: iso(19_200 + Math.floor(random() * 1200)),
      place: pick(['cellar', 'porch', 'barn']),
    };
  });
  const taken = rows(draws, () => {
    const line = pick(lines);
    return {
      ...line,
      date: iso(19_600 + Math.floor(random() * 880)),
      amount: 1 + Math.floor(random() * 3),
      container: CONTAINERS[line.way][0]!,
      purpose: 'dish',
    };
  });
  return {
    ...book,
    settings: { as_of: '2026-02-15' },
    sheets: {
      ...book.sheets,
      foods: { ...book.sheets.foods!, rows: foods },
      shelf: { ...book.sheets.shelf!, rows: shelf },
      draws: { ...book.sheets.draws!, rows: taken },
    },
  };
}

/** Keys of one length in rising order; all of them valid fractional keys. */
function orderKey(i: number): string {
  const digits = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
  let n = i;
  let key = '';
  for (let place = 0; place < 4; place++) {
    key = digits[n % 62]! + key;
    n = Math.floor(n / 62);
  }
  return `d${key}`;
}
