import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  explainCropGround,
  explainGround,
  type GroundCrop,
  shareGround,
} from '../../src/planning/ground/index.js';
import { crop, feet, plantsOf, share } from './ground-make.js';

afterEach(() => {
  vi.doUnmock('yalps');
  vi.resetModules();
});

const codeFor = async (crops: readonly GroundCrop[], ground: number) => {
  const shared = await shareGround(crops, feet(ground));
  return shared.ok ? 'shared' : shared.problem.code;
};

describe('numbers that cannot be reckoned with', () => {
  it.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY, 1e12])('refuses %s feet of ground', async (n) => {
    expect(await codeFor([crop('a', 5, 1)], n)).toBe('no-ground');
  });

  it.each([
    ['too-many-plants', { wanted: 1e9 }],
    ['bad-plants', { wanted: -1 }],
    ['bad-plants', { wanted: 2.5 }],
    ['bad-plants', { wanted: Number.NaN }],
    ['bad-plants', { wanted: Number.POSITIVE_INFINITY }],
    ['bad-plants', { least: Number.NaN }],
    ['least-over-wanted', { least: 6 }],
    ['bad-ground-per-plant', { groundPerPlant: 0 }],
    ['bad-ground-per-plant', { groundPerPlant: -1 }],
    ['bad-ground-per-plant', { groundPerPlant: Number.NaN }],
    ['bad-ground-per-plant', { groundPerPlant: 1e9 }],
    ['bad-food-per-plant', { servingsPerPlant: Number.NaN }],
    ['bad-food-per-plant', { poundsPerPlant: -1 }],
    ['bad-weight', { weight: -1 }],
    ['bad-weight', { weight: Number.POSITIVE_INFINITY }],
    ['bad-rank', { rank: 0 }],
    ['bad-rank', { rank: Number.NaN }],
  ] as const)('refuses with %s: %o', async (code, more) => {
    const shared = await shareGround([crop('kale', 5, 1), crop('leek', 5, 1, more)], feet(3));
    expect(shared).toMatchObject({ ok: false, problem: { code, where: { row: 'leek' } } });
  });

  it('refuses a crop that stands twice, and more crops than can be shared among', async () => {
    expect(await codeFor([crop('a', 5, 1), crop('a', 5, 1)], 3)).toBe('crop-twice');
    const many = Array.from({ length: 201 }, (_, i) => crop(`c${i}`, 5, 1));
    expect(await codeFor(many, 3)).toBe('too-many-crops');
  });

  it('refuses leasts that do not fit together, saying what they take', async () => {
    const shared = await shareGround(
      [crop('a', 5, 2, { least: 3 }), crop('b', 5, 2, { least: 3 })],
      feet(10),
    );
    expect(shared).toMatchObject({ ok: false, problem: { code: 'least-over-ground' } });
    if (!shared.ok) expect(shared.problem.message).toContain('12 feet of row');
  });
});

describe('large and hard cases', () => {
  it('shares among 200 crops of up to a million plants', async () => {
    const crops = Array.from({ length: 200 }, (_, i) =>
      crop(`c${i}`, 1_000_000 - i * 17, (1 + (i % 13)) / 12),
    );
    const plan = await share(crops, 1e6);
    expect(plan.used).toBeLessThanOrEqual(1e6);
    // Not even the smallest plant, of an inch, could stand on what is left.
    expect(1e6 - plan.used).toBeLessThan(1 / 12);
    // In parts every crop would have this share; whole plants lose at most one of each crop.
    const inParts = plan.available / plan.needed;
    expect(plan.leastShare).toBeLessThanOrEqual(inParts);
    expect(plan.leastShare).toBeGreaterThan(inParts - 1 / 990_000);
  });

  // Servings almost in proportion to ground, one to three plants of each: the kind on which searching branch by branch
  // goes on for ever.
  const hard = Array.from({ length: 60 }, (_, i) =>
    crop(`c${i}`, 1 + (i % 3), 1 + ((i * 7919) % 997) / 1009, {
      servingsPerPlant: 3 + (3 * ((i * 7919) % 997)) / 1009 + (i % 11) / 5000,
    }),
  );

  it('stops when the time is up, and says that its choice is not proved', async () => {
    for (const milliseconds of [0, 100]) {
      const plan = await share(hard, 50.3, { milliseconds });
      expect(plan.proved).toBe(false);
      expect(plan.mayBeMissing).toBeGreaterThan(0);
      expect(plan.used).toBeLessThanOrEqual(50.3);
      expect(plan.words.at(-1)).toMatch(/^Best found in the time allowed, not proved: at most/);
    }
  });

  it('has the smallest share right even without any time', async () => {
    const crops = [crop('a', 100, 1), crop('b', 200, 1.5), crop('c', 300, 0.7)];
    expect((await share(crops, 99, { milliseconds: 0 })).leastShare).toBe(
      (await share(crops, 99)).leastShare,
    );
  });
});

describe('loading the solver', () => {
  it('is not needed where all fits; else its absence is a problem, not a crash', async () => {
    vi.resetModules();
    vi.doMock('yalps', () => {
      throw new Error('no connection');
    });
    const { shareGround: shareFresh } = await import('../../src/planning/ground/share-ground.js');
    expect((await shareFresh([crop('a', 5, 1)], feet(5))).ok).toBe(true);
    expect(await shareFresh([crop('a', 5, 1)], feet(3))).toMatchObject({
      ok: false,
      problem: { code: 'solver-not-loaded' },
    });
  });
});

describe('the working', () => {
  const crops = [
    crop('tomatoes', 10, 2, { servingsPerPlant: 16 }),
    crop('beans', 40, 0.5, { servingsPerPlant: 2, weight: 3 }),
  ];

  it('follows one crop from plants wanted to plants given', async () => {
    const plan = await share(crops, 21.5);
    expect(plantsOf(plan)).toEqual([5, 23]);
    const working = explainCropGround(plan, crops, 'beans');
    expect(working).toMatchObject({ value: 23, unit: 'plants' });
    expect(working?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['Plants wanted', 40],
      ['Ground a plant', 0.5],
      ['Ground there is', 21.5],
      ['Servings a plant', 2],
      ['Weight', 3],
    ]);
    expect(working?.steps.map(({ text }) => text)).toEqual([
      'All the plants wanted take 40 feet of row; there are 21.5 feet of row',
      'by the even share: 20 of 40 plants',
      '3 more where ground was left, chosen for the food they give',
      '23 plants ÷ 40 plants = 57 %',
      '23 plants × 0.5 feet of row a plant = 11.5 feet of row',
      'beans: 23 of 40 plants (57 %); given up: 17 plants, pounds not known, 34 servings.',
    ]);
    expect(explainCropGround(plan, crops, 'leek')).toBeUndefined();
  });

  it('explains the smallest share with what is given up', async () => {
    const working = explainGround(await share(crops, 21.5));
    expect(working).toMatchObject({ value: 50, unit: '%' });
    const text = working.steps.map((step) => step.text).join(' ');
    expect(text).toContain('Every crop gets at least 50 % of its plants.');
    expect(text).toContain('Given up in all: 22 plants');
    expect(text).toContain('Ground used: 21.5 of 21.5 feet of row.');
  });
});
