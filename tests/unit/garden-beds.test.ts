import { describe, expect, it } from 'vitest';
import { explainPlanting, ownFigures, poundsWanted, publishedOnly } from '../../src/planning/garden/index.js';
import { bedsOf, bench, fact, planting } from './garden-make.js';

const one = (crop: string, pounds: number, more = {}, at = bench()) =>
  bedsOf([planting('p', crop, more)], { [crop]: pounds }, at).rows.get('p')!;

describe('plants, ground and seeds', () => {
  it('100 ft of row give the published pounds: K-State MF315, 100 lb of carrots to 100 ft', () => {
    // 3 inches apart in the row (Missouri G6201): 400 plants to 100 ft.
    const { figures } = one('carrot', 100);
    expect(figures.yield).toBeCloseTo(0.25, 9);
    expect(figures.plants_wanted).toBe(400);
    expect(figures.row_feet).toBe(100);
  });
  it('own spacing changes plants and seeds, and leaves pounds a foot of row', () => {
    const { figures } = one('carrot', 100, { ownSpacing: 2 });
    expect(figures.plants_wanted).toBe(600);
    expect(figures.row_feet).toBe(100);
    expect(figures.yield).toBeCloseTo(1 / 6, 9);
  });
  it('a yield published by the plant stays with the plant: eggplant, 4 to 5 lb (Cape Cod Extension and others)', () => {
    const at = (inches: number) => one('eggplant', 90, { ownSpacing: inches }).figures.plants_wanted;
    expect(at(12)).toBe(20);
    expect(at(36)).toBe(20);
  });
  it('strawberries for five: 65 lb at 2.25 lb a plant are 29 plants (teaching sheet, studylib 7371866)', () => {
    // 2 oz × 5 people × 2 a week × 52 weeks = 1,040 oz = 65 lb; 28.9 plants round up.
    expect(one('strawberry', (2 * 5 * 2 * 52) / 16, { ownYield: 2.25 }).figures.plants_wanted).toBe(29);
  });
  it('seeds for 59 broccoli plants at the federal minimum germination: 7 CFR 201.31, 75 percent', () => {
    const { figures } = one('broccoli', 1, { plants: 59 });
    expect(figures.seeds).toBe(Math.ceil(59 / 0.75));
    expect(figures.seeds).toBe(79);
  });
  it('seed on hand counts until it is too old: onion 1 year, tomato 4 (Iowa State, after Knott)', () => {
    const more = { plants: 30, seedsOnHand: 20 };
    const tomato = (packetYear: number) => one('tomato', 1, { ...more, packetYear }).figures.seeds_to_buy;
    expect([2026, 2022, 2021].map(tomato)).toEqual([20, 20, 40]);
  });
  it('what is planted as sets wants no seeds', () => {
    const { figures, problems } = one('onion', 30, { plants: 100 });
    expect(figures.seeds).toBeNull();
    expect(problems?.seeds).toBeUndefined();
  });
  it('lean counts on less from each plant, so wants more of them', () => {
    const by = (basis: 'lean' | 'usual' | 'good') =>
      one('snap bean', 60, {}, bench('2026-02-01', { basis })).figures;
    // K-State MF315: 120 lb to 100 ft; a Virginia text as little as 30.
    expect(by('usual').plants_wanted).toBe(200);
    expect(by('lean').plants_wanted).toBe(800);
    expect(by('usual')).toMatchObject({ plants_low: 200, plants_wanted: 200, plants_high: 800 });
  });
  it('expected pounds come from the plants planned, and what is short shows below 0', () => {
    const { figures } = one('carrot', 100, { plants: 300 });
    expect(figures).toMatchObject({
      expected_pounds: 75,
      short_or_over: -25,
      plants_wanted: 400,
      row_feet: 75,
    });
    expect(one('carrot', 100).figures.expected_pounds).toBeNull();
  });
  it('a crop whose yield is not published stays blank, with what would fill it', () => {
    const { figures, problems } = one('endive', 20);
    expect(figures.plants_wanted).toBeNull();
    expect(problems?.plants_wanted?.mend).toMatch(/own/);
    expect(one('endive', 20, { ownYield: 0.5 }).figures.plants_wanted).toBe(40);
    expect(one('moonflower', 20).problems?.plants_wanted?.code).toBe('unknown-crop');
  });
  it('lima beans: the yield is printed shelled and jars are weighed in the pod, and it says so', () => {
    expect(one('lima bean', 40).problems?.plants_wanted?.code).toBe('shelled-and-in-pods');
    expect(one('lima bean', 40, { ownYield: 0.2 }).problems?.plants_wanted).toBeUndefined();
    expect(one('dry bean', 40).problems?.plants_wanted).toBeUndefined();
  });
  it('a bed at the close spacing each way, else by the person’s own (Arizona Master Gardener manual)', () => {
    // Tomatoes 18 to 24 inches each way, so 21: 40 × 21² ÷ 144.
    expect(one('tomato', 1, { plants: 40 }).figures.bed_area).toBe((40 * 21 * 21) / 144);
    expect(one('tomato', 1, { plants: 40, ownSpacing: 30 }).figures.bed_area).toBe((40 * 30 * 30) / 144);
  });
  it('a yield of nothing gives a message, not Infinity', () => {
    const { figures, problems } = one('tomato', 20, { ownYield: 0, plants: 3 });
    expect(figures).toMatchObject({ plants_wanted: null, expected_pounds: 0 });
    expect(problems?.plants_wanted?.code).toBe('yield-is-nothing');
  });
});

describe('pounds shared over plantings', () => {
  it('by plants planned, and equally when none are', () => {
    const wanted = (a: number | null, b: number | null) => {
      const { rows } = bedsOf(
        [planting('a', 'tomato', { plants: a }), planting('b', 'tomato', { plants: b })],
        { tomato: 120 },
      );
      return [rows.get('a')?.figures.pounds_wanted, rows.get('b')?.figures.pounds_wanted];
    };
    expect(wanted(10, 20)).toEqual([40, 80]);
    expect(wanted(null, null)).toEqual([60, 60]);
  });
  it('trees that bear count first; a new one yields from its bearing year', () => {
    // Missouri MG6: a dwarf apple 3 to 6 bushels from its third year; 45 lb a bushel (Georgia, 42 to 48).
    const { rows } = bedsOf(
      [
        planting('old', 'apple', { variety: 'Liberty, dwarf', plants: 1 }),
        planting('new', 'apple', { variety: 'Ida, dwarf', nthYear: 1, plants: 2 }),
      ],
      { apple: 500 },
    );
    const old = rows.get('old')!.figures;
    expect(old.expected_pounds).toBe(4.5 * 45);
    expect(old.pounds_wanted).toBe(4.5 * 45);
    const fresh = rows.get('new')!.figures;
    expect(fresh.expected_pounds).toBe(0);
    expect(fresh.pounds_wanted).toBe(500 - 4.5 * 45);
  });
  it('totals by crop equal the sum by food, under any of the crop’s names', () => {
    const pounds = poundsWanted([
      {
        poundsByCrop: new Map([
          ['tomatoes', 60],
          ['onion', 5],
        ]),
      },
      { poundsByCrop: new Map([['Tomato', 40]]) },
    ]);
    expect(Object.fromEntries(pounds)).toEqual({ tomato: 100, onion: 5 });
  });
  it('crops that no bed grows are named', () => {
    const plan = bedsOf([planting('p', 'carrot')], { carrot: 10, beet: 30 });
    expect([...plan.unplanted]).toEqual([['beet', 30]]);
  });
});

describe('workings', () => {
  const figures = ownFigures([fact('y', 'tomato, yield', { season: 2025, pounds: 90, plants: 30 })]);
  const plan = bedsOf(
    [planting('t', 'tomato', { plants: 12 }), planting('c', 'carrot')],
    { tomato: 100, carrot: 50 },
    bench(),
    figures,
  );
  it('name the source of every published figure', () => {
    const told = explainPlanting(plan, bench(), figures, 't', 'plants_wanted');
    expect(told?.inputs.some(({ source }) => /Extension/.test(source ?? ''))).toBe(true);
    expect(explainPlanting(plan, bench(), figures, 'c', 'seeds')?.inputs.at(-1)?.source).toMatch(/7 CFR 201/);
    expect(explainPlanting(plan, bench(), figures, 'c', 'row_feet')?.inputs.at(-1)?.source).toMatch(
      /Extension/,
    );
  });
  it('show the formula only where it gives the same', () => {
    // Learned from a season of one’s own: the function knows only what is published.
    expect(explainPlanting(plan, bench(), figures, 't', 'plants_wanted')?.formula).toBeUndefined();
    expect(explainPlanting(plan, bench(), figures, 'c', 'plants_wanted')?.formula).toBe(
      '=PLANTS_FOR("carrot", 50)',
    );
    expect(explainPlanting(plan, bench(), figures, 'c', 'start_on')?.formula).toBe(
      '=START_ON("carrot", "2026-05-24", "direct")',
    );
  });
  it('say how many seasons a learned yield rests on, and by which weight', () => {
    const steps = explainPlanting(plan, bench(), figures, 't', 'yield')!.steps.map(({ text }) => text);
    expect(steps.join('\n')).toContain('1 season ÷ (1 season + 2 seasons) = ⅓');
    expect(plan.rows.get('t')?.figures.yield_from).toBe('learned from 1 season');
  });
  it('follow a date by hand from the frost', () => {
    const steps = explainPlanting(plan, bench(), figures, 't', 'start_on')!.steps.map(({ text }) => text);
    expect(steps).toEqual(['2026-05-24 + 0 weeks = 2026-05-24', '2026-05-24 − 7 weeks = 2026-04-05']);
  });
  it('say which chance a frost date is', () => {
    const told = explainPlanting(plan, bench(), figures, 't', 'set_out_on');
    expect(told?.inputs.map(({ name }) => name).join()).toMatch(/50 years of a hundred/);
  });
  it('explain every column, blank or not', () => {
    const blank = bedsOf([planting('e', 'endive')], {});
    const columns = Object.keys(blank.rows.get('e')!.figures) as (keyof ReturnType<typeof columnsOf>)[];
    for (const column of columns) {
      const told = explainPlanting(blank, bench(), publishedOnly, 'e', column)!;
      expect(told.rule.length).toBeGreaterThan(10);
      if (told.value === null) expect(`${column}: ${told.missing ?? ''}`).toMatch(/: .{5,}/);
    }
  });
});

const columnsOf = () => bedsOf([], {}).rows.values().next().value!.figures;
