import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Draw,
  type DrawFigures,
  daysOutside,
  dayWhenOutside,
  emptyGuide,
  explainDraw,
  explainFood,
  explainLot,
  type FoodFigures,
  inSeason,
  type Lot,
  type LotFigures,
  makeSeason,
  planLine,
  weeksOfSupply,
} from '../../src/planning/index.js';
import { day, draw, household, line, lot, row } from '../unit/planning-make.js';

const START = day('2025-01-01');
const AS_OF = '2026-01-01';
const QUARTS: Readonly<Record<string, number>> = { 'quart jar': 1, 'pint jar': 0.5, cup: 0.25 };
const plan: typeof planLine = (input, at) => planLine(input, at, emptyGuide);
const at = (more = {}) => household(AS_OF, { ledgerFrom: START, ...more });

const someDay = fc.option(fc.integer({ min: START - 400, max: START + 500 }), { nil: null });
const someLots: fc.Arbitrary<Lot[]> = fc
  .array(
    fc.record({
      count: fc.oneof(fc.nat(30), fc.constant(2.5)),
      container: fc.constantFrom('quart jar', 'pint jar'),
      putUpOn: someDay,
      ownBestBy: someDay,
      stillCounting: fc.boolean(),
    }),
    { maxLength: 7 },
  )
  .map((lots) => lots.map((more, i) => lot(`l${i}`, more.count, more)));
const someDraws: fc.Arbitrary<Draw[]> = fc
  .array(
    fc.record({
      amount: fc.oneof(
        fc.integer({ min: 0, max: 15 }),
        fc.integer({ min: -8, max: -1 }),
        fc.constantFrom(0.5, 1 / 3),
      ),
      container: fc.constantFrom('quart jar', 'pint jar', 'cup', null),
      date: someDay,
      lot: fc.option(fc.constantFrom('l0', 'l1', 'l9'), { nil: null }),
      purpose: fc.constantFrom('dish', 'count', 'gift', 'spoiled', 'other'),
      corrects: fc.option(fc.constantFrom('d0', 'd1', 'd2', 'd3'), { nil: null, freq: 2 }),
      notUse: fc.boolean(),
      allotted: fc.option(
        fc.dictionary(fc.constantFrom('l0', 'l1', 'l2', 'zz'), fc.integer({ min: -3, max: 9 })),
        {
          nil: null,
          freq: 2,
        },
      ),
    }),
    { maxLength: 14 },
  )
  .map((draws) => draws.map((more, i) => draw(`d${i}`, more.amount, more as Partial<Draw>)));

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : value instanceof Map
      ? [...value.values()].flatMap(numbersIn)
      : value && typeof value === 'object'
        ? Object.values(value).flatMap(numbersIn)
        : [];

const leftOf = (made: ReturnType<typeof planLine>) =>
  new Map([...made.lots].map(([id, { figures }]) => [id, figures.left]));

describe('stock', () => {
  it('is never negative and never more than was put up', () => {
    fc.assert(
      fc.property(someLots, someDraws, (lots, draws) => {
        const made = plan(line({ row: row({ ownUse: 1 }), lots, draws }), at());
        for (const each of lots) {
          const left = made.lots.get(each.id)!.figures.left;
          if (left === null) continue;
          expect(left).toBeGreaterThanOrEqual(0);
          expect(left).toBeLessThanOrEqual(each.count!);
        }
      }),
    );
  });

  it('is what was put up less what draws took, lot by lot', () => {
    fc.assert(
      fc.property(someLots, someDraws, (lots, draws) => {
        const made = plan(line({ lots, draws }), at());
        for (const each of lots) {
          const left = made.lots.get(each.id)!.figures.left;
          if (left === null) continue;
          let took = 0;
          for (const allotment of made.allotments.values()) took += allotment[each.id] ?? 0;
          expect((left as number) + took).toBeCloseTo(each.count!, 6);
        }
      }),
    );
  });

  it('what is allotted and what is not found make up what was drawn', () => {
    fc.assert(
      fc.property(someLots, someDraws, (lots, draws) => {
        const plain = draws.map((each) => ({ ...each, corrects: null, amount: Math.abs(each.amount!) }));
        const made = plan(line({ row: row(), lots, draws: plain }), at());
        for (const each of plain) {
          if (each.date !== null && each.date > day(AS_OF)) continue;
          const unit = QUARTS[each.container ?? 'quart jar']!;
          let found = ((made.draws.get(each.id)!.figures.not_found ?? 0) as number) * unit;
          for (const [id, amount] of Object.entries(made.allotments.get(each.id) ?? {})) {
            found += amount * QUARTS[lots.find((l) => l.id === id)!.container!]!;
          }
          expect(found).toBeCloseTo(each.amount! * unit, 6);
        }
      }),
    );
  });

  it('is restored exactly when draws are added and removed again', () => {
    fc.assert(
      fc.property(someLots, someDraws, someDraws, (lots, draws, more) => {
        const before = plan(line({ row: row(), lots, draws }), at());
        const added = more.map((each) => ({ ...each, id: `x${each.id}` }));
        plan(line({ row: row(), lots, draws: [...draws, ...added] }), at());
        expect(plan(line({ row: row(), lots: [...lots], draws: [...draws] }), at())).toEqual(before);
      }),
    );
  });

  it('does not hang on the order in which rows are given', () => {
    fc.assert(
      fc.property(someLots, someDraws, (lots, draws) => {
        const input = line({ row: row({ ownUse: 1 }), lots, draws });
        const turned = { ...input, lots: [...lots].reverse(), draws: [...draws].reverse() };
        expect(leftOf(plan(turned, at()))).toEqual(leftOf(plan(input, at())));
      }),
    );
  });

  it('a draw that names a whole correction of itself leaves everything as if it were not there', () => {
    fc.assert(
      fc.property(someLots, fc.integer({ min: 1, max: 40 }), someDay, (lots, amount, date) => {
        const draws = [draw('d', amount, { date }), draw('e', -amount, { date, corrects: 'd' })];
        expect(leftOf(plan(line({ lots, draws }), at()))).toEqual(leftOf(plan(line({ lots }), at())));
      }),
    );
  });
});

describe('oldest first', () => {
  it('leaves no older jar whole while a younger one is opened', () => {
    fc.assert(
      fc.property(someLots, fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 8 }), (lots, amounts) => {
        const here = lots.map((each) => ({ ...each, putUpOn: START - 500, count: Math.floor(each.count!) }));
        const draws = amounts.map((n, i) => draw(`d${i}`, n, { date: START + i, container: 'cup' }));
        const made = plan(line({ lots: here, draws, row: row() }), at());
        const order = [...here].sort(
          (a, b) => (a.ownBestBy ?? 1e9) - (b.ownBestBy ?? 1e9) || (a.id < b.id ? -1 : 1),
        );
        const left = order.map(
          (each) => [made.lots.get(each.id)!.figures.left as number, each.count!] as const,
        );
        const firstWithSome = left.findIndex(([some]) => some > 0);
        for (const [i, [some, count]] of left.entries()) {
          if (firstWithSome >= 0 && i > firstWithSome) expect(some).toBe(count);
        }
      }),
    );
  });
});

describe('use per week', () => {
  it('has the same range whichever unit the draws were written in', () => {
    const times = fc.array(fc.record({ cups: fc.integer({ min: 1, max: 24 }), on: fc.nat(360) }), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(times, (drawn) => {
        const lots = [lot('a', 10_000, { putUpOn: START - 10 })];
        const figures = (['cup', 'pint jar', 'quart jar'] as const).map((container) => {
          const draws = drawn.map(({ cups, on }, i) =>
            draw(`d${i}`, (cups * 0.25) / QUARTS[container]!, { date: START + on, container }),
          );
          return plan(line({ row: row(), lots, draws }), at()).food!.figures;
        });
        for (const key of ['use_low', 'use_per_week', 'use_high'] as const) {
          const wanted = figures[0]![key] as number;
          for (const each of figures) expect(each[key]).toBeCloseTo(wanted, 9);
        }
      }),
    );
  });

  it('lies within its range when there are draws', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 40 }), (amounts) => {
        const draws = amounts.map((n, i) => draw(`d${i}`, n, { date: START + 5 * i }));
        const lots = [lot('a', 10_000, { putUpOn: START - 10 })];
        const { use_low, use_per_week, use_high } = plan(line({ row: row(), lots, draws }), at()).food!
          .figures;
        expect(use_low).toBeLessThan(use_per_week as number);
        expect(use_high).toBeGreaterThan(use_per_week as number);
      }),
    );
  });
});

describe('what is at risk', () => {
  it('is never more than what is on hand, nor less than nothing', () => {
    fc.assert(
      fc.property(someLots, someDraws, fc.double({ min: 0, max: 20, noNaN: true }), (lots, draws, ownUse) => {
        const made = plan(line({ row: row({ ownUse }), lots, draws }), at());
        let risk = 0;
        for (const each of lots) {
          const { at_risk, left } = made.lots.get(each.id)!.figures;
          if (typeof at_risk !== 'number') continue;
          expect(at_risk).toBeGreaterThanOrEqual(0);
          expect(at_risk).toBeLessThanOrEqual(left as number);
          risk += at_risk * QUARTS[each.container!]!;
        }
        expect(risk).toBeLessThanOrEqual(((made.food!.figures.on_hand ?? 0) as number) + 1e-9);
      }),
    );
  });

  it('does not grow when more is eaten', () => {
    fc.assert(
      fc.property(someLots, fc.integer({ min: 0, max: 9 }), (lots, ownUse) => {
        const riskAt = (use: number) => {
          const made = plan(line({ row: row({ ownUse: use }), lots }), at());
          return lots.reduce(
            (sum, each) =>
              sum + ((made.lots.get(each.id)!.figures.at_risk ?? 0) as number) * QUARTS[each.container!]!,
            0,
          );
        };
        expect(riskAt(ownUse + 1)).toBeLessThanOrEqual(riskAt(ownUse) + 1e-9);
      }),
    );
  });
});

describe('weeks of supply', () => {
  const amount = fc.double({ min: 0, max: 1e6, noNaN: true });
  const use = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  const weeks = (stock: number, r: number) => {
    const found = weeksOfSupply(stock, r);
    return found.ok ? (found.value as number) : Number.NaN;
  };

  it('grow with stock and shrink with use', () => {
    fc.assert(
      fc.property(amount, amount, use, use, (a, b, r, s) => {
        expect(weeks(Math.max(a, b), r)).toBeGreaterThanOrEqual(weeks(Math.min(a, b), r));
        expect(weeks(a, Math.min(r, s))).toBeGreaterThanOrEqual(weeks(a, Math.max(r, s)));
      }),
    );
  });
});

describe('seasons', () => {
  const monthDay = fc.record({
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 31 }),
  });
  const season = fc.tuple(monthDay, monthDay).map(([from, to]) => makeSeason(from, to)!);

  it('count the days outside as one would on a calendar', () => {
    fc.assert(
      fc.property(season, fc.integer({ min: START, max: START + 1500 }), fc.nat(800), (each, from, span) => {
        let count = 0;
        for (let d = from; d < from + span; d++) if (!inSeason(each, d)) count += 1;
        // A season of all but 29 February counts as all year.
        expect(Math.abs(daysOutside(from, from + span, each) - count)).toBeLessThanOrEqual(
          daysOutside(START, START + 365, each) === 0 ? 1 : 0,
        );
      }),
    );
  });

  it('find the first day by which so many days outside have gone by', () => {
    fc.assert(
      fc.property(
        season,
        fc.integer({ min: START, max: START + 1500 }),
        fc.integer({ min: 1, max: 900 }),
        (each, from, n) => {
          const found = dayWhenOutside(from, n / 7, each, from + 36_500);
          if (found === null) return;
          expect(daysOutside(from, found, each)).toBe(n);
          expect(daysOutside(from, found - 1, each)).toBe(n - 1);
        },
      ),
    );
  });
});

describe('absurd input', () => {
  const wild = fc.oneof(
    fc.constantFrom(
      Number.NaN,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      1e12,
      -1e12,
      1e308,
      -5,
      0,
      5e-324,
      null,
    ),
    fc.double(),
  );
  const when = fc.record({ month: fc.integer({ min: -3, max: 40 }), day: fc.integer({ min: -3, max: 40 }) });

  it('never gives NaN or an infinity, and is never thrown back', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ count: wild, putUpOn: wild, ownBestBy: wild, stillCounting: fc.boolean() }), {
          maxLength: 4,
        }),
        fc.array(
          fc.record({ amount: wild, date: wild, container: fc.constantFrom('cup', 'bin', 'nonsense', null) }),
          { maxLength: 4 },
        ),
        fc.record({
          ownUse: wild,
          freshUse: wild,
          ownTarget: wild,
          carry: wild.map((n) => n ?? 0),
          ownMonths: wild,
          servingCups: wild,
          nextSupply: wild,
          freshFrom: fc.option(when, { nil: null }),
          freshTo: fc.option(when, { nil: null }),
          countedIn: fc.constantFrom('quart jar', 'pound', 'nonsense', null),
          crops: fc.array(fc.record({ crop: fc.constant('tomato'), pounds: wild }), { maxLength: 2 }),
        }),
        fc.record({
          cushion: wild.map((n) => n ?? 0),
          ledgerFrom: wild,
          basis: fc.constantFrom('lean', 'usual', 'good'),
        }),
        (lots, draws, foodRow, house) => {
          const input = line({
            row: row(foodRow),
            lots: lots.map((more, i) => ({ ...lot(`l${i}`, 1), ...more })),
            draws: draws.map((more, i) => ({ ...draw(`d${i}`, 1), ...more })),
          });
          const made = plan(input, at(house));
          const said: unknown[] = [];
          for (const column of Object.keys(made.food!.figures)) {
            said.push(explainFood(input, at(house), made, column as keyof FoodFigures, emptyGuide));
          }
          for (const [id, { figures }] of made.lots) {
            for (const column of Object.keys(figures)) {
              said.push(explainLot(input, at(house), made, id, column as keyof LotFigures, emptyGuide));
            }
          }
          for (const [id, { figures }] of made.draws) {
            for (const column of Object.keys(figures)) {
              said.push(explainDraw(input, at(house), made, id, column as keyof DrawFigures, emptyGuide));
            }
          }
          expect(JSON.stringify(said)).not.toMatch(/NaN|Infinity|undefined/);
          for (const n of numbersIn(said)) expect(Number.isFinite(n)).toBe(true);
          for (const n of numbersIn(made)) expect(Number.isFinite(n)).toBe(true);
          for (const { figures } of made.lots.values()) expect(String(figures.best_by)).not.toContain('NaN');
        },
      ),
      { numRuns: 500 },
    );
  });
});
