import { describe, expect, it } from 'vitest';
import { hensFor } from '../../src/planning/animals.js';
import {
  animalBrings,
  animalsFor,
  cookedPerDryCup,
  eggsByAge,
  hensForEggs,
  lardFrom,
  ownFigures,
} from '../../src/planning/garden/index.js';
import { fact } from './garden-make.js';

const near = (n: number) => expect.closeTo(n, 6);

describe('hens for the eggs', () => {
  it('250 in the first year, then 80, 70 and 60 percent: 200, 175, 150 (University of Florida, quoted)', () => {
    expect(eggsByAge().map(({ eggs }) => eggs)).toEqual([250, 200, 175, 150]);
  });
  it('three dozen eggs a week: by the age of the hens, and over them all as HENS_FOR says', () => {
    const found = hensForEggs(36);
    // 36 × 52.18 weeks = 1,878.4 eggs a year.
    expect(found.ok && found.value.byAge.map(({ hens }) => hens)).toEqual([8, 10, 11, 13]);
    expect(found).toMatchObject({ ok: true, value: { hens: { lean: 13, good: 8 } } });
    const formula = hensFor(36);
    expect(found.ok && formula.ok && found.value.hens.usual === formula.value.usual).toBe(true);
  });
  it('by the household’s own count of eggs where it has one', () => {
    const figures = ownFigures([fact('h', 'hen, eggs a year', { ownValue: 180 })]);
    expect(hensForEggs(36, figures)).toMatchObject({
      ok: true,
      value: { hens: { usual: 11, origin: 'own' } },
    });
    const none = ownFigures([fact('h', 'hen, eggs a year', { ownValue: 0 })]);
    expect(hensForEggs(36, none).ok).toBe(false);
    expect(hensForEggs(Number.NaN).ok).toBe(false);
  });
});

describe('what an animal brings', () => {
  it('a 1,312-lb steer hangs 787 lb by Penn State; a 1,200-lb one 756 by Mississippi State P3489', () => {
    for (const [live, hanging] of [
      [1312, 787],
      [1200, 756],
    ] as const) {
      const found = animalBrings('steer', live);
      if (!found.ok || !found.value.hanging) throw new Error('no steer');
      const { lean, good } = found.value.hanging;
      // The print rounds to the pound.
      expect(Math.round(lean)).toBeLessThanOrEqual(hanging);
      expect(good).toBeGreaterThanOrEqual(hanging);
    }
  });
  it('a 250-lb hog: 184 lb hanging and 140 lb of pork (University of Kentucky), 125 by Penn State', () => {
    const found = animalBrings('hog', 250);
    if (!found.ok || !found.value.hanging) throw new Error('no hog');
    const { hanging, meat } = found.value;
    expect(hanging.lean).toBeLessThanOrEqual(184);
    expect(hanging.good).toBeGreaterThanOrEqual(184);
    for (const pork of [125, 140]) {
      expect(meat.lean).toBeLessThanOrEqual(pork);
      expect(meat.good).toBeGreaterThanOrEqual(pork);
    }
    expect(meat.source).toMatch(/Penn State[\s\S]*Kentucky|Kentucky[\s\S]*Penn State/);
  });
  it('a 245-lb hog hangs 176 lb, 72 percent (Penn State)', () => {
    const found = animalBrings('hog', 245);
    expect(
      found.ok && found.value.hanging && found.value.hanging.lean <= 176 && 176 <= found.value.hanging.good,
    ).toBe(true);
  });
  it('meat takes freezer room: by the leaner source most', () => {
    const found = animalBrings('hog', 250);
    if (!found.ok || !found.value.freezer) throw new Error('no hog');
    const { meat, freezer } = found.value;
    // 22.2 lb to a cubic foot by one source, 35 to 40 by another.
    expect(freezer.lean).toEqual(near(meat.good / 22.2));
    expect(freezer.good).toEqual(near(meat.lean / 40));
    expect(freezer.usual).toEqual(near(meat.usual / 31.1));
  });
  it('canned quarts are from memory and say so', () => {
    const found = animalBrings('steer', 1200);
    expect(found.ok && found.value.quarts?.origin).toBe('from memory');
    expect(found.ok && found.value.fat).toMatchObject({ lean: 30, good: 40 });
  });
  it('whole animals for the meat, and what is not published is not guessed', () => {
    expect(animalsFor('hog', 260, 250, 'lean').ok && animalsFor('hog', 260, 250, 'lean')).toMatchObject({
      value: 3,
    });
    expect(animalsFor('hog', 260, 0, 'lean').ok).toBe(false);
    expect(lardFrom()).toMatchObject({ ok: false, problem: { code: 'nothing-published' } });
    expect(animalBrings('unicorn', 500).ok).toBe(false);
    expect(animalBrings('hog', Number.POSITIVE_INFINITY).ok).toBe(false);
  });
  it('a cup of dry beans cooks to three (University of Missouri MP563)', () => {
    expect(cookedPerDryCup('dry beans')).toMatchObject({ ok: true, value: { usual: 3 } });
    expect(cookedPerDryCup('gravel').ok).toBe(false);
  });
});
