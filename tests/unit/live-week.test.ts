import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LiveBook } from '../../src/core.js';
import { shelfToCount } from '../../src/live/doings/count-shelf.js';
import { mealsToMark } from '../../src/live/doings/mark-done.js';
import { copyWeekCommand, dishesToSuggest, openMealsCommand } from '../../src/live/doings/plan-meals.js';
import { firstRowInMind } from '../../src/live/week-in-mind.js';
import { dayOf } from '../../src/live/week-stage.js';
import { listsFor } from '../../src/planning/week/index.js';
import type { Result } from '../../src/problem.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const left = (lot: string) => live.value('shelf', lot, 'left');
const [MONDAY, SUNDAY] = [dayOf('2026-02-16')!, dayOf('2026-02-22')!];

describe('the week in mind', () => {
  const atRow = () => firstRowInMind(live);

  it('begins at the first row of its meals, wherever that stands', () => {
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-18' });
    const [first] = live.rowIds('week');
    expect(live.value('week', first!, 'date')).toBe('2026-02-16');
    expect(atRow()).toBe(first);
    // What was cooked weeks ago stands above.
    live.insertRows('week', [{ date: '2026-01-10', dish: 'Chili' }, {}], first);
    expect(atRow()).toBe(first);
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-07-01' });
    expect(atRow()).toBeNull();
  });
});

describe('a week’s plan', () => {
  it('says what each meal needs and takes nothing yet', () => {
    expect(String(live.value('week', 'm1', 'needs'))).toContain('Tomatoes'.toLowerCase());
    expect(live.value('week', 'm1', 'stock')).toBe('in stock');
    expect([left('l2'), left('l3')]).toEqual([9, 30]);
  });

  it('brings up whole jars, oldest first, and tells what an opened one leaves', () => {
    const lists = listsFor(live.weekPlans!.week, MONDAY, SUNDAY);
    expect(JSON.stringify(lists.bringUp)).toContain('cellar');
    expect(JSON.stringify(lists.bringUp)).toContain('freezer');
    expect(lists.shopping).toEqual([]);
  });

  it('a dish that names a food not on the shelf goes shopping', () => {
    live.insertRows('dishes', [{ dish: 'Stew', food: 'saffron', amount: 1, measure: 'teaspoon' }]);
    const lists = listsFor(live.weekPlans!.week, MONDAY, SUNDAY);
    expect(JSON.stringify(lists.shopping)).toContain('saffron');
  });

  it('a dish that needs itself says so at its line, and the other meals go on', () => {
    live.set('dishes', 'e2', 'food', 'Stew');
    expect(live.problem('dishes', 'e2', 'food')?.message).toBeDefined();
    expect(left('l1')).toBe(20);
  });

  it('gives the use per week of a food that has neither draws nor an own figure', () => {
    live.insertRows('draws', [{ date: '2026-02-10', food: 'peas', amount: 1 }]);
    expect(live.value('foods', 'f1', 'use_per_week')).toBeGreaterThan(0);
    live.removeRows('week', ['m1', 'm2']);
    expect(live.value('foods', 'f1', 'use_per_week')).toBeNull();
  });
});

describe('marking done', () => {
  it('posts each meal’s draws once, in one step of undo', () => {
    const before = JSON.stringify(live.toJSON());
    live.apply(value(mealsToMark(live, { meals: ['m1'] })).command);
    // One and a half shares at the table, a dish for two: 1½ cups of tomatoes and ¾ of a bag of peas.
    expect(left('l2')).toBeCloseTo(9 - 0.75, 9);
    expect(left('l3')).toBeCloseTo(30 - 0.75, 9);
    expect(live.value('week', 'm1', 'done')).toBe(true);
    const again = mealsToMark(live, { meals: ['m1'] });
    expect(again.ok).toBe(false);
    live.undo();
    expect(JSON.parse(JSON.stringify(live.toJSON()))).toEqual(JSON.parse(before));
  });

  it('a week at once takes the opened jar on', () => {
    live.apply(value(mealsToMark(live, { from: MONDAY, to: SUNDAY })).command);
    expect(left('l2')).toBeCloseTo(9 - 1.5, 9);
    expect(left('l1')).toBe(20);
    expect(live.rowIds('draws')).toHaveLength(4);
  });
});

describe('planning meals', () => {
  it('opens rows for the meals of a week, and copies the week', () => {
    live.apply(value(openMealsCommand(live, MONDAY, SUNDAY, ['supper'])));
    expect(live.rowIds('week')).toHaveLength(7);
    live.apply(value(copyWeekCommand(live, SUNDAY + 1)));
    expect(live.rowIds('week')).toHaveLength(14);
    expect(copyWeekCommand(live, SUNDAY + 1).ok).toBe(false);
  });

  it('suggests dishes for open meals, each with why, and writes only those chosen', async () => {
    live.set('shelf', 'l2', 'own_best_by', '2026-03-10');
    live.apply(value(openMealsCommand(live, MONDAY, SUNDAY, ['supper'])));
    const { suggestions, command } = value(
      await dishesToSuggest(live, { from: MONDAY, to: SUNDAY, repeats: 4 }),
    );
    expect(suggestions.suggestions.length).toBeGreaterThan(0);
    const [first] = suggestions.suggestions;
    expect(first!.why.length).toBeGreaterThan(5);
    live.apply(command(new Set([first!.meal])));
    expect(live.value('week', first!.meal, 'dish')).toBe('Stew');
  });
});

describe('counting the shelf', () => {
  it('posts the difference as a count, and what was counted is then left', () => {
    const { counted, command } = value(
      shelfToCount(
        live,
        new Map([
          ['l1', 17],
          ['l3', 30],
        ]),
      ),
    );
    expect(counted.changes).toHaveLength(1);
    live.apply(command!);
    expect([left('l1'), left('l3')]).toEqual([17, 30]);
    live.undo();
    expect(left('l1')).toBe(20);
  });

  it('that finds nothing new posts nothing', () => {
    expect(value(shelfToCount(live, new Map([['l1', 20]]))).command).toBeNull();
  });
});
