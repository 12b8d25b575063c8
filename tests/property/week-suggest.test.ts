import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyGuide } from '../../src/planning/index.js';
import type { WayKept } from '../../src/planning/types.js';
import { planWeek, suggestDishes } from '../../src/planning/week/index.js';
import { suggestModel } from '../../src/planning/week/suggest-model.js';
import { greedily, worthOf } from '../../src/planning/week/suggest-solve.js';
import { day, lot, row } from '../unit/planning-make.js';
import { AS_OF, at, dishLine, meal, shelfOf } from '../unit/week-make.js';

const START = day(AS_OF);
const FOODS = ['tomato', 'corn'] as const;
const WAYS = ['canned', 'frozen'] as const;

/** Amounts in half quarts, so that the best split of what may come from either way is in half quarts too. */
const halves = (max: number) => fc.integer({ min: 0, max }).map((n) => n / 2);

interface Use {
  readonly food: number;
  readonly way: number | null;
  readonly amount: number;
}

const small = fc.record({
  // [food][way]: what stands there without a best-by date, and what is at risk.
  stock: fc.array(fc.array(fc.record({ safe: halves(6), risk: halves(6) }), { minLength: 2, maxLength: 2 }), {
    minLength: 2,
    maxLength: 2,
  }),
  dishes: fc.array(
    fc.array(
      fc.record({
        food: fc.nat(1),
        way: fc.option(fc.nat(1), { nil: null }),
        amount: fc.integer({ min: 1, max: 5 }).map((n) => n / 2),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    { minLength: 1, maxLength: 4 },
  ),
  suits: fc.array(fc.constantFrom('supper', 'midday', null), { minLength: 4, maxLength: 4 }),
  meals: fc.array(
    fc.record({ meal: fc.constantFrom('supper', 'midday'), times: fc.constantFrom(1, 2), on: fc.nat(3) }),
    { minLength: 1, maxLength: 4 },
  ),
  repeats: fc.integer({ min: 1, max: 3 }),
});
type Small = typeof small extends fc.Arbitrary<infer T> ? T : never;

/** Most quarts at risk that these uses can eat of one food, by trying every split; null when more than the stock. */
function eaten(stock: Small['stock'][number], uses: readonly Use[]): number | null {
  const named = WAYS.map((_, w) => uses.filter(({ way }) => way === w).reduce((a, b) => a + b.amount, 0));
  const any = uses.filter(({ way }) => way === null).reduce((a, b) => a + b.amount, 0);
  let best: number | null = null;
  for (let first = 0; first <= any; first += 0.5) {
    const takes = [named[0]! + first, named[1]! + any - first];
    if (takes.some((n, w) => n > stock[w]!.safe + stock[w]!.risk)) continue;
    best = Math.max(
      best ?? 0,
      takes.reduce((sum, n, w) => sum + Math.min(n, stock[w]!.risk), 0),
    );
  }
  return best;
}

/** The best worth there is, by trying every dish at every meal. */
function bruteForce({ stock, dishes, suits, meals, repeats }: Small): number {
  let best = 0;
  const chosen: number[] = [];
  const tryAll = (at: number): void => {
    if (at === meals.length) {
      const counts = dishes.map((_, d) => chosen.filter((each) => each === d).length);
      if (counts.some((n) => n > repeats)) return;
      const uses = chosen.flatMap((d, m) =>
        d < 0 ? [] : dishes[d]!.map((use) => ({ ...use, amount: use.amount * meals[m]!.times })),
      );
      let risk = 0;
      for (const [f] of FOODS.entries()) {
        const of = eaten(
          stock[f]!,
          uses.filter(({ food }) => food === f),
        );
        if (of === null) return;
        risk += of;
      }
      best = Math.max(best, 2 * risk + 0.01 * chosen.filter((d) => d >= 0).length);
      return;
    }
    for (let d = -1; d < dishes.length; d++) {
      if (d >= 0 && suits[d] !== null && suits[d] !== meals[at]!.meal) continue;
      chosen.push(d);
      tryAll(at + 1);
      chosen.pop();
    }
  };
  tryAll(0);
  return best;
}

function bookOf({ stock, dishes, suits, meals }: Small) {
  const lots = FOODS.flatMap((food, f) =>
    WAYS.flatMap((way, w) => {
      const { safe, risk } = stock[f]![w]!;
      const made = (id: string, count: number, ownBestBy: number | null) =>
        lot(`${food}-${way}-${id}`, count, { food, way: way as WayKept, ownBestBy });
      return [made('risk', risk, START + 40), made('safe', safe, null)];
    }),
  );
  // At no use, all that has a best-by date is at risk.
  const rows = FOODS.flatMap((food) =>
    WAYS.map((way) => row({ id: `${food}-${way}`, food, way, ownUse: 0 })),
  );
  const lines = dishes.flatMap((uses, d) =>
    uses.map(({ food, way, amount }, i) =>
      dishLine(`${d}-${i}`, `Dish ${d}`, FOODS[food]!, {
        amount,
        way: way === null ? null : WAYS[way]!,
        suits: suits[d] === null ? [] : [suits[d]!],
      }),
    ),
  );
  const rowsOfWeek = meals.map((each, i) =>
    meal(`m${i}`, null, '', { date: START + each.on, meal: each.meal, times: each.times }),
  );
  const shelf = shelfOf(lots, rows);
  return { shelf, lines, plan: planWeek(rowsOfWeek, lines, shelf, at(), new Set(), emptyGuide) };
}

describe('suggested dishes', () => {
  it('are found at once, for when the time runs out: never more than the stock, never more than the best', () => {
    fc.assert(
      fc.property(small, (one) => {
        const { shelf, plan } = bookOf(one);
        const model = suggestModel(plan, shelf, { from: START, to: START + 6, repeats: one.repeats });
        const first = greedily(model);
        expect(worthOf(model, first.counts)).toBeCloseTo(first.worth, 9);
        expect(first.worth).toBeLessThanOrEqual(bruteForce(one) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('eat as much of what is at risk as trying every choice does', async () => {
    await fc.assert(
      fc.asyncProperty(small, async (one) => {
        const { shelf, plan } = bookOf(one);
        const found = await suggestDishes(plan, shelf, { from: START, to: START + 6, repeats: one.repeats });
        expect(found.best).toBe(true);
        expect(found.worth).toBeCloseTo(bruteForce(one), 6);
      }),
      { numRuns: 120 },
    );
  });

  it('once written on the Week sheet, are all in stock, suit their meals and keep to the repeats', async () => {
    await fc.assert(
      fc.asyncProperty(small, async (one) => {
        const { shelf, lines, plan } = bookOf(one);
        const found = await suggestDishes(plan, shelf, { from: START, to: START + 6, repeats: one.repeats });
        const by = new Map(found.suggestions.map((each) => [each.meal, each]));
        const written = plan.meals.map(({ meal: each }) => {
          const chosen = by.get(each.id);
          return chosen ? { ...each, dish: chosen.dish, dishName: chosen.dishName } : each;
        });
        const after = planWeek(written, lines, shelf, at(), new Set(), emptyGuide);
        const perDish = new Map<string, number>();
        for (const { meal: each, dish } of after.meals) {
          if (!dish) continue;
          perDish.set(dish.key, (perDish.get(dish.key) ?? 0) + 1);
          expect(dish.suits.length === 0 || dish.suits.includes(each.meal)).toBe(true);
        }
        for (const n of perDish.values()) expect(n).toBeLessThanOrEqual(one.repeats);
        // Where a food may come from either way, the oldest is taken first, which may be the one that another dish names.
        if (lines.some(({ way }) => way === null)) return;
        for (const { needs } of after.meals) for (const need of needs) expect(need.short).toBeCloseTo(0, 6);
      }),
      { numRuns: 60 },
    );
  });
});
