import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  emptyGuide,
  type Guide,
  gammaQuantile,
  leftAt,
  paceToUseUp,
  planLine,
  runsOutOn,
  toPutUp,
  weeksOfSupply,
} from '../../src/planning/index.js';
import { day, draw, household, line, lot, row } from './planning-make.js';

const { jStat } = jstat;
const plan: typeof planLine = (input, at, guide = emptyGuide) => planLine(input, at, guide);
const lotOf = (made: ReturnType<typeof planLine>, id: string) => made.lots.get(id)!.figures;
const weeks = (n: number) => day('2026-01-01') + n * 7;

describe('the queue', () => {
  it('has 15 of 20 jars good for 5 weeks at risk at one a week, and none of the 10 good for 20', () => {
    const made = plan(
      line({
        row: row({ ownUse: 1 }),
        lots: [lot('a', 20, { ownBestBy: weeks(5) }), lot('b', 10, { ownBestBy: weeks(20) })],
      }),
      household('2026-01-01'),
    );
    expect(lotOf(made, 'a')).toMatchObject({ at_risk: 15, eaten_by: 'not by its best-by', use_first: 1 });
    // 5 weeks of the first, then 10 of the second: week 15.
    expect(lotOf(made, 'b')).toMatchObject({ at_risk: 0, eaten_by: '2026-04-16', use_first: 2 });
    expect(lotOf(made, 'b').weeks_of_supply).toBe(30);
  });

  it('eats opened jars first, then by best-by, then by day put up, undated last', () => {
    const made = plan(
      line({
        row: row({ ownUse: 1 }),
        lots: [
          lot('none', 3),
          lot('old', 3, { putUpOn: day('2024-01-01') }),
          lot('dated', 3, { ownBestBy: day('2027-01-01') }),
          lot('opened', 2.5, { ownBestBy: day('2029-01-01') }),
        ],
      }),
      household('2026-01-01'),
    );
    expect(['opened', 'dated', 'old', 'none'].map((id) => lotOf(made, id).use_first)).toEqual([1, 2, 3, 4]);
  });

  it('sets a lot past best-by aside unless it is still counted on', () => {
    const past = lot('a', 4, { ownBestBy: day('2025-12-31') });
    const on = (more: object) =>
      plan(
        line({ row: row({ ownUse: 2 }), lots: [{ ...past, ...more }, lot('b', 6)] }),
        household('2026-01-01'),
      );
    expect(lotOf(on({}), 'a')).toMatchObject({
      eaten_by: 'past best quality: check, eat or clear out',
      days_left: -1,
      use_first: null,
      at_risk: null,
      weeks_of_supply: 3,
    });
    expect(on({}).food!.figures.on_hand).toBe(10);
    expect(lotOf(on({ stillCounting: true }), 'a')).toMatchObject({
      at_risk: 0,
      use_first: 1,
      weeks_of_supply: 5,
    });
  });

  it('says no use, and puts all dated jars at risk, when nothing is eaten', () => {
    const made = plan(
      line({ row: row({ ownUse: 0 }), lots: [lot('a', 4, { ownBestBy: weeks(5) }), lot('b', 6)] }),
      household('2026-01-01'),
    );
    expect(lotOf(made, 'a')).toMatchObject({
      at_risk: 4,
      eaten_by: 'not by its best-by',
      weeks_of_supply: 'no use',
    });
    expect(lotOf(made, 'b')).toMatchObject({ at_risk: 0, eaten_by: 'no use' });
    expect(made.food!.figures.runs_out_on).toBe('no use');
  });

  it('shows what is at risk in the lot’s own container', () => {
    const made = plan(
      line({ row: row({ ownUse: 1 }), lots: [lot('a', 20, { container: 'pint jar', ownBestBy: weeks(5) })] }),
      household('2026-01-01'),
    );
    // 20 pints are 10 quarts; 5 quarts get eaten, 5 quarts = 10 pints do not.
    expect(lotOf(made, 'a')).toMatchObject({ at_risk: 10, left: 20, holds: 10, servings: 80 });
    expect(made.lots.get('a')!.units).toMatchObject({
      left: 'pint jar',
      at_risk: 'pint jar',
      holds: 'quart',
    });
  });
});

describe('draws', () => {
  const lots = [
    lot('old', 4, { putUpOn: day('2024-09-01'), ownBestBy: day('2026-09-01') }),
    lot('new', 6, { putUpOn: day('2025-09-01'), ownBestBy: day('2027-09-01') }),
  ];
  const at = household('2026-01-01');

  it('take from the oldest lot first and run on into the next', () => {
    const made = plan(line({ lots, draws: [draw('d1', 5, { date: day('2025-12-01') })] }), at);
    expect(made.allotments.get('d1')).toEqual({ old: 4, new: 1 });
    expect(lotOf(made, 'old').left).toBe(0);
    expect(lotOf(made, 'new').left).toBe(5);
    expect(made.draws.get('d1')!.figures).toEqual({
      in_counted: 5,
      took_from: '4 quart jars (put up 2024-09-01); 1 quart jar (put up 2025-09-01)',
      not_found: null,
    });
  });

  it('finish an opened jar before they open another', () => {
    const draws = [
      draw('d1', 1, { date: day('2025-10-01'), container: 'pint jar', lot: 'new' }),
      draw('d2', 1, { date: day('2025-10-02'), container: 'pint jar' }),
      draw('d3', 1, { date: day('2025-10-03') }),
    ];
    const made = plan(line({ lots, draws }), at);
    expect(made.allotments.get('d2')).toEqual({ new: 0.5 });
    expect(made.allotments.get('d3')).toEqual({ old: 1 });
  });

  it('keep what was not found on the shelf, in their own measure', () => {
    const made = plan(line({ lots, draws: [draw('d', 24, { container: 'pint jar' })] }), at);
    expect(made.draws.get('d')!.figures.not_found).toBe(4);
    expect(made.draws.get('d')!.units!.not_found).toBe('pint jar');
  });

  it('cannot take from a lot put up later, nor count before the as-of date', () => {
    const draws = [draw('d1', 5, { date: day('2025-01-01') }), draw('d2', 3, { date: day('2026-01-02') })];
    const made = plan(line({ lots, draws }), at);
    expect(made.allotments.get('d1')).toEqual({ old: 4 });
    expect(made.draws.get('d1')!.figures.not_found).toBe(1);
    expect(made.draws.get('d2')!.figures).toEqual({ in_counted: 3, took_from: null, not_found: null });
    expect(lotOf(made, 'new').left).toBe(6);
  });

  it('leaves crumbs between what is left and what is promised to later draws', () => {
    const made = plan(
      line({
        row: row(),
        lots: [lot('a', 16)],
        // A lot of 16 takes less than 16 thousand-millionths for nothing.
        draws: [
          draw('undated', 2),
          draw('posted', 16, { date: day('2026-01-01'), allotted: { a: 16 - 2e-9 } }),
        ],
      }),
      household('2026-02-01'),
    );
    expect(made.draws.get('undated')!.figures).toMatchObject({ took_from: null, not_found: 2 });
    expect(made.draws.get('posted')!.figures.not_found).toBeNull();
    expect(lotOf(made, 'a').left).toBe(0);
  });

  it('honour what was stored when they were posted, as far as it is there', () => {
    const stored = draw('d', 5, { date: day('2025-12-01'), allotted: { new: 2, gone: 3 } });
    expect(plan(line({ lots, draws: [stored] }), at).allotments.get('d')).toEqual({ new: 2, old: 3 });
    const less = draw('d', 1, { date: day('2025-12-01'), allotted: { new: 2 } });
    expect(plan(line({ lots, draws: [less] }), at).allotments.get('d')).toEqual({ new: 1 });
  });

  it('take from the lot named first, and say so when it is not there', () => {
    const named = plan(line({ lots, draws: [draw('d', 7, { date: day('2025-12-01'), lot: 'new' })] }), at);
    expect(named.allotments.get('d')).toEqual({ new: 6, old: 1 });
    const gone = plan(line({ lots, draws: [draw('d', 1, { date: day('2025-12-01'), lot: 'x' })] }), at);
    expect(gone.allotments.get('d')).toEqual({ old: 1 });
    expect(gone.draws.get('d')!.problems!.took_from!.code).toBe('lot-not-there');
  });

  it('are given back by corrections to the lots they took from, latest first', () => {
    const draws = [
      draw('d1', 5, { date: day('2025-12-01') }),
      draw('d2', -2, { date: day('2025-12-20'), corrects: 'd1' }),
    ];
    const made = plan(line({ lots, draws }), at);
    expect(made.allotments.get('d2')).toEqual({ new: -1, old: -1 });
    expect([lotOf(made, 'old').left, lotOf(made, 'new').left]).toEqual([1, 6]);
    expect(made.draws.get('d2')!.figures.took_from).toContain('gave back 1 quart jar');
  });

  it('say when a correction gives back more than was drawn, and name no draw', () => {
    const draws = [
      draw('d1', 1, { date: day('2025-12-01') }),
      draw('d2', -3, { date: day('2025-12-02'), corrects: 'd1' }),
      draw('d3', -1, { date: day('2025-12-02'), corrects: 'nothing' }),
    ];
    const made = plan(line({ lots, draws }), at);
    expect(lotOf(made, 'old').left).toBe(4);
    expect(made.draws.get('d2')!.problems!.took_from!.code).toBe('gives-back-too-much');
    expect(made.draws.get('d3')!.problems!.took_from!.code).toBe('correction-names-no-draw');
  });

  it('undo the latest ones where a count found more', () => {
    const draws = [
      draw('d1', 5, { date: day('2025-12-01') }),
      draw('d2', -1, { date: day('2025-12-20'), purpose: 'count' }),
    ];
    const made = plan(line({ lots, draws }), at);
    expect([lotOf(made, 'old').left, lotOf(made, 'new').left]).toEqual([0, 6]);
  });

  it('say where a measure does not meet the jars, and leave it out', () => {
    const made = plan(
      line({ lots, draws: [draw('d', 2, { date: day('2025-12-01'), container: 'pound' })] }),
      at,
    );
    expect(made.draws.get('d')!.problems!.in_counted!.message).toMatch(/pound/);
    expect(made.draws.get('d')!.figures).toMatchObject({ in_counted: null, not_found: 2 });
    expect(lotOf(made, 'old').left).toBe(4);
  });
});

describe('use per week', () => {
  const at = household('2026-01-01', { ledgerFrom: weeks(-40) });
  const lots = [lot('a', 100, { putUpOn: weeks(-60) })];

  it('is learned from the weeks observed, with the Jeffreys range', () => {
    const draws = Array.from({ length: 20 }, (_, i) => draw(`d${i}`, 2, { date: weeks(-40 + 2 * i) }));
    const { figures } = plan(line({ row: row(), lots, draws }), at).food!;
    expect(figures.use_per_week).toBe(1);
    // 20 draws of 2 over 40 weeks: 2 × the quantiles of Gamma(20.5, rate 40), from jStat.
    expect(figures.use_low).toBeCloseTo(2 * jStat.gamma.inv(0.1, 20.5, 1 / 40), 8);
    expect(figures.use_high).toBeCloseTo(2 * jStat.gamma.inv(0.9, 20.5, 1 / 40), 8);
    expect(figures.weeks_of_supply).toBe(60);
    expect(figures.weeks_low).toBeCloseTo(60 / (figures.use_high as number), 8);
  });

  it('leaves out gifts and spoiled jars, and counts a count unless told otherwise', () => {
    const with_ = (more: object) =>
      plan(line({ row: row(), lots, draws: [draw('d', 8, { date: weeks(-8), ...more })] }), at).food!.figures;
    expect(with_({}).use_per_week).toBe(0.2);
    expect(with_({ purpose: 'gift' })).toMatchObject({ use_per_week: 0, on_hand: 92 });
    expect(with_({ purpose: 'spoiled' }).use_per_week).toBe(0);
    expect(with_({ purpose: 'count' }).use_per_week).toBe(0.2);
    expect(with_({ purpose: 'count', notUse: true }).use_per_week).toBe(0);
  });

  it('with no draws is 0, and at most the 90 % end for none seen', () => {
    const { figures } = plan(line({ row: row(), lots }), at).food!;
    expect(figures).toMatchObject({
      use_low: 0,
      use_per_week: 0,
      weeks_of_supply: 'no use',
      weeks_high: 'no use',
    });
    expect(figures.use_high).toBeCloseTo(jStat.gamma.inv(0.9, 0.5, 1 / 40), 8);
  });

  it('nets corrections against the draw they correct', () => {
    const draws = [draw('d1', 10, { date: weeks(-20) }), draw('d2', -6, { date: weeks(-2), corrects: 'd1' })];
    expect(plan(line({ row: row(), lots, draws }), at).food!.figures.use_per_week).toBe(0.1);
  });

  it('leaves out days without stock and days of the fresh season', () => {
    // Put up 30 weeks ago, all eaten 10 weeks later: 10 weeks and the day of the last draw are observed.
    const eaten = [lot('a', 7, { putUpOn: weeks(-30) })];
    const draws = [draw('d', 7, { date: weeks(-20) - 1 })];
    expect(plan(line({ row: row(), lots: eaten, draws }), at).food!.figures.use_per_week).toBe(0.7);
    // 40 weeks back from 1 January is 27 March; the season takes 15 July to 30 September, 78 days.
    const season = row({ freshFrom: { month: 7, day: 15 }, freshTo: { month: 9, day: 30 } });
    const inSeasonToo = [
      draw('d1', 10, { date: day('2025-11-01') }),
      draw('d2', 9, { date: day('2025-08-01') }),
    ];
    expect(plan(line({ row: season, lots, draws: inSeasonToo }), at).food!.figures.use_per_week).toBeCloseTo(
      (10 * 7) / (280 - 78),
      10,
    );
  });

  it('is blank under four weeks, and gives way to the own figure', () => {
    const young = household('2026-01-01', { ledgerFrom: weeks(-3) });
    const draws = [draw('d', 3, { date: weeks(-3) })];
    const { figures } = plan(line({ row: row(), lots, draws }), young).food!;
    expect(figures).toMatchObject({ use_per_week: null, weeks_of_supply: null, runs_out_on: null });
    expect(plan(line({ row: row({ ownUse: 3 }), lots, draws }), at).food!.figures).toMatchObject({
      use_per_week: 3,
      use_low: null,
    });
    expect(planLine(line({ row: row(), lots }), young, emptyGuide, 2).food!.figures.use_per_week).toBe(2);
  });
});

describe('gamma quantiles', () => {
  it('agree with jStat', () => {
    for (const shape of [0.5, 1, 1.7, 4.5, 20.5, 133.25]) {
      for (const rate of [4, 26, 52]) {
        for (const p of [0.1, 0.5, 0.9]) {
          expect(gammaQuantile(p, shape, rate)).toBeCloseTo(jStat.gamma.inv(p, shape, 1 / rate), 7);
        }
      }
    }
  });
});

describe('the harvest', () => {
  const season = { freshFrom: { month: 7, day: 15 }, freshTo: { month: 9, day: 30 } };

  it('works out left, over, pace and what to put up by hand', () => {
    // 2026-02-25 to 2026-07-15 is 140 days = 20 weeks; 50 jars at 2 a week leave 10.
    // 2026-09-30 (within the season) to 2027-07-15: 2026-10-01 on, 287 days = 41 weeks; 2 × 41 × 1.1 − 10 = 80.2.
    const input = line({ row: row({ ownUse: 2, carry: 4, ...season }), lots: [lot('a', 50)] });
    expect(plan(input, household('2026-02-25')).food!.figures).toMatchObject({
      on_hand: 50,
      next_harvest: '2026-07-15',
      left_at_harvest: 10,
      short_or_over: 6,
      pace: 0.3,
      to_put_up: 81,
      // The 10 jars left are eaten after the season: 5 weeks from 2026-10-01.
      runs_out_on: '2026-11-05',
    });
  });

  it('shows what is short as a negative number', () => {
    const input = line({ row: row({ ownUse: 2, ...season }), lots: [lot('a', 30)] });
    expect(plan(input, household('2026-02-25')).food!.figures).toMatchObject({
      left_at_harvest: 0,
      short_or_over: -10,
      pace: 0,
      to_put_up: 91,
      runs_out_on: '2026-06-10',
    });
  });

  it('in progress is the coming one: what is on hand counts towards it', () => {
    const input = line({
      row: row({ ownUse: 2, ...season }),
      lots: [lot('a', 50, { putUpOn: day('2026-08-01') })],
    });
    expect(plan(input, household('2026-08-10')).food!.figures).toMatchObject({
      next_harvest: '2026-07-15',
      left_at_harvest: 50,
      short_or_over: 'still to put up',
      pace: null,
      to_put_up: 41,
    });
  });

  it('reaches the own target without a cushion', () => {
    const input = line({ row: row({ ownUse: 2, ownTarget: 70, ...season }), lots: [lot('a', 50)] });
    expect(plan(input, household('2026-02-25')).food!.figures.to_put_up).toBe(60);
  });

  it('goes from one supply to the next for bought food', () => {
    const input = line({
      row: row({ ownUse: 1, comesFrom: 'bought', nextSupply: day('2026-03-05') }),
      lots: [lot('a', 20)],
    });
    // 9 weeks to the supply leave 11; a year of 365 days is 52 1/7 weeks: 52.142857 × 1.1 − 11 = 46.36.
    expect(plan(input, household('2026-01-01')).food!.figures).toMatchObject({
      next_harvest: '2026-03-05',
      left_at_harvest: 11,
      to_put_up: 47,
      pounds_to_grow: null,
    });
  });

  it('is blank, not zero, without a date; and half a season is a problem', () => {
    const without = plan(line({ row: row({ ownUse: 1 }), lots: [lot('a', 20)] }), household('2026-01-01'))
      .food!;
    expect(without.figures).toMatchObject({
      next_harvest: null,
      left_at_harvest: null,
      to_put_up: null,
      pace: null,
    });
    const half = row({ ownUse: 1, freshFrom: { month: 7, day: 15 } });
    expect(plan(line({ row: half }), household('2026-01-01')).food!.problems!.next_harvest!.code).toBe(
      'season-half-given',
    );
  });

  it('fresh all year is not eaten from the shelf', () => {
    const all = row({ ownUse: 1, freshFrom: { month: 1, day: 1 }, freshTo: { month: 12, day: 31 } });
    const { figures } = plan(line({ row: all, lots: [lot('a', 20)] }), household('2026-05-01')).food!;
    expect(figures).toMatchObject({ runs_out_on: 'not eaten from the shelf', to_put_up: 0 });
  });

  const guide: Guide = {
    ...emptyGuide,
    poundsPerContainer: () => ({
      ok: true,
      value: { low: 2.5, usual: 3, high: 3.5, unit: 'pound', source: 'test', origin: 'published' },
    }),
    qualityMonths: () => ({
      ok: true,
      value: { low: 12, usual: 15, high: 18, unit: 'month', source: 'test', origin: 'published' },
    }),
  };

  it('turns what is to be put up, and fresh use, into pounds to grow', () => {
    const crops = [{ crop: 'tomato', pounds: null }];
    const grown = (more: object, basis: 'lean' | 'usual' | 'good' = 'usual') =>
      planLine(
        line({ row: row({ ownUse: 2, ...season, crops, ...more }), lots: [lot('a', 50)] }),
        household('2026-02-25', { basis }),
        guide,
      );
    // To put up: 2 × 41 × 1.1 − 10 = 80.2, so 81 jars of 3 lb.
    expect(grown({}).food!.figures.pounds_to_grow).toBe(243);
    expect(grown({}, 'lean').food!.figures.pounds_to_grow).toBe(81 * 3.5);
    // The season is 78 days: 7 a week fresh are 78 more.
    expect(grown({ freshUse: 7 }).poundsByCrop.get('tomato')).toBeCloseTo((81 + 78) * 3, 9);
    const two = [
      { crop: 'tomato', pounds: 2 },
      { crop: 'onion', pounds: 0.5 },
    ];
    expect([...grown({ crops: two }).poundsByCrop]).toEqual([
      ['tomato', 162],
      ['onion', 40.5],
    ]);
    const unsaid = grown({ crops: [two[0], { crop: 'onion', pounds: null }] }).food!;
    expect(unsaid.figures.pounds_to_grow).toBeNull();
    expect(unsaid.problems!.pounds_to_grow!.message).toMatch(/onion/);
  });

  it('takes best-by from the lot, the row, then the guide by basis', () => {
    const put = { putUpOn: day('2025-08-31') };
    const at = (basis: 'lean' | 'usual' | 'good', own: object, months: number | null = null) =>
      lotOf(
        planLine(
          line({ row: row({ ownMonths: months }), lots: [lot('a', 1, { ...put, ...own })] }),
          household('2026-01-01', { basis }),
          guide,
        ),
        'a',
      ).best_by;
    expect(at('lean', {})).toBe('2026-08-31');
    expect(at('usual', {})).toBe('2026-11-30');
    expect(at('good', {})).toBe('2027-02-28');
    expect(at('usual', {}, 6)).toBe('2026-02-28');
    expect(at('usual', { ownBestBy: day('2028-01-01') }, 6)).toBe('2028-01-01');
  });
});

describe('supply functions', () => {
  const value = (r: { ok: boolean; value?: unknown; problem?: { code: string } }) =>
    r.ok ? r.value : r.problem!.code;
  const asOf = day('2026-01-01');

  it('24 quarts over with thirty weeks to go want 0.8 a week (arithmetic)', () => {
    expect(value(paceToUseUp(24, asOf + 210, asOf))).toBe(0.8);
    expect(value(paceToUseUp(24, asOf, asOf))).toBe('no-weeks-left');
  });

  it('answer in words or refuse rather than divide by nothing', () => {
    expect(value(weeksOfSupply(30, 2))).toBe(15);
    expect(value(weeksOfSupply(30, 0))).toBe('no use');
    expect(value(weeksOfSupply(Number.NaN, 2))).toBe('bad-amount');
    expect(value(weeksOfSupply(30, -2))).toBe('bad-amount');
    expect(value(runsOutOn(10, 1, asOf))).toBe('2026-03-12');
    expect(value(runsOutOn(1e6, 0.001, asOf))).toBe('more than ten years');
    expect(value(runsOutOn(10, 1, Number.NaN))).toBe('not-a-date');
    expect(value(leftAt(10, 1, asOf + 35, asOf))).toBe(5);
    expect(value(leftAt(10, 1, asOf + 350, asOf))).toBe(0);
    expect(value(leftAt(10, 1, asOf - 350, asOf))).toBe(10);
  });

  it('rounds up to whole containers, but not for a crumb of binary arithmetic', () => {
    // 0.1 × 30 × 1.1 = 3.3000000000000003; 0.7 × 10 × 1 = 7.000000000000001 in some orders.
    expect(value(toPutUp(0.1, 30, 0.3, 0.1))).toBe(3);
    expect(value(toPutUp(1, 30, 0))).toBe(33);
    expect(value(toPutUp(1, 10, 40))).toBe(0);
  });
});
