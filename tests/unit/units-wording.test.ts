import { describe, expect, it } from 'vitest';
import { asFraction, ceilSafe, floorSafe, formatAmount, roundSig } from '../../src/units/index.js';

describe('formatAmount', () => {
  it.each([
    [17.666666, 'quart', '17.7 quarts'],
    [1, 'quart', '1 quart'],
    [0, 'quart', '0 quarts'],
    [-1, 'pint jar', '-1 pint jar'],
    [0.125, 'cup', '0.125 cups'],
    [2150.42, 'cubic inch', '2150 cubic inches'],
    [3.4567, 'pound', '3.46 pounds'],
    [0.1 + 0.2, 'cup', '0.3 cups'],
    [2.0000000001, 'quart jar', '2 quart jars'],
    [3, 'half-gallon jar', '3 half-gallon jars'],
    [5, 'lb a quart', '5 lb a quart'],
    [0.00004, 'gram', '0.00004 grams'],
    [123456789, 'gram', '123456789 grams'],
    [4, '', '4'],
  ])('writes %d %s as %j', (n, label, text) => expect(formatAmount(n, label)).toBe(text));

  it('never writes powers of ten, minus nothing, or a number that is none', () => {
    expect(formatAmount(1e-9)).not.toContain('e');
    expect(formatAmount(2e22)).not.toContain('e');
    expect(formatAmount(-0)).toBe('0');
    expect(formatAmount(Number.NaN, 'quart')).toBe('');
  });
});

describe('asFraction', () => {
  it.each([
    [53 / 3, '17⅔'],
    [17.67, '17⅔'],
    [0.5, '½'],
    [0.25, '¼'],
    [2.75, '2¾'],
    [1 / 3, '⅓'],
    [1.125, '1⅛'],
    [0.375, '⅜'],
    [-1.5, '-1½'],
    [3, '3'],
    [2.999, '3'],
    [0, '0'],
    [17.7, '17.7'],
    [0.001, '0.001'],
    [0.55, '0.55'],
  ])('writes %d as %s', (n, text) => expect(asFraction(n)).toBe(text));

  it('counts one and less in the singular', () => {
    expect(asFraction(0.5, 'quart')).toBe('½ quart');
    expect(asFraction(1, 'quart')).toBe('1 quart');
    expect(asFraction(1.5, 'quart')).toBe('1½ quarts');
    expect(asFraction(0, 'quart')).toBe('0 quarts');
  });
});

describe('safe rounding', () => {
  it('wipes out the crumbs of binary arithmetic before going up or down', () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(roundSig(0.1 + 0.2)).toBe(0.3);
    expect(ceilSafe(1.1 * 10)).toBe(11);
    expect(ceilSafe(3 * 1.1 - 0.3)).toBe(3);
    expect(floorSafe((0.1 + 0.7) * 10)).toBe(8);
    expect(ceilSafe(7.001)).toBe(8);
    expect(floorSafe(7.999)).toBe(7);
    expect(ceilSafe(7.0000000001)).toBe(7);
  });

  it('leaves whole numbers of any size alone, and never answers minus zero', () => {
    expect(ceilSafe(1234567891)).toBe(1234567891);
    expect(floorSafe(1234567891)).toBe(1234567891);
    expect(Object.is(ceilSafe(-0.4), 0)).toBe(true);
    expect(ceilSafe(Number.NaN)).toBeNaN();
  });
});
