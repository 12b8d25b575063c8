import { describe, expect, it } from 'vitest';
import { call, callWith, explain } from './formulas-support.js';

const PROBLEM = /^PROBLEM: /;

describe('jars per bushel, as printed', () => {
  // USDA Agriculture Information Bulletin 539, Complete Guide to Home Canning: the sentence on quantity of each
  // food, as carried by the NCHFP, Michigan State, Florida and Missouri extensions.
  it.each([
    ['tomato', undefined, 15, 53 / 3, 21],
    ['tomato', 'thin sauce', 10, 53 / 5, 12],
    ['apple', 'sliced', 16, 48 / 2.75, 19],
    ['pear', undefined, 16, 20, 25],
    ['plum', undefined, 22, 28, 36],
    ['apricot', undefined, 20, 50 / 2.25, 25],
    ['green bean', undefined, 12, 15, 20],
    ['sweet corn', 'whole kernel', 6, 35 / 4.5, 11],
    ['green pea', undefined, 5, 30 / 4.5, 10],
  ])('%s, %s', (crop, pack, lean, usual, good) => {
    expect(call('JARS_PER_BUSHEL', crop, 'quart', pack, 'lean')).toBeCloseTo(lean, 9);
    expect(call('JARS_PER_BUSHEL', crop, 'quart', pack, 'usual')).toBeCloseTo(usual, 9);
    expect(call('JARS_PER_BUSHEL', crop, 'quart', pack, 'good')).toBeCloseTo(good, 9);
  });

  it("follows the household's season basis when none is given", () => {
    expect(callWith('lean', 'JARS_PER_BUSHEL', 'tomato')).toBe(15);
    expect(callWith('good', 'JARS_PER_BUSHEL', 'tomato')).toBe(21);
    expect(callWith('good', 'JARS_PER_BUSHEL', 'tomato', null, null, 'lean')).toBe(15);
  });

  it('works out a crop printed only by the lug, and says so', () => {
    // Grapes whole: USDA AIB 539 prints a lug of 26 lb and 2 lb a quart; the bushel weight is from elsewhere.
    const grape = explain('JARS_PER_BUSHEL', 'grape', 'quart', 'whole');
    expect(grape.notes.join(' ')).toMatch(/worked out/);
    expect(grape.origin).toBe('computed');
    // Rhubarb has neither a printed bushel nor a bushel weight: the error names what is missing.
    expect(call('JARS_PER_BUSHEL', 'rhubarb')).toMatch(/bushel weight.*rhubarb/);
  });

  it('takes crops that go in pints only by the pint', () => {
    // USDA AIB 539, Guide 4: peppers, 1 lb a pint, 20 to 30 pints to a bushel of 25 lb.
    expect(call('JARS_PER_BUSHEL', 'pepper')).toBe(25);
    expect(call('JARS_PER_BUSHEL', 'pepper', 'pint', null, 'lean')).toBeCloseTo(20, 9);
    expect(call('JARS_PER_BUSHEL', 'pepper', 'pint', null, 'good')).toBeCloseTo(30, 9);
    expect(call('JARS_PER_BUSHEL', 'pepper', 'quart')).toMatch(/no tested process.*quart jars.*pint jars/);
    expect(call('POUNDS_PER_JAR', 'sweet corn', 'quart', 'cream style')).toMatch(/no tested process/);
  });
});

describe('pounds per jar', () => {
  it('gives the printed average of a quart', () => {
    // USDA AIB 539: whole tomatoes 3 lb, thin sauce 5 lb, corn in husks 4½ lb, dry beans ¾ lb.
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart')).toBe(3);
    expect(call('POUNDS_PER_JAR', 'tomatoes', 'quarts', 'sauce')).toBe(5);
    expect(call('POUNDS_PER_JAR', 'sweet corn', 'quart', 'whole kernel')).toBe(4.5);
    expect(call('POUNDS_PER_JAR', 'dry beans', 'quart')).toBe(0.75);
  });

  it('goes by the load for crushed tomatoes, whose printed average contradicts it', () => {
    // NCHFP, crushed tomatoes: 22 lb to 7 quarts beside an average of 2¾ lb.
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart', 'crushed')).toBeCloseTo(22 / 7, 5);
    const bushel = (basis: string) => call('JARS_PER_BUSHEL', 'tomato', 'quart', 'crushed', basis) as number;
    expect(bushel('usual')).toBeLessThan(17);
    expect(bushel('lean')).toBeLessThanOrEqual(bushel('usual'));
    expect(bushel('usual')).toBeLessThanOrEqual(bushel('good'));
  });

  it('gives pints by the printed load of nine, else half of the quart, and says so', () => {
    // USDA AIB 539: 13 lb of whole tomatoes to 9 pints; Michigan State Extension: 11 lb of pears.
    expect(call('POUNDS_PER_JAR', 'tomato', 'pint')).toBeCloseTo(13 / 9, 9);
    expect(call('POUNDS_PER_JAR', 'pear', 'pint')).toBeCloseTo(11 / 9, 9);
    // Sauerkraut is printed by the quart only (25 lb to about 9 quarts, NCHFP).
    const kraut = explain('POUNDS_PER_JAR', 'cabbage', 'pint', 'sauerkraut');
    expect(kraut.value).toBeCloseTo(25 / 9 / 2, 5);
    expect(kraut.notes.join(' ')).toMatch(/half of the figure for quarts/);
  });

  it('counts on more pounds a jar when lean', () => {
    // 53 lb ÷ 15 and ÷ 21 quarts.
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart', null, 'lean')).toBeCloseTo(53 / 15, 9);
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart', null, 'good')).toBeCloseTo(53 / 21, 9);
  });

  it('sizes other jars from these, and says so', () => {
    expect(call('POUNDS_PER_JAR', 'tomato', '1½-pint')).toBeCloseTo(2.25, 9);
    expect(call('POUNDS_PER_JAR', 'tomato', 'half-pint')).toBeCloseTo(13 / 18, 9);
    expect(explain('POUNDS_PER_JAR', 'tomato', 'half-pint').notes.join(' ')).toMatch(/worked out/);
  });

  it('keeps half-gallon jars for apple and grape juice', () => {
    expect(call('POUNDS_PER_JAR', 'grape', 'half-gallon', 'juice')).toBe(7);
    expect(call('POUNDS_PER_JAR', 'tomato', 'half-gallon', 'juice')).toMatch(/apple and grape juice only/);
  });

  it('reads a recipe where only that is printed', () => {
    // USDA AIB 539, Guide 2: 8 lb of apples make 8 to 9 pints of apple butter.
    expect(call('POUNDS_PER_JAR', 'apple', 'pint', 'butter', 'lean')).toBeCloseTo(1, 9);
    expect(call('POUNDS_PER_JAR', 'apple', 'pint', 'butter', 'good')).toBeCloseTo(8 / 9, 9);
  });
});

describe('loads, freezing, drying', () => {
  it('makes loads of 7 quarts or 9 pints, rounded up', () => {
    expect(call('CANNER_LOADS', 7, 'quart')).toBe(1);
    expect(call('CANNER_LOADS', 8, 'quart jars')).toBe(2);
    expect(call('CANNER_LOADS', 18, 'pint')).toBe(2);
    expect(call('CANNER_LOADS', 0, 'pint')).toBe(0);
    expect(call('CANNER_LOADS', 18, 'pint', 18)).toBe(1);
    expect(call('CANNER_LOADS', 12, 'half-pint')).toMatch(/depends on the canner/);
  });

  it('freezes as printed', () => {
    // Michigan State University Extension: peaches, 48 lb give 32 to 48 pints; summer squash, 40 lb 32 to 40;
    // asparagus, 45 lb 30 to 45. (University of Georgia Extension prints the same pounds a pint for peaches.)
    for (const [crop, pounds, lean, good] of [
      ['peach', 48, 32, 48],
      ['summer squash', 40, 32, 40],
      ['asparagus', 45, 30, 45],
    ] as const) {
      expect(call('PINTS_FROZEN', crop, pounds, 'lean')).toBeCloseTo(lean, 6);
      expect(call('PINTS_FROZEN', crop, pounds, 'good')).toBeCloseTo(good, 6);
    }
  });

  it('dries by recalled figures, marked from memory', () => {
    expect(explain('DRIED_FROM', 'onion', 12).origin).toBe('from memory');
    expect(call('DRIED_FROM', 'peach', 12, 'lean')).toBeCloseTo(1, 9);
    expect(call('DRIED_FROM', 'peach', 12, 'good')).toBeCloseTo(1.5, 9);
    expect(call('FRESH_FROM', 'onion', 1.5)).toBeCloseTo(12, 9);
  });
});

describe('pressure and headspace', () => {
  it('steps dial and weighted gauges at different altitudes', () => {
    // USDA AIB 539: a house at 1,500 ft, dial 11 psi, weighted 15 psi.
    expect(call('ALTITUDE_PRESSURE', 'green beans', 1500, 'dial')).toBe(11);
    expect(call('ALTITUDE_PRESSURE', 'green beans', 1500, 'weighted')).toBe(15);
    const dial = (feet: number) => call('ALTITUDE_PRESSURE', 'beef', feet, 'dial gauge');
    expect([0, 2000, 2001, 4000, 4001, 6000, 6001, 8000].map(dial)).toEqual([11, 11, 12, 12, 13, 13, 14, 14]);
    const weighted = (feet: number) => call('ALTITUDE_PRESSURE', 'beets', feet, 'Weighted');
    expect([0, 1000, 1001, 8000].map(weighted)).toEqual([10, 10, 15, 15]);
  });

  it('says nothing above the tables, nor for foods that are not low-acid', () => {
    expect(call('ALTITUDE_PRESSURE', 'beets', 8001, 'dial')).toMatch(PROBLEM);
    for (const food of ['tomato', 'fig', 'peach', 'apples', 'beef stew', 'strawberry jam']) {
      expect(call('ALTITUDE_PRESSURE', food, 1500, 'dial'), food).toBe('see its tested process');
    }
    expect(call('ALTITUDE_PRESSURE', 'broccoli', 1500, 'dial')).toMatch(/Not recommended/);
    expect(call('ALTITUDE_PRESSURE', 'zucchini', 1500, 'dial')).toMatch(/no tested process/);
    expect(call('ALTITUDE_PRESSURE', 'green beens', 1500, 'dial')).toMatch(/did you mean/);
    expect(call('ALTITUDE_PRESSURE', 'beets', 1500, 'steam')).toMatch(/"dial" or "weighted"/);
  });

  it('says with squash that only cubes are canned', () => {
    expect(explain('ALTITUDE_PRESSURE', 'pumpkin', 100, 'dial').notes.join(' ')).toMatch(/inch cubes only/);
  });

  it('gives headspace by class', () => {
    expect(
      ['low-acid', 'vegetables', 'fruit', 'pickles', 'jam', 'juice'].map((of) => call('HEADSPACE', of)),
    ).toEqual([1, 1, 0.5, 0.5, 0.25, 0.25]);
    expect(call('HEADSPACE', 'soup')).toMatch(/low-acid, fruit or jam/);
  });
});
