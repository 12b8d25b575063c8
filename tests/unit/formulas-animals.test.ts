import { describe, expect, it } from 'vitest';
import { call, explain } from './formulas-support.js';

describe('animals and staples', () => {
  it('counts hens by their age', () => {
    // University of Florida: 250 eggs in the first year, 80, 70 and 60 % in the years after.
    const needed = (aYear: number) => Math.ceil((24 * 365.25) / 7 / aYear);
    expect(call('HENS_FOR', 24, 'good')).toBe(needed(250));
    expect(call('HENS_FOR', 24, 'lean')).toBe(needed(150));
    expect(call('HENS_FOR', 24)).toBe(needed(200));
    expect(call('HENS_FOR', 0)).toBe(0);
  });

  it('spans what the sources print of meat to take home', () => {
    // Kansas State: 500 lb from a steer of 1,300. Penn State: 475 from 1,200. Indiana: 465 from 1,000.
    expect(call('MEAT_FROM', 'steer', 1300, 'lean')).toBeCloseTo(500, 6);
    expect(call('MEAT_FROM', 'beef', 1000, 'good')).toBeCloseTo(465, 6);
    // Penn State 125 and Kentucky 140 lb from a hog of 250; a pork brochure 144; Washington State 104 from 215.
    expect(call('MEAT_FROM', 'hog', 215, 'lean')).toBeCloseTo(104, 6);
    expect(call('MEAT_FROM', 'pigs', 250, 'good')).toBeCloseTo(144, 6);
    expect(explain('MEAT_FROM', 'hog', 250).notes.join(' ')).toMatch(/140 pounds.*250 pounds/);
    // Oklahoma State: lambs dress at 44 to 56 %, 65 to 75 % of it cuts with bone; Kansas State prints up to 59 %.
    expect(call('MEAT_FROM', 'lamb', 100, 'lean')).toBeCloseTo(44 * 0.65, 6);
    expect(call('MEAT_FROM', 'lamb', 100, 'good')).toBeCloseTo(59 * 0.75, 6);
    expect(call('MEAT_FROM', 'unicorn', 100)).toMatch(/no animal called "unicorn"/i);
    expect(call('MEAT_FROM', 'milk', 100)).toMatch(/No meat is published/);
  });

  it('mills wheat', () => {
    // Kansas Wheat: a bushel of 60 lb gives 42 lb of white flour, or 60 lb of whole-wheat flour.
    expect(call('FLOUR_FROM', 'wheat', 30)).toBeCloseTo(21, 9);
    expect(call('FLOUR_FROM', 'whole-wheat', 30)).toBeCloseTo(30, 9);
    expect(call('FLOUR_FROM', 'rye', 30)).toMatch(/No flour yield.*rye/);
  });

  // University of Missouri Extension, MP563: a pound of cornmeal is 3 cups, and a cup makes 4 cups of mush.
  it('cornmeal to mush; beans only where a cup of them is weighed', () => {
    expect(call('DRY_TO_COOKED', 'cornmeal', 1)).toBeCloseTo(12, 9);
    expect(call('DRY_TO_COOKED', 'dry beans', 1)).toMatch(/weight of a cup/);
    expect(call('DRY_TO_COOKED', 'gravel', 1)).toMatch(/not published/);
  });
});
