import { afterEach, beforeEach, expect, it } from 'vitest';
import type { LiveBook } from '../../src/core.js';
import { namingCells, type Renaming, rename } from '../../src/live/doings/rename-named.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const call = (from: string, to: string, kind: Renaming['kind'] = 'foods'): void => {
  expect(live.apply(rename(namingCells(live, { kind, from, to })))).toMatchObject({ ok: true });
};

it('a food renamed in Foods is found by its lots again, and one undo brings the old name back', () => {
  live.insertRows('draws', [
    { date: '2026-01-10', food: 'Tomatoes, canned', amount: 1, container: 'quart' },
    { date: '2026-01-11', food: 'canned tomatoes', amount: 1, container: 'quart' },
    { date: '2026-01-11', food: 'peas', amount: 1 },
  ]);
  const before = live.value('foods', 'f1', 'on_hand');
  expect(before).toBeGreaterThan(0);
  live.set('foods', 'f1', 'food', 'Paste tomatoes');
  expect(live.value('foods', 'f1', 'on_hand')).toBe(0);
  call('tomato', 'Paste tomatoes');
  expect(live.value('foods', 'f1', 'on_hand')).toBe(before);
  expect(live.rowIds('draws').map((row) => live.value('draws', row, 'food'))).toEqual([
    'Paste tomatoes, canned',
    'canned Paste tomatoes',
    'peas',
  ]);
  live.undo();
  expect([live.value('shelf', 'l1', 'food'), live.value('shelf', 'l2', 'food')]).toEqual([
    'tomato',
    'tomatoes',
  ]);
});

it('dishes, batches and supplies are told too, formulas and other foods are left', () => {
  const rowsOf = (sheet: string, cells: readonly Record<string, string>[]): readonly string[] =>
    live.insertRows(sheet, cells).rows;
  const [dish] = rowsOf('dishes', [{ dish: 'Tomatoes', food: 'peas' }]);
  const [formula, batch] = rowsOf('batches', [{ food: '="tomatoes"' }, { food: 'Tomatoes' }]);
  const [supply] = rowsOf('supplies', [{ used_for: 'tomatoes' }]);
  call('Tomatoes', 'Plums');
  expect(live.value('dishes', 'e1', 'food')).toBe('Plums');
  expect([live.value('dishes', dish!, 'dish'), live.value('dishes', dish!, 'food')]).toEqual([
    'Tomatoes',
    'peas',
  ]);
  expect(live.typed('batches', formula!, 'food')).toBe('="tomatoes"');
  expect(live.value('batches', batch!, 'food')).toBe('Plums');
  expect(live.value('supplies', supply!, 'used_for')).toBe('Plums');
});

it('names that rows of a sheet of one’s own are known by go along', () => {
  live.apply({
    do: 'add sheet',
    sheet: 'own',
    title: 'Cupboard',
    columns: [
      { id: 'jar', title: 'Jar' },
      { id: 'says', title: 'Says' },
      { id: 'left', title: 'Left', as: { plan: { kind: 'foods', column: 'on_hand', by: 'jar' } } },
    ],
    rows: [{ id: 'r1', cells: { jar: 'Tomatoes', says: 'Tomatoes' } }],
  });
  call('Tomatoes', 'Plums');
  expect([live.value('own', 'r1', 'jar'), live.value('own', 'r1', 'says')]).toEqual(['Plums', 'Tomatoes']);
});

it('a dish is renamed on each of its lines, in the plan of meals and in other dishes', () => {
  const [other] = live.insertRows('dishes', [{ dish: 'Feast', food: 'stew' }]).rows;
  live.set('dishes', 'e1', 'dish', 'Hotpot');
  call('Stew', 'Hotpot', 'dishes');
  const named = ['e1', 'e2'].map((row) => live.value('dishes', row, 'dish'));
  expect(named).toEqual(['Hotpot', 'Hotpot']);
  expect(live.value('dishes', other!, 'food')).toBe('Hotpot');
  expect(['m1', 'm2'].map((row) => live.value('week', row, 'dish'))).toEqual(['Hotpot', 'Hotpot']);
});

it('a food that is called as a dish is left where the dish is renamed', () => {
  const [line] = live.insertRows('dishes', [{ dish: 'Peas', food: 'peas' }]).rows;
  call('Peas', 'Pease pudding', 'dishes');
  expect(live.value('dishes', line!, 'dish')).toBe('Pease pudding');
  expect(live.value('dishes', line!, 'food')).toBe('peas');
});

it('no name, or the same one, changes nothing', () => {
  expect(namingCells(live, { kind: 'foods', from: '', to: 'Plums' })).toEqual([]);
  expect(namingCells(live, { kind: 'foods', from: 'Tomatoes', to: '  ' })).toEqual([]);
  expect(namingCells(live, { kind: 'foods', from: 'Kale', to: 'Plums' })).toEqual([]);
});
