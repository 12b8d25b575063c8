import { describe, expect, it } from 'vitest';
import {
  cropNames,
  figureSource,
  findCrop,
  type Growing,
  growing,
  livestock,
  perPerson,
  plantShare,
  reckonedBy,
  staples,
  trees,
  yieldOf,
} from '../../src/facts/index.js';
import type { Result } from '../../src/problem.js';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}
const of = (crop: string): Growing => value(growing(crop));
const message = (result: Result<unknown>): string => (result.ok ? '' : result.problem.message);

describe('names of crops', () => {
  it.each([
    ['Tomatoes', 'tomato'],
    ['GREEN BEANS', 'snap bean'],
    ['string bean', 'snap bean'],
    ['  sweet   corn ', 'sweet corn'],
    ['Corn, sweet', 'sweet corn'],
    ['courgettes', 'zucchini'],
    ['muskmelon', 'cantaloupe'],
    ['cherries', 'cherry'],
    ['Brussels sprouts', 'Brussels sprout'],
    ['swede', 'rutabaga'],
    ['Jalapeño', 'hot pepper'],
  ])('%s is %s', (name, crop) => {
    expect(value(findCrop(name)).name).toBe(crop);
  });

  it('asks about a misspelling instead of guessing', () => {
    expect(message(findCrop('tomatos'))).toBe('no crop called "tomatos": did you mean tomato?');
    expect(message(findCrop('zuchini'))).toContain('did you mean zucchini?');
    expect(message(findCrop('cabage'))).toContain('cabbage');
  });

  it('answers a blank and a name like nothing else without a suggestion', () => {
    expect(message(findCrop('  '))).toBe('the crop is blank.');
    expect(message(findCrop('qqqqqqqq'))).toBe('no crop called "qqqqqqqq".');
  });

  it('offers crops to grow, not meat or milk', () => {
    expect(cropNames()).toContain('tomato');
    expect(cropNames()).not.toContain('beef');
  });
});

describe('yields', () => {
  it('gives the K-State figure per foot of row, and the range of all sources', () => {
    // K-State MF315: 120 lb to 100 ft; University of Maine 80; Virginia Cooperative Extension 30 to 50.
    const bean = yieldOf(of('snap bean'), 'row foot');
    expect([bean?.low, bean?.usual, bean?.high]).toEqual([0.3, 1.2, 1.2]);
    expect(figureSource(bean!)).toMatch(/^Kansas State.*Maine.*Virginia/s);
  });

  it('keeps ears, stalks, heads, fruits and bunches as they are counted', () => {
    // K-State MF315, per 100 ft: 120 ears, 180 stalks, 80 heads, 40 and 100 fruits.
    const counted = (crop: string) => [
      of(crop).yields[0]?.of,
      Math.round((of(crop).yields[0]?.usual ?? 0) * 100),
    ];
    expect(counted('sweet corn')).toEqual(['ear', 120]);
    expect(counted('celery')).toEqual(['stalk', 180]);
    expect(counted('Chinese cabbage')).toEqual(['head', 80]);
    expect(counted('watermelon')).toEqual(['fruit', 40]);
    expect(counted('cantaloupe')).toEqual(['fruit', 100]);
    expect(yieldOf(of('sweet corn'), 'row foot', 'pound')).toBeNull();
    expect(yieldOf(of('celery'), 'row foot', 'pound')?.usual).toBe(1.6);
  });

  it('reckons by the foot of row where that is published, else by the plant', () => {
    expect(reckonedBy(of('tomato'))?.per).toBe('row foot');
    // Ask Extension, highbush blueberries: plan on 5 lb a bush, 2 to 10.
    const bush = reckonedBy(of('blueberry'));
    expect([bush?.per, bush?.low, bush?.usual, bush?.high]).toEqual(['plant', 2, 5, 10]);
  });

  it('shares a row-foot yield by spacing, so that closer plants give less each', () => {
    // K-State MF315 100 lb to 100 ft; University of Missouri G6201 18 inches, staked.
    expect(plantShare(of('tomato'))?.usual).toBeCloseTo(1.5, 9);
    expect(plantShare(of('tomato'), 36)?.usual).toBeCloseTo(3, 9);
    expect(plantShare(of('tomato'))?.certainty).toBe('derived');
    // University of Maine Cooperative Extension prints 8 lb a plant.
    expect(yieldOf(of('tomato'), 'plant')?.usual).toBe(8);
    expect(plantShare(of('rutabaga'))).toBeNull();
  });

  it('says pounds shelled where the yield is shelled', () => {
    expect(of('lima bean').yields[0]?.note).toContain('shelled');
  });

  it('gives 0.17 quarts of strawberries a foot and up, as an old circular has it', () => {
    // University of Kentucky Circular 238 (1930): 50 to 125 quarts from 300 ft, at 1.25 to 1.5 lb a quart.
    const berries = yieldOf(of('strawberry'), 'row foot');
    expect(berries?.low).toBeCloseTo((50 / 300) * 1.25, 2);
    expect(Math.abs((berries?.high ?? 0) - (125 / 300) * 1.5)).toBeLessThan(0.006);
    expect(berries?.certainty).toBe('derived');
  });
});

describe('sowing and setting out', () => {
  it('splits messy spacings into a range with the usual one marked', () => {
    const tomato = of('tomato').spacing;
    expect([tomato?.low, tomato?.usual, tomato?.high]).toEqual([18, 18, 36]);
    expect(tomato?.note).toContain('staked');
  });

  it('counts days to maturity from seed or from setting out', () => {
    expect(of('tomato').maturityFrom).toBe('transplant');
    expect(of('carrot').maturityFrom).toBe('seed');
  });

  it('starts tomatoes 6 to 8 weeks indoors and sets them out 0 to 1 week after the last frost', () => {
    // Higher Ground Farm, planting timetable; Better Homes and Gardens 5 to 7; a New England newsletter 6 to 10.
    const { weeksIndoors, weeksFromLastFrost } = of('tomato');
    expect([weeksIndoors?.readings[0]?.low, weeksIndoors?.readings[0]?.high]).toEqual([6, 8]);
    expect([weeksIndoors?.low, weeksIndoors?.high]).toEqual([5, 10]);
    expect([weeksFromLastFrost?.low, weeksFromLastFrost?.high]).toEqual([0, 1]);
  });

  it('gives negative weeks before the last frost', () => {
    expect([of('spinach').weeksFromLastFrost?.low, of('spinach').weeksFromLastFrost?.high]).toEqual([-6, -4]);
  });

  it('has the federal germination that 59 broccoli plants need: 79 seeds', () => {
    // US Code of Federal Regulations, 7 CFR 201.31: broccoli 75 percent.
    expect(Math.ceil(59 / ((of('broccoli').germination?.usual ?? 0) / 100))).toBe(79);
  });

  it('needs 4 to 5 ounces of corn seed to 100 ft: 12 ounces at least to 300', () => {
    // University of Maine Cooperative Extension, planting chart.
    expect(3 * (of('sweet corn').plantingPer100Ft[0]?.low ?? 0)).toBe(12);
  });

  it('marks recalled fields of a row, and only those', () => {
    expect(of('pepper').weeksFromLastFrost?.certainty).toBe('from memory');
    expect(of('pepper').weeksIndoors?.certainty).toBe('published');
    expect(of('okra').frost).toMatchObject({ value: 'very tender', certainty: 'from memory' });
    expect(of('sweet corn').daysToMaturity?.certainty).toBe('from memory');
  });

  it('refuses a crop without growing figures in words', () => {
    expect(message(growing('banana'))).toBe('no growing figures are published here for banana.');
  });
});

describe('animals, trees, staples and people', () => {
  const beef = value(livestock('steer'));
  const by = (source: string, live: number) =>
    beef.find((one) => one.source === source && one.liveWeight === live);

  it('keeps the examples that carcass weights rest on', () => {
    // Mississippi State University Extension P3489: 756 of 1,200 lb, 63 percent. Penn State: 787 of 1,312 lb.
    const one = by('msstate-p3489', 1200);
    expect((one?.carcass ?? 0) / (one?.liveWeight ?? 1)).toBeCloseTo(0.63, 3);
    expect(by('penn-state', 1312)?.carcass).toBe(787);
    // Penn State: a 245 lb hog hangs at 176 lb, 72 percent; University of Kentucky: 250 lb × 73.6 % = 184 lb.
    const pork = value(livestock('hog'));
    expect(pork.find((each) => each.liveWeight === 245)?.carcass).toBe(176);
    const uk = pork.find((each) => each.source === 'uk-pork');
    expect(((uk?.liveWeight ?? 0) * (uk?.dressing?.usual ?? 0)) / 100).toBeCloseTo(uk?.carcass ?? 0, 6);
  });

  it('lets a hen of 250 eggs fall to 200, 175 and 150', () => {
    // University of Florida research, quoted at second hand.
    const hen = value(livestock('hens'));
    const first = hen.find((one) => one.measure.includes('first year') && one.value?.unit.startsWith('eggs'));
    const shares = hen.filter((one) => one.value?.unit.startsWith('%')).map((one) => one.value?.usual ?? 0);
    expect(shares.map((share) => ((first?.value?.usual ?? 0) * share) / 100)).toEqual([200, 175, 150]);
    expect(first?.value?.note).toContain('not an average');
  });

  it('answers each tree under its own source', () => {
    // University of Missouri Extension MG6, Table 1: a standard apple tree 10 to 15 bushels.
    const apple = value(trees('apple', 'standard'));
    expect([apple[0]?.source, apple[0]?.yield?.low, apple[0]?.yield?.high]).toEqual(['mu-mg6', 10, 15]);
    expect(apple.length).toBeGreaterThan(1);
    expect(message(trees('tomato'))).toContain('tomato');
  });

  it('cans 7 quarts from 5 lb of dry beans', () => {
    // USDA AIB 539: 5 lb to 7 quarts, printed average 3/4 lb.
    const load = staples('dry beans').find(
      (one) => one.fromUnit === 'lb dry' && one.gives.unit === 'qt jars',
    );
    expect((load?.fromAmount ?? 0) / (load?.gives.usual ?? 1)).toBeCloseTo(0.714, 3);
  });

  it('keeps availability and loss-adjusted use of tomatoes apart', () => {
    // USDA Economic Research Service: 87.8 lb a person in 2014; 28.3 lb loss-adjusted in 2015.
    const bases = perPerson('tomato').filter((one) => one.amount.source === 'usda-ers');
    expect(bases.map((one) => [one.basis, one.amount.usual])).toContainEqual([
      'US per-capita loss-adjusted',
      28.3,
    ]);
    expect(new Set(bases.map((one) => one.basis)).size).toBe(2);
  });

  it('refuses an animal it does not know with those it does', () => {
    expect(message(livestock('yak'))).toBe('no animal called "yak".');
  });
});
