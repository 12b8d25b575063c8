import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { toIsoDay } from '../../src/planning/dates.js';
import {
  frostYears,
  ownFigures,
  type PlantingRow,
  planWindows,
  seasonOfHarvest,
  withFreshSeason,
} from '../../src/planning/garden/index.js';
import { harvestFrom, lastSowing, setOutOn, startOn } from '../../src/planning/growing-dates.js';
import { bedsOf, bench, fact, planting } from './garden-make.js';
import { day, row } from './planning-make.js';

const plus = (iso: string, days: number) => DateTime.fromISO(iso, { zone: 'utc' }).plus({ days }).toISODate();
const shown = (rows: PlantingRow[], at = bench()) => bedsOf(rows, {}, at).rows.get(rows[0]!.id)!;

describe('dates from the frosts', () => {
  it('tomato, last frost 1 June: seven weeks indoors start on 13 April', () => {
    // An intensive mini-farming text: set out on the last frost, start seven weeks before; checked with luxon.
    const at = bench('2026-02-01', { lastFrost: { month: 6, day: 1 }, firstFrost: { month: 9, day: 18 } });
    const { figures } = shown([planting('t', 'tomato')], at);
    expect(figures.set_out_on).toBe('2026-06-01');
    expect(figures.start_on).toBe(plus('2026-06-01', -49));
    expect(figures.start_on).toBe('2026-04-13');
    // 70 to 90 days from setting out, the middle 80; frost kills it.
    expect(figures.harvest_from).toBe(plus('2026-06-01', 80));
    expect(figures.harvest_to).toBe('2026-09-18');
  });
  it('agree with the formula functions where nothing is the household’s own', () => {
    const last = day('2026-05-24');
    const first = day('2026-09-18');
    for (const crop of ['tomato', 'cabbage', 'carrot', 'snap bean', 'potato', 'broccoli']) {
      const { figures } = shown([planting('p', crop)]);
      const start = startOn(crop, last);
      const out = setOutOn(crop, last);
      const late = lastSowing(crop, first);
      expect(start.ok && toIsoDay(start.value.day)).toBe(figures.start_on);
      if (figures.set_out_on !== null) expect(out.ok && toIsoDay(out.value.day)).toBe(figures.set_out_on);
      expect(late.ok ? toIsoDay(late.value.day) : null).toBe(figures.latest_sowing);
      const from = harvestFrom(crop, day(String(figures.set_out_on ?? figures.start_on)));
      expect(from.ok && toIsoDay(from.value.day)).toBe(figures.harvest_from);
    }
  });
  it('a crop whose days count from setting out has its weeks as a seedling on top where it is sown direct', () => {
    // Cucumber: 60 days from setting out, 3 weeks as a seedling; sown a week after the last frost.
    const { figures } = shown([planting('c', 'cucumber', { how: 'direct' })]);
    expect(figures.harvest_from).toBe(plus('2026-05-31', 21 + 60));
    expect(shown([planting('c', 'cucumber', { how: 'indoors' })]).figures.harvest_from).toBe(
      plus('2026-05-31', 60),
    );
  });
  it('own days and weeks of Facts move them', () => {
    const figures = ownFigures([
      fact('d', 'tomato, days to maturity', { ownValue: 60 }),
      fact('w', 'tomato, weeks indoors', { ownValue: 9 }),
    ]);
    const found = bedsOf([planting('t', 'tomato')], {}, bench(), figures).rows.get('t')!.figures;
    expect(found.start_on).toBe(plus('2026-05-24', -63));
    expect(found.harvest_from).toBe(plus('2026-05-24', 60));
  });
  it('a sowing that was written down wins, and belongs to its own season', () => {
    const early = shown([planting('t', 'tomato', { sownOn: day('2026-03-01') })]).figures;
    expect(early.start_on).toBe('2026-03-01');
    // Sown early, it waits for the weather; sown late, for its seven weeks.
    expect(early.set_out_on).toBe('2026-05-24');
    expect(shown([planting('t', 'tomato', { sownOn: day('2026-05-01') })]).figures.set_out_on).toBe(
      plus('2026-05-01', 49),
    );
    // Garlic planted in fall is for the summer after: 240 days (Arkansas Extension).
    const garlic = shown(
      [planting('g', 'garlic', { sownOn: day('2025-10-10') })],
      bench('2025-11-01'),
    ).figures;
    expect(garlic.harvest_from).toBe(plus('2025-10-10', 240));
  });
  it('a crop that frost kills before it is ready says so', () => {
    const late = shown([planting('m', 'cantaloupe', { how: 'direct', sownOn: day('2026-07-20') })]);
    expect(late.problems?.harvest_to?.code).toBe('frost-comes-first');
    expect(late.figures.harvest_to).toBeNull();
  });
  it('trees and crowns take the household’s own window', () => {
    const tree = planting('a', 'apple', { ownFrom: { month: 9, day: 10 }, ownTo: { month: 10, day: 5 } });
    expect(shown([tree]).figures).toMatchObject({ harvest_from: '2026-09-10', harvest_to: '2026-10-05' });
    expect(shown([planting('a', 'apple')]).problems?.harvest_from?.code).toBe('perennial-dates');
  });
});

describe('seasons', () => {
  it('the plan is for the season in progress, then for the next', () => {
    expect(shown([planting('c', 'carrot')], bench('2026-09-18')).figures.start_on).toMatch(/^2026/);
    expect(shown([planting('c', 'carrot')], bench('2026-09-19')).figures.start_on).toMatch(/^2027/);
  });
  it('a southern place: last spring frost in October, harvest after the new year', () => {
    const south = bench('2026-08-01', {
      lastFrost: { month: 10, day: 5 },
      firstFrost: { month: 4, day: 20 },
    });
    const { figures } = shown([planting('t', 'tomato')], south);
    expect(figures.set_out_on).toBe('2026-10-05');
    expect(figures.harvest_from).toBe(plus('2026-10-05', 80));
    expect(figures.harvest_to).toBe('2027-04-20');
    // In February the same season is still the one planned.
    const later = { ...south, asOf: day('2027-02-10') };
    expect(shown([planting('t', 'tomato')], later).figures.harvest_to).toBe('2027-04-20');
  });
  it('leap days: a frost on 29 February falls on the 28th in common years', () => {
    const at = (asOf: string) =>
      bench(asOf, { lastFrost: { month: 2, day: 29 }, firstFrost: { month: 11, day: 20 } });
    expect(shown([planting('b', 'snap bean')], at('2027-01-01')).figures.start_on).toBe('2027-02-28');
    expect(shown([planting('b', 'snap bean')], at('2028-01-01')).figures.start_on).toBe('2028-02-29');
    // Days run over the leap day as luxon counts them.
    expect(shown([planting('b', 'snap bean')], at('2028-01-01')).figures.harvest_from).toBe(
      plus('2028-02-29', 55),
    );
  });
  it('missing or reversed frost dates give a message and no dates', () => {
    const none = bench('2026-02-01', { lastFrost: null });
    expect(shown([planting('t', 'tomato')], none).problems?.start_on?.code).toBe('frost-dates-missing');
    const same = bench('2026-02-01', { lastFrost: { month: 6, day: 20 }, firstFrost: { month: 6, day: 10 } });
    const found = frostYears(same);
    expect(!found.ok && found.problem.code).toBe('frost-dates-reversed');
    expect(shown([planting('t', 'tomato')], same).figures.start_on).toBeNull();
  });
  it('a harvest belongs to the season from mid-winter to mid-winter', () => {
    const years = frostYears(bench());
    if (!years.ok) throw new Error('no frosts');
    const yearOf = (iso: string) => seasonOfHarvest(years.value, day(iso)).year;
    // Asparagus before the last frost, kale after the first one, leeks out of the snow.
    expect(['2026-05-01', '2026-11-20', '2026-01-05', '2026-02-20'].map(yearOf)).toEqual([
      2026, 2026, 2025, 2026,
    ]);
  });
});

describe('harvest windows of crops', () => {
  it('span the plantings of a crop; the coming one and the one after', () => {
    const windows = planWindows(
      [
        planting('a', 'snap bean'),
        planting('b', 'snap bean', { sownOn: day('2026-06-20') }),
        planting('none', 'snap bean', { plants: 0, sownOn: day('2026-05-01') }),
      ],
      bench('2026-07-01'),
    );
    const beans = windows.crops.get('snap bean')!;
    expect(toIsoDay(beans.next.from)).toBe(plus('2026-05-24', 55));
    expect(toIsoDay(beans.next.to!)).toBe('2026-09-18');
    expect(toIsoDay(beans.following!.from)).toBe(plus('2027-05-24', 55));
  });
  it('one in progress is the coming one', () => {
    const windows = planWindows([planting('t', 'tomato')], bench('2026-09-01'));
    expect(toIsoDay(windows.crops.get('tomato')!.next.from)).toBe('2026-08-12');
  });
  it('fill the fresh season of Foods where the person wrote none', () => {
    const windows = planWindows([planting('t', 'tomato')], bench());
    const tomatoes = row({
      crops: [
        { crop: 'tomatoes', pounds: 3 },
        { crop: 'onion', pounds: 0.2 },
      ],
    });
    expect(withFreshSeason(tomatoes, windows)).toMatchObject({
      freshFrom: { month: 8, day: 12 },
      freshTo: { month: 9, day: 18 },
    });
    const typed = { ...tomatoes, nextSupply: day('2026-08-01') };
    expect(withFreshSeason(typed, windows)).toBe(typed);
    const bought = { ...tomatoes, comesFrom: 'bought' } as const;
    expect(withFreshSeason(bought, windows)).toBe(bought);
  });
});
