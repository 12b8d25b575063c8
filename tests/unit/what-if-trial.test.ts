import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseBook } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import type { Varied } from '../../src/live/what-if.js';
import { readWatched, watchedOf, whatIfFigures } from '../../src/live/what-if-figures.js';
import { usualRange } from '../../src/live/what-if-range.js';
import { readVary } from '../../src/live/what-if-text.js';
import { formulasFeedPlan, WhatIfTrial } from '../../src/live/what-if-trial.js';
import { tomatoes } from '../browser/elements-make.js';

const today = (): number => 20_485; // 2026-02-01

const opened = (json: unknown): LiveBook => {
  const read = parseBook(json);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return openBook(read.book, { today });
};
const garden = (): LiveBook => opened(readFileSync('demo/data/school-garden.json', 'utf8'));
const trialOf = (live: LiveBook): WhatIfTrial => new WhatIfTrial(live, opened(live.toJSON()));

const one = (live: LiveBook, text: string): Varied => {
  const { asked, problems } = readVary(live, text);
  expect(problems).toEqual([]);
  return asked[0]!.varied;
};

/** Every planning figure of a book, by its place. */
function figures(live: LiveBook): Record<string, unknown> {
  const all: Record<string, unknown> = {};
  for (const { id: sheet } of live.sheets())
    for (const { id: column, role } of live.columns(sheet))
      if (role === 'planning')
        for (const row of live.rowIds(sheet))
          all[`${sheet}/${row}/${column}`] = live.value(sheet, row, column);
  return all;
}

describe('values tried on a copy', () => {
  it('give the figures that they would give in the book: 20 quarts at 4 a week last 5 weeks', () => {
    const live = opened(tomatoes());
    const trial = trialOf(live);
    expect(trial.try([{ varied: one(live, 'foods / Tomatoes / own_use'), value: 4 }])).toBeUndefined();
    const { watched, problems } = readWatched(live, 'foods / weeks_of_supply, Use a week');
    expect(problems).toEqual([]);
    expect(
      whatIfFigures(live, trial.copy, watched)[0]?.figures.map(
        ({ columnTitle, was, wouldBe, difference }) => [columnTitle, was, wouldBe, difference],
      ),
    ).toEqual([
      ['Weeks of supply', '10 weeks', '5 weeks', '−5 weeks'],
      ['Use a week', '2 quart jars', '4 quart jars', '+2 quart jars'],
    ]);
    expect(live.value('foods', live.rowIds('foods')[0]!, 'weeks_of_supply')).toBe(10);
  });

  it('never touch the book, follow what happens in it, and are as if written there', () => {
    const what = [
      'cushion',
      'basis',
      'last_frost',
      'foods/Potatoes/own_use',
      'beds/tomatoes/plants',
      'household/p02/share',
    ];
    const values: readonly (readonly (string | number)[])[] = [
      [0, 25, 100],
      ['lean', 'good'],
      ['04-20', '06-01'],
      [0, 1.5, 9],
      [0, 6, 40],
      [0, 3, 12],
    ];
    const tries = fc.array(
      fc
        .nat({ max: what.length - 1 })
        .chain((at) => fc.tuple(fc.constant(at), fc.constantFrom(...values[at]!))),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(tries, fc.nat({ max: 60 }), fc.boolean(), (tried, count, isUndone) => {
        const live = garden();
        const trial = trialOf(live);
        live.on('change', (change) => trial.follow(change));
        const before = JSON.stringify(live.toJSON());
        for (const [at, value] of tried) trial.try([{ varied: one(live, what[at]!), value }]);
        expect(JSON.stringify(live.toJSON())).toBe(before);
        // Meanwhile somebody writes into the book, and may take it back.
        live.set('shelf', 'lot01', 'count', count);
        live.apply({ do: 'set setting', setting: 'cushion', typed: 15 });
        if (isUndone) live.undo();
        const written = opened(live.toJSON());
        for (const { varied, value } of trial.tried)
          written.apply(
            'setting' in varied.at
              ? { do: 'set setting', setting: varied.at.setting, typed: value }
              : { do: 'set cells', sheet: varied.at.sheet, cells: [{ ...varied.at, typed: value }] },
          );
        expect(figures(trial.copy)).toEqual(figures(written));
        trial.reset();
        expect(trial.tried).toEqual([]);
        expect(trial.copy.toJSON()).toEqual(live.toJSON());
        expect(figures(trial.copy)).toEqual(figures(live));
      }),
      { numRuns: Number(process.env.CROFTSHEET_RUNS ?? 12) },
    );
  }, 60_000);

  it('are let go where their row goes', () => {
    const live = garden();
    const trial = trialOf(live);
    live.on('change', (change) => trial.follow(change));
    trial.try([{ varied: one(live, 'beds / tomatoes / plants'), value: 30 }]);
    live.removeRows('beds', ['tomatoes']);
    expect(trial.tried).toEqual([]);
    expect(trial.command()).toBeNull();
    expect(trial.copy.toJSON()).toEqual(live.toJSON());
  });

  it('come into the book as one step, which undo takes back', () => {
    const live = opened(tomatoes());
    const trial = trialOf(live);
    live.on('change', (change) => trial.follow(change));
    const before = JSON.stringify(live.toJSON());
    trial.try([
      { varied: one(live, 'cushion'), value: 50 },
      { varied: one(live, 'foods / Tomatoes, canned / Own use a week'), value: 5 },
    ]);
    const would = figures(trial.copy);
    expect(live.apply(trial.command()!).ok).toBe(true);
    expect(figures(live)).toEqual(would);
    expect(trial.tried).toEqual([]);
    live.undo();
    expect(JSON.stringify(live.toJSON())).toBe(before);
  });

  it('that are refused leave the copy as it was', () => {
    const live = opened(tomatoes());
    const trial = trialOf(live);
    const varied = one(live, 'cushion');
    const gone: Varied = { ...varied, key: 'x', at: { sheet: 'nowhere', row: 'r', column: 'c' } };
    expect(
      trial.try([
        { varied, value: 40 },
        { varied: gone, value: 1 },
      ])?.message,
    ).toBeTruthy();
    expect(trial.tried).toEqual([]);
    expect(trial.copy.setting('cushion')).toBe(live.setting('cushion'));
  });

  it('need the engine only where formulas stand in what the plan is made from', () => {
    const live = opened(tomatoes());
    live.addColumn('foods', 'Mine', { formula: '=1+1' });
    expect(formulasFeedPlan(live)).toBe(false);
    live.set('foods', live.rowIds('foods')[0]!, 'own_use', '=1+1');
    expect(formulasFeedPlan(live)).toBe(true);
  });
});

describe('what is to be varied', () => {
  it('is found by ids, kinds, titles and names, and named from its declaration', () => {
    const live = garden();
    const { asked, problems } = readVary(
      live,
      'Cushion [0 to 50 by 5]; setting: first_frost; Foods / tomatoes, FROZEN / own_use; beds/beans/plants;;',
    );
    expect(problems).toEqual([]);
    expect(asked.map(({ varied }) => varied.label)).toEqual([
      'Cushion',
      'First fall frost',
      'Tomatoes, frozen: Own use a week',
      'green bean, Provider: Plants planned',
    ]);
    expect(asked[0]?.range).toEqual({ min: 0, max: 50, step: 5 });
    expect(asked[2]?.varied.unit).toBe('quart freezer bag');
    // Nothing is written there: a slider begins at what the draws taught.
    expect(asked[2]?.varied.present).toBeNull();
    expect(asked[2]?.varied.instead).toBe(live.value('foods', 'f01', 'use_per_week'));
  });

  it.each([
    ['rain', 'vary-not-found'],
    ['attic / x / y', 'no-such-sheet'],
    ['foods / Turnips / own_use', 'vary-no-row'],
    ['shelf / Tomatoes / count', 'vary-several-rows'],
    ['foods / Carrots / colour', 'vary-no-column'],
    ['foods / Carrots / on_hand', 'vary-not-this'],
    ['foods / Carrots / note', 'vary-not-this'],
    ['cushion [5 to 1]', 'vary-bad-range'],
    ['cushion [much]', 'vary-bad-range'],
    ['last_frost [soon to later]', 'vary-bad-range'],
  ])('%s: says what is wrong with it', (text, code) => {
    const { asked, problems } = readVary(garden(), text);
    expect(asked).toEqual([]);
    expect(problems.map((problem) => problem.code)).toEqual([code]);
  });

  it('has ends that hold what is there now and stay within what it can be', () => {
    const live = garden();
    const base = one(live, 'foods / Carrots / carry');
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }),
        (present, decimals) => {
          const { min, max, step } = usualRange({ ...base, present, decimals }, 20_485);
          expect(min).toBe(0);
          expect(max).toBeGreaterThanOrEqual(present);
          expect(step).toBeGreaterThan(0);
          expect((max - min) / step).toBeLessThanOrEqual(101);
        },
      ),
    );
    const frost = one(live, 'last_frost');
    // Thirty days to either side of 8 May 2026.
    expect(usualRange(frost, 20_499)).toEqual({ min: 20_551, max: 20_611, step: 1 });
    expect(usualRange({ ...base, present: 60, max: 100, unit: '%' }, 0).max).toBe(100);
  });

  it('shows the planning columns of one sheet, or of all', () => {
    const live = garden();
    const foods = watchedOf(live, 'foods');
    expect(foods.ok && foods.value.map(({ title }) => title)).toEqual(['Foods']);
    const all = watchedOf(live);
    expect(all.ok && all.value.length).toBeGreaterThan(5);
    expect(watchedOf(live, 'attic').ok).toBe(false);
    expect(readWatched(live, 'foods / rain').problems).toHaveLength(1);
  });
});
