import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { groundToShare } from '../../src/live/doings/share-ground.js';
import { cropKey } from '../../src/planning/garden/index.js';

const GARDEN = ['beds', 'harvest', 'batches', 'supplies', 'facts'] as const;

function demo(name: string): LiveBook {
  const found = parseBook(readFileSync(`demo/data/${name}.json`, 'utf8'));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return openBook(found.book);
}

describe('the garden half of Tamarack Bench', () => {
  let book: LiveBook;
  beforeAll(() => {
    book = demo('tamarack-bench');
  });
  afterAll(() => book.close());

  const value = (sheet: string, row: string, column: string) => book.value(sheet, row, column);
  const number = (sheet: string, row: string, column: string): number => {
    const found = value(sheet, row, column);
    if (typeof found !== 'number') throw new Error(`${sheet} ${row} ${column} is ${JSON.stringify(found)}`);
    return found;
  };
  const column = (sheet: string, id: string) => book.rowIds(sheet).map((row) => value(sheet, row, id));
  const sum = (sheet: string, id: string): number =>
    column(sheet, id).reduce<number>((all, each) => all + (typeof each === 'number' ? each : 0), 0);

  it('fills every planning column of the garden’s sheets', () => {
    for (const sheet of GARDEN) {
      for (const { id, role } of book.columns(sheet)) {
        if (role !== 'planning') continue;
        expect(
          column(sheet, id).some((each) => each !== null),
          `${sheet} ${id}`,
        ).toBe(true);
      }
    }
  });

  it('has the plantings of a real garden, started in every way', () => {
    expect(book.rowIds('beds').length).toBeGreaterThanOrEqual(40);
    expect(new Set(column('beds', 'how_started'))).toEqual(
      new Set(['direct', 'indoors', 'winter-sown', 'set', 'crown', 'tree']),
    );
    expect(book.rowIds('harvest').length).toBeGreaterThanOrEqual(110);
    // Garlic went in last fall for this summer.
    expect(value('beds', 'garlic', 'sown_on')).toBe('2025-10-12');
    expect(value('beds', 'garlic', 'harvest_from')).toBe('2026-07-20');
    // A young tree bears nothing yet; an old one does.
    expect(number('beds', 'apple-sixteen', 'expected_pounds')).toBe(0);
    expect(number('beds', 'apple-wealthy', 'expected_pounds')).toBeGreaterThan(100);
  });

  it('plans plants that fit the ground, and wants more than it holds', async () => {
    expect(sum('beds', 'row_feet')).toBeGreaterThan(3800);
    expect(sum('beds', 'row_feet')).toBeLessThanOrEqual(4000);
    const shared = await groundToShare(book);
    if (!shared.ok) throw new Error(shared.problem.message);
    const { plan } = shared.value;
    expect(plan.fits).toBe(false);
    expect(plan.available).toBeLessThan(4000);
    expect(plan.needed).toBeGreaterThan(plan.available);
    expect(plan.used).toBeLessThanOrEqual(plan.available);
    expect(plan.leastShare).toBeGreaterThan(0.5);
    expect(plan.leastShare).toBeLessThan(1);
  });

  it('is short of some crops and over with others', () => {
    for (const row of ['tomato-amish', 'potato-kennebec', 'pea']) {
      expect(number('beds', row, 'short_or_over'), row).toBeLessThan(-20);
      expect(number('beds', row, 'plants'), row).toBeLessThan(number('beds', row, 'plants_wanted'));
    }
    expect(number('beds', 'zucchini', 'pounds_wanted')).toBe(0);
    expect(number('beds', 'zucchini', 'short_or_over')).toBeGreaterThan(20);
    const signs = column('beds', 'short_or_over').map((each) => Math.sign(Number(each)));
    expect(signs.filter((sign) => sign > 0).length).toBeGreaterThan(8);
    expect(signs.filter((sign) => sign < 0).length).toBeGreaterThan(15);
  });

  it('leaves blank what nobody publishes, and says what would fill it', () => {
    expect(number('beds', 'rhubarb', 'pounds_wanted')).toBeGreaterThan(0);
    for (const each of ['yield', 'plants_wanted', 'expected_pounds', 'short_or_over']) {
      expect(value('beds', 'rhubarb', each), each).toBeNull();
    }
    expect(book.problem('beds', 'rhubarb', 'yield')?.mend).toMatch(/own figure/);
  });

  it('has learned other figures than the published ones for many crops', () => {
    const differing = new Set(
      book
        .rowIds('facts')
        .filter((row) => {
          const [learned, published] = [value('facts', row, 'learned'), value('facts', row, 'published')];
          return (
            typeof learned === 'number' &&
            typeof published === 'number' &&
            Math.abs(learned / published - 1) > 0.01
          );
        })
        .map((row) => String(value('facts', row, 'figure'))),
    );
    expect([...differing].filter((figure) => figure.endsWith(', yield')).length).toBeGreaterThanOrEqual(8);
    expect(differing).toContain('tomato, pounds per quart jar, canned');
  });

  it('leads every published figure to its source', () => {
    for (const row of book.rowIds('facts')) {
      if (value('facts', row, 'published') === null) continue;
      expect(String(value('facts', row, 'source') ?? '').length, row).toBeGreaterThan(10);
    }
  });

  it('lets own figures win: apples in a jar, kale in the freezer, pounds in a cubic foot', () => {
    for (const [figure, own] of [
      ['apple, pounds per quart jar, canned', 2.6],
      ['kale, months of best quality, frozen', 11],
      ['freezer, pounds per cubic foot', 36],
    ] as const) {
      const row = book.rowIds('facts').find((each) => value('facts', each, 'figure') === figure)!;
      expect(value('facts', row, 'in_use'), figure).toBe(own);
      expect(value('facts', row, 'published'), figure).not.toBe(own);
    }
    expect(number('foods', 'applesauce-canned', 'pounds_to_grow')).toBeCloseTo(
      2.6 * number('foods', 'applesauce-canned', 'to_put_up'),
      6,
    );
  });

  it('takes fresh seasons from Beds where Foods gives none', () => {
    const from = book
      .rowIds('foods')
      .filter(
        (row) =>
          value('foods', row, 'comes_from') === 'ground' &&
          value('foods', row, 'fresh_from') === null &&
          value('foods', row, 'next_supply') === null,
      );
    expect(from.length).toBeGreaterThanOrEqual(20);
    for (const row of from) {
      const crop = cropKey(
        String(value('foods', row, 'crops'))
          .split(/[;\d]/)[0]!
          .trim(),
      );
      const days = book
        .rowIds('beds')
        .filter((bed) => cropKey(String(value('beds', bed, 'crop'))) === crop)
        .map((bed) => String(value('beds', bed, 'harvest_from')))
        .sort();
      expect(value('foods', row, 'next_harvest'), row).toBe(days[0]);
    }
  });

  it('stands every batch of last season on the Shelf: filled less failed', () => {
    const done = book.rowIds('batches').filter((row) => value('batches', row, 'filled') !== null);
    expect(done.length).toBeGreaterThan(40);
    for (const row of done) {
      const lot = String(value('batches', row, 'lot'));
      for (const [batch, shelf] of [
        ['food', 'food'],
        ['way', 'way'],
        ['container', 'container'],
        ['date', 'put_up_on'],
      ] as const) {
        expect(value('shelf', lot, shelf), `${row} ${batch}`).toBe(value('batches', row, batch));
      }
      const failed = Number(value('batches', row, 'failed') ?? 0);
      expect(value('shelf', lot, 'count'), row).toBe(number('batches', row, 'filled') - failed);
    }
    expect(new Set(done.map((row) => value('batches', row, 'lot'))).size).toBe(done.length);
    const open = book.rowIds('batches').filter((row) => value('batches', row, 'filled') === null);
    expect(open.length).toBeGreaterThan(15);
    for (const row of open) {
      expect(String(value('batches', row, 'date')) > '2026-02-15').toBe(true);
      expect(number('batches', row, 'jars'), row).toBeGreaterThan(0);
    }
  });

  it('puts up no more of a crop than came in by that day, and buys only what it does not grow', () => {
    const grown = new Set(column('beds', 'crop').map((crop) => cropKey(String(crop))));
    const flows = new Map<string, { day: string; pounds: number }[]>();
    const add = (crop: string, day: string, pounds: number) =>
      flows.set(crop, [...(flows.get(crop) ?? []), { day, pounds }]);
    for (const [row, { crop, pounds }] of book.garden!.harvest.reckoned) {
      if (crop !== null && pounds?.ok) add(crop, String(value('harvest', row, 'date')), pounds.value);
    }
    for (const row of book.rowIds('batches')) {
      if (value('batches', row, 'filled') === null) continue;
      for (const part of String(value('batches', row, 'pounds_in')).split(';')) {
        const [, crop = '', pounds] = /^\s*(.*) ([\d.]+)$/.exec(part) ?? [];
        const key = cropKey(crop)!;
        if (grown.has(key)) add(key, String(value('batches', row, 'date')), -Number(pounds));
        else expect(key).toBe('peach');
      }
    }
    for (const [crop, list] of flows) {
      let left = 0;
      // What is picked in the morning is put up in the evening.
      for (const { day, pounds } of list.sort((a, b) => a.day.localeCompare(b.day) || b.pounds - a.pounds)) {
        left += pounds;
        expect(left, `${crop} ${day}`).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('counts its lids in February, while there is time to buy them', () => {
    const of = (item: string, column: string) =>
      number(
        'supplies',
        book.rowIds('supplies').find((row) => value('supplies', row, 'item') === item)!,
        column,
      );
    for (const item of ['regular lids', 'wide lids', 'pint jar', 'pint freezer bag']) {
      expect(of(item, 'short'), item).toBe(of(item, 'wanted') - of(item, 'on_hand'));
      expect(of(item, 'short'), item).toBeGreaterThan(0);
    }
    expect(of('wide rings', 'short')).toBe(0);
    expect(of('quart jar', 'short')).toBe(0);
  });
});

describe('the garden of the school', () => {
  it('has five plantings, what came of them, and a first season to learn from', () => {
    const book = demo('school-garden');
    expect(book.rowIds('beds')).toHaveLength(5);
    expect(book.rowIds('harvest').length).toBeGreaterThan(5);
    for (const row of book.rowIds('beds')) {
      for (const column of ['pounds_wanted', 'plants_wanted', 'expected_pounds', 'harvest_from']) {
        expect(book.value('beds', row, column), `${row} ${column}`).not.toBeNull();
      }
    }
    expect(book.value('facts', 'fact1', 'own_seasons')).toBe(1);
    // One season against a published figure that counts for two: (1 · 66 ÷ 12 + 2 · 8) ÷ 3.
    expect(book.value('facts', 'fact1', 'learned')).toBeCloseTo((66 / 12 + 2 * 8) / 3, 9);
    book.close();
  });
});
