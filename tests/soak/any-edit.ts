import fc from 'fast-check';
import type { ColumnLook, Typed } from '../../src/book/index.js';
import { COLOURS, CONDITIONS, type Marking, OWN_TYPES, SUMMARIES } from '../../src/book/index.js';
import type { Edit } from './edits.js';

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

export const typed: fc.Arbitrary<Typed> = fc.oneof(
  fc.constantFrom<Typed>(...FORMULAS),
  fc.constantFrom<Typed>(
    ...['tomato', 'Tomatoes', 'peas', 'canned', 'frozen', 'quart', 'pint', 'pint freezer bag', 'cup'],
    ...['cellar', 'bought', 'ground', 'Stew', 'not a thing', '2025-08-01', '2024-13-45', '5/4/26', '08-15'],
    ...['-3', '-0', '1e400', 'true', '', "'=text", '<b>x</b>', '12 1/2', '__proto__', 'l1', 'ð\ud800', '🫙'],
  ),
  fc.integer({ min: -5, max: 50 }),
  fc.constantFrom<Typed>(-0, Number.NaN, Number.POSITIVE_INFINITY, 1e308, 5e-324),
  fc.double({ min: 0, max: 20, noNaN: true }),
  fc.boolean(),
  fc.constant(null),
);

const place = fc.nat({ max: 60 });
const or = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { freq: 4, nil: null });
const title = fc.constantFrom('Left', 'Mine', 'A1', '', 'On hand', 'Notes', 'x!y', 'Shelf', '=1', ' a b ');
const block = (most: number) =>
  fc.array(fc.array(typed, { minLength: 1, maxLength: most }), { minLength: 1, maxLength: 4 });
const marking: fc.Arbitrary<Marking> = fc.record(
  {
    when: fc.constantFrom(...CONDITIONS),
    colour: fc.constantFrom(...COLOURS),
    value: fc.constantFrom('tomato', 3, '2026-01-01', true),
    to: fc.constantFrom(9, '2026-12-31'),
  },
  { requiredKeys: ['when', 'colour'] },
);
const look: fc.Arbitrary<ColumnLook> = fc.record(
  {
    title: or(title),
    hidden: or(fc.boolean()),
    pinned: or(fc.boolean()),
    width: or(fc.constantFrom(0, 90, 5000, Number.NaN, 120.5)),
    type: or(fc.constantFrom(...OWN_TYPES)),
    measure: or(fc.constantFrom('quart jar', 'pound', 'pints', 'furlong')),
    choices: or(fc.constantFrom(['tomato', 'peas'], [], ['a', 'a', ' '])),
    decimals: or(fc.constantFrom(0, 2, 6, 7)),
    note: or(fc.constantFrom('Weighed wet', '', 'x')),
    summary: or(fc.constantFrom(...SUMMARIES)),
    marks: or(fc.array(marking, { maxLength: 2 })),
  },
  { requiredKeys: [] },
);

const kind = <const E extends Edit['edit']>(edit: E) => ({ edit: fc.constant(edit) });
const edits: readonly (readonly [weight: number, fc.Arbitrary<Edit>])[] = [
  [8, fc.record({ ...kind('type'), sheet: place, row: place, column: place, typed })],
  [
    3,
    fc.record({
      ...kind('paste'),
      sheet: place,
      row: place,
      column: place,
      block: block(6),
      sorted: or(place),
    }),
  ],
  [1, fc.record({ ...kind('paste over everything'), sheet: place, typed })],
  [2, fc.record({ ...kind('fill'), sheet: place, row: place, column: place, count: fc.nat({ max: 5 }) })],
  [3, fc.record({ ...kind('insert'), sheet: place, row: place, cells: block(6) })],
  [
    5,
    fc.record({
      ...kind('draw'),
      food: fc.constantFrom('tomato', 'peas', 'Tomatoes'),
      amount: fc.integer({ min: 0, max: 12 }),
      container: fc.constantFrom('', 'pint', 'quart', 'cup', 'pint freezer bag'),
      day: fc.integer({ min: 1, max: 28 }),
      purpose: fc.constantFrom('', 'dish', 'gift', 'spoiled', 'count'),
    }),
  ],
  [2, fc.record({ ...kind('remove'), sheet: place, row: place, count: fc.integer({ min: 1, max: 4 }) })],
  [
    2,
    fc.record({
      ...kind('move'),
      sheet: place,
      row: place,
      count: fc.integer({ min: 1, max: 3 }),
      to: place,
    }),
  ],
  [
    2,
    fc.record({
      ...kind('add column'),
      sheet: place,
      before: place,
      title,
      formula: or(fc.constantFrom(...FORMULAS)),
      as: look,
    }),
  ],
  [1, fc.record({ ...kind('remove column'), sheet: place, column: place })],
  [1, fc.record({ ...kind('move column'), sheet: place, column: place, to: place })],
  [2, fc.record({ ...kind('describe'), sheet: place, column: place, as: look })],
  [
    2,
    fc.record({
      ...kind('take column'),
      sheet: place,
      kind: place,
      column: place,
      by: place,
      over: or(place),
    }),
  ],
  [
    2,
    fc.record(
      {
        ...kind('mark'),
        sheet: place,
        row: place,
        column: place,
        colour: or(fc.constantFrom(...COLOURS)),
        note: or(fc.constantFrom('Ask Ada', '', '<i>x</i>')),
      },
      { requiredKeys: ['edit', 'sheet', 'row', 'column'] },
    ),
  ],
  [1, fc.record({ ...kind('group'), sheet: place, by: or(place) })],
  [1, fc.record({ ...kind('move sheet'), sheet: place, to: place })],
  [
    1,
    fc.record({
      ...kind('add sheet'),
      title: fc.constantFrom('Garden log', 'Notes 2', 'Seeds', ''),
      columns: fc.array(title, { maxLength: 3 }),
      cells: block(3),
    }),
  ],
  [1, fc.record({ ...kind('remove sheet'), sheet: place })],
  [1, fc.record({ ...kind('copy sheet'), sheet: place, title: fc.constantFrom('Copy', 'Notes', '') })],
  [2, fc.record({ ...kind('bring in'), sheet: or(place), from: place, cells: block(5) })],
  [1, fc.record({ ...kind('rename sheet'), sheet: place, title })],
  [1, fc.record({ ...kind('rename book'), title })],
  [
    1,
    fc.record({
      ...kind('setting'),
      setting: fc.constantFrom('as_of', 'basis', 'cushion', 'last_frost', 'measures', 'altitude_ft'),
      typed,
    }),
  ],
  [1, fc.record({ ...kind('mark done'), row: place })],
  [1, fc.record({ ...kind('post batch'), row: place })],
];

const single: fc.Arbitrary<Edit> = fc.oneof(...edits.map(([weight, arbitrary]) => ({ weight, arbitrary })));

/** Any edit; now and then several as one step. */
export const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 30, arbitrary: single },
  {
    weight: 1,
    arbitrary: fc.record({
      ...kind('several'),
      of: fc.array(single, { minLength: 1, maxLength: 4 }),
    }),
  },
);
