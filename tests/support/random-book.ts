import fc from 'fast-check';
import type { Command, Typed } from '../../src/book/index.js';
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

const SHEETS = [
  'household',
  'shelf',
  'draws',
  'foods',
  'snotes',
  'beds',
  'harvest',
  'batches',
  'facts',
  'dishes',
  'week',
] as const;

/** A thing that a person might do, with places as numbers that are fitted to the book when it is done. */
export type Step =
  | {
      readonly step: 'type';
      readonly sheet: number;
      readonly row: number;
      readonly column: number;
      readonly typed: Typed;
    }
  | {
      readonly step: 'type a row';
      readonly sheet: number;
      readonly row: number;
      readonly typed: readonly Typed[];
    }
  | { readonly step: 'insert'; readonly sheet: number; readonly row: number; readonly count: number }
  | {
      readonly step: 'draw';
      readonly food: string;
      readonly amount: number;
      readonly container: string;
      readonly day: number;
      readonly purpose: string;
    }
  | { readonly step: 'remove'; readonly sheet: number; readonly row: number; readonly count: number }
  | { readonly step: 'move'; readonly sheet: number; readonly row: number; readonly to: number }
  | {
      readonly step: 'add column';
      readonly sheet: number;
      readonly before: number;
      readonly formula: string | null;
    }
  | { readonly step: 'remove column'; readonly sheet: number; readonly column: number }
  | { readonly step: 'move column'; readonly sheet: number; readonly column: number; readonly to: number }
  | { readonly step: 'retitle'; readonly sheet: number; readonly column: number; readonly title: string }
  | { readonly step: 'setting'; readonly setting: string; readonly typed: Typed }
  | { readonly step: 'undo' }
  | { readonly step: 'redo' };

const small = fc.nat({ max: 60 });
const sheet = fc.nat({ max: SHEETS.length - 1 });

const FORMULAS = [
  '=B1*2',
  '=SUM(A1:A5)',
  '=Shelf!G2+1',
  '=Left*2',
  '=A1',
  '=SUM(Shelf!D:D)',
  '=NOPE(1)',
  '=1/0',
  '=WEEKS_OF_SUPPLY(10,2)',
  '=Foods!I1&"x"',
  '=COUNTA(A:A)',
  '=$B$2',
  '=C3:C4',
  '="[x@y]"',
  '=A9999',
];

const typed: fc.Arbitrary<Typed> = fc.oneof(
  fc.constantFrom<Typed>(...FORMULAS),
  fc.constantFrom<Typed>(
    'tomato',
    'Tomatoes',
    'peas',
    'canned',
    'frozen',
    'quart',
    'pint',
    'pint freezer bag',
    'cup',
    'cellar',
    'bought',
    'ground',
    'not a thing',
    '2025-08-01',
    '2024-13-45',
    '5/4/26',
    '08-15',
    '-3',
    '1e400',
    'true',
    '',
    "'=text",
    '<b>x</b>',
    '12 1/2',
  ),
  fc.integer({ min: -5, max: 50 }),
  fc.double({ min: 0, max: 20, noNaN: true }),
  fc.boolean(),
  fc.constant(null),
);

export const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({ step: fc.constant('type' as const), sheet, row: small, column: small, typed }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      step: fc.constant('type a row' as const),
      sheet,
      row: small,
      typed: fc.array(typed, { maxLength: 8 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      step: fc.constant('insert' as const),
      sheet,
      row: small,
      count: fc.integer({ min: 1, max: 3 }),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      step: fc.constant('draw' as const),
      food: fc.constantFrom('tomato', 'peas', 'Tomatoes'),
      amount: fc.integer({ min: 0, max: 12 }),
      container: fc.constantFrom('', 'pint', 'quart', 'cup', 'pint freezer bag'),
      day: fc.integer({ min: 1, max: 28 }),
      purpose: fc.constantFrom('', 'dish', 'gift', 'spoiled', 'count'),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      step: fc.constant('remove' as const),
      sheet,
      row: small,
      count: fc.integer({ min: 1, max: 3 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ step: fc.constant('move' as const), sheet, row: small, to: small }) },
  {
    weight: 1,
    arbitrary: fc.record({
      step: fc.constant('add column' as const),
      sheet,
      before: small,
      formula: fc.option(fc.constantFrom(...FORMULAS)),
    }),
  },
  { weight: 1, arbitrary: fc.record({ step: fc.constant('remove column' as const), sheet, column: small }) },
  {
    weight: 1,
    arbitrary: fc.record({ step: fc.constant('move column' as const), sheet, column: small, to: small }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      step: fc.constant('retitle' as const),
      sheet,
      column: small,
      title: fc.constantFrom('Left', 'Mine', 'A1', '', 'On hand'),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      step: fc.constant('setting' as const),
      setting: fc.constantFrom('as_of', 'basis', 'cushion', 'last_frost'),
      typed,
    }),
  },
  { weight: 3, arbitrary: fc.record({ step: fc.constant('undo' as const) }) },
  { weight: 2, arbitrary: fc.record({ step: fc.constant('redo' as const) }) },
);

const at = <T>(list: readonly T[], n: number): T | undefined =>
  list.length === 0 ? undefined : list[n % list.length];

let made = 0;

/** Does a step; one that finds nothing to work on does nothing. */
export function take(live: LiveBook, doing: Step): void {
  const command = asCommand(live, doing);
  if (doing.step === 'undo') live.undo();
  else if (doing.step === 'redo') live.redo();
  else if (command) live.apply(command);
}

function asCommand(live: LiveBook, doing: Step): Command | undefined {
  if (doing.step === 'undo' || doing.step === 'redo') return undefined;
  if (doing.step === 'setting') return { do: 'set setting', setting: doing.setting, typed: doing.typed };
  if (doing.step === 'draw') {
    const { food, amount, container, day, purpose } = doing;
    const date = `2026-01-${String(day).padStart(2, '0')}`;
    return {
      do: 'insert rows',
      sheet: 'draws',
      before: null,
      rows: [{ id: `d${++made}`, cells: { date, food, amount, container, purpose } }],
    };
  }
  const sheet = SHEETS[doing.sheet]!;
  const rows = live.rowIds(sheet);
  const columns = live.columns(sheet).map(({ id }) => id);
  switch (doing.step) {
    case 'type': {
      const [row, column] = [at(rows, doing.row), at(columns, doing.column)];
      return row && column
        ? { do: 'set cells', sheet, cells: [{ row, column, typed: doing.typed }] }
        : undefined;
    }
    case 'type a row': {
      const row = at(rows, doing.row);
      if (!row) return undefined;
      return {
        do: 'set cells',
        sheet,
        cells: doing.typed.flatMap((typed, i) => (columns[i] ? [{ row, column: columns[i], typed }] : [])),
      };
    }
    case 'insert':
      return {
        do: 'insert rows',
        sheet,
        before: at(rows, doing.row) ?? null,
        rows: Array.from({ length: doing.count }, () => ({ id: `x${++made}` })),
      };
    case 'remove':
      return {
        do: 'remove rows',
        sheet,
        rows: rows.slice(doing.row % (rows.length || 1)).slice(0, doing.count),
      };
    case 'move': {
      const row = at(rows, doing.row);
      return row ? { do: 'move rows', sheet, rows: [row], before: at(rows, doing.to) ?? null } : undefined;
    }
    case 'add column':
      return {
        do: 'add column',
        sheet,
        column: `k${++made}`,
        before: at(columns, doing.before) ?? null,
        title: 'Mine',
        ...(doing.formula !== null && { formula: doing.formula }),
      };
    case 'remove column': {
      const column = at(columns, doing.column);
      return column ? { do: 'remove columns', sheet, columns: [column] } : undefined;
    }
    case 'move column': {
      const column = at(columns, doing.column);
      return column
        ? { do: 'move columns', sheet, columns: [column], before: at(columns, doing.to) ?? null }
        : undefined;
    }
    case 'retitle': {
      const column = at(columns, doing.column);
      return column ? { do: 'describe column', sheet, column, as: { title: doing.title } } : undefined;
    }
  }
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
