import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BookDoc, isCellError, type LiveBook, openBook, parseBook } from '../../src/core.js';
import { canningRules } from '../../src/facts/index.js';

const read = (name: string): string => readFileSync(`demo/data/${name}.json`, 'utf8');

function parsed(name: string): BookDoc {
  const found = parseBook(read(name));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.book;
}

/** Every cell of a book, sheet by sheet. */
function* cells(book: LiveBook) {
  for (const { id: sheet } of book.sheets()) {
    for (const row of book.rowIds(sheet)) {
      for (const { id: column } of book.columns(sheet)) yield { sheet, row, column };
    }
  }
}

/** Where each problem is, and its code. */
const problemsOf = (book: LiveBook): string[] =>
  [...cells(book)].flatMap(({ sheet, row, column }) => {
    const problem = book.problem(sheet, row, column);
    return problem ? [`${sheet} ${row} ${column}: ${problem.code}`] : [];
  });

/** What the books are meant to show as lacking, and nothing else. */
const INTENDED: Readonly<Record<string, readonly string[]>> = {
  'tamarack-bench': [
    // Published nowhere: blank, and the working says what would fill it.
    'beds rhubarb yield: no-yield',
    'beds rhubarb plants_wanted: no-yield',
    // Strawberries are sold by the quart and the crate, never by the bushel.
    'batches batch01 bushels_wanted: no-bushel-weight',
    'batches batch02 bushels_wanted: no-bushel-weight',
    'batches batch03 bushels_wanted: no-bushel-weight',
    'batches batch58 bushels_wanted: no-bushel-weight',
    'batches batch59 bushels_wanted: no-bushel-weight',
    // In February one sees that the last jars of the fall will not fit.
    'batches batch82 shelf_room_after: no-room',
  ],
  'school-garden': [],
};

const ISO = /^\d{4}-\d{2}-\d{2}$/;

for (const name of ['tamarack-bench', 'school-garden']) {
  describe(`the ${name} book`, () => {
    let book: LiveBook;
    beforeAll(() => {
      book = openBook(parsed(name));
    });
    afterAll(() => book.close());

    it('opens, and saves as the very file', () => {
      expect(book.toJSON()).toEqual(JSON.parse(read(name)));
    });

    it('looks the same on any day, and dates everything before its own day', () => {
      expect(book.setting('as_of')).toBe('2026-02-15');
      for (const [sheet, column] of [
        ['shelf', 'put_up_on'],
        ['draws', 'date'],
        ['harvest', 'date'],
      ] as const) {
        for (const row of book.rowIds(sheet)) {
          const day = String(book.value(sheet, row, column));
          expect(day).toMatch(ISO);
          expect(day < '2026-02-15').toBe(true);
        }
      }
    });

    it('works every formula out', () => {
      const formulas = [...cells(book)].filter((at) => book.isFormula(at.sheet, at.row, at.column));
      expect(formulas.length).toBeGreaterThan(4);
      for (const { sheet, row, column } of formulas) {
        const value = book.value(sheet, row, column);
        expect(isCellError(value) ? value : null, `${sheet} ${row} ${column}`).toBeNull();
        expect(value).not.toBeNull();
      }
    });

    it('has no problem in any cell but those that it is there to show', () => {
      expect(problemsOf(book)).toEqual(INTENDED[name]);
    });

    it('never draws a lot below nothing, and stores where every draw came from', () => {
      const doc = book.toJSON();
      const drawn = new Map<string, number>();
      for (const [id, { cells: draw, allotted }] of Object.entries(doc.sheets.draws!.rows)) {
        expect(allotted, id).toBeDefined();
        for (const [lot, amount] of Object.entries(allotted!)) {
          expect(doc.sheets.shelf!.rows[lot]?.cells.food, id).toBe(draw.food);
          drawn.set(lot, (drawn.get(lot) ?? 0) + amount);
        }
      }
      for (const row of book.rowIds('shelf')) {
        const count = Number(book.value('shelf', row, 'count'));
        const left = Number(book.value('shelf', row, 'left'));
        expect(left, row).toBeGreaterThanOrEqual(0);
        expect(left, row).toBeCloseTo(count - (drawn.get(row) ?? 0), 6);
      }
    });

    it('cans nothing that has no tested process, and nothing in a jar too large for it', () => {
      for (const row of book.rowIds('shelf')) {
        const [food, way, container] = ['food', 'way', 'container'].map((column) =>
          String(book.value('shelf', row, column)),
        );
        if (way !== 'canned') continue;
        const verdicts = canningRules(food!).map(({ verdict }) => verdict);
        if (!FRUIT_BUTTERS.has(food!)) {
          expect(verdicts, food).not.toContain('no process');
          expect(verdicts, food).not.toContain('not recommended');
        }
        if (verdicts.includes('pints only')) expect(['pint jar', 'half-pint jar'], food).toContain(container);
        if (container === 'half-gallon jar') expect(food).toBe('Grape juice');
      }
    });
  });
}

/** A fruit butter is none of the butters that have no tested process. */
const FRUIT_BUTTERS = new Set(['Apple butter']);

describe('what the Tamarack Bench book is there to show', () => {
  let book: LiveBook;
  beforeAll(() => {
    book = openBook(parsed('tamarack-bench'));
  });
  afterAll(() => book.close());

  const food = (row: string, column: string) => book.value('foods', row, column);
  const number = (row: string, column: string): number => {
    const value = food(row, column);
    if (typeof value !== 'number') throw new Error(`${row} ${column} is ${JSON.stringify(value)}`);
    return value;
  };
  const lots = (column: string) => book.rowIds('shelf').map((row) => book.value('shelf', row, column));
  const draws = (column: string) => book.rowIds('draws').map((row) => book.value('draws', row, column));

  it('has the size of a real household’s book, and is not heavy', () => {
    expect(book.rowIds('foods').length).toBeGreaterThanOrEqual(60);
    expect(book.rowIds('shelf').length).toBeGreaterThanOrEqual(180);
    expect(book.rowIds('draws').length).toBeGreaterThanOrEqual(400);
    expect(book.rowIds('household')).toHaveLength(6);
    expect(new Set(lots('put_up_on').map((day) => String(day).slice(0, 4)))).toEqual(
      new Set(['2023', '2024', '2025', '2026']),
    );
    expect(read('tamarack-bench').length).toBeLessThan(420_000);
  });

  it('keeps food in nearly every way, in many places and containers', () => {
    expect(new Set(lots('way'))).toEqual(
      new Set([
        'canned',
        'frozen',
        'dried',
        'freeze-dried',
        'fermented',
        'cellared',
        'cured',
        'dry goods',
        'rendered',
        'fresh',
      ]),
    );
    expect(new Set(lots('place')).size).toBeGreaterThanOrEqual(12);
    expect(new Set(lots('container')).size).toBeGreaterThanOrEqual(10);
  });

  it('runs out of tomato sauce before tomatoes come in', () => {
    expect(number('tomato-sauce-canned', 'short_or_over')).toBeLessThan(-5);
    expect(String(food('tomato-sauce-canned', 'runs_out_on')) < '2026-08-12').toBe(true);
  });

  it('holds two years of pickled beets, many of which will not be eaten in their year', () => {
    expect(number('pickled-beets-canned', 'weeks_of_supply')).toBeGreaterThan(90);
    expect(number('pickled-beets-canned', 'short_or_over')).toBeGreaterThan(15);
    expect(number('pickled-beets-canned', 'to_put_up')).toBe(0);
  });

  it('has chickens at risk, and bags from 2023 at the bottom of the barn freezer', () => {
    const rows = book.rowIds('shelf');
    const atRisk = rows.filter((row) => Number(book.value('shelf', row, 'at_risk')) > 0);
    expect(atRisk.map((row) => book.value('shelf', row, 'food'))).toContain('Whole chicken');
    // Worth a look, not everywhere.
    expect(atRisk.length).toBeLessThan(
      rows.filter((row) => Number(book.value('shelf', row, 'left')) > 0).length / 3,
    );
    const past = rows.filter((row) => String(book.value('shelf', row, 'eaten_by')).startsWith('past best'));
    const old = past.filter((row) => String(book.value('shelf', row, 'put_up_on')).startsWith('2023'));
    expect(new Set(old.map((row) => book.value('shelf', row, 'place')))).toEqual(new Set(['barn freezer']));
    expect(old.length).toBeGreaterThanOrEqual(3);
    expect(past.length).toBeLessThan(10);
  });

  it('counts on the rutabagas though they are past their published months', () => {
    const row = book.rowIds('shelf').find((each) => book.value('shelf', each, 'still_counting') === true)!;
    expect(book.value('shelf', row, 'food')).toBe('Rutabagas');
    expect(Number(book.value('shelf', row, 'days_left'))).toBeLessThan(0);
    expect(number('rutabagas-cellared', 'weeks_of_supply')).toBeGreaterThan(0);
  });

  it('has opened jars, gifts, spoiled food, counts, a correction, and one draw that the shelf did not hold', () => {
    const purposes = new Set(draws('purpose'));
    expect(purposes).toEqual(new Set(['dish', 'count', 'gift', 'spoiled', 'other']));
    expect(draws('container')).toEqual(expect.arrayContaining(['cup', 'pint']));
    expect(lots('left').some((left) => !Number.isInteger(left))).toBe(true);
    expect(draws('lot').filter((each) => each !== null).length).toBeGreaterThanOrEqual(3);
    expect(draws('corrects').filter((each) => each !== null)).toHaveLength(1);
    expect(draws('not_use').filter((each) => each === true)).toHaveLength(1);
    expect(draws('not_found').filter((each) => each !== null)).toEqual([1]);
  });

  it('says what would fill a use that it cannot tell yet', () => {
    const row = 'strawberries-freeze-dried';
    expect(food(row, 'use_per_week')).toBeNull();
    expect(book.working('foods', row, 'use_per_week')?.missing).toBeTruthy();
    expect(food('sage-dried', 'weeks_of_supply')).toBe('no use');
  });

  it('plans crops that share a jar, food from animals, food that is bought, and own targets', () => {
    expect(number('salsa-canned', 'pounds_to_grow')).toBeCloseTo(3 * number('salsa-canned', 'to_put_up'), 6);
    expect(number('peaches-canned', 'to_put_up')).toBeGreaterThan(0);
    expect(number('ground-beef-frozen', 'to_put_up')).toBe(
      Math.ceil(120 - number('ground-beef-frozen', 'left_at_harvest')),
    );
    expect(new Set(book.rowIds('foods').map((row) => food(row, 'comes_from')))).toEqual(
      new Set(['ground', 'animals', 'bought']),
    );
  });

  it('looks like a house in late winter: no food for a hundred weeks but the beets', () => {
    const long = book.rowIds('foods').filter((row) => Number(food(row, 'weeks_of_supply')) > 100);
    expect(long).toEqual(['pickled-beets-canned']);
    const signs = book.rowIds('foods').map((row) => Math.sign(Number(food(row, 'short_or_over'))));
    expect(signs.filter((sign) => sign < 0).length).toBeGreaterThan(15);
    expect(signs.filter((sign) => sign > 0).length).toBeGreaterThan(15);
  });

  it('counts the jars on the shelf, whatever is in them', () => {
    const quarts = book
      .rowIds('shelf')
      .filter((row) => book.value('shelf', row, 'container') === 'quart jar')
      .reduce((sum, row) => sum + Number(book.value('shelf', row, 'left')), 0);
    expect(book.value('jar-count', 'r1', 'full')).toBe(Math.ceil(quarts));
  });

  it('turns weeks of supply into months in a column of its own', () => {
    const row = 'tomatoes-canned';
    expect(food(row, 'months_of_supply')).toBeCloseTo(number(row, 'weeks_of_supply') / 4.345, 1);
    expect(food('sage-dried', 'months_of_supply')).toBe('');
  });
});

describe('the school garden’s book', () => {
  it('is small enough to read on one page, and answers its own questions', () => {
    const book = openBook(parsed('school-garden'));
    expect(book.rowIds('foods')).toHaveLength(5);
    expect(book.value('food-math', 'r3', 'answer')).toBe(4);
    // A bushel of tomatoes is 53 pounds (published); three pounds a quart.
    expect(book.value('food-math', 'r1', 'answer')).toBe(53);
    expect(book.value('food-math', 'r2', 'answer')).toBe(18);
    book.close();
  });
});
