import { describe, expect, it } from 'vitest';
import {
  allCautions,
  altitudePressure,
  canningRules,
  caution,
  cautions,
  cautionsFor,
  coldStorage,
  densityOf,
  foodGroup,
  headspace,
  pressureGroup,
  qualityMonths,
  usualLoad,
} from '../../src/facts/index.js';
import type { Result } from '../../src/problem.js';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}
const code = (result: Result<unknown>): string => (result.ok ? 'ok' : result.problem.code);

describe('canner pressure by altitude', () => {
  // USDA Agriculture Information Bulletin 539, Complete Guide to Home Canning.
  it('gives a house at 1,500 ft 11 psi by dial and 15 by weight', () => {
    expect(value(altitudePressure('low-acid', 1500, 'dial')).psi).toBe(11);
    expect(value(altitudePressure('low-acid', 1500, 'weighted')).psi).toBe(15);
  });

  it.each([
    [0, 11, 10],
    [1000, 11, 10],
    [1001, 11, 15],
    [2000, 11, 15],
    [2000.5, 12, 15],
    [4000, 12, 15],
    [6000, 13, 15],
    [8000, 14, 15],
  ])('%d ft: dial %d, weighted %d', (feet, dial, weighted) => {
    expect(value(altitudePressure('low-acid', feet, 'dial')).psi).toBe(dial);
    expect(value(altitudePressure('low-acid', feet, 'weighted')).psi).toBe(weighted);
  });

  it('ends at 8,000 ft, and takes no altitude that is none', () => {
    expect(code(altitudePressure('low-acid', 8001, 'dial'))).toBe('altitude-not-in-tables');
    expect(code(altitudePressure('low-acid', 8001, 'weighted'))).toBe('altitude-not-in-tables');
    expect(code(altitudePressure('low-acid', Number.NaN, 'dial'))).toBe('bad-altitude');
    expect(code(altitudePressure('low-acid', -50, 'dial'))).toBe('bad-altitude');
  });

  it.each([
    ['green beans', 'low-acid'],
    ['beef', 'low-acid'],
    ['venison', 'low-acid'],
    ['black beans', 'low-acid'],
    ['mushrooms', 'low-acid'],
    ['beets', 'low-acid'],
    ['kale', 'low-acid'],
    ['pumpkin', 'low-acid'],
    ['peaches', 'fruit'],
    ['raspberries', 'fruit'],
  ])('%s belongs to the table for %s', (food, group) => {
    expect(value(pressureGroup(food))).toBe(group);
  });

  it.each([
    'tomato',
    'salsa',
    'figs',
    'chicken soup',
    'grape',
    'sauerkraut',
    'dill pickles',
    'pickled beets',
    'cucumber',
    'lettuce',
    'trout',
    'ham',
    '',
  ])('%s: see its tested process', (food) => {
    expect(code(pressureGroup(food))).toBe('see-tested-process');
  });

  it.each([
    'milk',
    'butter',
    'broccoli',
    'zucchini',
    'pickled eggs',
    'pesto',
    'mashed potatoes',
    'cream of mushroom soup',
  ])('%s has no tested process', (food) => {
    expect(code(pressureGroup(food))).toBe('no-tested-process');
  });

  it('knows the usual load: 7 quarts or 9 pints', () => {
    expect(usualLoad()).toMatchObject({ quarts: 7, pints: 9 });
  });
});

describe('headspace', () => {
  it.each([
    ['low-acid', 1],
    ['vegetables', 1],
    ['Pickles', 0.5],
    ['tomatoes', 0.5],
    ['jelly', 0.25],
    ['juices', 0.25],
  ])('%s: %d inch', (name, inches) => {
    expect(value(headspace(name)).usual).toBe(inches);
  });

  it('refuses another word with the classes it knows', () => {
    const result = headspace('soup');
    expect(result.ok ? '' : result.problem.mend).toContain('low-acid, fruit or jam');
  });
});

describe('months of best quality', () => {
  const months = (way: string, food: string) => {
    const found = value(qualityMonths(way, food)).months;
    return found && [found.low, found.high];
  };

  // National Center for Home Food Preservation: frozen at 0 °F, and dried foods; USDA AIB 539, Guide 1: canned.
  it.each([
    ['canned', 'tomatoes', [12, 12]],
    ['canned', 'anything at all', [12, 12]],
    ['frozen', 'blueberries', [8, 12]],
    ['Frozen', 'green beans', [8, 12]],
    ['frozen', 'chicken', [6, 9]],
    ['frozen', 'smoked trout', [3, 6]],
    ['frozen', 'ground beef', [3, 4]],
    ['frozen', 'beef roast', [6, 12]],
    ['frozen', 'pork chops', [4, 6]],
    ['frozen', 'lamb', [6, 9]],
    ['frozen', 'butter', [6, 9]],
    ['frozen', 'bacon', [1, 2]],
    ['dried', 'apples', [6, 12]],
    ['dried', 'carrots', [3, 6]],
  ])('%s %s', (way, food, expected) => {
    expect(months(way, food)).toEqual(expected);
  });

  it('marks the recalled period of citrus', () => {
    expect(value(qualityMonths('frozen', 'oranges')).months?.certainty).toBe('from memory');
  });

  it('counts eggs in the shell by weeks', () => {
    const egg = value(qualityMonths('fresh', 'eggs'));
    expect([egg.weeks?.low, egg.weeks?.high]).toEqual([3, 5]);
    expect(egg.months?.high).toBeLessThan(1.2);
  });

  it('takes cellared months from cold storage: 2 to 9 for carrots across sources', () => {
    // USDA Agriculture Handbook 66 and lists reprinted from it.
    expect(months('cellared', 'carrots')).toEqual([2, 9]);
    expect(value(coldStorage('carrot')).months?.usual).toBe(5);
    expect(value(qualityMonths('cellared', 'carrots')).said).toContain('32 °F');
  });

  it('leaves blank what nobody publishes, and says what would fill it', () => {
    for (const [way, food] of [
      ['freeze-dried', 'strawberries'],
      ['fermented', 'cabbage'],
      ['cured', 'ham'],
      ['rendered', 'lard'],
      ['dry goods', 'wheat'],
      ['frozen', 'beef stew'],
      ['frozen', 'qqqq'],
      ['cellared', 'apple'],
    ] as const) {
      const quality = value(qualityMonths(way, food));
      expect(quality.months, `${way} ${food}`).toBeNull();
      expect(quality.said, `${way} ${food}`).toContain('own months');
    }
  });

  it('refuses a way of keeping it does not know', () => {
    expect(code(qualityMonths('pickled', 'beets'))).toBe('unknown-way');
    expect(code(qualityMonths('', 'beets'))).toBe('unknown-way');
  });
});

describe('food groups', () => {
  it.each([
    ['beef', 'beef'],
    ['elk steak', 'game'],
    ['chicken', 'poultry'],
    ['chicken eggs', 'egg'],
    ['chicken broth', 'prepared'],
    ['trout', 'fish'],
    ['lard', 'fat'],
    ['apple butter', 'fruit'],
    ['butter beans', 'vegetable'],
    ['peanut butter', 'nut'],
    ['pork sausage', 'cured meat'],
    ['Peaches in light syrup', 'fruit'],
    ['rolled oats', 'grain'],
    ['black beans', 'dry legume'],
    ['green beans', 'vegetable'],
    ['honey', 'sweetener'],
    ['goat cheese', 'dairy'],
  ])('%s is %s', (food, group) => {
    expect(value(foodGroup(food))).toBe(group);
  });

  it('says so when nothing in the name is known', () => {
    expect(code(foodGroup('qqqq'))).toBe('unknown-food-group');
  });
});

describe('rules and cautions', () => {
  const verdicts = (food: string) => canningRules(food).map((rule) => rule.verdict);

  it('knows what is canned in one form only, or not at all', () => {
    expect(verdicts('pumpkin')).toEqual(['one form']);
    expect(verdicts('milk')).toEqual(['no process']);
    expect(verdicts('peppers')).toEqual(['pints only']);
    expect(verdicts('tomatoes')).toEqual(['add acid']);
    expect(verdicts('chicken noodle soup')).toEqual(['leave out']);
    expect(verdicts('carrots')).toEqual([]);
  });

  it('marks the recalled rule on summer squash', () => {
    expect(canningRules('zucchini')[0]?.certainty).toBe('from memory');
  });

  it('puts the tested process before all else on a canned food, and the pressure canner on low-acid ones', () => {
    const ids = (food: string) => cautionsFor(food, 'canned').map((one) => one.id);
    expect(ids('green beans')).toEqual(['tested-process', 'low-acid', 'doubt', 'seal-check']);
    expect(ids('tomatoes')).toContain('acidify');
    expect(ids('tomatoes')).not.toContain('low-acid');
    expect(ids('peaches')).toEqual(['tested-process', 'seal-check']);
  });

  it('never calls old food safe', () => {
    expect(cautionsFor('peaches', 'canned', true).map((one) => one.id)).toContain('old-food');
    expect(allCautions().filter((one) => /\bis safe\b(?! until)/.test(one.text))).toEqual([]);
    expect(caution('old-food').text).toContain('not safe until');
  });

  it('warns of raw eggs in mayonnaise and of moisture in dry goods', () => {
    expect(cautionsFor('mayonnaise', 'fresh').map((one) => one.id)).toEqual(['raw-egg']);
    expect(cautionsFor('wheat', 'dry goods').map((one) => one.id)).toEqual(['dry-goods-moisture']);
  });

  it('gives no process time anywhere', () => {
    const texts = [
      ...allCautions().map((one) => one.text),
      ...['tomato', 'milk', 'pumpkin', 'fig'].flatMap((food) => canningRules(food).map((rule) => rule.text)),
    ];
    expect(texts.filter((text) => /\bminutes?\b|\bmin\b/.test(text))).toEqual([]);
  });

  it('has cautions for every topic a screen asks for', () => {
    for (const topic of [
      'canned',
      'pressure',
      'shelf',
      'old',
      'raw egg',
      'dry goods',
      'frozen',
      'batch',
    ] as const) {
      expect(cautions(topic).length, topic).toBeGreaterThan(0);
    }
  });
});

describe('density', () => {
  it('is published for few foods', () => {
    // USDA conversion factors: milk 8.6 lb a gallon. University of Missouri MP563: 1 lb of cornmeal = 3 cups.
    expect(value(densityOf('milk')).usual).toBeCloseTo(8.6 / 16, 9);
    expect(value(densityOf('corn meal')).usual).toBeCloseTo(1 / 3, 6);
    expect(code(densityOf('flour'))).toBe('no-density');
  });
});
