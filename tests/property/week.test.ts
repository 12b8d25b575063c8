import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyGuide, planLine } from '../../src/planning/index.js';
import { olderFirst } from '../../src/planning/stock.js';
import type { Draw, Lot } from '../../src/planning/types.js';
import {
  listsFor,
  type Meal,
  markDone,
  planDishes,
  planWeek,
  postedMeals,
} from '../../src/planning/week/index.js';
import { day, draw, lot } from '../unit/planning-make.js';
import { AS_OF, at, dishLine, meal, shelfOf } from '../unit/week-make.js';

const START = day(AS_OF);
/** Teaspoons: whole numbers, so that the expected leftovers are exact. */
const SPOONS = {
  'quart jar': 192,
  'pint jar': 96,
  'half-pint jar': 48,
  cup: 48,
  tablespoon: 3,
  teaspoon: 1,
} as const;
type Measure = keyof typeof SPOONS;

const someLots = fc
  .array(
    fc.record({
      count: fc.integer({ min: 1, max: 6 }),
      container: fc.constantFrom<Measure>('quart jar', 'pint jar', 'half-pint jar'),
      ownBestBy: fc.option(fc.integer({ min: START + 1, max: START + 300 }), { nil: null }),
      putUpOn: fc.option(fc.integer({ min: START - 300, max: START - 60 }), { nil: null }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((lots) => lots.map((more, i) => lot(`l${i}`, more.count, { ...more, place: `shelf ${i % 2}` })));

const someMeals = fc.array(
  fc.record({
    on: fc.nat(9),
    amount: fc.integer({ min: 1, max: 30 }),
    measure: fc.constantFrom<Measure>('cup', 'tablespoon', 'teaspoon', 'pint jar'),
  }),
  { maxLength: 8 },
);
type Wanted = { on: number; amount: number; measure: Measure };

/** One dish for each meal, so that every meal takes its own amount. */
function planOf(lots: readonly Lot[], wanted: readonly Wanted[]) {
  const lines = wanted.map(({ amount, measure }, i) =>
    dishLine(`d${i}`, `Dish ${i}`, 'tomato', { amount, measure, way: 'canned' }),
  );
  const meals: Meal[] = wanted.map(({ on }, i) =>
    meal(`m${i}`, null, `Dish ${i}`, { date: START + on, meal: `own ${i}` }),
  );
  const shelf = shelfOf(lots);
  return { lines, meals, shelf, plan: planWeek(meals, lines, shelf, at(), new Set(), emptyGuide) };
}

/** The same by hand, in whole teaspoons: the opened container first, then the oldest. */
function byHand(
  lots: readonly Lot[],
  wanted: readonly Wanted[],
): { left: Map<string, number>; short: number } {
  const order = [...lots].sort((a, b) =>
    olderFirst({ ...a, bestBy: a.ownBestBy }, { ...b, bestBy: b.ownBestBy }),
  );
  const left = new Map(order.map(({ id, count, container }) => [id, count! * SPOONS[container as Measure]]));
  let short = 0;
  const sorted = wanted.map((each, i) => ({ ...each, i })).sort((a, b) => a.on - b.on || a.i - b.i);
  for (const { amount, measure } of sorted) {
    let need = amount * SPOONS[measure];
    while (need > 0) {
      const has = order.filter(({ id }) => left.get(id)! > 0);
      const next =
        has.find(({ id, container }) => left.get(id)! % SPOONS[container as Measure] > 0) ?? has[0];
      if (!next) break;
      const take = Math.min(need, left.get(next.id)!);
      left.set(next.id, left.get(next.id)! - take);
      need -= take;
    }
    short += need;
  }
  return { left, short };
}

const spoons = (lots: readonly Lot[], id: string, left: number) =>
  left * SPOONS[lots.find((each) => each.id === id)!.container as Measure];

describe('what meals take from the shelf', () => {
  it('is what one reckons by hand, to the teaspoon', () => {
    fc.assert(
      fc.property(someLots, someMeals, (lots, wanted) => {
        const { plan } = planOf(lots, wanted);
        const expected = byHand(lots, wanted);
        for (const { id } of lots) {
          expect(spoons(lots, id, plan.after.left(id))).toBeCloseTo(expected.left.get(id)!, 6);
        }
      }),
    );
  });

  it('and what is short make up what they need; nothing is lost', () => {
    fc.assert(
      fc.property(someLots, someMeals, (lots, wanted) => {
        const { plan } = planOf(lots, wanted);
        let gone = 0;
        for (const { id, count } of lots) gone += spoons(lots, id, count! - plan.after.left(id));
        let short = 0;
        let needed = 0;
        for (const each of plan.meals.flatMap(({ needs }) => needs)) {
          short += each.short * SPOONS[each.measure as Measure];
          needed += each.amount * SPOONS[each.measure as Measure];
        }
        expect(gone + short).toBeCloseTo(needed, 6);
        expect(short).toBeCloseTo(byHand(lots, wanted).short, 6);
      }),
    );
  });

  it('comes from no younger lot while an older one has some', () => {
    fc.assert(
      fc.property(someLots, someMeals, (lots, wanted) => {
        const { plan } = planOf(lots, wanted);
        const order = [...lots].sort((a, b) =>
          olderFirst({ ...a, bestBy: a.ownBestBy }, { ...b, bestBy: b.ownBestBy }),
        );
        const firstWithSome = order.findIndex(({ id }) => plan.after.left(id) > 0);
        for (const [i, { id, count }] of order.entries()) {
          if (firstWithSome >= 0 && i > firstWithSome) expect(plan.after.left(id)).toBe(count);
        }
      }),
    );
  });

  it('does not hang on the order of rows', () => {
    fc.assert(
      fc.property(someLots, someMeals, (lots, wanted) => {
        const { lines, meals, shelf, plan } = planOf(lots, wanted);
        const days = meals.map((each) => `${each.date}`);
        // Meals of one day that are not among the usual ones keep the order of their rows.
        fc.pre(new Set(days).size === days.length);
        const turned = planWeek(
          [...meals].reverse(),
          [...lines].reverse(),
          [...shelf].reverse(),
          at(),
          new Set(),
          emptyGuide,
        );
        for (const { id } of meals) expect(turned.rows.get(id)).toEqual(plan.rows.get(id));
      }),
    );
  });

  it('is fetched in whole containers that hold it, with what stays over', () => {
    fc.assert(
      fc.property(someLots, someMeals, (lots, wanted) => {
        const { plan } = planOf(lots, wanted);
        const { bringUp, shopping } = listsFor(plan, START, START + 9, emptyGuide);
        const items = bringUp.places.flatMap((place) => place.items);
        for (const item of items) {
          const { count } = lots.find(({ id }) => id === item.lot.id)!;
          expect(item.amount).toBe(Math.ceil(count! - plan.after.left(item.lot.id) - 1e-9));
          expect(item.leavesOver === '').toBe(Number.isInteger(plan.after.left(item.lot.id)));
        }
        expect(new Set(items.map(({ lot: { id } }) => id)).size).toBe(items.length);
        expect(shopping.length > 0).toBe(byHand(lots, wanted).short > 0);
      }),
    );
  });
});

describe('marking done', () => {
  const drawsOf = (posted: ReturnType<typeof markDone>, allotted: boolean): Draw[] =>
    posted.draws.map(({ id, cells, allotted: lots }) =>
      draw(id, cells.amount, {
        date: day(cells.date),
        container: cells.container,
        allotted: allotted ? lots : null,
      }),
    );

  it('leaves the shelf as the plan said, whether or not the allotment is stored', () => {
    fc.assert(
      fc.property(someLots, someMeals, fc.boolean(), (lots, wanted, stored) => {
        const { shelf, plan } = planOf(lots, wanted);
        const posted = markDone(plan, { from: START, to: START + 9 }, new Set());
        const ledger = planLine({ ...shelf[0]!.input, draws: drawsOf(posted, stored) }, at(), emptyGuide);
        for (const { id } of lots) {
          expect(spoons(lots, id, ledger.lots.get(id)!.figures.left as number)).toBeCloseTo(
            spoons(lots, id, plan.after.left(id)),
            5,
          );
        }
        for (const { figures } of ledger.draws.values()) expect(figures.not_found ?? 0).toBe(0);
      }),
    );
  });

  it('meal by meal in any order, some of them twice, posts each once and takes no younger lot first', () => {
    const order = fc.array(fc.nat(7), { maxLength: 12 });
    fc.assert(
      fc.property(someLots, someMeals, order, (lots, wanted, marks) => {
        const { lines, meals, shelf } = planOf(lots, wanted);
        const ledger: Draw[] = [];
        for (const at_ of marks) {
          const ids = new Set(ledger.map(({ id }) => id));
          const now = shelf.map(({ input }) => {
            const line = { ...input, draws: ledger };
            return { input: line, plan: planLine(line, at(), emptyGuide) };
          });
          const posted = postedMeals(
            ids,
            meals.map(({ id }) => id),
          );
          const plan = planWeek(meals, lines, now, at(), posted, emptyGuide);
          const done = markDone(plan, { meals: [`m${at_}`] }, ids);
          if (posted.has(`m${at_}`)) expect(done.draws).toEqual([]);
          ledger.push(...drawsOf(done, true));
        }
        expect(new Set(ledger.map(({ id }) => id)).size).toBe(ledger.length);
        const left = planLine({ ...shelf[0]!.input, draws: ledger }, at(), emptyGuide).lots;
        const inOrder = [...lots].sort((a, b) =>
          olderFirst({ ...a, bestBy: a.ownBestBy }, { ...b, bestBy: b.ownBestBy }),
        );
        const first = inOrder.findIndex(({ id }) => (left.get(id)!.figures.left as number) > 0);
        for (const { id, count } of inOrder.slice(first + 1)) {
          if (first >= 0) expect(left.get(id)!.figures.left).toBe(count);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('absurd input', () => {
  const wild = fc.oneof(
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -5, 0, 1e12, 1e308, 5e-324, null),
    fc.double(),
  );
  it('is never thrown back, and never shows a figure that is no number', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            dish: fc.constantFrom('a', 'b', 'c', null),
            food: fc.constantFrom('a', 'b', 'c', 'tomato', 'nothing', null),
            serves: wild,
            amount: wild,
            measure: fc.constantFrom('cup', 'pound', 'bin', 'nonsense', null),
            from: fc.constantFrom('shelf', 'bought', 'dish', null),
          }),
          { maxLength: 7 },
        ),
        fc.array(
          fc.record({
            date: wild,
            dish: fc.constantFrom('a', 'b', 'z', null),
            shares: wild,
            times: wild,
            done: fc.boolean(),
          }),
          { maxLength: 5 },
        ),
        fc.array(
          fc.record({
            count: wild,
            putUpOn: wild,
            container: fc.constantFrom('quart jar', 'bin', 'pound', 'nonsense', null),
          }),
          { maxLength: 4 },
        ),
        (rows, eaten, stock) => {
          const lines = rows.map((more, i) =>
            dishLine(`d${i}`, more.dish ?? '', more.food ?? '', more as never),
          );
          const meals = eaten.map((more, i) => meal(`m${i}`, null, more.dish ?? '', more));
          const shelf = shelfOf(stock.map((more, i) => ({ ...lot(`l${i}`, 1), ...more })));
          const plan = planWeek(meals, lines, shelf, at(), new Set(), emptyGuide);
          const said = [
            [...planDishes(lines, shelf, at(), emptyGuide).values()],
            [...plan.rows.values()],
            listsFor(plan, START - 10, START + 30, emptyGuide),
            markDone(plan, { meals: meals.map(({ id }) => id) }, new Set()),
          ];
          expect(JSON.stringify(said)).not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
      { numRuns: 300 },
    );
  });
});
