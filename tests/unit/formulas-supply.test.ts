import { describe, expect, it } from 'vitest';
import { leftAt, paceToUseUp, runsOutOn, toPutUp, weeksOfSupply } from '../../src/planning/supply.js';
import { call, callWith, dayOf } from './formulas-support.js';

const column = <T>(...cells: readonly T[]) => cells.map((cell) => [cell]);

describe('supply functions', () => {
  it('answers as the planners do', () => {
    const asOf = dayOf('2026-02-01');
    expect(call('WEEKS_OF_SUPPLY', 17, 0.6)).toBe((weeksOfSupply(17, 0.6) as { value: number }).value);
    expect(call('RUNS_OUT_ON', 17, 0.6)).toBe((runsOutOn(17, 0.6, asOf) as { value: string }).value);
    expect(call('LEFT_AT', 17, 0.6, '2026-05-01')).toBe(
      (leftAt(17, 0.6, dayOf('2026-05-01'), asOf) as { value: number }).value,
    );
    expect(call('PACE_TO_USE_UP', 5, '2026-05-01')).toBe(
      (paceToUseUp(5, dayOf('2026-05-01'), asOf) as { value: number }).value,
    );
    expect(call('TO_PUT_UP', 0.7, 40, 2.5, 0.2)).toBe(
      (toPutUp(0.7, 40, 2.5, 0.2) as { value: number }).value,
    );
  });

  it('uses up a surplus of 24 quarts in thirty weeks at 0.8 a week', () => {
    // Common practice, no source: arithmetic.
    expect(call('PACE_TO_USE_UP', 24, '2026-08-30', '2026-02-01')).toBeCloseTo(0.8, 12);
  });

  it("counts from the book's as-of date unless another is given", () => {
    expect(call('RUNS_OUT_ON', 4, 1)).toBe('2026-03-01');
    expect(call('RUNS_OUT_ON', 4, 1, null)).toBe('2026-03-01');
    expect(call('RUNS_OUT_ON', 4, 1, '')).toBe('2026-03-01');
    expect(call('RUNS_OUT_ON', 4, 1, '2026-03-01')).toBe('2026-03-29');
    expect(call('MONTHS_KEPT', '2025-08-01')).toBe(6);
  });

  it('takes nothing from the shelf in the fresh season', () => {
    // Four weeks from 1 July, with July and August fresh: all of it is left on 1 September.
    expect(call('RUNS_OUT_ON', 4, 1, '2026-07-01', '07-01', '08-31')).toBe('2026-09-29');
    expect(call('LEFT_AT', 4, 1, '2026-08-15', '2026-07-01', '07-01', '08-31')).toBe(4);
    expect(call('RUNS_OUT_ON', 4, 1, '2026-07-01', '01-01', '12-31')).toBe('not eaten from the shelf');
    expect(call('RUNS_OUT_ON', 4, 1, '2026-07-01', '07-01')).toMatch(
      /“fresh_from” is given without “fresh_to”/,
    );
    expect(call('PACE_TO_USE_UP', 4, '2026-08-01', '2026-07-01', '07-01', '08-31')).toMatch(/PROBLEM/);
  });

  it('has words where no number is true', () => {
    expect(call('WEEKS_OF_SUPPLY', 10, 0)).toBe('no use');
    expect(call('RUNS_OUT_ON', 10, 0)).toBe('no use');
    expect(call('RUNS_OUT_ON', 10, 0.001)).toBe('more than ten years');
  });

  it('puts up with a tenth more unless told otherwise', () => {
    // A year of 40 weeks at 4 quarts a week for five (an annual preserving table: 200 quarts), nothing left.
    expect(call('TO_PUT_UP', 5, 40, 0, 0)).toBe(200);
    expect(call('TO_PUT_UP', 5, 40, 0)).toBe(220);
    expect(call('TO_PUT_UP', 1, 40, 100)).toBe(0);
  });

  it('gives a quality date by the way kept, later on a good basis', () => {
    // NCHFP: home-canned food is best within a year; frozen fruit and vegetables 8 to 12 months.
    expect(call('BEST_BY', '2025-08-20', 'canned', 'peaches')).toBe('2026-08-20');
    expect(callWith('lean', 'BEST_BY', '2025-08-20', 'frozen', 'peaches')).toBe('2026-04-20');
    expect(callWith('good', 'BEST_BY', '2025-08-20', 'frozen', 'peaches')).toBe('2026-08-20');
    expect(call('BEST_BY', '2025-08-20', 'freeze-dried', 'peaches')).toMatch(/PROBLEM/);
    expect(call('BEST_BY', '2025-08-20', 'pickled', 'peaches')).toMatch(/"canned"/);
  });
});

describe('use learned from a ledger', () => {
  it('divides what was taken by the weeks', () => {
    expect(call('USE_PER_WEEK', column('2026-01-04', '2026-01-18'), column(3, 1), null, 8)).toBe(0.5);
    // Without weeks, from the first draw on: four weeks from 4 January.
    expect(call('USE_PER_WEEK', column('2026-01-04', '2026-01-18'), column(3, 1))).toBe(1);
  });

  it('pairs the two columns, passing over blank rows', () => {
    const dates = column('2026-01-04', null, '', '2026-01-18');
    expect(call('USE_PER_WEEK', dates, column(3, null, null, 1), null, 8)).toBe(0.5);
    expect(call('USE_PER_WEEK', dates, column(3, 2, null, 1), null, 8)).toMatch(
      /Draw 2 has an amount but no date/,
    );
    expect(call('USE_PER_WEEK', dates, column(3, null, null, null), null, 8)).toMatch(/Draw 4.*no amount/);
    expect(call('USE_PER_WEEK', dates, column(3), null, 8)).toMatch(/4 cells of dates and 1 of amounts/);
    expect(call('USE_PER_WEEK', column('soon'), column(3), null, 8)).toMatch(/“soon” is not a date/);
  });

  it('learns nothing from under four weeks', () => {
    expect(call('USE_PER_WEEK', column('2026-01-18'), column(3))).toMatch(/teach nothing yet/);
  });

  it('gives a range that does not depend on the unit', () => {
    const dates = column('2026-01-04', '2026-01-11', '2026-01-25');
    const quarts = call('USE_RANGE', dates, column(1, 2, 1), 0.9, null, 8) as number;
    const pints = call('USE_RANGE', dates, column(2, 4, 2), 0.9, null, 8) as number;
    expect(pints).toBeCloseTo(2 * quarts, 9);
    expect(call('USE_RANGE', dates, column(1, 2, 1), 1.5)).toMatch(/between 0 and 1/);
  });
});

describe('measures', () => {
  it('turns servings into jars', () => {
    // An annual preserving table: tomatoes four times a week, 40 weeks, 1 cup: 40 quarts a person; peaches twice,
    // half a cup: 10 quarts; berries twice in three weeks, half a cup: 3⅓ quarts.
    expect(call('MEASURE', 4 * 40 * 1, 'cups', 'quart jars')).toBe(40);
    expect(call('MEASURE', 2 * 40 * 0.5, 'cups', 'quarts')).toBe(10);
    expect(call('MEASURE', (2 / 3) * 40 * 0.5, 'cup', 'qt')).toBeCloseTo(10 / 3, 9);
    expect(call('SERVINGS_IN', 'quart', 10, 0.5)).toBe(80);
    expect(call('SERVINGS_IN', 'quart', 10, 0)).toMatch(/0 cups/);
    expect(call('SERVINGS_IN', 'pound', 2, 1)).toMatch(/PROBLEM/);
  });

  it('knows what containers hold', () => {
    expect(call('CONTAINER_HOLDS', 'half-gallon jar')).toBe(2);
    expect(call('CONTAINER_HOLDS', 'no. 10 can', 'cups')).toBe(12);
    expect(call('CONTAINER_HOLDS', 'pound')).toBe(1);
    expect(call('CONTAINER_HOLDS', 'bin')).toMatch(/not known/);
    expect(call('CONTAINER_HOLDS', 'jam jarr')).toMatch(/PROBLEM/);
  });

  it('weighs a food only where a weight is published', () => {
    // University of Missouri MP563: a pound of cornmeal is 3 cups. USDA: milk 8.6 lb a gallon.
    expect(call('MEASURE', 2, 'pound', 'cup', 'cornmeal')).toBeCloseTo(6, 6);
    expect(call('MEASURE', 1, 'gallon', 'pounds', 'milk')).toBeCloseTo(8.6, 9);
    expect(call('MEASURE', 2, 'pound', 'cup')).toMatch(/weighs is not known/);
    expect(call('MEASURE', 2, 'pound', 'cup', 'tomatos')).toMatch(/did you mean tomato/);
    // USDA AIB 539: 53 lb of tomatoes to the bushel. A bushel of produce is never so many quarts of it.
    expect(call('MEASURE', 2, 'bushels', 'lb', 'tomatoes')).toBe(106);
    expect(call('MEASURE', 1, 'bushel', 'quart', 'tomato')).toMatch(/PROBLEM/);
  });

  it('converts by the codes of the standard', () => {
    // OpenDocument 1.3, part 4, CONVERT.
    expect(call('CONVERT', 1, 'lbm', 'kg')).toBe(0.45359237);
    expect(call('CONVERT', 100, 'C', 'F')).toBeCloseTo(212, 9);
    expect(call('CONVERT', 1, 'pound', 'kg')).toMatch(/did you mean lbm/);
  });
});
