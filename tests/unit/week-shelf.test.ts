import { describe, expect, it } from 'vitest';
import { emptyGuide, planLine } from '../../src/planning/index.js';
import {
  copyLastWeek,
  countShelf,
  guestsAndAway,
  labelsFor,
  mondayOf,
  notSeen,
  openMeals,
  placesToCount,
  planWeek,
  repeatWeeks,
  weekAverages,
  wishList,
} from '../../src/planning/week/index.js';
import { day, draw, lot, row } from './planning-make.js';
import { AS_OF, at, dishLine, meal, shelfOf } from './week-make.js';

const TODAY = day(AS_OF);

describe('counting the shelf', () => {
  const lots = [
    lot('a', 10, { place: 'cellar', putUpOn: day('2025-08-01') }),
    lot('b', 6, { place: 'cellar', container: 'pint jar', putUpOn: day('2025-07-01') }),
    lot('c', 4, { food: 'corn', way: 'frozen', place: 'freezer', container: 'quart freezer bag' }),
  ];
  const draws = [draw('d', 4, { lot: 'a', date: day('2025-12-01'), allotted: { a: 4 } })];
  const shelf = shelfOf(lots, [], at(), emptyGuide, draws);
  const count = (numbers: Record<string, number>, mark = 'winter') =>
    countShelf(shelf, new Map(Object.entries(numbers)), TODAY, mark);
  /** What is left once the draws of a count are in the ledger. */
  const leftAfter = (numbers: Record<string, number>) => {
    const posted = count(numbers).draws.map(({ id, cells, allotted }) =>
      draw(id, cells.amount, { ...cells, food: cells.food, way: 'canned', date: day(cells.date), allotted }),
    );
    const line = shelf.find(({ input }) => input.food === 'tomato')!.input;
    return planLine({ ...line, draws: [...line.draws, ...posted] }, at(), emptyGuide).lots.get('a')!.figures
      .left;
  };

  it('goes from place to place, with what should be there', () => {
    expect(
      placesToCount(shelf).map(({ place, lots: of }) => [place, of.map((each) => [each.lot, each.left])]),
    ).toEqual([
      [
        'cellar',
        [
          ['b', 6],
          ['a', 6],
        ],
      ],
      ['freezer', [['c', 4]]],
    ]);
  });

  it('posts the differences only, and says what the counting changed', () => {
    const found = count({ a: 4.5, b: 6, c: 4 });
    expect(
      found.draws.map(({ cells, allotted }) => [cells.lot, cells.amount, cells.purpose, allotted]),
    ).toEqual([['a', 1.5, 'count', { a: 1.5 }]]);
    expect(found.changes).toEqual([
      {
        lot: 'a',
        food: 'tomato',
        way: 'canned',
        was: 6,
        now: 4.5,
        words: '1½ quart jars fewer than written',
      },
    ]);
    expect(found.said).toBe('3 lots counted, 1 differs.');
    expect(leftAfter({ a: 4.5 })).toBe(4.5);
  });

  it('that found more gives back what was drawn', () => {
    expect(count({ a: 8 }).changes[0]!.words).toBe('2 quart jars more than written');
    expect(leftAfter({ a: 8 })).toBe(8);
    expect(leftAfter({ a: 0 })).toBe(0);
  });

  it('refuses more than was put up, and numbers that are none', () => {
    const found = count({ a: 11, b: Number.NaN });
    expect(found.draws).toEqual([]);
    expect(found.problems.a!.message).toContain('11 quart jars counted, but only 10 quart jars were put up');
    expect(found.problems.b!.code).toBe('bad-amount');
  });

  it('has the same draws when posted twice, and others at another counting', () => {
    const ids = (mark: string) => count({ a: 1 }, mark).draws.map(({ id }) => id);
    expect(ids('winter')).toEqual(ids('winter'));
    expect(ids('winter')).not.toEqual(ids('spring'));
  });

  it('asks for foods that were not seen for months', () => {
    const old = shelfOf([lot('a', 3, { putUpOn: day('2025-01-20') })]);
    expect(notSeen([...old, ...shelf], TODAY)).toMatchObject([{ food: 'tomato', months: 11, lots: ['a'] }]);
    expect(notSeen(old, TODAY, 12)).toEqual([]);
  });
});

describe('labels', () => {
  const lots = [
    lot('a', 3, { putUpOn: day('2025-08-14'), ownBestBy: day('2026-08-14'), place: 'cellar' }),
    lot('bag', 2, { food: 'corn', way: 'frozen', container: 'quart freezer bag' }),
    lot('bin', 40, { food: 'potato', way: 'cellared', container: 'pound' }),
    lot('none', 0),
  ];
  const options = { each: 'container', nameOf: (food: string) => `${food}es` } as const;

  it('are made for each container left, for jars and for bags', () => {
    const labels = labelsFor(shelfOf(lots), ['bag', 'a', 'none', 'bin'], options);
    expect(labels.map((label) => [label.lot, label.for, label.number, label.of])).toEqual([
      ['bag', 'freezer bag', 1, 2],
      ['bag', 'freezer bag', 2, 2],
      ['a', 'jar', 1, 3],
      ['a', 'jar', 2, 3],
      ['a', 'jar', 3, 3],
      ['bin', 'other', 1, 1],
    ]);
    expect(labels[2]).toMatchObject({
      food: 'tomatoes',
      putUp: 'Aug 14, 2025',
      bestBy: 'best quality by Aug 2026',
      place: 'cellar',
      container: 'quart jar',
    });
    expect(labels[0]).toMatchObject({ putUp: '', bestBy: '' });
  });

  it('or one for the lot', () => {
    expect(labelsFor(shelfOf(lots), ['a'], { ...options, each: 'lot' })).toHaveLength(1);
  });
});

describe('planning weeks', () => {
  // 2026-01-05 is a Monday.
  const meals = [
    meal('a', '2025-12-29', 'Soup', { shares: 9, done: true }),
    meal('b', '2026-01-03', 'Roast', { busy: true }),
    meal('c', '2026-01-06', 'Chili'),
  ];

  it('copies last week onto the same weekdays, without its ticks and guests, and leaves what stands there', () => {
    expect(mondayOf(day('2026-01-11'))).toBe(TODAY);
    const made = copyLastWeek([...meals, meal('d', '2026-01-05', 'Beans')], TODAY + 3);
    expect(made).toEqual([
      { date: day('2026-01-10'), meal: 'supper', dishName: 'Roast', shares: null, times: null, busy: true },
    ]);
    expect(copyLastWeek(meals, TODAY, { keepShares: true })[0]).toMatchObject({ date: TODAY, shares: 9 });
  });

  it('leaves weekends loose where asked', () => {
    expect(copyLastWeek(meals, TODAY, { looseWeekends: true }).map(({ dishName }) => dishName)).toEqual([
      'Soup',
      '',
    ]);
  });

  it('rotates a plan of some weeks', () => {
    const made = repeatWeeks(meals, { from: day('2025-12-29'), weeks: 2, to: day('2026-01-12'), times: 2 });
    expect(made.map(({ date, dishName }) => [date - TODAY, dishName])).toEqual([
      [7, 'Soup'],
      [12, 'Roast'],
      [15, 'Chili'],
      [21, 'Soup'],
      [26, 'Roast'],
      [29, 'Chili'],
    ]);
  });

  it('makes open meals where none stand', () => {
    const made = openMeals(meals, TODAY, TODAY + 2, ['midday', 'supper']);
    expect(made).toHaveLength(5);
    expect(made.every(({ dishName }) => dishName === '')).toBe(true);
  });

  it('sets guests and days away by meal', () => {
    const week = [
      meal('x', AS_OF, 'Soup'),
      meal('y', AS_OF, 'Soup', { meal: 'midday' }),
      meal('z', AS_OF, '', { done: true }),
    ];
    const when = { from: TODAY, to: TODAY };
    expect(guestsAndAway(week, 6, { ...when, meals: ['supper'], change: 2.5 })).toEqual([
      { meal: 'x', column: 'shares', value: 8.5 },
    ]);
    expect(guestsAndAway(week, 6, { ...when, change: 'all away' }).map(({ column }) => column)).toEqual([
      'skipped',
      'skipped',
    ]);
  });
});

describe('the week plan’s average', () => {
  const lines = [
    dishLine('1', 'Soup', 'tomato', { amount: 2, measure: 'pint jar' }),
    dishLine('2', 'Soup', 'salt', { from: 'bought' }),
  ];
  const canned = shelfOf([lot('a', 5)]).map(({ input }) => input);

  it('is what its meals take a week, in the counted-in container, weeks without a dish left out', () => {
    const meals = [
      meal('a', '2026-01-05', 'Soup'),
      meal('b', '2026-01-11', 'Soup', { shares: 3, done: true }),
      meal('c', '2026-01-26', 'Soup'),
      meal('d', '2026-01-27', 'Soup', { skipped: true }),
      meal('e', '2026-02-10', ''),
    ];
    // 1 + ½ + 1 quarts over two weeks.
    expect(weekAverages(meals, lines, canned, at(), emptyGuide).get('tomato|canned')).toEqual({
      perWeek: 1.25,
      countedIn: 'quart jar',
      weeks: 2,
      meals: 3,
    });
    expect(weekAverages([], lines, canned, at(), emptyGuide).size).toBe(0);
  });

  it('fills the use of a food that has neither an own nor a learned one', () => {
    const input = { ...canned[0]!, row: row() };
    const average = weekAverages([meal('a', AS_OF, 'Soup')], lines, [input], at(), emptyGuide).get(
      'tomato|canned',
    )!;
    expect(planLine(input, at(), emptyGuide, average.perWeek).food!.figures).toMatchObject({
      use_per_week: 1,
      weeks_of_supply: 5,
    });
  });

  it('is shared by the ways of keeping where a dish takes whichever', () => {
    const both = shelfOf([lot('a', 5), lot('b', 9, { way: 'frozen', container: 'pint freezer bag' })]);
    const found = weekAverages(
      [meal('a', AS_OF, 'Soup')],
      lines,
      both.map(({ input }) => input),
      at(),
      emptyGuide,
    );
    expect(found.get('tomato|canned')!.perWeek).toBe(0.5);
    expect(found.get('tomato|frozen')!.perWeek).toBe(1);
  });
});

describe('the wish list', () => {
  it('says what ran out, what was wished for and what stayed', () => {
    const lots = [
      lot('a', 2, { putUpOn: day('2025-08-01') }),
      lot('b', 9, { food: 'beet', putUpOn: day('2025-01-01') }),
      lot('c', 9, { food: 'corn', putUpOn: day('2025-12-01') }),
    ];
    const draws = [draw('d', 1, { date: day('2025-11-01') }), draw('e', 3, { date: day('2025-12-20') })];
    const shelf = shelfOf(lots, [], at(), emptyGuide, draws);
    const lines = [dishLine('1', 'Soup', 'tomato', { amount: 2, way: 'canned' })];
    const week = planWeek([meal('m', AS_OF, 'Soup')], lines, shelf, at(), new Set(), emptyGuide);
    expect(wishList(shelf, week, TODAY).map(({ food, what, words }) => [food, what, words])).toEqual([
      ['tomato', 'ran out', 'ran out on Dec 20, 2025; drawn 2 times in the year before'],
      ['tomato', 'wished for', 'fetched 1 time when there was not enough'],
      ['tomato', 'wished for', '2 quart jars short for 1 meal'],
      ['beet', 'stayed', 'not touched since Jan 1, 2025'],
    ]);
  });
});
