import { describe, expect, it } from 'vitest';
import {
  bushelPounds,
  type Canning,
  canning,
  canningRules,
  drying,
  type Figure,
  freezing,
  headspaceOf,
  marketContainers,
  waterContent,
} from '../../src/facts/index.js';
import type { Result } from '../../src/problem.js';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}
const range = (figure: Figure | null): [number, number] | null => (figure ? [figure.low, figure.high] : null);
const box = (of: Canning, name: string) => of.containers.find((one) => one.of === name) ?? null;

/** crop, pack, quart, 7 quarts, 9 pints, container, its pounds, its quarts; as each source prints them. */
type Row = readonly [
  crop: string,
  pack: string | undefined,
  quart: number,
  load7: number,
  load9: number,
  container: string | null,
  pounds: number,
  quarts: readonly [number, number] | null,
];

// USDA Agriculture Information Bulletin 539, Complete Guide to Home Canning, Guides 2, 3, 4 and 6: the
// quantity lines of each food.
const USDA: readonly Row[] = [
  ['tomatoes', undefined, 3, 21, 13, 'bushel', 53, [15, 21]],
  ['tomato', 'thin sauce', 5, 35, 21, 'bushel', 53, [10, 12]],
  ['apple', 'sliced', 2.75, 19, 12.25, 'bushel', 48, [16, 19]],
  ['pear', undefined, 2.5, 17.5, 11, 'bushel', 50, [16, 25]],
  ['plum', undefined, 2, 14, 9, 'bushel', 56, [22, 36]],
  ['apricot', undefined, 2.25, 16, 10, 'bushel', 50, [20, 25]],
  ['berries', undefined, 1.75, 12, 8, '24-quart crate', 36, [18, 24]],
  ['rhubarb', undefined, 1.5, 10.5, 7, 'lug', 28, [14, 28]],
  ['cucumber', 'pickles', 2, 14, 9, 'bushel', 48, [16, 24]],
  ['green beans', undefined, 2, 14, 9, 'bushel', 30, [12, 20]],
  ['dry beans', undefined, 0.75, 5, 3.25, null, 0, null],
  ['sweet corn', 'whole kernel', 4.5, 31.5, 20, 'bushel', 35, [6, 11]],
  ['peas', undefined, 4.5, 31.5, 20, 'bushel', 30, [5, 10]],
  ['potato', 'cubed or whole, 1994 edition', 5, 35, 22.5, 'bag', 50, [8, 12]],
  // University of Missouri Extension, home canning of vegetables: the current edition.
  ['potato', undefined, 2.75, 20, 13, 'bag', 50, [18, 22]],
  ['pumpkin', undefined, 2.25, 16, 10, null, 0, null],
  ['asparagus', undefined, 3.5, 24.5, 16, 'crate', 31, [7, 12]],
];

describe('canning quantity lines', () => {
  it.each(USDA)('%s, %s', (crop, pack, quart, load7, load9, container, pounds, quarts) => {
    const of = value(canning(crop, pack));
    expect(of.poundsPerQuart?.usual).toBe(quart);
    expect(of.loadOf7Quarts?.usual).toBe(load7);
    expect(of.loadOf9Pints?.usual).toBe(load9);
    if (container === null) {
      expect(of.quartsPerBushel).toBeNull();
    } else {
      expect(box(of, container)?.pounds.usual).toBe(pounds);
      expect(range(box(of, container)?.quarts ?? null)).toEqual(quarts);
    }
  });

  it('takes bushel pounds over pounds a quart as the usual count of quarts', () => {
    expect(value(canning('tomato')).quartsPerBushel?.usual).toBeCloseTo(53 / 3, 9);
    expect(value(canning('spinach')).quartsPerBushel?.usual).toBeCloseTo(18 / 4, 9);
  });

  it('goes by the load for crushed tomatoes, not by the average that contradicts it', () => {
    // National Center for Home Food Preservation, after USDA AIB 539: 22 lb to 7 quarts, beside 2 3/4 lb a quart.
    const crushed = value(canning('tomato', 'crushed'));
    expect(crushed.poundsPerQuart?.usual).toBeCloseTo(22 / 7, 5);
    expect(crushed.poundsPerQuart?.certainty).toBe('derived');
    expect(crushed.poundsPerQuart?.note).toContain('2.75');
  });

  it('takes the plainest pack when none is named', () => {
    const plainest = (crop: string) => value(canning(crop)).pack;
    expect(['tomato', 'beet', 'apple', 'grape', 'corn', 'cucumber'].map(plainest)).toEqual([
      'whole or halved',
      'whole, cubed or sliced',
      'sliced',
      'whole',
      'whole kernel',
      'pickles',
    ]);
  });

  it('never gives jars per bushel for a crop printed per lug, crate or bag', () => {
    for (const crop of ['grape', 'rhubarb', 'berries', 'potato']) {
      expect(value(canning(crop)).quartsPerBushel, crop).toBeNull();
    }
  });

  it('keeps other handbooks by name without moving the printed range', () => {
    const quarts = value(canning('tomato')).quartsPerBushel;
    const other = quarts?.readings.find((one) => one.source === 'uga-course');
    expect([other?.low, other?.high]).toEqual([15, 20]);
    expect(quarts?.low).toBe(15);
  });

  it('prints pints alone where no quart process exists', () => {
    // USDA AIB 539, Guide 4: cream-style corn, 2.25 lb a pint, 12 to 20 pints from a bushel.
    const corn = value(canning('corn', 'cream style'));
    expect(corn.poundsPerQuart).toBeNull();
    expect(corn.poundsPerPint?.usual).toBe(2.25);
    expect(range(corn.pintsPerBushel)).toEqual([12, 20]);
    expect(corn.onlyJars).toEqual(['pint']);
  });

  it('makes about 9 quarts of sauerkraut from 25 lb of cabbage', () => {
    // National Center for Home Food Preservation, sauerkraut.
    expect(value(canning('cabbage', 'sauerkraut')).poundsPerQuart?.usual).toBeCloseTo(25 / 9, 5);
  });

  it('publishes no pounds a quart for beef but recalls some, and says so', () => {
    expect(value(canning('beef')).poundsPerQuart?.certainty).toBe('from memory');
    expect(value(canning('chicken')).poundsPerQuart).toBeNull();
  });

  it('serves kale with the figures for greens, and says so', () => {
    const kale = value(canning('kale'));
    expect([kale.crop, kale.printedFor, kale.loadOf7Quarts?.usual]).toEqual(['kale', 'greens', 28]);
  });

  it('knows the headspace of a pack, and the grape that goes against its class', () => {
    expect(headspaceOf(value(canning('green bean')))?.usual).toBe(1);
    expect(headspaceOf(value(canning('peach')))?.usual).toBe(0.5);
    expect(headspaceOf(value(canning('grape', 'whole')))?.usual).toBe(1);
    expect(headspaceOf(value(canning('grape', 'juice')))?.usual).toBe(0.25);
  });

  it('refuses a pack it does not know with those it does', () => {
    const result = canning('tomato', 'crushd');
    expect(result.ok ? null : result.problem.message).toBe(
      'no pack of tomato called "crushd": did you mean crushed?',
    );
    expect(result.ok ? '' : result.problem.mend).toContain('whole or halved');
  });

  it('refuses a crop nobody cans', () => {
    const result = canning('radish');
    expect(result.ok ? null : result.problem.code).toBe('nothing-published');
  });
});

describe('frozen yields', () => {
  it('gives pints per bushel as printed', () => {
    // Michigan State University Extension: peaches, summer squash, asparagus, apples; a reprinted table: limas.
    expect(range(value(freezing('peach')).pintsPerBushel)).toEqual([32, 48]);
    expect(range(value(freezing('summer squash')).pintsPerBushel)).toEqual([32, 40]);
    expect(range(value(freezing('asparagus')).pintsPerBushel)).toEqual([30, 45]);
    expect(range(value(freezing('lima bean')).pintsPerBushel)).toEqual([12, 16]);
    expect(range(value(freezing('apple')).pintsPerBushel)).toEqual([30, 36]);
    const lug = value(freezing('peach')).yields.find((one) => one.of === 'lug');
    expect([lug?.pounds?.usual, lug?.pints?.low, lug?.pints?.high]).toEqual([22, 16, 24]);
  });

  it('agrees with its own pounds a pint: 40 lb of squash at 1 to 1.25 lb', () => {
    const squash = value(freezing('zucchini'));
    expect(range(squash.poundsPerPint)).toEqual([1, 1.25]);
    expect(40 / (squash.poundsPerPint?.high ?? 0)).toBe(32);
  });

  it('leaves apple sauce out of the figures for apples, though it keeps the line', () => {
    const apple = value(freezing('apple'));
    expect(apple.yields.some((one) => one.note?.includes('quarts'))).toBe(true);
    expect(apple.poundsPerPint?.certainty).toBe('published');
  });
});

describe('bushel weights', () => {
  it('names every source of the apple bushel: 40, 42, 48 and 50 lb', () => {
    const apple = value(bushelPounds('apple'));
    expect([apple.low, apple.usual, apple.high]).toEqual([40, 48, 50]);
    const says = (source: string) =>
      apple.readings.filter((one) => one.source === source).map((one) => [one.low, one.high]);
    expect(says('aib539')).toEqual([[48, 48]]); // USDA AIB 539
    expect(says('indiana-code')).toEqual([[42, 42]]); // Indiana Code 24-6-1-1
    expect(says('iowa-code')).toEqual([[48, 48]]); // Iowa Code 210.10
    expect(says('arkansas-code')).toEqual([[50, 50]]); // Arkansas Code 4-18-331
    expect(says('ga-fb')).toEqual([[40, 40]]); // Georgia Farm Bureau
    expect(says('ill-bushel')).toEqual([[42, 48]]); // University of Illinois Extension
    expect(says('fcic-lam').flat()).toEqual([42, 42, 40, 40]); // USDA Federal Crop Insurance Corporation
  });

  it('tells sweet corn, shelled corn and ear corn apart', () => {
    // USDA AIB 539 (in husks); University of Missouri Extension G4020.
    expect(value(bushelPounds('corn')).usual).toBe(35);
    expect(value(bushelPounds('shelled corn')).usual).toBe(56);
    expect(value(bushelPounds('ear corn')).usual).toBe(70);
  });

  it('keeps a legal bushel of green beans beside that of the market, out of its range', () => {
    // University of Illinois Extension 28 to 30; Iowa Code 210.10 56.
    const bean = value(bushelPounds('green bean'));
    expect([bean.low, bean.high]).toEqual([28, 30]);
    expect(bean.readings.find((one) => one.source === 'iowa-code')).toMatchObject({ usual: 56, aside: true });
  });

  it.each([
    ['peach', 48, 52],
    ['buckwheat', 48, 50], // Iowa 48, Indiana 50
    ['flax', 56, 60],
    ['beet', 52, 56],
    ['cherry', 40, 56],
    ['turnip', 54, 57],
    ['spinach', 18, 20],
  ])('%s: %d to %d lb across sources', (crop, low, high) => {
    expect(range(value(bushelPounds(crop)))).toEqual([low, high]);
  });

  it('says by what a crop is sold where it has no bushel', () => {
    const result = bushelPounds('rhubarb');
    expect(result.ok ? '' : result.problem.message).toContain('lug of 28 lb');
    expect(marketContainers('cherry').map((one) => one.of)).toEqual(['bushel', 'lug']);
  });

  it('marks a recalled weight', () => {
    expect(value(bushelPounds('parsnip')).certainty).toBe('from memory');
  });
});

describe('water and drying', () => {
  // USDA National Nutrient Database for Standard Reference, Release 28. A pound dried = fresh × (1 − refuse)
  // × (1 − water fresh) ÷ (1 − water dried).
  const dried = (pounds: number, fresh: { water: Figure; refuse: Figure }, left: number) =>
    (pounds * (1 - fresh.refuse.usual / 100) * (1 - fresh.water.usual / 100)) / (1 - left / 100);

  it('gives what the arithmetic of water removal needs', () => {
    const sunDried = value(waterContent('tomato', 'dried')).water.usual;
    expect(dried(14, value(waterContent('tomato')), sunDried)).toBeCloseTo(0.817, 3);
    expect(dried(12, value(waterContent('apple', 'fresh', 'peeled')), 20)).toBeCloseTo(1.54, 3);
    expect(dried(12, value(waterContent('onion')), 5)).toBeCloseTo(1.238, 3);
    const freezeDried = value(waterContent('pepper', 'freeze-dried')).water.usual;
    expect(dried(10, value(waterContent('bell pepper')), freezeDried)).toBeCloseTo(0.511, 3);
  });

  it('recalls 1/2 lb dried from 14 lb of tomatoes, from memory', () => {
    // University of Georgia Extension, Preserving Food: Drying Fruits and Vegetables (recalled).
    const tomato = value(drying('tomato'));
    expect(tomato.freshPerDried.usual).toBe(28);
    expect(tomato.driedPerFresh.certainty).toBe('from memory');
  });

  it('names what it knows when asked for a state it does not', () => {
    const result = waterContent('carrot', 'freeze-dried');
    expect(result.ok ? '' : result.problem.mend).toContain('fresh');
  });
});

describe('rules on canning by the words of a food', () => {
  it.each([
    ['Apple butter', []],
    ['Bread-and-butter pickles', []],
    ['Peanut butter', []],
    ['Butter', ['dairy']],
    ['Goat butter', ['dairy']],
    ['Pumpkin butter', ['squash-cubes']],
  ])('%s', (food, rules) => {
    expect(canningRules(food).map(({ id }) => id)).toEqual(rules);
  });
});
