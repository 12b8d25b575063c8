import { describe, expect, it } from 'vitest';
import { plantsAt, seedsAt } from '../../src/planning/growing.js';
import { startBefore } from '../../src/planning/growing-dates.js';
import { learned, learnedYield } from '../../src/planning/learned.js';
import { call, dayOf, explain } from './formulas-support.js';

describe('yields and plants', () => {
  it('gives yields as published', () => {
    // Kansas State MF315, Kentucky and Maine: carrots, 100 lb to 100 ft of row.
    expect(call('YIELD_PER_ROW_FOOT', 'carrots')).toBe(1);
    // University of Maine: tomatoes, 8 lb a plant.
    expect(call('YIELD_PER_PLANT', 'tomato')).toBe(8);
    // Kansas State MF315: 120 ears of sweet corn to 100 ft.
    expect(call('YIELD_PER_ROW_FOOT', 'sweet corn', 'each')).toBeCloseTo(1.2, 9);
    expect(call('YIELD_PER_ROW_FOOT', 'sweet corn', 'dozen')).toBeCloseTo(0.1, 9);
    expect(call('YIELD_PER_ROW_FOOT', 'sweet corn')).toMatch(/published in ears, not in pounds.*"each"/);
    // Ask Extension (Michigan): a blueberry bush, 2 to 10 lb, plan on 5.
    expect(
      ['lean', 'usual', 'good'].map((basis) => call('YIELD_PER_PLANT', 'blueberry', null, basis)),
    ).toEqual([2, 5, 10]);
  });

  it('shares a row among its plants where nothing is printed by the plant', () => {
    // 1 lb a foot at 3 inches.
    const carrot = explain('YIELD_PER_PLANT', 'carrot');
    expect(carrot.value).toBeCloseTo(0.25, 9);
    expect(carrot.origin).toBe('computed');
    expect(carrot.notes.join(' ')).toMatch(/3 inches/);
  });

  it('lets the ends take in both ways of printing where they differ', () => {
    // Tomatoes: 8 lb a plant (Maine) beside 80 lb to 100 ft (a New England newsletter) at 18 inches.
    expect(call('YIELD_PER_PLANT', 'tomato', null, 'lean')).toBeCloseTo((0.8 * 18) / 12, 9);
    expect(explain('YIELD_PER_PLANT', 'tomato').low).toBeCloseTo(1.2, 9);
  });

  it('rounds plants up, once', () => {
    // A teaching sheet's arithmetic: 65 lb of strawberries at 2.25 lb a plant is 28.9, so 29 plants.
    expect(plantsAt(65, 2.25)).toBe(29);
    expect(plantsAt(64, 8)).toBe(8);
    expect(plantsAt(0.3 * 3, 0.3)).toBe(3);
    expect(plantsAt(10, 0)).toBeNull();
    expect(call('PLANTS_FOR', 'tomato', 100)).toBe(13);
    expect(call('PLANTS_FOR', 'tomato', 0)).toBe(0);
    // Two bushels of 53 lb.
    expect(call('PLANTS_FOR', 'tomato', 2, 'bushel')).toBe(14);
    expect(call('PLANTS_FOR', 'tomato', 40, 'quart')).toMatch(/POUNDS_PER_JAR/);
    // Limas are printed shelled, and a bushel is weighed in pods.
    expect(call('PLANTS_FOR', 'lima bean', 1, 'bushel')).toMatch(/shelled/);
    expect(call('PLANTS_FOR', 'rutabaga', 10)).toMatch(/No yield is published here for rutabaga/);
  });

  it('divides seeds by germination once', () => {
    // 7 CFR 201.31: broccoli 75 %; 59 ÷ 0.75 = 78.7.
    expect(call('SEEDS_FOR', 'broccoli', 59)).toBe(79);
    expect(seedsAt(75, 75)).toBe(100);
    expect(seedsAt(75, 0)).toBeNull();
    expect(call('SEEDS_FOR', 'potato', 10)).toMatch(/germination/);
  });

  it('lays out rows and beds', () => {
    // University of Missouri: cabbage 12 inches apart. Arizona Master Gardener manual: lima beans 4 to 6 inches.
    expect(call('ROW_FEET_FOR', 'cabbage', 30)).toBe(30);
    expect(call('BED_AREA_FOR', 'lima bean', 144)).toBe(25);
    // Parsnips have no close spacing: 3 by 21 inches in rows (University of Maine, 2 to 4 and 18 to 24).
    expect(call('BED_AREA_FOR', 'parsnip', 144)).toBeCloseTo(63, 9);
    expect(call('ROW_FEET_FOR', 'celeriac', 10)).toMatch(/No spacing/);
  });
});

describe('dates from the frost', () => {
  it('starts a tomato seven weeks before the last frost of 1 June', () => {
    // A homestead handbook's table: last frost 1 June, tomatoes set out then, started 13 April.
    expect(call('SET_OUT_ON', 'tomato', '2026-06-01')).toBe('2026-06-01');
    expect(call('START_ON', 'tomato', '2026-06-01')).toBe('2026-04-13');
    // The same table's cabbage, 13 and 5 weeks before: 2 March and 27 April.
    expect(startBefore(dayOf('2026-06-01'), 13)).toBe(dayOf('2026-03-02'));
    expect(startBefore(dayOf('2026-06-01'), 5)).toBe(dayOf('2026-04-27'));
    // A gardening page: last frost 8 April, 8 and 6 weeks before: 11 and 25 February.
    expect(startBefore(dayOf('2026-04-08'), 8)).toBe(dayOf('2026-02-11'));
    expect(startBefore(dayOf('2026-04-08'), 6)).toBe(dayOf('2026-02-25'));
  });

  it('counts weeks before and after', () => {
    // Peas 6 to 4 weeks before the last frost, sweet corn 2 weeks after (a farm's planting timetable).
    expect(call('SET_OUT_ON', 'green pea', '2026-05-24')).toBe('2026-04-12');
    expect(call('SET_OUT_ON', 'sweet corn', '2026-05-24')).toBe('2026-06-07');
    expect(call('START_ON', 'carrot', '2026-05-24')).toBe('2026-04-19');
    expect(call('START_ON', 'tomato', '2026-06-01', 'direct')).toBe('2026-06-01');
    expect(call('START_ON', 'tomato', '2026-06-01', 'by post')).toMatch(/"indoors" or "direct"/);
    expect(call('START_ON', 'carrot', '2026-05-24', 'indoors')).toMatch(/no weeks of growing indoors/i);
    expect(call('SET_OUT_ON', 'garlic', '2026-05-24')).toMatch(/planted in fall/);
  });

  it('crosses the new year and leap days', () => {
    expect(call('SET_OUT_ON', 'green pea', '2028-04-11')).toBe('2028-02-29');
    expect(call('SET_OUT_ON', 'green pea', '2027-01-20')).toBe('2026-12-09');
  });

  it('counts maturity from setting out or sowing', () => {
    // University of Missouri: tomatoes 70 to 90 days from setting out.
    expect(call('HARVEST_FROM', 'tomato', '2026-06-01')).toBe('2026-08-20');
    expect(explain('HARVEST_FROM', 'tomato', '2026-06-01').notes.join(' ')).toMatch(
      /70 to 90 days.*setting out/,
    );
    expect(call('HARVEST_FROM', 'rutabaga', '2026-06-01')).toMatch(/days to maturity/);
  });

  it('counts back from the first frost', () => {
    // Virginia Cooperative Extension's rule. Beans: 55 days + 14 + 14 as frost kills them.
    expect(call('LAST_SOWING', 'snap bean', '2026-09-18')).toBe('2026-06-27');
    // Spinach stands frost: 45 + 14.
    expect(call('LAST_SOWING', 'spinach', '2026-09-18')).toBe('2026-07-21');
    // Cabbage counts its seedling weeks: 75 + 14 + 5½ weeks.
    expect(call('LAST_SOWING', 'cabbage', '2026-09-18')).toBe('2026-05-13');
    expect(call('LAST_SOWING', 'garlic', '2026-09-18')).toMatch(/PROBLEM/);
  });
});

describe('learned figures', () => {
  it('weighs own seasons by credibility', () => {
    // Z = 3 ÷ (3 + 2): 0.6 × 6 + 0.4 × 8.
    expect(call('LEARNED', 8, [[5, 6, 7]])).toBeCloseTo(6.8, 12);
    expect(call('LEARNED', 8, [[5], [6], [7]], 0)).toBe(6);
    expect(call('LEARNED', 8, [[null], ['']])).toBe(8);
    expect(call('LEARNED', null, [[5, 6, 7]])).toBe(6);
    expect(call('LEARNED', null, [[null]])).toMatch(/neither/);
  });

  it('is the Bayes estimate of a Poisson mean under a gamma prior', () => {
    // Bühlmann (1967): credibility weighting equals the posterior mean where the prior is conjugate. Here the
    // posterior mean is integrated by hand: prior Gamma(k·p, rate k), counts observed, midpoint rule.
    const posterior = (p: number, k: number, counts: readonly number[]) => {
      let top = 0;
      let bottom = 0;
      const step = 0.001;
      for (let rate = step / 2; rate < 60; rate += step) {
        let log = (k * p - 1) * Math.log(rate) - k * rate;
        for (const count of counts) log += count * Math.log(rate) - rate;
        const weight = Math.exp(log);
        top += rate * weight;
        bottom += weight;
      }
      return top / bottom;
    };
    for (const [p, k, counts] of [
      [8, 2, [5, 6, 7]],
      [3, 1, [4]],
      [2, 5, [0, 1, 0, 2]],
    ] as const) {
      const found = learned(p, counts, k);
      expect(found.ok && found.value).toBeCloseTo(posterior(p, k, counts), 6);
    }
  });

  it('learns a yield from raw totals, its ends in proportion', () => {
    // Own mean Σ pounds ÷ Σ plants = 90 ÷ 20 = 4.5; Z = ½; 0.5 × 4.5 + 0.5 × 8 = 6.25.
    const seasons = [
      { pounds: 30, plants: 10 },
      { pounds: 60, plants: 10 },
    ];
    const found = learnedYield({ low: 4, usual: 8, high: 16 }, seasons);
    expect(found).toEqual({ low: 3.125, usual: 6.25, high: 12.5 });
    expect(learnedYield(null, seasons)).toEqual({ low: 4.5, usual: 4.5, high: 4.5 });
    expect(learnedYield({ low: 4, usual: 8, high: 16 }, [])).toEqual({ low: 4, usual: 8, high: 16 });
    expect(learnedYield(null, [{ pounds: 3, plants: 0 }])).toBeNull();
  });
});
