import { describe, expect, it } from 'vitest';
import type { Result } from '../../src/problem.js';
import { CONTAINERS, containerHolds, convert, inMeasure } from '../../src/units/index.js';

const got = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.message}`);
  return result.value;
};
const refusal = (result: Result<unknown>) => {
  if (result.ok) throw new Error(`not refused: ${JSON.stringify(result.value)}`);
  return result.problem;
};

describe('convert', () => {
  it('turns volume into weight and back through a density', () => {
    // Two cups at 0.5 lb a cup.
    expect(got(convert(2, 'cup', 'pound', { poundsPerCup: 0.5 }))).toBeCloseTo(1, 12);
    expect(got(convert(1, 'pound', 'cups', { poundsPerCup: 0.5 }))).toBeCloseTo(2, 12);
    expect(got(convert(1, 'quart', 'ounce', { poundsPerCup: 0.5 }))).toBeCloseTo(32, 12);
  });

  it('takes pounds per bushel for dry measure', () => {
    expect(got(convert(2, 'peck', 'pound', { pounds: 48, per: 'bushel' }))).toBeCloseTo(24, 12);
  });

  it('asks for the density that it lacks, and says how to give it', () => {
    const problem = refusal(convert(1, 'pound', 'quart'));
    expect(problem.code).toBe('density-missing');
    expect(problem.message).toContain('how much a quart of this food weighs is not known');
    expect(problem.mend).toContain('Give the pounds of this food in a quart, or in a cup.');
    expect(refusal(convert(1, 'ounce', 'cup')).mend).toContain('fluid ounce');
  });

  it('does not take the density of a cup for the weight of a bushel', () => {
    expect(refusal(convert(1, 'bushel', 'pound', { poundsPerCup: 0.5 })).code).toBe('density-missing');
  });

  it('never turns a bushel into quarts by volume', () => {
    for (const [from, to] of [
      ['bushel', 'quart'],
      ['quart', 'bushel'],
      ['dry quart', 'cup'],
      ['peck', 'gallon'],
    ] as const) {
      const problem = refusal(convert(1, from, to));
      expect(problem.code).toBe('dry-and-liquid');
      expect(problem.mend).toContain('JARS_PER_BUSHEL');
    }
    expect(refusal(convert(1, 'bushel', 'quart', { poundsPerCup: 0.5 })).code).toBe('dry-and-liquid');
  });

  it('goes from a bushel to quarts by weight when both weights are known', () => {
    // Tomatoes: 53 lb a bushel, 3 lb a quart (USDA Complete Guide to Home Canning, guide 3).
    const both = [
      { pounds: 53, per: 'bushel' },
      { pounds: 3, per: 'quart' },
    ];
    expect(got(convert(1, 'bushel', 'quart', both))).toBeCloseTo(53 / 3, 12);
  });

  it('never turns a count, a length or an area into anything else', () => {
    expect(refusal(convert(1, 'dozen', 'pound', { poundsPerCup: 1 })).code).toBe('count-does-not-convert');
    expect(refusal(convert(1, 'each', 'pound', { pounds: 2, per: 'each' })).code).toBe(
      'count-does-not-convert',
    );
    expect(refusal(convert(1, 'foot', 'acre')).code).toBe('measures-differ');
    expect(refusal(convert(1, 'foot', 'pound', { poundsPerCup: 1 })).code).toBe('measures-differ');
  });

  it('refuses amounts and densities that are no numbers', () => {
    expect(refusal(convert(Number.NaN, 'cup', 'quart')).code).toBe('not-a-number');
    expect(refusal(convert(Number.POSITIVE_INFINITY, 'cup', 'quart')).code).toBe('not-a-number');
    for (const poundsPerCup of [0, -1, Number.NaN]) {
      expect(refusal(convert(1, 'cup', 'pound', { poundsPerCup })).code).toBe('bridge-not-positive');
    }
  });

  it('passes on an unknown name', () => {
    expect(refusal(convert(1, 'galon', 'quart')).message).toContain('did you mean gallon');
    expect(refusal(convert(1, 'gallon', 'quartz')).message).toContain('did you mean quart');
  });
});

describe('inMeasure', () => {
  it.each([
    [1, 'pint jar', 'quart jar', 0.5],
    [2, 'cups', 'quart jar', 0.5],
    [9, 'pint jars', 'quart jars', 4.5],
    [7, 'quart jars', 'pint jars', 14],
    [1, 'quart', 'pint', 2],
    [3, 'half-pint jars', '1½-pint jar', 1],
    [8, '4 oz jars', 'quart jar', 1],
    [1, 'half-gallon jar', 'quart jar', 2],
    // American Can Company: about 12 cups, 3 quarts.
    [1, 'no. 10 can', 'quart jar', 3],
    [1, '5-gallon bucket', 'quart', 20],
    [24, 'pieces', 'dozen', 2],
    [1, 'kilogram', 'gram', 1000],
    [-2, 'pint jar', 'quart jar', -1],
  ])('%d %s is exactly %s: %d', (amount, from, to, expected) => {
    expect(got(inMeasure(amount, from, to))).toBe(expected);
  });

  it('a jar sized in litres is as many quart jars as its litres are quarts', () => {
    // One US liquid quart is 0.946 352 946 litre: NIST Handbook 44, Appendix C.
    expect(got(inMeasure(1, '1 l jar', 'quart jar'))).toBeCloseTo(1 / 0.946_352_946, 9);
    expect(got(inMeasure(4, '250 ml jar', '½ litre jar'))).toBe(2);
  });

  it('turns pounds into jars by the density, or by the pounds in a jar', () => {
    expect(got(inMeasure(6, 'pound', 'quart jar', { pounds: 3, per: 'quart jar' }))).toBeCloseTo(2, 12);
    expect(got(inMeasure(6, 'pound', 'pint jar', { pounds: 3, per: 'qt' }))).toBeCloseTo(4, 12);
    expect(got(inMeasure(4, 'pound', 'quart jar', { poundsPerCup: 0.5 }))).toBeCloseTo(2, 12);
    const problem = refusal(inMeasure(1, 'pound', 'quart jar'));
    expect(problem.code).toBe('density-missing');
    expect(problem.mend).toContain('a quart jar, or in a cup');
  });

  it('prefers the figure for the very container to one scaled from another', () => {
    // Tomatoes: 21 lb a load of 7 quarts, 13 lb a load of 9 pints (USDA Complete Guide, guide 3).
    const both = [
      { pounds: 3, per: 'quart jar' },
      { pounds: 13 / 9, per: 'pint jar' },
    ];
    expect(got(inMeasure(13, 'pound', 'pint jar', both))).toBeCloseTo(9, 12);
    expect(got(inMeasure(13, 'pound', 'pint', both))).toBeCloseTo(9, 12);
    expect(got(inMeasure(21, 'pound', 'quart jar', both))).toBeCloseTo(7, 12);
  });

  it('refuses a bushel in jars without both weights', () => {
    const problem = refusal(inMeasure(1, 'bushel', 'quart jar'));
    expect(problem.code).toBe('dry-and-liquid');
    expect(problem.message).toContain('depends on the food');
    expect(refusal(inMeasure(1, 'bushel', 'quart jar', { pounds: 53, per: 'bushel' })).code).toBe(
      'dry-and-liquid',
    );
  });

  it('turns pieces into weight only by what a piece weighs', () => {
    expect(refusal(inMeasure(3, 'piece', 'pound')).code).toBe('count-does-not-convert');
    expect(got(inMeasure(3, 'piece', 'pound', { pounds: 2, per: 'piece' }))).toBeCloseTo(6, 12);
  });

  it('asks the household how big a bin is, and then reckons with it', () => {
    const problem = refusal(inMeasure(1, 'bin', 'pound', { poundsPerCup: 0.5 }));
    expect(problem.code).toBe('container-size-unknown');
    expect(problem.mend).toContain('your bin');
    expect(got(inMeasure(2, 'bin', 'gallon', { container: 'bin', amount: 8, unit: 'gallon' }))).toBeCloseTo(
      16,
      12,
    );
    expect(got(inMeasure(0.5, 'bin', 'pound', { container: 'bin', amount: 40, unit: 'pound' }))).toBeCloseTo(
      20,
      12,
    );
    expect(got(inMeasure(0.5, 'bin', 'pound', { pounds: 40, per: 'bin' }))).toBeCloseTo(20, 12);
    expect(got(inMeasure(1, 'bin', 'bushel', { container: 'bin', amount: 2, unit: 'bushel' }))).toBeCloseTo(
      2,
      12,
    );
    expect(got(inMeasure(3, 'bin', 'bins'))).toBe(3);
  });

  it('refuses a bridge that names nothing', () => {
    expect(refusal(inMeasure(1, 'pound', 'cup', { pounds: 3, per: 'quatr' })).message).toContain('quart jar');
    expect(refusal(inMeasure(1, 'bin', 'cup', { container: 'bin', amount: 3, unit: 'galon' })).code).toBe(
      'unknown-measure',
    );
  });
});

describe('containerHolds', () => {
  it('answers in the unit of the container, or in the one asked for', () => {
    expect(got(containerHolds('pint jar'))).toEqual({ amount: 1, unit: 'pint' });
    expect(got(containerHolds('qt', 'cups'))).toEqual({ amount: 4, unit: 'cup' });
    expect(got(containerHolds('no. 10 can', 'quart'))).toEqual({ amount: 3, unit: 'quart' });
    expect(got(containerHolds('dozen', 'each'))).toEqual({ amount: 12, unit: 'each' });
  });

  it('does not make up the size of a bucket', () => {
    expect(refusal(containerHolds('bucket')).code).toBe('container-size-unknown');
    const mine = { container: 'bucket', amount: 2, unit: 'gallon' };
    expect(got(containerHolds('bucket', undefined, mine))).toEqual({ amount: 2, unit: 'gallon' });
    expect(got(containerHolds('bucket', 'quart', mine)).amount).toBeCloseTo(8, 12);
  });

  it('says what lids go with', () => {
    const withLids = CONTAINERS.filter((box) => box.lids).map((box) => box.family);
    expect(new Set(withLids)).toEqual(new Set(['jar']));
  });
});
