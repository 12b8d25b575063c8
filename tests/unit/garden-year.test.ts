import { describe, expect, it } from 'vitest';
import {
  explainHarvest,
  frostYears,
  harvestPounds,
  ownFigures,
  planBeds,
  planHarvest,
  planWindows,
  publishedOnly,
  suggestUse,
  type TurnInput,
  turnYear,
} from '../../src/planning/garden/index.js';
import { batch, batchesOf, bedsOf, bench, fact, harvested, planting } from './garden-make.js';
import { day } from './planning-make.js';

const years = (() => {
  const found = frostYears(bench());
  if (!found.ok) throw new Error('no frosts');
  return found.value;
})();

describe('harvest so far', () => {
  const beds = bedsOf([planting('a', 'carrot', { plants: 200 }), planting('b', 'carrot', { plants: 200 })], {
    carrot: 80,
  });
  const rows = [
    harvested('late', { date: day('2026-08-20'), planting: 'a', amount: 20 }),
    harvested('early', { date: day('2026-08-01'), planting: 'a', amount: 10 }),
    harvested('other', { date: day('2026-08-10'), planting: 'b', amount: 5 }),
    harvested('crop', { date: day('2026-09-01'), crop: 'carrot', amount: 15 }),
    harvested('bushel', { date: day('2026-09-02'), crop: 'carrot', amount: 1, unit: 'bushel' }),
    harvested('last year', { date: day('2025-09-02'), crop: 'carrot', amount: 99 }),
  ];
  const plan = planHarvest({ rows, beds, basis: 'usual', years });
  const of = (id: string) => plan.rows.get(id)!.figures;
  it('adds up by planting in the order of the days, and by crop where no planting is named', () => {
    expect(of('early').pounds_so_far).toBe(10);
    expect(of('late').pounds_so_far).toBe(30);
    expect(of('crop').pounds_so_far).toBe(50);
    // USDA guide: a bushel of carrots without tops weighs 50 lb.
    expect(of('bushel').pounds_so_far).toBe(100);
    expect(of('last year').pounds_so_far).toBe(99);
  });
  it('by the plant, and against what the plants planned were to give', () => {
    // 200 plants at 0.25 lb: 50 lb expected.
    expect(of('late')).toMatchObject({ per_plant_so_far: 0.15, against_plan: 60 });
    expect(of('crop')).toMatchObject({ per_plant_so_far: 0.125, against_plan: 50 });
    expect(explainHarvest(plan, 'late', 'against_plan')?.steps[0]?.text).toBe(
      '30 pounds ÷ 50 pounds × 100 = 60 %',
    );
  });
  it('pieces want a weight of one', () => {
    const ears = harvestPounds('sweet corn', 60, 'each');
    expect(!ears.ok && ears.problem.code).toBe('weight-of-one-missing');
    const figures = ownFigures([fact('w', 'sweet corn, weight of one', { ownValue: 0.5 })]);
    expect(harvestPounds('sweet corn', 60, 'each', figures)).toEqual({ ok: true, value: 30 });
    expect(harvestPounds('carrot', Number.NaN, null).ok).toBe(false);
  });
});

describe('turning the year', () => {
  const plantings = [
    planting('t', 'tomato', { plants: 20, sownOn: day('2026-04-05') }),
    planting('c', 'carrot', { plants: 400, ownSpacing: 2, sownOn: day('2026-05-01') }),
    planting('g', 'garlic', { plants: 50, sownOn: day('2026-10-05') }),
    planting('apple', 'apple', { plants: 2, nthYear: 3, variety: 'Ida, dwarf' }),
    planting('k', 'kale'),
  ];
  const facts = [fact('old', 'tomato, yield', { season: 2025, pounds: 100, plants: 20 })];
  const figures = ownFigures(facts);
  const at = bench('2026-10-10');
  const windows = planWindows(plantings, at, figures);
  const beds = planBeds({ plantings, pounds: new Map(), household: at, figures, windows });
  const input = (more: Partial<TurnInput> = {}): TurnInput => ({
    harvest: planHarvest({
      rows: [
        harvested('h1', { date: day('2026-08-20'), planting: 't', amount: 90 }),
        harvested('h2', { date: day('2026-09-10'), planting: 't', amount: 70 }),
        harvested('h3', { date: day('2026-09-12'), planting: 'c', amount: 60 }),
        harvested('h4', { date: day('2026-09-12'), planting: 'k', amount: 5 }),
      ],
      beds,
      basis: 'usual',
      years,
      figures,
    }),
    beds,
    batches: batchesOf([
      batch('b', { crops: [{ crop: 'tomato', pounds: 42 }], filled: 15, date: day('2026-09-01') }),
    ]),
    facts,
    weekRows: ['w1', 'w2'],
    windows,
    figures,
    asOf: at.asOf,
    ...more,
  });
  const turned = turnYear(input());
  const cells = turned.edits.flatMap((edit) =>
    edit.do === 'insert rows' ? edit.rows.map((row) => row.cells) : [],
  );
  it('puts the raw totals of the season into Facts', () => {
    expect(turned.season).toBe(2026);
    expect(cells).toContainEqual({ figure: 'tomato, yield', season: 2026, pounds: 160, plants: 20 });
    expect(cells).toContainEqual({
      figure: 'carrot, yield',
      season: 2026,
      pounds: 60,
      plants: 400,
      spacing: 2,
    });
    expect(cells).toContainEqual({
      figure: 'tomato, pounds per quart jar, canned',
      season: 2026,
      pounds: 42,
      plants: 15,
    });
  });
  it('says what was learned', () => {
    const tomato = turned.learned.find(({ figure }) => figure === 'tomato, yield')!;
    // Published 8. One season of 5: (5 + 2 × 8) ÷ 3 = 7. Two of 6.5 in the mean: half and half.
    expect(tomato.before).toBeCloseTo(7, 9);
    expect(tomato.after).toBeCloseTo(0.5 * (260 / 40) + 0.5 * 8, 9);
    expect(tomato).toMatchObject({ own: 8, seasons: 2 });
    expect(turned.summary.join(' ')).toMatch(/learned from 2 seasons/);
  });
  it('names what could not be recorded, and what would mend it', () => {
    expect(turned.notRecorded.join()).toMatch(/kale, 2026: how many plants/);
  });
  it('empties Harvest and Week, and readies the beds', () => {
    expect(turned.edits.filter((edit) => edit.do === 'remove rows')).toEqual([
      { do: 'remove rows', kind: 'harvest', rows: expect.arrayContaining(['h1', 'h2', 'h3', 'h4']) },
      { do: 'remove rows', kind: 'week', rows: ['w1', 'w2'] },
    ]);
    const set = turned.edits.flatMap((edit) =>
      edit.do === 'set cells' && edit.kind === 'beds' ? edit.cells : [],
    );
    expect(set).toContainEqual({ row: 't', column: 'sown_on', typed: null });
    expect(set).toContainEqual({ row: 'apple', column: 'nth_year', typed: 4 });
    // Garlic planted this fall is for the season to come.
    expect(set.some(({ row }) => row === 'g')).toBe(false);
  });
  it('a season recorded before is added to, not written twice', () => {
    const recorded = [fact('half', 'tomato, yield', { season: 2026, pounds: 40, plants: 20 })];
    const again = turnYear(input({ facts: recorded, figures: ownFigures(recorded) }));
    const updates = again.edits.flatMap((edit) =>
      edit.do === 'set cells' && edit.kind === 'facts' ? edit.cells : [],
    );
    expect(updates).toEqual([
      { row: 'half', column: 'pounds', typed: 200 },
      { row: 'half', column: 'plants', typed: 20 },
    ]);
  });
});

describe('published suggestions of use', () => {
  const line = (food: string, way: 'canned' | 'cellared' | 'dry goods', countedIn: string) => ({
    food,
    way,
    countedIn,
    crops: way === 'dry goods' ? [] : [{ crop: food, pounds: null }],
  });
  it('servings a week times their size: six half cups of canned tomatoes for an adult (wartime budget)', () => {
    const found = suggestUse(line('tomato', 'canned', 'quart jar'), { shares: 4 });
    // 6 × ½ cup = 3 cups = 0.75 quart a head; 30 weeks of it are 22.5 quarts, and the print says 25.
    expect(found).toMatchObject({ ok: true, value: { perWeek: 3, mark: 'published suggestion' } });
    expect(found.ok && 0.75 * 30).toBeLessThan(25);
  });
  it('row feet to put up for a person, by the yield of the row: snap beans 15 to 20 ft (K-State MF315)', () => {
    const found = suggestUse(line('snap bean', 'canned', 'quart jar'), { shares: 1 });
    // 17.5 ft × 1.2 lb ÷ 2 lb a quart = 10.5 quarts a year.
    expect(found.ok && found.value.perWeek * (365.25 / 7)).toBeCloseTo(10.5, 6);
    expect(found.ok && found.value.low).toBeLessThan(found.ok ? found.value.high : 0);
    expect(found.ok && found.value.source).toMatch(/MF315/);
  });
  it('pounds a person in a year, after loss: potatoes 48.3 (USDA Economic Research Service)', () => {
    const found = suggestUse(line('potato', 'cellared', 'pound'), { shares: 2 });
    expect(found.ok && (found.value.perWeek * (365.25 / 7)) / 2).toBeCloseTo(48.3, 6);
  });
  it('nothing published, nothing suggested', () => {
    expect(suggestUse(line('salsa', 'canned', 'pint jar'), { shares: 4 })).toMatchObject({ ok: false });
    expect(suggestUse(line('tomato', 'canned', 'quart jar'), { shares: Number.NaN }).ok).toBe(false);
  });
  it('grains and legumes for a dry store, by the adult', () => {
    const found = suggestUse(
      { food: 'Grains', way: 'dry goods', countedIn: 'pound', crops: [] },
      { shares: 1 },
      publishedOnly,
    );
    expect(found.ok && found.value.perWeek * (365.25 / 7)).toBeCloseTo(400, 6);
  });
});
