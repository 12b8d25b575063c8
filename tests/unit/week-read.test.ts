import { describe, expect, it } from 'vitest';
import { dishes } from '../../src/book/kinds/dishes.js';
import { week } from '../../src/book/kinds/week.js';
import { readDishLine, readMeal } from '../../src/live/read-week.js';
import { emptyGuide } from '../../src/planning/index.js';
import { planDishes, planWeek } from '../../src/planning/week/index.js';
import { day, lot } from './planning-make.js';
import { AS_OF, at, shelfOf } from './week-make.js';

type Cell = string | number | boolean;
const cells = (given: Record<string, Cell>) => (column: string) => given[column] ?? null;

describe('rows of Dishes and Week', () => {
  it('are read as what their columns hold', () => {
    const { typed, problems } = readDishLine(
      'r1',
      cells({
        dish: 'Chili',
        serves: 6,
        food: 'Tomatoes',
        way: 'Canned',
        amount: 2,
        measure: 'qt',
        prep: 'thaw 1 day; chop',
        suits: 'Supper, midday',
        quick: true,
      }),
    );
    expect(problems).toEqual({});
    expect(typed).toMatchObject({
      dish: 'chili',
      food: 'tomato',
      way: 'canned',
      measure: 'quart jar',
      suits: ['supper', 'midday'],
      quick: true,
    });
    expect(typed.prep.map(({ leadDays }) => leadDays)).toEqual([1, 0]);
    const meal = readMeal(
      'r2',
      cells({ date: '2026-01-06', meal: 'Supper', dish: 'chili', shares: 4, busy: true }),
    );
    expect(meal.typed).toMatchObject({
      date: day('2026-01-06'),
      meal: 'supper',
      dish: 'chili',
      shares: 4,
      busy: true,
      done: false,
    });
  });

  it('leave a problem where a cell cannot be read, and read the rest', () => {
    const { typed, problems } = readDishLine(
      'r',
      cells({ dish: 'Chili', serves: -1, amount: 2, measure: 'glugs', from: 'heaven' }),
    );
    expect(Object.keys(problems).sort()).toEqual(['food', 'from', 'measure', 'serves']);
    expect(typed.amount).toBe(2);
    expect(Object.keys(readMeal('r', cells({ date: 'soon', shares: 'many' })).problems)).toEqual([
      'date',
      'shares',
    ]);
  });

  it('plan the columns that the sheets declare', () => {
    const lines = [
      readDishLine('r1', cells({ dish: 'Chili', serves: 6, food: 'tomatoes', amount: 1 })).typed,
    ];
    const meals = [readMeal('r2', cells({ date: AS_OF, dish: 'chili' })).typed];
    const shelf = shelfOf([lot('a', 3)]);
    const planned = (kind: typeof week) =>
      kind.columns.filter(({ role }) => role === 'planning').map(({ id }) => id);
    const dish = planDishes(lines, shelf, at(), emptyGuide).get('r1')!;
    expect(Object.keys(dish.figures).sort()).toEqual(planned(dishes).sort());
    expect(dish.figures).toMatchObject({ on_hand: 3, enough_for: 3, makes: 3 });
    const row = planWeek(meals, lines, shelf, at(), new Set(), emptyGuide).rows.get('r2')!;
    expect(Object.keys(row.figures).sort()).toEqual(planned(week).sort());
    expect(row.figures.stock).toBe('in stock');
  });
});
