import { readFileSync } from 'node:fs';
import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { yearToTurn } from '../../src/live/doings/turn-year.js';

/**
 * The loop of one crop, followed by hand: from the jars that will be left, over pounds and plants, to what came
 * in, what it filled and what was learned. Every step is reckoned from figures that the sheets show, and from
 * nothing that the planners keep to themselves.
 */
describe('tomatoes, from the jars left to the plants and back', () => {
  let book: LiveBook;
  beforeAll(() => {
    const found = parseBook(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    book = openBook(found.book);
  });
  afterAll(() => book.close());

  const PLANTINGS = ['tomato-amish', 'tomato-stupice', 'tomato-siletz'];
  /** Containers of tomatoes, with the pounds in each that Foods names; null where the learned figure counts. */
  const LINES = [
    ['tomatoes-canned', null],
    ['tomato-sauce-canned', 3.3],
    ['salsa-canned', 2],
    ['tomato-juice-canned', 3.25],
    ['tomatoes-dried', null],
  ] as const;

  const shown = (sheet: string, row: string, column: string): number => {
    const value = book.value(sheet, row, column);
    if (typeof value !== 'number') throw new Error(`${sheet} ${row} ${column}: ${JSON.stringify(value)}`);
    return value;
  };
  const day = (sheet: string, row: string, column: string): DateTime =>
    DateTime.fromISO(String(book.value(sheet, row, column)), { zone: 'utc' });
  const asOf = (): DateTime => DateTime.fromISO(String(book.setting('as_of')), { zone: 'utc' });
  const days = (from: DateTime, to: DateTime): number => to.diff(from, 'days').days;
  const facts = (figure: string): string[] =>
    book.rowIds('facts').filter((row) => book.value('facts', row, 'figure') === figure);
  const harvested = (): { pounds: number; plants: number } => {
    let pounds = 0;
    let plants = 0;
    for (const row of book.rowIds('harvest')) {
      if (!PLANTINGS.includes(String(book.value('harvest', row, 'planting')))) continue;
      pounds += shown('harvest', row, 'amount');
      plants += Number(book.value('harvest', row, 'plants') ?? 0);
    }
    return { pounds, plants };
  };
  /** Own mean of the seasons on Facts: all pounds by all plants (or containers). */
  const ownMean = (figure: string) => {
    const rows = facts(figure);
    const sum = (column: string) => rows.reduce((all, row) => all + shown('facts', row, column), 0);
    return { mean: sum('pounds') / sum('plants'), seasons: rows.length };
  };
  /** The published figure counts for two seasons. */
  const learned = (figure: string): number => {
    const { mean, seasons } = ownMean(figure);
    const z = seasons / (seasons + 2);
    return z * mean + (1 - z) * shown('facts', facts(figure)[0]!, 'published');
  };
  const expectClose = (value: number, by: number) => expect(value).toBeCloseTo(by, 6);

  it('jars left when the harvest begins: on hand less the weeks of use till then', () => {
    const row = 'tomatoes-canned';
    // Foods names no season of its own: it is that of Beds.
    expect(book.value('foods', row, 'fresh_from')).toBeNull();
    expect(book.value('foods', row, 'next_harvest')).toBe(book.value('beds', 'tomato-amish', 'harvest_from'));
    const weeks = days(asOf(), day('foods', row, 'next_harvest')) / 7;
    expectClose(
      shown('foods', row, 'left_at_harvest'),
      shown('foods', row, 'on_hand') - shown('foods', row, 'use_per_week') * weeks,
    );
  });

  it('to put up: use outside the fresh season from one harvest to the next, a cushion, less what is left', () => {
    const row = 'tomatoes-canned';
    const ends = day('beds', 'tomato-amish', 'harvest_to');
    const next = day('beds', 'tomato-amish', 'harvest_from').plus({ years: 1 });
    // The harvest’s last day is one of the fresh season.
    const weeks = (days(ends, next) - 1) / 7;
    const cushion = 1 + Number(book.setting('cushion')) / 100;
    expect(shown('foods', row, 'to_put_up')).toBe(
      Math.ceil(
        shown('foods', row, 'use_per_week') * weeks * cushion - shown('foods', row, 'left_at_harvest'),
      ),
    );
  });

  it('pounds to grow: jars to fill and jars eaten fresh, at the pounds that a jar takes here', () => {
    const row = 'tomatoes-canned';
    const season =
      (days(day('beds', 'tomato-amish', 'harvest_from'), day('beds', 'tomato-amish', 'harvest_to')) + 1) / 7;
    const jars = shown('foods', row, 'to_put_up') + shown('foods', row, 'fresh_use') * season;
    const perJar = shown('facts', facts('tomato, pounds per quart jar, canned')[0]!, 'in_use');
    expectClose(shown('foods', row, 'pounds_to_grow'), jars * perJar);
  });

  it('pounds wanted of Beds: the sum over all that is made of tomatoes, shared by the plants planned', () => {
    let pounds = 0;
    for (const [row, each] of LINES) {
      // Salsa takes other crops too; of the rest all pounds to grow are tomatoes.
      pounds +=
        row === 'salsa-canned'
          ? each * shown('foods', row, 'to_put_up')
          : shown('foods', row, 'pounds_to_grow');
      if (each !== null && row !== 'salsa-canned') {
        expectClose(shown('foods', row, 'pounds_to_grow'), each * shown('foods', row, 'to_put_up'));
      }
    }
    const plants = PLANTINGS.reduce((all, row) => all + shown('beds', row, 'plants'), 0);
    for (const row of PLANTINGS) {
      expectClose(shown('beds', row, 'pounds_wanted'), (pounds * shown('beds', row, 'plants')) / plants);
    }
  });

  it('plants, feet and seeds: pounds by the pounds a plant that two seasons taught', () => {
    const yields = facts('tomato, yield');
    expect(yields).toHaveLength(2);
    for (const row of PLANTINGS) {
      const each = shown('beds', row, 'yield');
      expectClose(each, learned('tomato, yield'));
      expectClose(each, shown('facts', yields[0]!, 'in_use'));
      expect(book.value('beds', row, 'yield_from')).toBe('learned from 2 seasons');
      expect(shown('beds', row, 'plants_wanted')).toBe(Math.ceil(shown('beds', row, 'pounds_wanted') / each));
      const [spacing, germination] = ['tomato, spacing', 'tomato, germination'].map((figure) =>
        shown('facts', facts(figure)[0]!, 'in_use'),
      );
      const plants = shown('beds', row, 'plants');
      expectClose(shown('beds', row, 'row_feet'), (plants * spacing!) / 12);
      expect(shown('beds', row, 'seeds')).toBe(Math.ceil(plants / (germination! / 100)));
      expect(shown('beds', row, 'seeds_to_buy')).toBe(
        Math.max(0, shown('beds', row, 'seeds') - shown('beds', row, 'seeds_on_hand')),
      );
    }
  });

  it('dates: indoors weeks before the frost, out at the frost, ripe by the days to maturity', () => {
    const row = 'tomato-amish';
    const frost = DateTime.fromISO(`2026-${String(book.setting('last_frost'))}`, { zone: 'utc' });
    const figure = (name: string) => shown('facts', facts(`tomato, ${name}`)[0]!, 'in_use');
    expect(day('beds', row, 'set_out_on').toISODate()).toBe(frost.toISODate());
    expect(days(day('beds', row, 'start_on'), frost)).toBe(figure('weeks indoors') * 7);
    expect(days(frost, day('beds', row, 'harvest_from'))).toBe(figure('days to maturity'));
    expect(day('beds', row, 'harvest_to').toISODate()).toBe(`2026-${String(book.setting('first_frost'))}`);
  });

  it('expected pounds, and short: the plants planned are too few', () => {
    let short = 0;
    for (const row of PLANTINGS) {
      expectClose(
        shown('beds', row, 'expected_pounds'),
        shown('beds', row, 'plants') * shown('beds', row, 'yield'),
      );
      expectClose(
        shown('beds', row, 'short_or_over'),
        shown('beds', row, 'expected_pounds') - shown('beds', row, 'pounds_wanted'),
      );
      short -= shown('beds', row, 'short_or_over');
    }
    expect(short).toBeGreaterThan(100);
  });

  it('batches to come: the jars to put up in equal shares, in lids and loads', () => {
    const open = book
      .rowIds('batches')
      .filter(
        (row) =>
          book.value('batches', row, 'food') === 'Tomatoes' && book.value('batches', row, 'lot') === null,
      );
    expect(open).toHaveLength(4);
    for (const row of open) {
      const jars = Math.ceil(shown('foods', 'tomatoes-canned', 'to_put_up') / open.length);
      expect(shown('batches', row, 'jars')).toBe(jars);
      // Seven quarts to a load: USDA Agriculture Information Bulletin 539.
      expect(shown('batches', row, 'canner_loads')).toBe(Math.ceil(jars / 7));
      expect(shown('batches', row, 'lids')).toBeGreaterThan(jars);
      const perJar = shown('facts', facts('tomato, pounds per quart jar, canned')[0]!, 'in_use');
      const bushel = shown('facts', facts('tomato, bushel weight')[0]!, 'in_use');
      expectClose(shown('batches', row, 'bushels_wanted'), (jars * perJar) / bushel);
    }
  });

  it('what came in last season: pounds so far, a plant, against the plan', () => {
    for (const planting of PLANTINGS) {
      let pounds = 0;
      let plants = 0;
      for (const row of book.rowIds('harvest')) {
        if (book.value('harvest', row, 'planting') !== planting) continue;
        pounds += shown('harvest', row, 'amount');
        plants = Math.max(plants, Number(book.value('harvest', row, 'plants') ?? 0));
        expectClose(shown('harvest', row, 'pounds_so_far'), pounds);
        expectClose(shown('harvest', row, 'per_plant_so_far'), pounds / plants);
        expectClose(
          shown('harvest', row, 'against_plan'),
          (pounds / shown('beds', planting, 'expected_pounds')) * 100,
        );
      }
      expect(pounds, planting).toBeGreaterThan(90);
    }
  });

  it('what it filled: pounds a jar, and the jars that stand on the Shelf', () => {
    const done = book
      .rowIds('batches')
      .filter(
        (row) =>
          book.value('batches', row, 'food') === 'Tomatoes' &&
          book.value('batches', row, 'way') === 'canned' &&
          book.value('batches', row, 'filled') !== null,
      );
    expect(done).toHaveLength(4);
    const published = shown('facts', facts('tomato, pounds per quart jar, canned')[0]!, 'published');
    for (const row of done) {
      const pounds = Number(String(book.value('batches', row, 'pounds_in')).replace('tomato ', ''));
      const filled = shown('batches', row, 'filled');
      expectClose(shown('batches', row, 'pounds_per_container'), pounds / filled);
      expectClose(shown('batches', row, 'against_published'), (pounds / filled / published) * 100);
      expect(shown('shelf', String(book.value('batches', row, 'lot')), 'count')).toBe(
        filled - shown('batches', row, 'failed'),
      );
    }
  });

  it('what a jar takes here: two seasons of jars beside the published three pounds', () => {
    const figure = 'tomato, pounds per quart jar, canned';
    const [row] = facts(figure);
    // 21 pounds a canner load of 7 quarts: USDA Agriculture Information Bulletin 539, Guide 3.
    expect(shown('facts', row!, 'published')).toBe(3);
    expectClose(shown('facts', row!, 'learned'), learned(figure));
    expect(shown('facts', row!, 'in_use')).toBe(shown('facts', row!, 'learned'));
  });

  it('and back: the year turned, its pounds and plants teach the yield, and the plants follow', () => {
    const { pounds, plants } = harvested();
    expect(plants).toBe(102);
    const before = { doc: book.toJSON(), mean: ownMean('tomato, yield') };
    const year = yearToTurn(book);
    if (!year.ok) throw new Error(year.problem.message);
    expect(year.value.turned.season).toBe(2025);
    expect(book.apply(year.value.command)).toMatchObject({ ok: true });

    const rows = facts('tomato, yield');
    expect(rows.map((row) => book.value('facts', row, 'season'))).toEqual([2023, 2024, 2025]);
    expect(shown('facts', rows[2]!, 'pounds')).toBe(pounds);
    expect(shown('facts', rows[2]!, 'plants')).toBe(plants);
    expect(ownMean('tomato, yield').mean).toBeGreaterThan(before.mean.mean);
    for (const row of PLANTINGS) {
      expect(book.value('beds', row, 'yield_from')).toBe('learned from 3 seasons');
      expectClose(shown('beds', row, 'yield'), learned('tomato, yield'));
      expect(shown('beds', row, 'plants_wanted')).toBe(
        Math.ceil(shown('beds', row, 'pounds_wanted') / shown('beds', row, 'yield')),
      );
    }
    // Rhubarb, never published, has a yield of its own now, and so plants.
    expect(book.value('beds', 'rhubarb', 'yield_from')).toBe('learned from 1 season');
    expect(shown('beds', 'rhubarb', 'plants_wanted')).toBeGreaterThan(0);
    expect(book.rowIds('harvest')).toHaveLength(0);

    expect(book.undo()).toBe(true);
    expect(book.toJSON()).toEqual(before.doc);
  });

  it('closes: twelve quarts given away are twelve fewer left, and more plants wanted', () => {
    const wanted = () => PLANTINGS.reduce((all, row) => all + shown('beds', row, 'plants_wanted'), 0);
    const before = wanted();
    const left = shown('foods', 'tomatoes-canned', 'left_at_harvest');
    book.insertRows('draws', [
      {
        date: '2026-02-14',
        food: 'Tomatoes',
        way: 'canned',
        amount: 12,
        container: 'quart jar',
        purpose: 'gift',
      },
    ]);
    expect(shown('foods', 'tomatoes-canned', 'left_at_harvest')).toBe(Math.max(0, left - 12));
    expect(wanted()).toBeGreaterThan(before);
    book.undo();
    expect(wanted()).toBe(before);
  });
});
