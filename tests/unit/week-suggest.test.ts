import { describe, expect, it } from 'vitest';
import { emptyGuide } from '../../src/planning/index.js';
import type { FoodRow } from '../../src/planning/types.js';
import { type DishLine, type Meal, planWeek, suggestDishes } from '../../src/planning/week/index.js';
import { day, lot, row } from './planning-make.js';
import { at, dishLine, meal, prep, shelfOf } from './week-make.js';

const DAYS = ['2026-01-05', '2026-01-06', '2026-01-07', '2026-01-08', '2026-01-09'] as const;
const SOON = day('2026-01-20');
// At no use, all of a lot with a best-by date is at risk.
const idle = (food: string, way: FoodRow['way'] = 'canned'): FoodRow =>
  row({ id: food, food, way, ownUse: 0 });

async function suggest(
  meals: readonly Meal[],
  lines: readonly DishLine[],
  lots: Parameters<typeof shelfOf>[0],
  options: { repeats?: number } = {},
  rows = [...new Set(lots.map(({ food }) => food!))].map((food) => idle(food)),
) {
  const shelf = shelfOf(lots, rows);
  const plan = planWeek(meals, lines, shelf, at(), new Set(), emptyGuide);
  const found = await suggestDishes(plan, shelf, { from: day(DAYS[0]), to: day(DAYS[4]), ...options });
  return { ...found, by: Object.fromEntries(found.suggestions.map((each) => [each.meal, each.dishName])) };
}

const SOUP = dishLine('1', 'Soup', 'tomato', { amount: 2 });
const BAKE = dishLine('2', 'Bake', 'corn', { amount: 1 });
const TOMATO = lot('t', 10, { ownBestBy: SOON });
const CORN = lot('c', 10, { food: 'corn', ownBestBy: null });

describe('suggested dishes', () => {
  it('eat what is at risk, and say why', async () => {
    const { suggestions, by } = await suggest([meal('m', DAYS[0], '')], [BAKE, SOUP], [TOMATO, CORN]);
    expect(by).toEqual({ m: 'Soup' });
    expect(suggestions[0]!.why).toBe(
      'Eats 2 quart jars of tomato (canned) that would not be eaten in time, best by Jan 20, 2026.',
    );
  });

  it('stand in a span no oftener than they may, those planned counted', async () => {
    const meals = [meal('p', DAYS[0], 'Soup'), ...DAYS.slice(1).map((iso, i) => meal(`m${i}`, iso, ''))];
    const { by, none } = await suggest(meals, [SOUP, BAKE], [TOMATO, CORN], { repeats: 2 });
    expect(Object.values(by).sort()).toEqual(['Bake', 'Bake', 'Soup']);
    expect(none).toHaveLength(1);
    expect(none[0]!.why).toContain('used as often as they may be');
  });

  it('never take more than planned meals leave', async () => {
    const meals = [
      meal('p', DAYS[4], 'Soup', { times: 4 }),
      ...DAYS.slice(0, 3).map((iso, i) => meal(`m${i}`, iso, '')),
    ];
    const { by } = await suggest(meals, [SOUP], [TOMATO], { repeats: 5 });
    expect(Object.keys(by)).toHaveLength(1);
  });

  it('leave out lots past their best, and foods not on the shelf', async () => {
    const old = lot('t', 10, { ownBestBy: day('2025-12-01') });
    const { none } = await suggest([meal('m', DAYS[0], '')], [SOUP, { ...BAKE, food: 'okra' }], [old]);
    expect(none[0]!.why).toContain('No dish fits this meal');
  });

  it('suit the meal, and on busy days are quick or need nothing the day before', async () => {
    const slow = dishLine('1', 'Soup', 'tomato', { prep: prep('soak overnight') });
    const lunch = dishLine('2', 'Salad', 'tomato', { suits: ['midday'] });
    const quick = dishLine('3', 'Stew', 'tomato', { prep: prep('thaw 1 day'), quick: true, amount: 0.5 });
    const meals = [
      meal('busy', DAYS[0], '', { busy: true }),
      meal('noon', DAYS[1], '', { meal: 'midday' }),
      meal('eve', DAYS[1], ''),
    ];
    const { by, suggestions } = await suggest(meals, [slow, lunch, quick], [TOMATO], { repeats: 1 });
    expect(by).toEqual({ busy: 'Stew', noon: 'Salad', eve: 'Soup' });
    expect(suggestions.find(({ meal: id }) => id === 'busy')!.why).toContain('marked quick, for a busy day');
  });

  it('eat what is over past the harvest, where nothing is at risk', async () => {
    const rows = [row({ id: 'corn', food: 'corn', ownUse: 0, nextSupply: day('2026-02-01') })];
    const lots = [lot('t', 10), CORN];
    const { by, suggestions } = await suggest([meal('m', DAYS[0], '')], [SOUP, BAKE], lots, {}, rows);
    expect(by).toEqual({ m: 'Bake' });
    expect(suggestions[0]!.why).toBe(
      'Uses corn (canned), of which more stands there than lasts to the next harvest.',
    );
  });

  it('relieve what is at risk behind the lots that they eat', async () => {
    // At 1 a week the first lot is eaten in time, and most of the second is not.
    const lots = [
      lot('first', 2, { ownBestBy: day('2026-02-01') }),
      lot('second', 9, { ownBestBy: day('2026-02-02') }),
    ];
    const rows = [row({ id: 'tomato', ownUse: 1 })];
    const { suggestions } = await suggest([meal('m', DAYS[0], '')], [SOUP], lots, {}, rows);
    expect(suggestions[0]!.why).toBe(
      'Eats 2 quart jars of tomato (canned) that would not be eaten in time, best by Feb 2, 2026.',
    );
  });

  it('do not repeat on one day where other meals are free', async () => {
    const meals = [
      meal('a', DAYS[0], '', { meal: 'midday' }),
      meal('b', DAYS[0], ''),
      meal('c', DAYS[3], '', { meal: 'midday' }),
      meal('d', DAYS[3], ''),
    ];
    const { suggestions } = await suggest(meals, [SOUP, BAKE], [TOMATO, CORN], { repeats: 2 });
    const byDay = ['ab', 'cd'].map((ids) =>
      suggestions
        .filter(({ meal: id }) => ids.includes(id))
        .map(({ dish }) => dish)
        .sort(),
    );
    expect(byDay).toEqual([
      ['bake', 'soup'],
      ['bake', 'soup'],
    ]);
  });

  it('do not repeat what is planned for that day', async () => {
    const meals = [
      meal('a', DAYS[0], 'Soup', { meal: 'midday' }),
      meal('b', DAYS[0], ''),
      meal('c', DAYS[3], ''),
    ];
    const { by } = await suggest(meals, [SOUP, BAKE], [TOMATO, CORN], { repeats: 2 });
    expect(by).toEqual({ b: 'Bake', c: 'Soup' });
  });

  it('leave alone dishes that cannot be reckoned with, and say which', async () => {
    const { leftOut, said } = await suggest([meal('m', DAYS[0], '')], [{ ...SOUP, serves: null }], [TOMATO]);
    expect(leftOut[0]).toMatchObject({ dish: 'Soup' });
    expect(said).toBe('No dish was found for the open meals.');
  });

  it('answer at once when nothing is open', async () => {
    expect((await suggest([meal('m', DAYS[0], 'Soup')], [SOUP], [TOMATO])).said).toBe(
      'No open meals in these days.',
    );
  });

  it('come within the time for a large table, as good as the best found', async () => {
    const foods = Array.from({ length: 30 }, (_, i) => `food ${String.fromCharCode(97 + i)}`);
    const lots = foods.map((food, i) =>
      lot(food.replace(/\W/g, ''), 3 + (i % 5), { food, ownBestBy: SOON + i }),
    );
    const lines = Array.from({ length: 45 }, (_, d) =>
      [0, 1, 2].map((j) =>
        dishLine(`${d}-${j}`, `Dish ${d}`, foods[(d * 7 + j * 11) % 30]!, {
          amount: 0.5 + ((d + j) % 4) / 3,
        }),
      ),
    ).flat();
    const meals = DAYS.flatMap((iso, d) =>
      ['breakfast', 'midday', 'supper'].map((name) =>
        meal(`${d}${name}`, iso, '', { meal: name, shares: d === 3 ? 8 : null }),
      ),
    );
    const { suggestions, worth } = await suggest(meals, lines, lots);
    expect(suggestions).toHaveLength(15);
    expect(worth).toBeGreaterThan(30);
  });
});
