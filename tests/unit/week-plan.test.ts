import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { emptyGuide } from '../../src/planning/index.js';
import type { Lot } from '../../src/planning/types.js';
import {
  type DishLine,
  explainDish,
  explainMeal,
  type Meal,
  openNow,
  planDishes,
  planWeek,
  type ShelfLine,
} from '../../src/planning/week/index.js';
import { unitWithId } from '../../src/units/index.js';
import { day, draw, lot, row } from './planning-make.js';
import { AS_OF, at, dishLine, meal, prep, shelfOf } from './week-make.js';

const TUESDAY = '2026-01-06';
const WEDNESDAY = '2026-01-07';
const week = (
  meals: readonly Meal[],
  lines: readonly DishLine[],
  shelf: readonly ShelfLine[],
  house = at(),
) => planWeek(meals, lines, shelf, house, new Set(), emptyGuide);

describe('scaling and measures', () => {
  // Outside check: js-quantities knows the US customary units by itself, to about nine digits.
  const OUTSIDE: Readonly<Record<string, string>> = {
    teaspoon: 'teaspoon',
    tablespoon: 'tablespoon',
    cup: 'cup',
    pint: 'pint',
    quart: 'quart',
    gallon: 'gallon',
    litre: 'liter',
  };
  for (const [unit, theirs] of Object.entries(OUTSIDE)) {
    it(`takes 1½ ${unit}s a head from quart jars as an outside library reckons`, () => {
      const jars = 40;
      const lines = [dishLine('1', 'Soup', 'tomato', { serves: 1, amount: 1.5, measure: unit })];
      const plan = week(
        [meal('m', TUESDAY, 'Soup', { shares: 2.5, times: 0.5 })],
        lines,
        shelfOf([lot('a', jars)]),
        at(),
      );
      const quarts = Qty(1.5 * 2.5 * 0.5, theirs).to('quart').scalar;
      expect(plan.after.left('a')).toBeCloseTo(jars - quarts, 7);
    });
  }

  it('takes pounds from jars only through the weight that is known of the food', () => {
    const lines = [dishLine('1', 'Porridge', 'oat', { amount: 2, measure: 'pound', way: 'dry goods' })];
    const lots = [lot('a', 5, { food: 'oat', way: 'dry goods' })];
    const guide = { ...emptyGuide, bridges: () => [{ poundsPerCup: 0.25 }] };
    const plan = planWeek([meal('m', TUESDAY, 'Porridge')], lines, shelfOf(lots), at(), new Set(), guide);
    // 2 lb at ¼ lb a cup are 8 cups, 2 quarts.
    expect(plan.after.left('a')).toBe(3);
    const without = week([meal('m', TUESDAY, 'Porridge')], lines, shelfOf(lots), at());
    expect(without.after.left('a')).toBe(5);
    expect(without.rows.get('m')!.kept!.dish!.code).toBe('density-missing');
    expect(without.rows.get('m')!.figures.stock).toBe('short: 2 pounds of oat (dry goods)');
  });
});

describe('a dish', () => {
  const lots = [lot('a', 7), lot('b', 3, { food: 'corn', way: 'frozen', container: 'pint freezer bag' })];

  it('says what is on hand, how often it can be cooked and what it takes, for the whole table', () => {
    const lines = [
      dishLine('1', 'Chili', 'Tomato', { serves: 4, amount: 1, way: 'canned' }),
      dishLine('2', 'Chili', 'Corn', { serves: null, amount: 2, measure: 'cup', way: 'frozen' }),
    ];
    const plans = planDishes(lines, shelfOf(lots), at(), emptyGuide);
    // 6 shares of a dish for 4: 1½ quarts of tomatoes, 3 cups of corn.
    expect(plans.get('1')!.figures).toEqual({
      on_hand: 7,
      enough_for: 4.66666666667,
      makes: 2,
      costs_shelf: '1½ quart jars of Tomato (canned) and 3 cups of Corn (frozen)',
    });
    expect(plans.get('2')!.figures).toMatchObject({
      on_hand: 6,
      enough_for: 2,
      makes: null,
      costs_shelf: null,
    });
    expect(plans.get('2')!.units).toEqual({ on_hand: 'cup' });
  });

  it('counts two lines of one food together', () => {
    const lines = [
      dishLine('1', 'Sauce', 'tomato', { amount: 2 }),
      dishLine('2', 'Sauce', 'tomato', { amount: 2, way: 'canned' }),
    ];
    expect(planDishes(lines, shelfOf(lots), at(), emptyGuide).get('1')!.figures.makes).toBe(1);
  });

  it('takes the lines of a dish within it in proportion', () => {
    const lines = [
      dishLine('1', 'Sauce', 'tomato', { serves: 2, amount: 1 }),
      dishLine('2', 'Lasagne', 'Sauce', { serves: 6, amount: 4, measure: null }),
    ];
    // 4 shares of a sauce of which 1 quart makes 2.
    const plan = week([meal('m', TUESDAY, 'Lasagne')], lines, shelfOf(lots), at());
    expect(plan.after.left('a')).toBe(5);
  });

  it('that needs itself says so, and its other lines work', () => {
    const lines = [
      dishLine('1', 'Stew', 'tomato', { amount: 1 }),
      dishLine('2', 'Stew', 'Base', { amount: 6, measure: null }),
      dishLine('3', 'Base', 'corn', { amount: 1, measure: 'pint freezer bag' }),
      dishLine('4', 'Base', 'Stew', { amount: 1, measure: null }),
    ];
    const plans = planDishes(lines, shelfOf(lots), at(), emptyGuide);
    expect(plans.get('2')!.kept!.food!).toMatchObject({
      code: 'dish-needs-itself',
      message: 'Stew needs itself: Stew → Base → Stew.',
    });
    const plan = week([meal('m', TUESDAY, 'Stew')], lines, shelfOf(lots), at());
    expect(plan.rows.get('m')!.figures.needs).toBe('1 quart jar of tomato');
    expect(plan.rows.get('m')!.kept!.dish!.code).toBe('dish-needs-itself');
  });

  it('of dishes nested beyond reason answers all the same', () => {
    const lines = Array.from({ length: 40 }, (_, i) => [
      dishLine(`a${i}`, `D${i}`, `D${i + 1}`, { amount: 1, measure: null }),
      dishLine(`b${i}`, `D${i}`, `D${i + 1}`, { amount: 1, measure: null }),
    ]).flat();
    const plan = week(
      [meal('m', TUESDAY, 'D0')],
      [...lines, dishLine('z', 'D40', 'tomato')],
      shelfOf(lots),
      at(),
    );
    expect(plan.rows.get('m')!.kept!.dish!.code).toBe('dish-too-large');
  });

  const problemOf = (more: Parameters<typeof dishLine>[3], food = 'tomato') =>
    planDishes([dishLine('1', 'Soup', food, more)], shelfOf(lots), at(), emptyGuide).get('1')!;

  it('tells what is wrong with a line at its place', () => {
    expect(problemOf({}, 'okra').kept!.food!.code).toBe('food-not-on-shelf');
    expect(problemOf({ amount: null }).kept!.amount!.code).toBe('amount-missing');
    expect(problemOf({ serves: null }).kept!.serves!.code).toBe('serves-missing');
    expect(problemOf({ measure: 'pound' }).problems!.on_hand!.code).toBe('density-missing');
    expect(problemOf({ measure: 'pound' }).figures.on_hand).toBeNull();
    expect(problemOf({ from: 'dish' }, 'Soop').kept!.food!.message).toContain('did you mean Soup?');
    expect(problemOf({ measure: null, from: 'bought' }, 'okra').kept!.measure!.code).toBe('measure-missing');
    expect(problemOf({ from: 'bought' }, 'okra').kept).toBeUndefined();
  });

  it('names the measures that would do where one does not', () => {
    const { message, mend } = problemOf({ measure: 'pound' }).problems!.on_hand!;
    expect(message).toBe(
      'tomato stands on the shelf in quart jars, which cannot be turned into pounds. What they weigh is not known.',
    );
    expect(mend).toBe('Write the amount in quart jars.');
  });

  it('takes a name that is both a food of the shelf and a dish for the food, unless told', () => {
    const lines = [
      dishLine('1', 'Tomato', 'corn', { amount: 1, measure: 'pint freezer bag' }),
      dishLine('2', 'Lunch', 'tomato', { measure: null }),
      dishLine('3', 'Dinner', 'tomato', { measure: null, from: 'dish', amount: 6 }),
      dishLine('4', 'Tea', 'tomato', { measure: 'cup', from: 'dish' }),
    ];
    const costs = planDishes(lines, shelfOf(lots), at(), emptyGuide);
    expect(costs.get('2')!.figures.costs_shelf).toBe('1 quart jar of tomato');
    expect(costs.get('3')!.figures.costs_shelf).toBe('1 pint freezer bag of corn');
    expect(costs.get('4')!.kept!.measure!.code).toBe('dish-in-measure');
  });

  it('counts in the food’s own container where the measure is blank', () => {
    expect(problemOf({ measure: null }).units!.on_hand).toBe('quart jar');
  });
});

describe('meals draw on a copy of the shelf', () => {
  const halves = [dishLine('1', 'Soup', 'tomato', { amount: 0.5 })];

  it('and what one opens, the next ones use first', () => {
    const lots = [
      lot('new', 2, { ownBestBy: 30_000 }),
      lot('old', 1, { ownBestBy: 25_000, place: 'cellar' }),
    ];
    const meals = ['2026-01-08', TUESDAY, WEDNESDAY].map((iso, i) => meal(`m${i}`, iso, 'Soup'));
    const plan = week(meals, halves, shelfOf(lots), at());
    expect(plan.meals.map((each) => each.meal.id)).toEqual(['m1', 'm2', 'm0']);
    expect(plan.rows.get('m1')!.figures).toMatchObject({
      needs: '½ quart jar of tomato',
      stock: 'in stock',
      oldest_lot: 'tomato (canned), quart jar, undated, cellar',
      open_after: '2 cups of tomato (canned)',
      uses_up: null,
    });
    expect(plan.rows.get('m2')!.figures).toMatchObject({
      open_after: null,
      uses_up: 'the last of tomato (canned), quart jar, undated, cellar',
    });
    expect(plan.rows.get('m0')!.figures.open_after).toBe('2 cups of tomato (canned)');
    expect([plan.after.left('old'), plan.after.left('new')]).toEqual([0, 1.5]);
  });

  it('show a leftover to the teaspoon, and since when it stands open', () => {
    const lines = [
      dishLine('1', 'Soup', 'tomato', { amount: 1, measure: 'teaspoon' }),
      dishLine('2', 'Rice', 'rice', { from: 'bought' }),
    ];
    const meals = [meal('a', TUESDAY, 'Soup'), meal('b', '2026-01-09', 'Rice')];
    const plan = week(meals, lines, shelfOf([lot('a', 1)]), at());
    const left = plan.after.left('a') * unitWithId('quart')!.factor;
    expect(Qty(left, 'ml').to('teaspoon').scalar).toBeCloseTo(191, 5);
    expect(plan.rows.get('b')!.figures.open_after).toBe(
      '3¾ cups, 3 tablespoons and 2 teaspoons of tomato (canned), opened 3 days before',
    );
  });

  it('show what a draw opened days ago, until it is used, and then what is opened next', () => {
    const drawn = draw('d', 0.5, { date: day('2026-01-02'), container: 'quart jar' });
    const shelf = shelfOf([lot('a', 3)], [], at(), emptyGuide, [drawn]);
    expect(openNow(shelf)).toMatchObject([{ lot: 'a', words: '2 cups', since: day('2026-01-02') }]);
    const meals = [meal('a', TUESDAY, 'Bite'), meal('b', WEDNESDAY, 'Soup'), meal('c', '2026-01-09', 'Bite')];
    const lines = [...halves, dishLine('2', 'Bite', 'tomato', { amount: 0.25 })];
    const plan = week(meals, lines, shelf, at());
    expect(['a', 'b', 'c'].map((id) => plan.rows.get(id)!.figures.open_after)).toEqual([
      '1 cup of tomato (canned), opened 4 days before',
      '3 cups of tomato (canned)',
      '2 cups of tomato (canned), opened 2 days before',
    ]);
  });

  it('in the order of the day, whatever the order of the rows', () => {
    const meals = ['supper', 'breakfast', 'midday'].map((name) =>
      meal(name, TUESDAY, 'Soup', { meal: name }),
    );
    const plan = week(meals, halves, shelfOf([lot('a', 1)]), at());
    expect(plan.rows.get('supper')!.figures.stock).toBe('short: ½ quart jar of tomato');
    expect(plan.rows.get('midday')!.figures.stock).toBe('in stock');
  });

  it('but not meals that are done, skipped, open, undated or long past', () => {
    const meals = [
      meal('done', TUESDAY, 'Soup', { done: true }),
      meal('skipped', TUESDAY, 'Soup', { skipped: true }),
      meal('open', TUESDAY, ''),
      meal('undated', null, 'Soup'),
      meal('past', '2025-11-01', 'Soup'),
    ];
    const plan = week(meals, halves, shelfOf([lot('a', 1)]), at());
    expect(plan.after.left('a')).toBe(1);
    const stock = (id: string) => plan.rows.get(id)!.figures.stock;
    expect(['done', 'skipped', 'open', 'undated'].map(stock)).toEqual([
      'marked done',
      'skipped',
      'no dish yet',
      null,
    ]);
    expect(plan.rows.get('past')!.kept!.done!.code).toBe('never-marked');
    expect(plan.rows.get('done')!.kept!.done!.code).toBe('done-not-posted');
    expect(plan.rows.get('undated')!.kept!.date!.code).toBe('missing');
  });

  it('of whichever way a food is kept, oldest first, where the dish does not say', () => {
    const lots = [
      lot('frozen', 2, { way: 'frozen', container: 'quart freezer bag', ownBestBy: 24_000 }),
      lot('canned', 2, { ownBestBy: 25_000 }),
    ];
    const plan = week([meal('m', TUESDAY, 'Soup', { times: 6 })], halves, shelfOf(lots), at());
    expect([plan.after.left('frozen'), plan.after.left('canned')]).toEqual([0, 1]);
  });

  it('not from lots that were put up after the meal', () => {
    const lots = [lot('a', 5, { putUpOn: 20_457 })]; // 2026-01-04
    const plan = week([meal('m', '2026-01-03', 'Soup')], halves, shelfOf(lots), at());
    expect(plan.rows.get('m')!.figures.stock).toBe('short: ½ quart jar of tomato');
  });

  it('and a dish that is not there is said at the meal', () => {
    const plan = week([meal('m', TUESDAY, 'Stew')], halves, shelfOf([]), at());
    expect(plan.rows.get('m')!.kept!.dish!.message).toContain('There is no dish called “Stew”');
  });
});

describe('cautions', () => {
  const cautionsOf = (lines: readonly DishLine[], lots: readonly Lot[]) =>
    week([meal('m', TUESDAY, lines[0]!.dishName)], lines, shelfOf(lots), at()).meals[0]!.cautions.map(
      ({ id }) => id,
    );

  it('of raw eggs, of home-canned low-acid food, of what is opened', () => {
    expect(cautionsOf([dishLine('1', 'Mayonnaise', 'egg', { from: 'bought' })], [])).toEqual(['raw-egg']);
    const raw = dishLine('1', 'Eggnog for two', 'egg', { from: 'bought' });
    expect(cautionsOf([raw], [])).toEqual(['raw-egg']);
    const noted = dishLine('1', 'Dressing', 'eggs', { from: 'bought', note: 'raw yolks' });
    expect(cautionsOf([noted], [])).toEqual(['raw-egg']);
    const beans = [lot('b', 2, { food: 'snap bean' })];
    expect(cautionsOf([dishLine('1', 'Casserole', 'snap bean')], beans)).toEqual(
      expect.arrayContaining(['doubt', 'seal-check']),
    );
    expect(cautionsOf([dishLine('1', 'Casserole', 'snap bean', { amount: 0.5 })], beans)).toContain('opened');
    expect(cautionsOf([dishLine('1', 'Omelette', 'egg', { from: 'bought' })], [])).toEqual([]);
  });

  it('of lots past their best, without calling them safe', () => {
    const old = [lot('a', 2, { food: 'corn', way: 'frozen', ownBestBy: 20_000 })];
    expect(cautionsOf([dishLine('1', 'Chowder', 'corn')], old)).toContain('past-best');
  });
});

describe('workings', () => {
  it('say how an amount was scaled and which lots it comes from', () => {
    const lines = [dishLine('1', 'Soup', 'tomato', { serves: 4, amount: 2, prep: prep('chop') })];
    const shelf = shelfOf([lot('a', 2), lot('b', 2)], [row()]);
    const plan = week([meal('m', TUESDAY, 'Soup')], lines, shelf, at());
    expect(explainMeal(plan, 'm', 'stock')!.steps.map(({ text }) => text)).toEqual([
      '2 quart jars from tomato (canned), quart jar, undated: nothing left',
      '1 quart jar from tomato (canned), quart jar, undated: 1 quart jar left',
      'so in stock',
    ]);
    expect(explainMeal(plan, 'm', 'needs')!.steps[0]!.text).toBe(
      'tomato: 2 quart jars as written → 3 quart jars',
    );
    expect(explainMeal(plan, 'none', 'needs')).toBeUndefined();
    const dishes = planDishes(lines, shelf, at(), emptyGuide);
    const said = explainDish(lines, shelf, at(), dishes.get('1')!, '1', 'enough_for', emptyGuide)!;
    expect(said.steps[0]!.text).toBe('4 quart jars ÷ (2 quart jars × 6 shares ÷ 4 shares) = 1⅓ times');
  });

  it('say what would fill a blank', () => {
    const lines = [dishLine('1', 'Soup', 'tomato', { serves: null })];
    const dishes = planDishes(lines, shelfOf([]), at(), emptyGuide);
    expect(
      explainDish(lines, shelfOf([]), at(), dishes.get('1')!, '1', 'makes', emptyGuide)!.missing,
    ).toContain('How many shares “Soup” serves is not written');
    const plan = week([meal('m', AS_OF, '')], lines, shelfOf([]), at());
    expect(explainMeal(plan, 'm', 'needs')!.missing).toBe('Choose a dish.');
  });
});
