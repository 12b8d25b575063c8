import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asFraction,
  CONTAINERS,
  ceilSafe,
  convert,
  convertCodes,
  convertOpenFormula,
  findContainer,
  findMeasure,
  findUnit,
  floorSafe,
  formatAmount,
  inMeasure,
  UNITS,
} from '../../src/units/index.js';

const amount = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const positive = fc.double({ min: 0.001, max: 1000, noNaN: true });
const unit = fc.constantFrom(...UNITS);
const known = fc.constantFrom(...CONTAINERS.filter((box) => box.holds !== null));
const measure = fc.oneof(unit, known).map((one) => one.id);

const near = (a: number, b: number) => {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(a), Math.abs(b), 1e-300));
};

describe('converting', () => {
  it('there and back is the same amount', () => {
    fc.assert(
      fc.property(amount, measure, measure, (n, from, to) => {
        const there = inMeasure(n, from, to);
        const back = there.ok ? inMeasure(there.value, to, from) : there;
        // What is refused one way is refused the other.
        expect(back.ok || !inMeasure(n, to, from).ok).toBe(true);
        if (back.ok) near(back.value, n);
      }),
    );
  });

  it('by way of a third measure is the same as straight', () => {
    fc.assert(
      fc.property(amount, measure, measure, measure, (n, a, b, c) => {
        const ab = inMeasure(n, a, b);
        const abc = ab.ok ? inMeasure(ab.value, b, c) : ab;
        const ac = inMeasure(n, a, c);
        if (abc.ok && ac.ok) near(abc.value, ac.value);
      }),
    );
  });

  it('twice as much is twice as much', () => {
    fc.assert(
      fc.property(amount, measure, measure, (n, from, to) => {
        const one = inMeasure(n, from, to);
        const two = inMeasure(2 * n, from, to);
        expect(one.ok).toBe(two.ok);
        if (one.ok && two.ok) near(two.value, 2 * one.value);
      }),
    );
  });

  it('through a density also goes there and back', () => {
    const volume = fc.constantFrom(...UNITS.filter((one) => one.dimension === 'volume')).map((one) => one.id);
    const weight = fc.constantFrom(...UNITS.filter((one) => one.dimension === 'weight')).map((one) => one.id);
    fc.assert(
      fc.property(amount, volume, weight, positive, (n, from, to, poundsPerCup) => {
        const there = convert(n, from, to, { poundsPerCup });
        const back = there.ok ? convert(there.value, to, from, { poundsPerCup }) : there;
        expect(back.ok).toBe(true);
        if (back.ok) near(back.value, n);
      }),
    );
  });

  it('no density lets a bushel or a dry quart become jars, cups or quarts', () => {
    const dry = fc
      .constantFrom(...UNITS.filter((one) => one.dimension === 'dry measure'))
      .map((one) => one.id);
    const jars = fc.constantFrom(
      ...CONTAINERS.filter((box) => box.family === 'jar').map((box) => box.id),
      'cup',
      'quart',
    );
    fc.assert(
      fc.property(amount, dry, jars, positive, (n, from, to, poundsPerCup) => {
        expect(inMeasure(n, from, to, { poundsPerCup }).ok).toBe(false);
        expect(inMeasure(n, to, from, { poundsPerCup }).ok).toBe(false);
      }),
    );
  });
});

describe('names', () => {
  it('any text is answered with a thing or with a problem in words', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'grapheme' })), (name) => {
        for (const result of [findUnit(name), findContainer(name), findMeasure(name)]) {
          if (!result.ok) {
            expect(result.problem.message).not.toBe('');
            expect(result.problem.mend).toMatch(/^Write /);
          }
        }
      }),
    );
  });

  it('capitals, blanks, hyphens and full stops do not matter', () => {
    fc.assert(
      fc.property(fc.constantFrom(...CONTAINERS), fc.constantFrom(' ', '-', '  ', ' - '), (box, gap) => {
        const found = findContainer(`  ${box.id.toUpperCase().replace(/ /g, gap)}. `);
        expect(found.ok && found.value.id).toBe(box.id);
      }),
    );
  });
});

describe('CONVERT', () => {
  const group = fc.constantFrom(...Object.values(convertCodes()));
  const pair = group.chain((codes) => fc.tuple(fc.constantFrom(...codes), fc.constantFrom(...codes)));

  it('goes there and back within one group', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), pair, (n, [from, to]) => {
        const there = convertOpenFormula(n, from, to);
        const back = there.ok ? convertOpenFormula(there.value, to, from) : there;
        expect(back.ok).toBe(true);
        // Temperatures lose digits where the zero points lie far apart.
        if (back.ok) expect(Math.abs(back.value - n)).toBeLessThanOrEqual(1e-11 * Math.max(n, 500));
      }),
    );
  });
});

describe('rounding and wording', () => {
  it('never rounds a count of jars below what is needed, but for the ninth digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (n) => {
        const [low, high] = [floorSafe(n), ceilSafe(n)];
        expect(Number.isInteger(low) && Number.isInteger(high)).toBe(true);
        expect(high - low).toBeLessThanOrEqual(1);
        expect(high).toBeGreaterThanOrEqual(n * (1 - 1e-8));
        expect(low).toBeLessThanOrEqual(n * (1 + 1e-8));
      }),
    );
  });

  it('writes every number plainly', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (n) => {
        expect(formatAmount(n)).toMatch(/^-?\d+(\.\d+)?$/);
        expect(asFraction(n)).toMatch(/^-?(\d+(\.\d+)?[⅛¼⅓⅜½⅝⅔¾⅞]?|[⅛¼⅓⅜½⅝⅔¾⅞])$/);
      }),
    );
  });
});
