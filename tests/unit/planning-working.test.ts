import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/live/evaluate.js';
import {
  type DrawFigures,
  emptyGuide,
  explainDraw,
  explainFood,
  explainLot,
  type FoodFigures,
  type Household,
  type LineInput,
  type LotFigures,
  planLine,
  type Working,
} from '../../src/planning/index.js';
import { day, draw, household, line, lot, row } from './planning-make.js';

const season = { freshFrom: { month: 7, day: 15 }, freshTo: { month: 9, day: 30 } };
const crops = [{ crop: 'tomato', pounds: null }];
const tomatoes = line({
  row: row({ carry: 3, ...season, crops, freshUse: 1 }),
  lots: [
    lot('a', 40, { putUpOn: day('2024-09-10'), place: 'cellar' }),
    lot('b', 60, { putUpOn: day('2025-09-05'), container: 'pint jar' }),
    lot('c', 4, { putUpOn: day('2025-09-05'), ownBestBy: day('2025-12-01') }),
    lot('later', 5, { putUpOn: day('2026-09-05') }),
    lot('blank', 1, { count: null }),
  ],
  draws: [
    ...Array.from({ length: 18 }, (_, i) => draw(`d${i}`, 2, { date: day('2025-10-01') + 6 * i })),
    draw('cup', 3, { date: day('2026-01-20'), container: 'cup' }),
    draw('too many', 500, { date: day('2025-12-24'), purpose: 'gift', container: 'pint jar' }),
    draw('fix', -498, { date: day('2025-12-26'), corrects: 'too many', container: 'pint jar' }),
    draw('pounds', 3, { date: day('2025-12-24'), container: 'pound' }),
    draw('later', 3, { date: day('2026-12-24') }),
  ],
});
const bought = line({
  food: 'flour',
  way: 'dry goods',
  row: row({ ownUse: 2, comesFrom: 'bought', nextSupply: day('2026-06-01'), countedIn: 'pound' }),
  lots: [lot('a', 90, { container: 'pound' })],
});
const target = line({ row: row({ ownUse: 1, ownTarget: 30, ...season }), lots: [lot('a', 90)] });
const unused = line({
  row: row({ ownUse: 0, ...season }),
  lots: [lot('a', 9, { ownBestBy: day('2026-12-01') })],
});
const empty = line({ row: row({ countedIn: null, comesFrom: null }) });
const at = household('2026-02-25', { ledgerFrom: day('2025-10-01') });
const july = household('2026-08-01', { ledgerFrom: day('2025-10-01'), basis: 'lean' });

function everyWorking(input: LineInput, house: Household): Map<string, Working> {
  const plan = planLine(input, house);
  const all = new Map<string, Working>();
  for (const [id, { figures }] of plan.lots) {
    for (const column of Object.keys(figures) as (keyof LotFigures)[]) {
      all.set(`lot ${id} ${column}`, explainLot(input, house, plan, id, column)!);
    }
  }
  for (const [id, { figures }] of plan.draws) {
    for (const column of Object.keys(figures) as (keyof DrawFigures)[]) {
      all.set(`draw ${id} ${column}`, explainDraw(input, house, plan, id, column)!);
    }
  }
  for (const column of Object.keys(plan.food!.figures) as (keyof FoodFigures)[]) {
    all.set(`food ${column}`, explainFood(input, house, plan, column)!);
  }
  return all;
}

const cases: readonly (readonly [string, LineInput, Household])[] = [
  ['tomatoes in winter', tomatoes, at],
  ['tomatoes in season, lean', tomatoes, july],
  ['bought flour', bought, at],
  ['an own target', target, at],
  ['nothing used', unused, at],
  ['an empty row', empty, at],
];

describe.each(cases)('workings of %s', (_name, input, house) => {
  const all = everyWorking(input, house);

  it('say the rule, and for each blank what would fill it', () => {
    for (const [name, working] of all) {
      expect(working.rule, name).not.toBe('');
      if (working.value === null) expect(working.missing, name).toMatch(/\w.*[.:]/);
      else expect(working.missing, name).toBeUndefined();
      const { cautions, ...said } = working;
      expect(JSON.stringify(said), name).not.toMatch(/NaN|undefined|Infinity|\b(un)?safe\b/);
    }
  });

  it('give formulas that come to the same figure', () => {
    for (const [name, { formula, value }] of all) {
      if (formula === undefined) continue;
      // On its own a formula is worked out on a usual basis; in a book, on the household's.
      if (house.basis !== 'usual' && formula.startsWith('=BEST_BY')) continue;
      const found = evaluate(formula, { asOf: '2026-02-25' });
      if (typeof value === 'number') expect(found, `${name}: ${formula}`).toBeCloseTo(value, 8);
      else expect(found, `${name}: ${formula}`).toBe(value);
    }
  });
});

describe('a working', () => {
  const winter = everyWorking(tomatoes, at);

  it('names the source of a published figure, and warns beside old food', () => {
    const bestBy = winter.get('lot a best_by')!;
    expect(bestBy.inputs.find(({ name }) => name.startsWith('Months'))!.source).toBeTruthy();
    expect(bestBy.cautions!.join(' ')).toMatch(/Best quality by a date is not safe until that date/);
    expect(winter.get('lot c eaten_by')!.cautions!.length).toBeGreaterThan(0);
    expect(winter.get('food to_put_up')!.cautions!.join(' ')).toMatch(/tested process/);
  });

  it('puts the numbers into its steps', () => {
    const made = everyWorking(target, at);
    // 2026-02-25 to 2026-07-15 is 20 weeks at 1 a week.
    expect(made.get('food left_at_harvest')!.steps.map(({ text }) => text)).toContain(
      '90 quart jars − 1 quart jar a week × 20 weeks = 70 quart jars',
    );
    expect(made.get('food to_put_up')!.steps.at(-1)!.text).toBe('rounded up: 0 quart jars');
    expect(made.get('food use_per_week')!.inputs[0]).toEqual({
      name: 'Use per week',
      value: 1,
      unit: 'quart jars a week',
      origin: 'own',
    });
  });

  it('is none for a row or column that is not there', () => {
    const plan = planLine(tomatoes, at, emptyGuide);
    expect(explainLot(tomatoes, at, plan, 'nowhere', 'left')).toBeUndefined();
    expect(explainLot(tomatoes, at, plan, 'a', 'constructor' as keyof LotFigures)).toBeUndefined();
  });
});
