import { describe, expect, it } from 'vitest';
import { isUsableId } from '../../src/book/ids.js';
import { emptyGuide, planLine } from '../../src/planning/index.js';
import type { Draw } from '../../src/planning/types.js';
import {
  buyable,
  drawIdOf,
  leadDaysOf,
  listsFor,
  type Meal,
  markDone,
  planWeek,
  postedMeals,
} from '../../src/planning/week/index.js';
import { day, draw, lot } from './planning-make.js';
import { at, dishLine, meal, prep, shelfOf } from './week-make.js';

const MONDAY = '2026-01-05';
const TUESDAY = '2026-01-06';
const WEDNESDAY = '2026-01-07';
const SUNDAY = '2026-01-11';

const CHILI = [
  dishLine('1', 'Chili', 'Tomatoes', { food: 'tomato', amount: 1.5, way: 'canned' }),
  dishLine('2', 'Chili', 'ground beef', {
    food: 'ground beef',
    amount: 2,
    measure: 'pound',
    way: 'frozen',
    prep: prep('thaw 1 day; brown'),
  }),
  dishLine('3', 'Chili', 'sour cream', { from: 'bought', amount: 1.25, measure: 'cup' }),
  dishLine('4', 'Chili', 'beans', { food: 'bean', amount: 3, measure: 'cup', prep: prep('soak overnight') }),
];
const LOTS = [
  lot('t1', 2, { place: 'cellar', ownBestBy: 25_000, putUpOn: day('2025-08-14') }),
  lot('t2', 5, { place: 'cellar', ownBestBy: 26_000 }),
  lot('beef', 3, { food: 'ground beef', way: 'frozen', container: 'pound', place: 'chest freezer' }),
  lot('bean', 10, { food: 'bean', way: 'dry goods', container: 'quart jar', place: 'pantry' }),
];

const week = (meals: readonly Meal[], lots = LOTS, lines = CHILI, posted = new Set<string>(), house = at()) =>
  planWeek(meals, lines, shelfOf(lots, [], house), house, posted, emptyGuide);
const lists = (plan: ReturnType<typeof week>, from = MONDAY, to = SUNDAY) =>
  listsFor(plan, day(from), day(to), emptyGuide);

describe('the three lists', () => {
  const plan = week([meal('m1', TUESDAY, 'Chili'), meal('m2', WEDNESDAY, 'Chili')]);

  it('bring up whole containers, by place, oldest first, with what stays over', () => {
    const { bringUp } = lists(plan);
    expect(bringUp.places.map(({ place, items }) => [place, items.map(({ words }) => words)])).toEqual([
      ['cellar', ['2 quart jars of Tomatoes (canned)', '1 quart jar of Tomatoes (canned)']],
      ['chest freezer', ['3 pounds of ground beef (frozen)']],
      ['pantry', ['2 quart jars of beans (dry goods)']],
    ]);
    const [first, second] = bringUp.places[0]!.items;
    expect(first).toMatchObject({
      id: 't1',
      which: 'put up Aug 14, 2025',
      leavesOver: '',
      meals: ['m1', 'm2'],
    });
    expect(second).toMatchObject({ id: 't2', leavesOver: '', meals: ['m2'] });
    expect(bringUp.places[2]!.items[0]).toMatchObject({ amount: 2, leavesOver: '2 cups' });
  });

  it('say what stands open already and is used first', () => {
    const opened = [lot('t1', 1.5, { place: 'cellar' }), ...LOTS.slice(2)];
    const { bringUp } = lists(week([meal('m', TUESDAY, 'Chili', { times: 0.5 })], opened));
    expect(bringUp.open[0]).toMatchObject({ id: 't1', uses: '2 cups', leavesOver: '' });
    expect(bringUp.places.find(({ place }) => place === 'cellar')!.items[0]).toMatchObject({
      amount: 1,
      leavesOver: '3 cups',
    });
  });

  it('shop for what is bought and what the shelf lacks, rounded up and grouped', () => {
    const { shopping } = lists(plan);
    expect(shopping.map(({ food, words, exactly, short }) => [food, words, exactly, short])).toEqual([
      ['ground beef', '1 pound', '1 pound', true],
      ['sour cream', '2½ cups', '2½ cups', false],
    ]);
    expect(shopping[1]!.meals).toEqual(['m1', 'm2']);
  });

  it('tell what to do ahead, day by day, and what is late', () => {
    const { prep: days } = lists(week([meal('m0', MONDAY, 'Chili'), meal('m1', WEDNESDAY, 'Chili')]));
    expect(days.map(({ words, items }) => [words, items.map(({ text, late }) => [text, late])])).toEqual([
      [
        'Mon, Jan 5',
        [
          ['ground beef: thaw 1 day', true],
          ['ground beef: brown', false],
          ['beans: soak overnight', true],
        ],
      ],
      [
        'Tue, Jan 6',
        [
          ['ground beef: thaw 1 day', false],
          ['beans: soak overnight', false],
        ],
      ],
      ['Wed, Jan 7', [['ground beef: brown', false]]],
    ]);
    expect(days[1]!.items[0]!.what).toBe('Chili, Wednesday supper');
    // Each line of the list keeps an id of its own, so that a tick stays with it.
    const ids = days.flatMap(({ items }) => items.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('hold the steps for meals just after the span', () => {
    const after = lists(week([meal('m', '2026-01-12', 'Chili')]));
    expect(after.prep.map(({ words }) => words)).toEqual(['Sun, Jan 11']);
    expect(after.bringUp.places).toEqual([]);
  });

  it('say plainly when there is nothing', () => {
    expect(lists(week([])).empty).toContain('No meals are planned for these days');
    expect(lists(week([meal('m', TUESDAY, '')])).empty).toContain('None of these meals has a dish yet');
    expect(lists(week([meal('m', TUESDAY, 'Chili', { skipped: true, done: true })])).empty).toContain(
      'marked done',
    );
    expect(lists(plan).empty).toBeNull();
  });
});

describe('lead days', () => {
  it('are read from the words', () => {
    const said = [
      'thaw 1 day',
      'thaw 2 days ahead',
      'soak overnight',
      'brine a week',
      'rise 3 hours',
      'the day before',
      'two nights',
      'chop',
    ];
    expect(said.map(leadDaysOf)).toEqual([1, 2, 1, 7, 0, 1, 2, 0]);
  });
});

describe('what one can buy', () => {
  it('is never less than what is needed, and in whole or half measures', () => {
    const words = (n: number, measure: string, metric = false) =>
      buyable(n, measure, metric ? 'metric' : 'US customary').words;
    expect(words(1.1, 'pound')).toBe('1½ pounds');
    expect(words(0.3, 'pound')).toBe('5 ounces');
    expect(words(3, 'teaspoon')).toBe('1 tablespoon');
    expect(words(2, 'teaspoon')).toBe('2 teaspoons');
    expect(words(5, 'cup')).toBe('1½ quarts');
    expect(words(17, 'cup')).toBe('1½ gallons');
    expect(words(2.2, 'quart jar')).toBe('3 quart jars');
    expect(words(7.5, 'each')).toBe('8');
    expect(words(1, 'pound', true)).toBe('500 grams');
    expect(words(1, 'quart', true)).toBe('950 millilitres');
  });
});

describe('marking done', () => {
  const meals = [
    meal('r1', TUESDAY, 'Chili'),
    meal('r2', WEDNESDAY, 'Chili', { times: 0.5 }),
    meal('r3', SUNDAY, 'Chili'),
  ];
  const plan = week(meals);

  it('posts what a meal took, oldest lots first, with the lots', () => {
    const done = markDone(plan, { meals: ['r1'] }, new Set());
    expect(
      done.draws.map(({ cells, allotted }) => [cells.food, cells.amount, cells.container, allotted]),
    ).toEqual([
      ['Tomatoes', 1.5, 'quart jar', { t1: 1.5 }],
      ['ground beef', 2, 'pound', { beef: 2 }],
      ['beans', 3, 'cup', { bean: 0.75 }],
    ]);
    expect(done.draws[0]!.cells).toMatchObject({ way: 'canned', purpose: 'dish', note: 'Chili, supper' });
    expect(done.tick).toEqual(['r1']);
    expect(done.draws.every(({ id }) => isUsableId(id))).toBe(true);
  });

  it('dates a meal to come today, when its food leaves the shelf, and a past one on its own day', () => {
    const past = week([meal('p', '2026-01-02', 'Chili')]);
    expect(markDone(past, { meals: ['p'] }, new Set()).draws[0]!.cells.date).toBe('2026-01-02');
    expect(markDone(plan, { meals: ['r3'] }, new Set()).draws[0]!.cells.date).toBe(MONDAY);
  });

  it('does not post what the shelf lacked, and says so', () => {
    const done = markDone(plan, { from: day(MONDAY), to: day(SUNDAY) }, new Set());
    const beef = done.draws.filter(({ cells }) => cells.food === 'ground beef');
    expect(beef.reduce((sum, { cells }) => sum + cells.amount, 0)).toBe(3);
    expect(done.meals[2]!.short).toEqual(['2 pounds of ground beef (frozen)']);
    expect(done.said).toBe('3 meals marked done, 8 draws posted.');
  });

  it('leaves out what is skipped, open or without its dish', () => {
    const odd = week([
      meal('a', TUESDAY, 'Chili', { skipped: true }),
      meal('b', TUESDAY, ''),
      meal('c', TUESDAY, 'Stew'),
      meal('d', null, 'Chili'),
    ]);
    const done = markDone(odd, { meals: ['a', 'b', 'c', 'd'] }, new Set());
    expect(done.draws).toEqual([]);
    expect(done.tick).toEqual([]);
    expect(done.left.map(({ meal: id, problem }) => [id, problem.code])).toEqual([
      ['c', 'dish-not-there'],
      ['d', 'missing'],
    ]);
  });

  it('of a later meal alone still takes the oldest lots', () => {
    expect(markDone(plan, { meals: ['r3'] }, new Set()).draws[0]!.allotted).toEqual({ t1: 1.5 });
  });

  it('twice does nothing twice', () => {
    const first = markDone(plan, { from: day(MONDAY), to: day(SUNDAY) }, new Set());
    const ids = first.draws.map(({ id }) => id);
    expect(markDone(plan, { from: day(MONDAY), to: day(SUNDAY) }, new Set(ids)).draws).toEqual([]);
    const posted = postedMeals(ids, ['r1', 'r2', 'r3', 'r4']);
    expect([...posted]).toEqual(['r1', 'r2', 'r3']);
    const again = markDone(
      week(meals, LOTS, CHILI, posted),
      { from: day(MONDAY), to: day(SUNDAY) },
      new Set(ids),
    );
    expect(again.draws).toEqual([]);
    expect(again.tick).toEqual(['r1', 'r2', 'r3']);
    // A dish changed after it was posted is no reason to post the meal again.
    const changed = week([meal('r1', TUESDAY, 'Chili', { times: 9 })], LOTS, CHILI, posted);
    expect(markDone(changed, { meals: ['r1'] }, new Set(ids)).draws).toEqual([]);
  });

  it('posts what the ledger then says, jar for jar', () => {
    const done = markDone(plan, { from: day(MONDAY), to: day(SUNDAY) }, new Set());
    const draws = done.draws
      .filter(({ cells }) => cells.food === 'Tomatoes')
      .map(
        ({ id, cells, allotted }): Draw =>
          draw(id, cells.amount, { date: day(cells.date), container: cells.container, allotted }),
      );
    const tomatoes = shelfOf(LOTS.slice(0, 2)).map(({ input }) => ({ ...input, draws }))[0]!;
    const ledger = planLine(tomatoes, at(), emptyGuide);
    for (const id of ['t1', 't2']) expect(ledger.lots.get(id)!.figures.left).toBe(plan.after.left(id));
  });

  it('has usable ids for meals of any id', () => {
    const long = 'r'.repeat(64);
    const id = drawIdOf(long, 'tomato|canned|cup');
    expect(isUsableId(id)).toBe(true);
    expect([...postedMeals([id], [long, 'r1'])]).toEqual([long]);
  });
});
