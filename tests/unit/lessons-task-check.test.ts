import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BookDoc, parseBook } from '../../src/book/index.js';
import { FormulaCheck, type TaskChecked, VARIATIONS } from '../../src/lessons/formula-task.js';
import { hintsFor } from '../../src/lessons/formula-task-rows.js';
import { FORMULA_TASKS, formulaTaskWith } from '../../src/lessons/formula-tasks.js';
import { openWithEngine } from '../../src/live/evaluate.js';
import { demoBook } from '../support/lesson-books.js';

function bookOf(name: 'school-garden' | 'tamarack-bench'): BookDoc {
  const read = parseBook(readFileSync(`demo/data/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.book;
}
const GARDEN = bookOf('school-garden');

/** The school garden has no supplies. */
const bookFor = (id: string) =>
  id.startsWith('supplies')
    ? (['tamarack-bench', bookOf('tamarack-bench')] as const)
    : (['school-garden', GARDEN] as const);

const checkOf = (id: string, book = GARDEN, only?: readonly string[]): FormulaCheck =>
  new FormulaCheck(openWithEngine(book), formulaTaskWith(id)!, only ? { only } : {});

const checked = async (id: string, formula: string): Promise<TaskChecked> => {
  const check = checkOf(id);
  try {
    return await check.check(formula);
  } finally {
    check.close();
  }
};

describe('a formula that pupils write for a planning column', () => {
  it.each([
    ['beds/expected_pounds', '=[Plants planned]*[Yield a plant]'],
    ['beds/expected_pounds', 'ROUND([Yield a plant]*[Plants planned],0)'],
    ['beds/short_or_over', '=-([Pounds wanted]-[Expected])'],
    ['foods/weeks_of_supply', '=[On hand]/[Use a week]'],
    ['foods/weeks_of_supply', '=ROUND([On hand]*(1/[Use a week]),1)'],
    ['foods/weeks_of_supply', '=WEEKS_OF_SUPPLY(On_hand;[use a week])'],
    ['foods/weeks_of_supply', 'on hand / use a week'],
    ['household/part_of_table', '=[Share at the table]/SUM([Share at the table])*100'],
    ['harvest/per_plant_so_far', '=[Pounds so far]/Plants'],
    ['shelf/holds', '=Left*CONTAINER_HOLDS(Container)'],
  ])('%s: %s is right, however it is written', async (id, formula) => {
    const answer = await checked(id, formula);
    expect([answer.kind, answer.kind === 'right' && answer.message]).toEqual([
      'right',
      expect.stringMatching(/^Right: in (?:the row|all \d+ rows), and \d+ times with other numbers\.$/),
    ]);
    expect(answer.kind === 'right' && answer.compared).toBeGreaterThan(VARIATIONS);
  });

  it.each([
    ['foods/weeks_of_supply', '=[On hand]*[Use a week]'],
    ['foods/weeks_of_supply', '=[Use a week]/[On hand]'],
    ['beds/expected_pounds', '=[Plants planned]+[Yield a plant]'],
    ['beds/short_or_over', '=[Pounds wanted]-[Expected]'],
    ['household/part_of_table', '=[Share at the table]/SUM([Share at the table])'],
    ['harvest/per_plant_so_far', '=[Pounds so far]*Plants'],
    ['shelf/holds', '=Left'],
    ['foods/weeks_of_supply', '=[On hand]/0'],
    ['foods/weeks_of_supply', '="many"'],
  ])('%s: %s is wrong, and shows a row with its numbers', async (id, formula) => {
    const answer = await checked(id, formula);
    expect(['wrong', 'not always']).toContain(answer.kind);
    expect(answer.kind !== 'blank' && answer.message).toMatch(/with .+ yours gives .+, the plan .+\.$/);
  });

  it('that fits the rows by chance is told from one that always fits, by numbers in which it does not', async () => {
    // Of one row with 30 on hand and 3 a week: 10, as many other ways give it.
    const live = openWithEngine(GARDEN);
    live.set('foods', 'f02', 'own_use', 3);
    const here = live.value('foods', 'f02', 'on_hand') as number;
    const check = new FormulaCheck(live, formulaTaskWith('foods/weeks_of_supply')!, { only: ['f02'] });
    const answer = await check.check(`=${here / 3}`);
    expect(answer.kind).toBe('not always');
    const said = answer.kind === 'not always' ? answer.message : '';
    const numbers =
      /with On hand ([\d.]+) .*Use a week ([\d.]+) .*yours gives ([\d.]+), the plan ([\d.]+) weeks?\.$/.exec(
        said,
      );
    expect(said).toMatch(/^Right for these rows, but not always: /);
    const [, onHand, use, yours, plan] = numbers!.map(Number);
    expect(yours).toBeCloseTo(here / 3, 2);
    // The counterexample is true arithmetic.
    expect(plan).toBeCloseTo(onHand! / use!, 2);
    check.close();
  });

  it('is not taken where it reads the answer itself, straight or by way of another column', async () => {
    for (const formula of [
      '=[Weeks of supply]',
      '=[Weeks of supply]*1+0',
      '=SUM(A1:Z1)',
      '=[Months of supply]*4.345',
    ])
      expect([formula, (await checked('foods/weeks_of_supply', formula)).kind]).toEqual([
        formula,
        'own answer',
      ]);
  });

  it('says what cannot be read in it', async () => {
    for (const formula of ['=[On hand', '=ON HAND/USE', '=NOSUCH([On hand])', '=[On hands]/2']) {
      const answer = await checked('foods/weeks_of_supply', formula);
      expect([formula, answer.kind]).toEqual([formula, 'unreadable']);
      expect(answer.kind === 'unreadable' && answer.message.length).toBeGreaterThan(10);
    }
    expect((await checked('foods/weeks_of_supply', ' = ')).kind).toBe('blank');
  });

  it('leaves the copy as it was, whatever came of it', async () => {
    const live = openWithEngine(GARDEN);
    const check = new FormulaCheck(live, formulaTaskWith('foods/weeks_of_supply')!);
    const before = JSON.stringify(live.toJSON());
    for (const formula of ['=[On hand]/[Use a week]', '=[On hand]', '=[', '=1/0', '=[Weeks of supply]']) {
      await check.check(formula);
      expect(JSON.stringify(live.toJSON())).toBe(before);
    }
    check.close();
  });

  it('that is let go while it is checked says nothing of it', async () => {
    const check = checkOf('foods/weeks_of_supply');
    const answer = await check.check('=On_hand/Use_a_week', async () => check.close());
    expect(answer).toEqual({ kind: 'blank' });
  });

  it('finds no rows in a book that has none, and says what is needed', async () => {
    const answer = await checked('supplies/short', '=1');
    expect(answer).toEqual({ kind: 'no rows', message: formulaTaskWith('supplies/short')!.needs });
  });
});

describe('tasks of writing a formula', () => {
  it.each(FORMULA_TASKS.map(({ id }) => id))(
    '%s: its own answer is right',
    async (id) => {
      const [name, book] = bookFor(id);
      const check = checkOf(id, book);
      const rows = check.rows.slice(0, 3);
      check.close();
      expect(rows.length).toBeGreaterThan(0);
      const some = checkOf(id, book, rows);
      const answer = await some.check(
        hintsFor(demoBook(name), some.at!)
          .at(-1)!
          .replace(/^.* has =/, '='),
      );
      expect(answer.kind).toBe('right');
      some.close();
    },
    60_000,
  );

  it.each(FORMULA_TASKS.filter(({ kind }) => kind !== 'supplies').map(({ id }) => id))(
    '%s: hints go from words to the formula',
    (id) => {
      const check = checkOf(id);
      const hints = hintsFor(demoBook('school-garden'), check.at!);
      check.close();
      expect(hints.length).toBeGreaterThan(2);
      expect(hints.slice(0, -1).join(' ')).not.toContain('So every row');
      expect(hints.at(-1)).toMatch(/^So every row has =/);
      expect(new Set(hints).size).toBe(hints.length);
    },
  );
});
