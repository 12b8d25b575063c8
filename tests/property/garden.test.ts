import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  explainBatch,
  explainFact,
  explainHarvest,
  explainPlanting,
  explainSupply,
  HOW_PLANTED,
  ownFigures,
  type PlantingRow,
  planBatches,
  planBeds,
  planFacts,
  planHarvest,
  planRoom,
  planSupplies,
  planWindows,
  poundsWanted,
  publishedOnly,
  turnYear,
} from '../../src/planning/garden/index.js';
import { planLine } from '../../src/planning/index.js';
import { BASES, WAYS_KEPT } from '../../src/planning/types.js';
import { batch, bedsOf, bench, fact, harvested, planting } from '../unit/garden-make.js';
import { day, line, lot, row } from '../unit/planning-make.js';

const CROPS = [
  'tomato',
  'carrot',
  'apple',
  'sweet corn',
  'garlic',
  'endive',
  'asparagus',
  'cucumber',
  'no such crop',
];
const crop = fc.constantFrom(...CROPS);
const tame = fc.option(fc.double({ min: 0, max: 5000, noNaN: true }), { nil: null });
const absurd = fc.option(
  fc.oneof(
    fc.constantFrom(0, -1, 1e-9, 1e9, 1e12, 1e308, Number.NaN, Number.POSITIVE_INFINITY, 0.1),
    fc.double(),
  ),
  { nil: null },
);
const someDay = fc.option(
  fc.oneof(fc.integer({ min: day('2020-01-01'), max: day('2030-12-31') }), fc.constant(1e9)),
  { nil: null },
);
const monthDay = fc.option(
  fc.record({ month: fc.integer({ min: 1, max: 12 }), day: fc.integer({ min: 1, max: 31 }) }),
  { nil: null },
);
const plantings = (amount: fc.Arbitrary<number | null>): fc.Arbitrary<PlantingRow[]> =>
  fc
    .array(
      fc.record({
        crop: fc.option(crop, { nil: null, freq: 9 }),
        how: fc.option(fc.constantFrom(...HOW_PLANTED), { nil: null }),
        variety: fc.constantFrom('', 'dwarf'),
        plants: amount,
        ownYield: amount,
        ownSpacing: amount,
        nthYear: fc.option(fc.integer({ min: 1, max: 30 }), { nil: null }),
        sownOn: someDay,
        ownFrom: monthDay,
        ownTo: monthDay,
        seedsOnHand: amount,
        packetYear: fc.option(fc.integer({ min: 1900, max: 2200 }), { nil: null }),
      }),
      { maxLength: 6 },
    )
    .map((all) => all.map(({ crop: of, ...more }, i) => planting(`p${i}`, of, more)));
const places = fc
  .record({ lastFrost: monthDay, firstFrost: monthDay, basis: fc.constantFrom(...BASES) })
  .map((more) => bench('2026-03-01', more));
const someFacts = fc
  .array(
    fc.record({
      figure: fc.constantFrom(
        'tomato, yield',
        'carrot, spacing',
        'tomato, days to maturity',
        'cucumber, germination',
        'tomato, pounds per quart jar',
        'freezer, pounds per cubic foot',
        'hat',
      ),
      ownValue: absurd,
      season: fc.option(fc.integer({ min: 1900, max: 2200 }), { nil: null }),
      pounds: absurd,
      plants: absurd,
      spacing: absurd,
    }),
    { maxLength: 5 },
  )
  .map((rows) => rows.map(({ figure, ...more }, i) => fact(`f${i}`, figure, more)));

/** No figure is NaN or infinite, and none is a number that could not be written down. */
function sane(figures: object, where: string): void {
  for (const [column, value] of Object.entries(figures)) {
    if (typeof value === 'number')
      expect(Number.isFinite(value), `${where}.${column} is ${value}`).toBe(true);
    else if (typeof value === 'string') expect(value).not.toMatch(/NaN|Infinity|undefined/);
  }
}

describe('beds', () => {
  it('a leaner basis never wants fewer plants for the same pounds', () => {
    fc.assert(
      fc.property(plantings(tame), fc.double({ min: 0, max: 1e5, noNaN: true }), (rows, pounds) => {
        const plans = BASES.map((basis) =>
          bedsOf(
            rows,
            Object.fromEntries(CROPS.map((name) => [name, pounds])),
            bench('2026-03-01', { basis }),
          ),
        );
        for (const name of CROPS) {
          const wanted = plans.map((plan) =>
            [...plan.reckoned.values()]
              .filter((bed) => bed.crop === name && bed.yearsOff === 0)
              .map((bed) => bed.wanted),
          );
          for (const [i, lean] of (wanted[0] ?? []).entries()) {
            const { usual, good } = wanted[0]?.[i] ?? {};
            if (lean.lean == null || usual == null || good == null) continue;
            expect(lean.lean).toBeGreaterThanOrEqual(usual);
            expect(usual).toBeGreaterThanOrEqual(good);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
  it('the shares of a crop add up to what is wanted of it', () => {
    fc.assert(
      fc.property(plantings(tame), fc.double({ min: 0, max: 1e5, noNaN: true }), (rows, pounds) => {
        const plan = bedsOf(rows, { tomato: pounds, apple: pounds });
        for (const name of ['tomato', 'apple']) {
          const beds = [...plan.reckoned.values()].filter((bed) => bed.crop === name);
          const sum = beds.reduce((all, bed) => all + (bed.poundsWanted ?? 0), 0);
          if (beds.length > 0) expect(Math.abs(sum - pounds)).toBeLessThanOrEqual(1e-9 * Math.max(1, pounds));
        }
      }),
      { numRuns: 60 },
    );
  });
  it('more stock of a food never raises the plants wanted of its crops', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 200 }),
        fc.integer({ min: 0, max: 100 }),
        fc.constantFrom(...BASES),
        (some, more, basis) => {
          const at = bench('2026-02-01', { basis });
          const wanted = (count: number) => {
            const plan = planLine(
              line({
                row: row({
                  ownUse: 1.5,
                  crops: [{ crop: 'tomatoes', pounds: 3 }],
                  freshFrom: { month: 8, day: 1 },
                  freshTo: { month: 9, day: 20 },
                }),
                lots: [lot('l', count)],
              }),
              at,
            );
            const pounds = poundsWanted([plan]);
            return bedsOf([planting('t', 'tomato')], Object.fromEntries(pounds), at).rows.get('t')!.figures
              .plants_wanted as number;
          };
          expect(wanted(some + more)).toBeLessThanOrEqual(wanted(some));
        },
      ),
      { numRuns: 40 },
    );
  });
  it('totals by crop equal the sum by food', () => {
    const one = fc.dictionary(
      fc.constantFrom('tomato', 'Tomatoes', 'carrot', 'Carrots'),
      fc.integer({ min: 0, max: 500 }),
    );
    fc.assert(
      fc.property(fc.array(one, { maxLength: 8 }), (lines) => {
        const sums = poundsWanted(lines.map((each) => ({ poundsByCrop: new Map(Object.entries(each)) })));
        const all = (values: Iterable<number>) => [...values].reduce((sum, n) => sum + n, 0);
        expect(all(sums.values())).toBe(all(lines.flatMap((each) => Object.values(each))));
        expect([...sums.keys()].every((key) => key === 'tomato' || key === 'carrot')).toBe(true);
      }),
    );
  });
});

describe('absurd input', () => {
  it('gives blanks and messages, never NaN, Infinity or a hang', () => {
    fc.assert(
      fc.property(
        plantings(absurd),
        places,
        someFacts,
        absurd,
        absurd,
        someDay,
        (rows, at, factRows, a, b, when) => {
          const figures = ownFigures(factRows);
          const windows = planWindows(rows, at, figures);
          const pounds = new Map(CROPS.map((name) => [name, a ?? 10]));
          const beds = planBeds({ plantings: rows, pounds, household: at, figures, windows });
          for (const [id, plan] of beds.rows) {
            sane(plan.figures, 'beds');
            for (const column of Object.keys(plan.figures)) {
              const told = explainPlanting(beds, at, figures, id, column as keyof typeof plan.figures);
              if (told) expect(JSON.stringify(told)).not.toMatch(/NaN|Infinity/);
            }
          }
          for (const { figures: shown } of planFacts(factRows, figures).values()) sane(shown, 'facts');
          for (const each of factRows) explainFact(each, figures, 'in_use');
          const harvest = planHarvest({
            rows: [
              harvested('h', { planting: 'p0', amount: a, plants: b, date: when }),
              harvested('i', { crop: 'tomato', amount: b, unit: 'bushel', date: when }),
            ],
            beds,
            basis: at.basis,
            years: windows.years,
            figures,
          });
          for (const [id, { figures: shown }] of harvest.rows) {
            sane(shown, 'harvest');
            explainHarvest(harvest, id, 'against_plan');
          }
          const household = { ...at, shelfRoom: 100, freezerRoom: 10 };
          const batches = planBatches({
            rows: WAYS_KEPT.map((way, i) =>
              batch(`b${i}`, {
                way,
                crops: [{ crop: 'tomato', pounds: a }],
                filled: i % 2 ? b : null,
                failed: a,
                date: when,
                loadsOf: b,
                hoursALoad: a,
              }),
            ),
            lines: [
              {
                food: 'tomato',
                way: 'canned',
                countedIn: 'quart jar',
                toPutUp: b,
                crops: [{ crop: 'tomato', pounds: b }],
              },
            ],
            household,
            room: { shelf: 5, freezer: 1 },
            figures,
          });
          for (const [id, { figures: shown }] of batches.rows) {
            sane(shown, 'batches');
            explainBatch(batches, household, figures, id, 'jars');
          }
          const supplies = planSupplies(
            [{ id: 's', item: 'salt', onHand: b, usedFor: null, perContainer: a }],
            batches,
          );
          sane(supplies.rows.get('s')!.figures, 'supplies');
          explainSupply(supplies, 's', 'wanted');
          const room = planRoom({
            lines: [
              {
                food: 'tomato',
                way: 'canned',
                countedIn: 'quart jar',
                lots: [{ container: 'quart jar', left: 30 }],
                use: a,
                season: null,
                harvest: when === null ? null : { begins: when, ends: when + 30 },
                toPutUp: b,
                over: a,
              },
            ],
            batches,
            household,
            figures,
          });
          for (const week of room.weeks) sane(week, 'room');
          const turned = turnYear({
            harvest,
            beds,
            batches,
            facts: factRows,
            weekRows: [],
            windows,
            figures,
            asOf: at.asOf,
          });
          expect(turned.summary.join(' ')).not.toMatch(/NaN|Infinity/);
          for (const edit of turned.edits) {
            if (edit.do === 'insert rows') for (const each of edit.rows) sane(each.cells, 'turned');
          }
        },
      ),
      { numRuns: 150 },
    );
  });
  it('no plantings, no batches, no frosts: nothing to say and nothing broken', () => {
    const at = bench('2026-03-01', { lastFrost: null, firstFrost: null });
    const windows = planWindows([], at);
    expect(planBeds({ plantings: [], pounds: new Map(), household: at, windows }).rows.size).toBe(0);
    expect(publishedOnly.inUse({ of: 'no such crop', what: 'yield' }).ok).toBe(false);
  });
});
