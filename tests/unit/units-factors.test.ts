import convertUnits from 'convert-units';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { BASE_UNITS, CONTAINERS, convert, UNITS, unitWithId } from '../../src/units/index.js';

const value = (amount: number, from: string, to: string): number => {
  const result = convert(amount, from, to);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};

const apart = (a: number, b: number) => Math.abs(a / b - 1);

/** Our unit, and what js-quantities and convert-units call it and its base unit ('' where they have none). */
const OUTSIDE: readonly (readonly [string, string, string, string, string])[] = [
  ['teaspoon', 'teaspoon', 'ml', 'tsp', 'ml'],
  ['tablespoon', 'tablespoon', 'ml', 'Tbs', 'ml'],
  ['fluid ounce', 'floz', 'ml', 'fl-oz', 'ml'],
  ['cup', 'cup', 'ml', 'cup', 'ml'],
  ['pint', 'pint', 'ml', 'pnt', 'ml'],
  ['quart', 'quart', 'ml', 'qt', 'ml'],
  ['gallon', 'gallon', 'ml', 'gal', 'ml'],
  ['millilitre', 'ml', 'ml', 'ml', 'ml'],
  ['litre', 'liter', 'ml', 'l', 'ml'],
  ['cubic inch', 'in3', 'ml', 'in3', 'ml'],
  ['cubic foot', 'ft3', 'ml', 'ft3', 'ml'],
  ['dry pint', '', '', '', ''],
  ['dry quart', '', '', '', ''],
  ['peck', '', '', '', ''],
  ['bushel', 'bushel', 'ml', '', ''],
  ['ounce', 'oz', 'g', 'oz', 'g'],
  ['pound', 'lb', 'g', 'lb', 'g'],
  ['gram', 'g', 'g', 'g', 'g'],
  ['kilogram', 'kg', 'g', 'kg', 'g'],
  ['ton', 'short-ton', 'g', '', ''],
  ['tonne', 'tonne', 'g', 'mt', 'g'],
  ['inch', 'in', 'm', 'in', 'm'],
  ['foot', 'ft', 'm', 'ft', 'm'],
  ['yard', 'yd', 'm', 'yd', 'm'],
  ['centimetre', 'cm', 'm', 'cm', 'm'],
  ['metre', 'm', 'm', 'm', 'm'],
  ['square foot', 'ft2', 'm2', 'ft2', 'm2'],
  ['square yard', 'yd2', 'm2', '', ''],
  ['acre', 'acre', 'm2', 'ac', 'm2'],
  ['square metre', 'm2', 'm2', 'm2', 'm2'],
  ['each', 'each', '1', 'ea', 'ea'],
  ['dozen', 'dozen', 'each', 'dz', 'ea'],
];

describe('unit sizes against outside libraries', () => {
  it('looks at every unit', () => {
    expect(OUTSIDE.map(([id]) => id).sort()).toEqual(UNITS.map((unit) => unit.id).sort());
  });

  // js-quantities prints eight or nine digits of each factor.
  it.each(OUTSIDE.filter(([, theirs]) => theirs !== ''))(
    '%s agrees with js-quantities',
    (id, theirs, base) => {
      expect(apart(unitWithId(id)!.factor, Qty(1, theirs).to(base).scalar)).toBeLessThan(1e-7);
    },
  );

  // convert-units links metric and US measures by six digits.
  it.each(OUTSIDE.filter(([, , , theirs]) => theirs !== ''))(
    '%s agrees with convert-units',
    (id, _q, _b, theirs, base) => {
      expect(apart(unitWithId(id)!.factor, convertUnits(1).from(theirs).to(base))).toBeLessThan(1e-5);
    },
  );

  it('counts every unit in the base unit of its dimension', () => {
    for (const base of Object.values(BASE_UNITS)) expect(unitWithId(base)?.factor).toBe(1);
  });
});

describe('unit sizes against printed figures', () => {
  it.each([
    // NIST Handbook 44, Appendix C.
    [1, 'gallon', 'cubic inch', 231],
    [1, 'cup', 'fluid ounce', 8],
    [1, 'bushel', 'cubic inch', 2150.42],
    [1, 'bushel', 'peck', 4],
    [1, 'bushel', 'dry quart', 32],
    [1, 'peck', 'dry quart', 8],
    [1, 'dry quart', 'dry pint', 2],
    [1, 'gallon', 'quart', 4],
    [1, 'quart', 'pint', 2],
    [1, 'pint', 'cup', 2],
    [1, 'tablespoon', 'teaspoon', 3],
    [1, 'fluid ounce', 'tablespoon', 2],
    [1, 'pound', 'ounce', 16],
    [1, 'ton', 'pound', 2000],
    [1, 'yard', 'foot', 3],
    [1, 'foot', 'inch', 12],
    [1, 'square yard', 'square foot', 9],
    [1, 'acre', 'square foot', 43560],
    [1, 'inch', 'centimetre', 2.54],
    // NIST Handbook 133, Appendix E.
    [1, 'peck', 'cubic inch', 537.605],
    [1, 'quart', 'cubic inch', 57.75],
    // The pound in kilograms, as USDA Agriculture Handbook 697 prints it.
    [1, 'pound', 'kilogram', 0.45359237],
    [12, 'each', 'dozen', 1],
  ])('%d %s in %s is exactly %d', (amount, from, to, printed) => {
    expect(value(amount, from, to)).toBe(printed);
  });

  it.each([
    // NIST Handbook 44, Appendix C, as far as it prints digits.
    ['bushel', 'litre', 35.239, 3],
    ['dry quart', 'cubic inch', 67.2006, 4],
    ['cubic foot', 'gallon', 7.481, 3],
    // Worked from 231 and 2,150.42 cubic inches.
    ['bushel', 'cubic foot', 1.24446, 5],
    ['cup', 'cubic inch', 14.4375, 8],
  ])('1 %s is %d %s as printed', (from, to, printed, digits) => {
    expect(value(1, from, to)).toBeCloseTo(printed, digits);
  });

  it('keeps the dry quart 1.16365 times the liquid one', () => {
    // 67.200625 ÷ 57.75 cubic inches.
    expect(value(1, 'dry quart', 'litre') / value(1, 'quart', 'litre')).toBeCloseTo(1.16365, 5);
    expect(value(1, 'bushel', 'litre') / value(1, 'quart', 'litre')).toBeCloseTo(37.2367, 4);
  });
});

describe('the declared tables', () => {
  it('names a source for every unit and container', () => {
    for (const thing of [...UNITS, ...CONTAINERS]) expect(thing.source.length, thing.id).toBeGreaterThan(3);
  });

  it('fills every container of known size in a known unit', () => {
    for (const box of CONTAINERS) {
      if (box.holds) expect(unitWithId(box.holds.unit), box.id).toBeDefined();
    }
  });
});
