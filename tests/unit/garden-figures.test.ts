import { describe, expect, it } from 'vitest';
import {
  explainFact,
  figureText,
  knownFigures,
  ownFigures,
  ownGuide,
  planFacts,
  publishedOnly,
  readFigureName,
} from '../../src/planning/garden/index.js';
import { yieldPerPlant } from '../../src/planning/growing.js';
import { fact } from './garden-make.js';

const yieldOf = (of: string) => ({ of, what: 'yield' }) as const;

describe('names of figures', () => {
  it('are read in any order of words that people write', () => {
    for (const [written, meant] of [
      ['Tomatoes, yield', 'tomato, yield'],
      ['corn, sweet, yield', 'sweet corn, yield'],
      ['green beans, pounds a quart jar', 'snap bean, pounds per quart jar, canned'],
      ['snap bean, pounds per pint freezer bag', 'snap bean, pounds per pint freezer bag, frozen'],
      ['Freezer, pounds per cubic foot', 'freezer, pounds per cubic foot'],
      ['apple, months, cellared', 'apple, months of best quality, cellared'],
    ] as const) {
      const read = readFigureName(written);
      expect(read.ok ? figureText(read.value) : read.problem.message).toBe(meant);
    }
    expect(readFigureName('tomato, colour')).toMatchObject({
      ok: false,
      problem: { code: 'unknown-figure' },
    });
  });
  it('offered to choose from can all be read back', () => {
    for (const name of knownFigures()) {
      const read = readFigureName(name);
      expect(read.ok ? figureText(read.value) : read.problem.message).toBe(name);
    }
  });
});

describe('own, then learned, then published', () => {
  it('published figures stand as the formula function gives them', () => {
    const published = yieldPerPlant('carrot');
    const used = publishedOnly.inUse(yieldOf('carrot'));
    expect(used.ok && published.ok && used.value.usual === published.value.usual).toBe(true);
    expect(used).toMatchObject({ ok: true, value: { origin: 'computed', own: null, learned: null } });
    expect(used.ok && used.value.source).toMatch(/MF315/);
  });
  it('credibility: Z = n ÷ (n + k), as in any text on limited fluctuation and greatest accuracy credibility', () => {
    // Bühlmann's formula with n = 3 and k = 2 gives Z = 3/5: 0.6 × own mean + 0.4 × collective mean.
    const seasons = [
      fact('a', 'eggplant, yield', { season: 2023, pounds: 30, plants: 10 }),
      fact('b', 'eggplant, yield', { season: 2024, pounds: 50, plants: 10 }),
      fact('c', 'eggplant, yield', { season: 2025, pounds: 100, plants: 20 }),
    ];
    const used = ownFigures(seasons).inUse(yieldOf('eggplant'));
    // Published per plant: 4 to 5 pounds, so 4.5. Own mean: 180 ÷ 40 = 4.5 as well would teach nothing.
    const mean = 180 / 40;
    expect(used).toMatchObject({ ok: true, value: { origin: 'learned' } });
    expect(used.ok && used.value.usual).toBeCloseTo(0.6 * mean + 0.4 * 4.5, 9);
    const better = ownFigures([
      ...seasons,
      fact('d', 'eggplant, yield', { season: 2022, pounds: 90, plants: 10 }),
    ]);
    const four = better.inUse(yieldOf('eggplant'));
    // n = 4: Z = 2/3, own mean 270 ÷ 50 = 5.4.
    expect(four.ok && four.value.usual).toBeCloseTo((2 / 3) * 5.4 + (1 / 3) * 4.5, 9);
    // The ends keep their proportion to the published central figure.
    const published = publishedOnly.inUse(yieldOf('eggplant'));
    if (!published.ok || !four.ok) throw new Error('no yield');
    expect(four.value.high / four.value.usual).toBeCloseTo(published.value.high / published.value.usual, 9);
  });
  it('two rows for one season count as one season', () => {
    const split = ownFigures([
      fact('a', 'eggplant, yield', { season: 2025, pounds: 30, plants: 10 }),
      fact('b', 'eggplant, yield', { season: 2025, pounds: 60, plants: 20 }),
    ]).inUse(yieldOf('eggplant'));
    const whole = ownFigures([fact('a', 'eggplant, yield', { season: 2025, pounds: 90, plants: 30 })]).inUse(
      yieldOf('eggplant'),
    );
    expect(split.ok && whole.ok && split.value.usual === whole.value.usual).toBe(true);
  });
  it('an own value wins and says so', () => {
    const used = ownFigures([
      fact('a', 'tomato, yield', { ownValue: 10 }),
      fact('b', 'tomato, yield', { season: 2025, pounds: 10, plants: 10 }),
    ]).inUse(yieldOf('tomato'));
    expect(used).toMatchObject({ ok: true, value: { usual: 10, low: 10, high: 10, origin: 'own' } });
  });
  it('with nothing published, own seasons count alone; with neither it stays blank', () => {
    expect(publishedOnly.inUse(yieldOf('rutabaga')).ok).toBe(false);
    const used = ownFigures([fact('a', 'rutabaga, yield', { season: 2025, pounds: 60, plants: 40 })]).inUse(
      yieldOf('rutabaga'),
    );
    expect(used).toMatchObject({ ok: true, value: { usual: 1.5, published: null } });
  });
  it('ears become pounds by the household’s own weight of one', () => {
    // K-State MF315: 10 dozen ears to 100 ft of row; at 7 inches between plants that is 0.7 ears a plant.
    expect(publishedOnly.inUse(yieldOf('sweet corn')).ok).toBe(false);
    const used = ownFigures([fact('a', 'sweet corn, weight of one', { ownValue: 0.5 })]).inUse(
      yieldOf('sweet corn'),
    );
    expect(used.ok && used.value.usual).toBeCloseTo(0.7 * 0.5, 9);
  });
  it('plants set closer in a past season count at the spacing in use, as pounds a foot of row stay', () => {
    // Carrot: 100 lb to 100 ft, 3 inches apart (K-State MF315; Missouri G6201).
    const half = ownFigures([
      fact('a', 'carrot, yield', { season: 2025, pounds: 100, plants: 800, spacing: 1.5 }),
    ]).inUse(yieldOf('carrot'));
    const same = ownFigures([fact('a', 'carrot, yield', { season: 2025, pounds: 100, plants: 400 })]).inUse(
      yieldOf('carrot'),
    );
    expect(half.ok && same.ok && half.value.usual).toBeCloseTo(same.ok ? same.value.usual : Number.NaN, 9);
  });
  it('own pounds a jar reach the plan of foods', () => {
    const figures = ownFigures([fact('a', 'tomato, pounds per quart jar, canned', { ownValue: 2.5 })]);
    const own = ownGuide(figures).poundsPerContainer('tomatoes', 'quart jar', 'canned');
    expect(own).toMatchObject({ ok: true, value: { usual: 2.5, origin: 'own' } });
    const other = ownGuide(figures).poundsPerContainer('peach', 'quart jar', 'canned');
    // USDA Complete Guide to Home Canning: 2½ pounds of peaches a quart.
    expect(other).toMatchObject({ ok: true, value: { usual: 2.5, origin: 'published' } });
  });
});

describe('rows of Facts', () => {
  const rows = [
    fact('y', 'tomato, yield', { season: 2025, pounds: 90, plants: 30 }),
    fact('half', 'tomato, yield', { season: 2024, pounds: 90 }),
    fact('own', 'tomato, germination', { ownValue: 90 }),
    fact('frost', 'cabbage, weeks from the last frost', { ownValue: -5 }),
    fact('bad', 'tomato, germination', { ownValue: 140 }),
    fact('what', 'tomato, hats'),
    fact('flat', 'tomato, planting for 100 ft of row', { ownValue: 3 }),
    fact('blank', ''),
  ];
  const plans = planFacts(rows);
  it('show what is published, with range and source, beside what is used', () => {
    const { figures } = plans.get('y')!;
    expect(figures).toMatchObject({ published: 8, own_seasons: 1, unit: 'pounds a plant' });
    // One season of 3 lb against a published 8: 3 × ⅓ + 8 × ⅔.
    expect(figures.learned).toBeCloseTo(19 / 3, 9);
    expect(figures.in_use).toBeCloseTo(19 / 3, 9);
    expect(String(figures.source)).toMatch(/Extension/);
  });
  it('say what is lacking, not count it', () => {
    expect(plans.get('half')?.problems?.own_seasons?.code).toBe('season-incomplete');
    expect(plans.get('bad')?.problems?.in_use?.code).toBe('bad-amount');
    expect(plans.get('what')?.problems?.published?.code).toBe('unknown-figure');
    expect(plans.get('blank')?.problems).toBeUndefined();
  });
  it('take an own value, below 0 where a figure may be', () => {
    expect(plans.get('own')?.figures.in_use).toBe(90);
    expect(plans.get('frost')?.figures.in_use).toBe(-5);
    expect(plans.get('frost')?.problems).toBeUndefined();
  });
  it('every row’s published figure leads to its source', () => {
    const figures = ownFigures(rows);
    const told = explainFact(rows[0]!, figures, 'published');
    expect(told?.inputs[0]?.source).toMatch(/Extension/);
    expect(explainFact(rows[0]!, figures, 'learned')?.steps.some(({ text }) => text.includes('÷'))).toBe(
      true,
    );
  });
});
