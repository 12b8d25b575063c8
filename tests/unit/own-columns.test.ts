import { expect, it } from 'vitest';
import { blankBook, type Command, type Outcome } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';

const jars: Command = {
  do: 'add sheet',
  sheet: 'jars',
  title: 'Borrowed jars',
  columns: [
    { id: 'who', title: 'Who', as: { type: 'text' } },
    { id: 'many', title: 'How many', as: { type: 'number', measure: 'quart jar', summary: 'sum' } },
    { id: 'back', title: 'Back by', as: { type: 'date' } },
  ],
  rows: [{ id: 'r1', cells: { who: '12', many: '1 1/2', back: '2026-05-04' } }],
};

const code = (outcome: Outcome): string => (outcome.ok ? 'done' : outcome.problem.code);
const open = () => openBook(blankBook());

it('brings a sheet with columns and rows in one step, entries read by type, and takes it back', () => {
  const live = open();
  expect(live.apply(jars).ok).toBe(true);
  // '12' is a name where the column is said to hold text.
  expect(live.value('jars', 'r1', 'who')).toBe('12');
  expect(live.value('jars', 'r1', 'many')).toBe(1.5);
  expect(live.toJSON().sheets.jars?.columns.many).toMatchObject({ measure: 'quart jar', summary: 'sum' });
  live.undo();
  expect(live.toJSON().sheets.jars).toBeUndefined();
});

it('refuses what a column cannot be, and changes nothing', () => {
  const live = open();
  live.apply(jars);
  const before = JSON.stringify(live.toJSON());
  const describe = (column: string, as: object, sheet = 'jars') =>
    code(live.apply({ do: 'describe column', sheet, column, as }));
  expect(describe('who', { type: 'colour' })).toBe('not-a-choice');
  expect(describe('many', { decimals: 9 })).toBe('bad-decimals');
  expect(describe('many', { marks: [{ when: 'above', colour: 'rose' }] })).toBe('rule-without-value');
  expect(describe('food', { type: 'number' }, 'foods')).toBe('not-own-column');
  expect(describe('who', { plan: { kind: 'foods', column: 'food', by: 'who' } })).toBe('no-such-figure');
  expect(describe('who', { plan: { kind: 'foods', column: 'weeks', by: 'nobody' } })).toMatch(/no-/);
  expect(JSON.stringify(live.toJSON())).toBe(before);
});

it('keeps colours and notes of cells, also on planning columns, and lets them go with the column', () => {
  const live = open();
  live.apply(jars);
  const cells = [{ row: 'r1', column: 'who' }];
  live.apply({ do: 'mark cells', sheet: 'jars', cells, colour: 'leaf', note: ' from the fair ' });
  expect(live.toJSON().sheets.jars?.rows.r1).toMatchObject({
    'colour:who': 'leaf',
    'note:who': 'from the fair',
  });
  live.removeColumns('jars', ['who']);
  expect(live.toJSON().sheets.jars?.rows.r1).not.toHaveProperty('note:who');
  live.undo();
  expect(live.toJSON().sheets.jars?.rows.r1).toMatchObject({ 'note:who': 'from the fair' });
});

it('moves a sheet, and puts rows in groups', () => {
  const live = open();
  live.apply(jars);
  live.apply({ do: 'move sheet', sheet: 'jars', before: 'shelf' });
  const ids = live.sheets().map(({ id }) => id);
  expect(ids.indexOf('jars')).toBe(ids.indexOf('shelf') - 1);
  live.apply({ do: 'group rows', sheet: 'jars', by: 'who' });
  expect(live.toJSON().sheets.jars?.group).toBe('who');
  live.undo();
  expect(live.toJSON().sheets.jars).not.toHaveProperty('group');
});
