import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { mealsToMark } from '../../src/live/doings/mark-done.js';
import { dishesToSuggest } from '../../src/live/doings/plan-meals.js';
import { dayOf } from '../../src/live/week-stage.js';
import { listsFor, type WeekLists } from '../../src/planning/week/index.js';

function demo(name: string): LiveBook {
  const found = parseBook(readFileSync(`demo/data/${name}.json`, 'utf8'));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return openBook(found.book);
}

const day = (iso: string): number => {
  const found = dayOf(iso);
  if (found === null) throw new Error(iso);
  return found;
};
/** The week after the day of the book, Monday to Sunday. */
const COMING = { from: day('2026-02-16'), to: day('2026-02-22') };

const column = (book: LiveBook, sheet: string, id: string) =>
  book.rowIds(sheet).map((row) => book.value(sheet, row, id));
const comingLists = (book: LiveBook): WeekLists => listsFor(book.weekPlans!.week, COMING.from, COMING.to);

/** Every line of the three lists, as it is read. */
const wordsOf = ({ bringUp, shopping, prep, meals }: WeekLists): string[] => [
  ...meals.map(({ words, dish, stock }) => `${words}, ${dish}, ${stock}`),
  ...bringUp.places.flatMap(({ place, items }) =>
    items.map(({ words, which }) => `${place}: ${words}, ${which}`),
  ),
  ...bringUp.open.map(({ food, uses }) => `${uses} of ${food}`),
  ...shopping.map(({ text }) => text),
  ...prep.flatMap(({ words, items }) => items.map(({ text, what }) => `${words}: ${text}, ${what}`)),
];

/** What no list should ever say. */
const NONSENSE = /NaN|Infinity|undefined|null|\[object|(^|\s)-\d|\b0 |:\s*,|,\s*,/;

describe('the table of Tamarack Bench', () => {
  let book: LiveBook;
  beforeAll(() => {
    book = demo('tamarack-bench');
  });
  afterAll(() => book.close());

  const meal = (row: string, id: string) => book.value('week', row, id);
  const meals = (when: (date: string) => boolean) =>
    book.rowIds('week').filter((row) => when(String(meal(row, 'date'))));
  const past = () => meals((date) => date < '2026-02-15');
  const coming = () => meals((date) => date >= '2026-02-16');

  it('has the dishes of a winter, each of two lines to seven', () => {
    const lines = new Map<unknown, number>();
    for (const dish of column(book, 'dishes', 'dish')) lines.set(dish, (lines.get(dish) ?? 0) + 1);
    expect(lines.size).toBeGreaterThanOrEqual(45);
    expect(Math.min(...lines.values())).toBeGreaterThanOrEqual(2);
    expect(Math.max(...lines.values())).toBeLessThanOrEqual(7);
    const { dishes } = book.weekPlans!.week.book;
    const suits = [...dishes.values()].flatMap((dish) => dish.suits);
    expect(new Set(suits)).toEqual(
      new Set(['breakfast', 'midday', 'snack', 'supper', 'baking', 'in other dishes']),
    );
    expect([...dishes.values()].filter(({ quick }) => quick).length).toBeGreaterThanOrEqual(10);
  });

  it('takes every line from food that stands there, in a measure that meets it, or buys it, or cooks it', () => {
    for (const row of book.rowIds('dishes')) {
      const at = `${book.value('dishes', row, 'dish')}: ${book.value('dishes', row, 'food')}`;
      const from = book.value('dishes', row, 'from');
      if (from === null) expect(Number(book.value('dishes', row, 'on_hand')), at).toBeGreaterThan(0);
      else expect(['bought', 'dish'], at).toContain(from);
    }
    const within = new Set(
      book
        .rowIds('dishes')
        .filter((row) => book.value('dishes', row, 'from') === 'dish')
        .map((row) => book.value('dishes', row, 'food')),
    );
    expect(within).toEqual(new Set(['Soup base', 'Brown gravy', 'White sauce', 'Biscuits', 'Pie pastry']));
  });

  it('marks common practice, and whatever is eaten raw or must be cooked through', () => {
    const note = (dish: string) =>
      String(
        book.value(
          'dishes',
          book.rowIds('dishes').find((row) => book.value('dishes', row, 'dish') === dish)!,
          'note',
        ),
      );
    expect(note('Pie pastry')).toContain('common practice, no source');
    expect(note('Slaw with mayonnaise')).toContain('raw egg');
    for (const row of book.rowIds('dishes')) {
      const food = book.value('dishes', row, 'food');
      if (['Ground pork', 'Ground beef', 'Pork chops', 'Venison'].includes(String(food))) {
        expect(book.value('dishes', row, 'note')).toBe('Cooked through');
      }
      if (/soak/.test(String(book.value('dishes', row, 'prep')))) {
        expect(book.value('dishes', row, 'prep')).toContain('boil hard');
      }
    }
  });

  it('writes ten weeks, with a supper every day', () => {
    const dates = column(book, 'week', 'date').map((date) => day(String(date)));
    const [first, last] = [Math.min(...dates), Math.max(...dates)];
    expect([first, last]).toEqual([day('2025-12-15'), COMING.to]);
    expect(last - first + 1).toBe(70);
    const suppers = book
      .rowIds('week')
      .filter((row) => meal(row, 'meal') === 'supper')
      .map((row) => day(String(meal(row, 'date'))));
    expect(suppers).toEqual(Array.from({ length: 70 }, (_, i) => first + i));
    expect(new Set(column(book, 'week', 'meal'))).toEqual(
      new Set(['breakfast', 'midday', 'snack', 'supper', 'baking']),
    );
  });

  it('has guests for a weekend, two days away, a skipped meal, busy days and loose weekends', () => {
    const shares = past()
      .map((row) => [String(meal(row, 'date')), meal(row, 'shares')] as const)
      .filter(([, each]) => each !== null);
    const at = (when: (share: number) => boolean) => [
      ...new Set(shares.filter(([, each]) => when(Number(each))).map(([date]) => date)),
    ];
    expect(at((share) => share > 5.3)).toEqual(['2026-01-10', '2026-01-11']);
    expect(at((share) => share < 5.3)).toEqual(['2026-01-15', '2026-01-16']);
    expect(past().filter((row) => meal(row, 'skipped') === true)).toHaveLength(1);
    expect(past().filter((row) => meal(row, 'busy') === true).length).toBeGreaterThan(6);
    expect(past().filter((row) => meal(row, 'dish') === null)).toHaveLength(2);
    // The same Mondays come round every third week.
    const on = (date: string) => meal(meals((each) => each === date).at(-1)!, 'dish');
    expect([on('2026-01-05'), on('2026-01-26')]).toEqual([on('2025-12-15'), on('2025-12-15')]);
  });

  it('has posted every meal eaten, once, and none of those to come', () => {
    const { posted } = book.weekPlans!.week;
    for (const row of past()) {
      const eaten = meal(row, 'dish') !== null && meal(row, 'skipped') !== true;
      expect(posted.has(row), row).toBe(eaten);
      expect(meal(row, 'done') === true, row).toBe(eaten);
    }
    for (const row of meals((date) => date >= '2026-02-15')) expect(posted.has(row), row).toBe(false);
    const again = mealsToMark(book, { from: day('2025-12-15'), to: day('2026-02-14') });
    expect(again.ok).toBe(false);
    // A meal’s draws bear its day and its dish.
    for (const row of book.rowIds('draws')) {
      const [, of] = /^w-(.+)-\w{7}$/.exec(row) ?? [];
      if (of === undefined) continue;
      expect(book.value('draws', row, 'date')).toBe(meal(of, 'date'));
      expect(book.value('draws', row, 'note')).toBe(`${meal(of, 'dish')}, ${meal(of, 'meal')}`);
    }
  });

  it('leaves the shelf as it was counted: what the meals took, the hand did not write again', () => {
    const onHand = (row: string) => Number(book.value('foods', row, 'on_hand'));
    expect(onHand('tomatoes-canned')).toBeCloseTo(52, 6);
    expect(onHand('tomato-sauce-canned')).toBeCloseTo(19, 6);
    expect(onHand('ground-beef-frozen')).toBeCloseTo(55, 6);
    expect(onHand('potatoes-cellared')).toBeCloseTo(180, 6);
    expect(onHand('chicken-broth-canned')).toBeCloseTo(28, 6);
    const dates = column(book, 'draws', 'date').map(String);
    expect(dates).toEqual([...dates].sort());
  });

  it('shows in the coming week what is in stock, short, opened and used next, and open', () => {
    const rows = coming();
    const stock = rows.map((row) => String(meal(row, 'stock')));
    expect(stock.filter((each) => each === 'in stock').length).toBeGreaterThanOrEqual(6);
    expect(stock.filter((each) => each.startsWith('short'))).toEqual([
      'short: ½ pound of Parsnips (cellared)',
    ]);
    expect(rows.filter((row) => meal(row, 'meal') === 'supper' && meal(row, 'dish') === null)).toHaveLength(
      3,
    );
    // A pint of broth left on Monday goes into Thursday’s gravy.
    const openAfter = (row: string) => String(meal(row, 'open_after'));
    expect(openAfter('m0216s')).toContain('2 cups of Chicken broth (canned)');
    expect(openAfter('m0217s')).toContain('2 cups of Chicken broth (canned), opened 1 day before');
    expect(openAfter('m0219s')).not.toContain('Chicken broth');
    expect(meal('m0221m', 'uses_up')).toContain('the last of Parsnips');
  });

  it('gives lists that one can walk, shop and work by', () => {
    const lists = comingLists(book);
    expect(lists.empty).toBeNull();
    expect(lists.bringUp.places.length).toBeGreaterThanOrEqual(8);
    expect(lists.bringUp.open.map(({ food }) => food)).toContain('Honey (dry goods)');
    expect(lists.shopping.map(({ food }) => food)).toEqual([
      'celery stalks',
      'cream',
      'lemon',
      'macaroni',
      'milk',
      'Parsnips',
      'yeast',
    ]);
    expect(lists.shopping.every(({ problem }) => problem === null)).toBe(true);
    const prep = lists.prep.flatMap(({ words, items }) =>
      items.map(({ text, late }) => [words, text, late] as const),
    );
    // Out of the freezer on Tuesday, for Thursday.
    expect(prep).toContainEqual(['Tue, Feb 17', 'Whole chicken: thaw 2 days in the refrigerator', false]);
    expect(prep).toContainEqual(['Tue, Feb 17', 'Wheat berries: set the sponge the night before', false]);
    expect(prep.filter(([, , late]) => late)).toEqual([]);
    for (const words of wordsOf(lists)) expect(words).not.toMatch(NONSENSE);
    // Nothing past its best quality is put on the table unasked.
    expect(lists.bringUp.places.flatMap(({ items }) => items).some(({ lot }) => lot.past)).toBe(false);
    expect(lists.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['doubt', 'seal-check', 'opened']),
    );
  });

  it('has suppers to suggest that eat what is at risk, and stay within the stock', async () => {
    const suggested = await dishesToSuggest(book, { ...COMING, milliseconds: 10_000 });
    if (!suggested.ok) throw new Error(suggested.problem.message);
    const { suggestions } = suggested.value.suggestions;
    expect(suggestions.map(({ meal: row }) => row)).toEqual(['m0218s', 'm0221s', 'm0222s']);
    expect(suggested.value.suggestions.leftOut).toEqual([]);
    const { dishes } = book.weekPlans!.week.book;
    for (const { dish, why } of suggestions) {
      expect(dishes.get(dish)?.suits).toContain('supper');
      expect(why).toMatch(/^Eats .* that would not be eaten in time/);
    }
    const before = book.toJSON();
    book.apply(suggested.value.command(new Set(suggestions.map(({ meal: row }) => row))));
    for (const { meal: row } of suggestions) expect(meal(row, 'stock')).toBe('in stock');
    book.undo();
    expect(book.toJSON()).toEqual(before);
  });

  it('says its caution where a dressing is made with a raw egg', () => {
    book.set('week', 'm0221s', 'dish', 'Slaw with mayonnaise');
    expect(comingLists(book).cautions.map(({ id }) => id)).toContain('raw-egg');
    book.undo();
    expect(comingLists(book).cautions.map(({ id }) => id)).not.toContain('raw-egg');
  });

  it('marks the coming week done in one step, and takes it back', () => {
    const before = book.toJSON();
    const marked = mealsToMark(book, COMING);
    if (!marked.ok) throw new Error(marked.problem.message);
    expect(marked.value.marked.tick).toHaveLength(9);
    book.apply(marked.value.command);
    // A quart and a half of tomatoes in the chili, a quart in the minestrone.
    expect(book.value('foods', 'tomatoes-canned', 'on_hand')).toBeCloseTo(52 - 2.5, 6);
    expect(book.value('foods', 'parsnips-cellared', 'on_hand')).toBe(0);
    book.undo();
    expect(book.toJSON()).toEqual(before);
  });
});

describe('the table of the school garden', () => {
  it('is two dishes and a week, with lists and a suggestion', async () => {
    const book = demo('school-garden');
    expect(new Set(column(book, 'dishes', 'dish')).size).toBe(2);
    expect(book.rowIds('week')).toHaveLength(3);
    const lists = comingLists(book);
    for (const words of wordsOf(lists)) expect(words).not.toMatch(NONSENSE);
    expect(lists.bringUp.places.map(({ place }) => place)).toEqual(['boiler-room pit', 'kitchen freezer']);
    expect(lists.shopping.map(({ food }) => food)).toEqual(['olive oil']);
    expect(lists.prep).toHaveLength(2);
    const suggested = await dishesToSuggest(book, COMING);
    if (!suggested.ok) throw new Error(suggested.problem.message);
    expect(suggested.value.suggestions.suggestions).toHaveLength(1);
    book.close();
  });
});
