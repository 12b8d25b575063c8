import { afterEach, beforeEach, expect, it } from 'vitest';
import type { LiveBook } from '../../src/core.js';
import { namingCells, renameFood } from '../../src/live/doings/rename-food.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const rename = (from: string, to: string): void => {
  expect(live.apply(renameFood(namingCells(live, from, to)))).toMatchObject({ ok: true });
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
  rename('tomato', 'Paste tomatoes');
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
  rename('Tomatoes', 'Plums');
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
  rename('Tomatoes', 'Plums');
  expect([live.value('own', 'r1', 'jar'), live.value('own', 'r1', 'says')]).toEqual(['Plums', 'Tomatoes']);
});

it('no name, or the same one, changes nothing', () => {
  expect(namingCells(live, '', 'Plums')).toEqual([]);
  expect(namingCells(live, 'Tomatoes', '  ')).toEqual([]);
  expect(namingCells(live, 'Kale', 'Plums')).toEqual([]);
});
