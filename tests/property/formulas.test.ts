import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cannedCrops, canning, growing, grownCrops } from '../../src/facts/index.js';
import { callFunction, functions, type GivenValue } from '../../src/formulas/index.js';
import { plantsFor, seedsFor, yieldPerPlant, yieldPerRowFoot } from '../../src/planning/growing.js';
import { learned } from '../../src/planning/learned.js';
import { bushelsFor, cannerLoads, jarsPerBushel, poundsPerJar } from '../../src/planning/putting-up.js';

const amount = fc.integer({ min: 0, max: 1e9 }).map((n) => n / 1000);
const grown = fc.constantFrom(...grownCrops().filter((crop) => yieldPerPlant(crop).ok));
const packs = cannedCrops().flatMap((crop) => {
  const of = canning(crop);
  return of.ok ? of.value.packs.map((pack) => [crop, pack] as const) : [];
});
const inBushels = packs.flatMap(([crop, pack]) =>
  (['quart jar', 'pint jar', 'half-pint jar', '1½-pint jar'] as const).flatMap((jar) =>
    jarsPerBushel(crop, jar, pack).ok ? [[crop, pack, jar] as const] : [],
  ),
);

const value = <T>(result: { ok: true; value: T } | { ok: false; problem: { message: string } }): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};

describe('growing', () => {
  it('never wants fewer plants when leaner', () => {
    fc.assert(
      fc.property(grown, amount, (crop, pounds) => {
        const { lean, usual, good } = value(plantsFor(crop, pounds));
        expect(lean).toBeGreaterThanOrEqual(usual);
        expect(usual).toBeGreaterThanOrEqual(good);
      }),
    );
  });

  it('never wants fewer plants or seeds for more', () => {
    fc.assert(
      fc.property(grown, amount, amount, (crop, a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(value(plantsFor(crop, less)).usual).toBeLessThanOrEqual(value(plantsFor(crop, more)).usual);
        if (!growing(crop).ok || !seedsFor(crop, 1).ok) return;
        expect(value(seedsFor(crop, less)).usual).toBeLessThanOrEqual(value(seedsFor(crop, more)).usual);
        expect(value(seedsFor(crop, less)).usual).toBeGreaterThanOrEqual(less);
      }),
    );
  });

  it('grows enough and not a plant too many', () => {
    fc.assert(
      fc.property(grown, amount, (crop, pounds) => {
        const per = value(yieldPerPlant(crop)).usual;
        const plants = value(plantsFor(crop, pounds)).usual;
        expect(plants * per).toBeGreaterThanOrEqual(pounds * (1 - 1e-8));
        expect((plants - 1) * per).toBeLessThan(pounds + per * 1e-8);
      }),
    );
  });

  it('keeps lean, usual and good in order for every crop', () => {
    for (const crop of grownCrops()) {
      for (const found of [yieldPerPlant(crop), yieldPerRowFoot(crop), yieldPerPlant(crop, 'each')]) {
        if (!found.ok) continue;
        expect(found.value.lean, crop).toBeLessThanOrEqual(found.value.usual);
        expect(found.value.usual, crop).toBeLessThanOrEqual(found.value.good);
        expect(found.value.lean, crop).toBeGreaterThan(0);
      }
    }
  });

  it('learns something between the published figure and the own mean, nearer the own with each season', () => {
    const figure = fc.double({ min: 0, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(figure, figure, fc.integer({ min: 1, max: 60 }), (published, own, seasons) => {
        const of = (n: number) =>
          value(
            learned(
              published,
              Array.from({ length: n }, () => own),
            ),
          );
        const crumb = 1e-9 * Math.max(1, published, own);
        expect(of(seasons)).toBeGreaterThanOrEqual(Math.min(published, own) - crumb);
        expect(of(seasons)).toBeLessThanOrEqual(Math.max(published, own) + crumb);
        expect(Math.abs(of(seasons + 1) - own)).toBeLessThanOrEqual(Math.abs(of(seasons) - own) + crumb);
      }),
    );
  });
});

describe('putting up', () => {
  const pack = fc.constantFrom(...inBushels);

  it('goes from jars to bushels and back', () => {
    fc.assert(
      fc.property(
        pack,
        amount,
        fc.constantFrom('lean', 'usual', 'good'),
        ([crop, name, jar], jars, basis) => {
          const bushels = value(bushelsFor(crop, jars, jar, name))[basis];
          const back = bushels * value(jarsPerBushel(crop, jar, name))[basis];
          expect(back).toBeCloseTo(jars, 4);
        },
      ),
    );
  });

  it('keeps lean, usual and good in order for every pack and jar', () => {
    for (const [crop, name, jar] of inBushels) {
      const jars = value(jarsPerBushel(crop, jar, name));
      expect(jars.lean, `${crop} ${name} ${jar}`).toBeLessThanOrEqual(jars.usual + 1e-9);
      expect(jars.usual, `${crop} ${name} ${jar}`).toBeLessThanOrEqual(jars.good + 1e-9);
      const pounds = value(poundsPerJar(crop, jar, name));
      expect(pounds.lean, `${crop} ${name} ${jar}`).toBeGreaterThanOrEqual(pounds.usual - 1e-9);
      expect(pounds.usual, `${crop} ${name} ${jar}`).toBeGreaterThanOrEqual(pounds.good - 1e-9);
      expect(pounds.good).toBeGreaterThan(0);
    }
    expect(inBushels.length).toBeGreaterThan(40);
  });

  it('makes loads that hold all the jars, none of them spare', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 40 }), (jars, of) => {
        const loads = value(cannerLoads(jars, 'quart jar', of)).usual;
        expect(loads * of).toBeGreaterThanOrEqual(jars);
        expect((loads - 1) * of).toBeLessThan(Math.max(jars, 1));
      }),
    );
  });
});

describe('any call of any function', () => {
  const cell: fc.Arbitrary<GivenValue> = fc.oneof(
    fc.double(),
    fc.integer({ min: -10, max: 3000 }),
    fc.string({ maxLength: 12 }),
    fc.boolean(),
    fc.constant(null),
    fc.record({ day: fc.integer({ min: -200000, max: 200000 }) }),
    fc.constantFrom(
      'tomato',
      'green beans',
      'quart',
      'pint jar',
      'pound',
      'lean',
      'good',
      'canned',
      'dial',
      '05-24',
      '2026-02-01',
    ),
    fc.array(
      fc.array(fc.oneof(fc.double(), fc.constant(null), fc.constant('2026-01-04')), { maxLength: 3 }),
      { maxLength: 3 },
    ),
  );

  it('answers with a sound value or a problem that can be mended', () => {
    fc.assert(
      fc.property(fc.constantFrom(...functions), fc.array(cell, { maxLength: 7 }), (each, given) => {
        const answer = callFunction(each, given, { asOf: 20485, basis: 'usual' });
        if (!answer.ok) {
          expect(answer.problem.code).not.toBe('function-failed');
          expect(answer.problem.message).not.toBe('');
          return;
        }
        if (typeof answer.value === 'number') expect(Number.isFinite(answer.value)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
