import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isNote } from '../../components/look/problems.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { startingBook } from '../support/random-book.js';
import { readNumber } from '../support/read-steps.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
  live.apply({
    do: 'add sheet',
    sheet: 'own',
    title: 'Market',
    columns: [
      { id: 'what', title: 'What' },
      { id: 'jars', title: 'Jars', as: { type: 'number', measure: 'quart jar' } },
      { id: 'picked', title: 'Picked', as: { type: 'number', measure: 'pound' } },
      { id: 'pints', title: 'Pints', as: { type: 'number', measure: 'pint' } },
      { id: 'price', title: 'Price', as: { type: 'number', decimals: 2 } },
      { id: 'day', title: 'Day', as: { type: 'date' } },
      { id: 'out', title: 'Out' },
    ],
    rows: [
      {
        id: 'o1',
        cells: { what: 'Tomatoes', jars: 10, picked: 53, pints: 4, price: 3.2, day: '2026-02-01' },
      },
      { id: 'o2', cells: { what: 'Peas', jars: 3, picked: 7, pints: 2, price: 2 } },
    ],
  });
});
afterEach(() => live.close());

/** The working of a formula in the first row. */
function workingOf(formula: string) {
  const done = live.set('own', 'o1', 'out', formula);
  if (!done.ok) throw new Error(done.problem.message);
  const working = live.working('own', 'o1', 'out');
  if (!working) throw new Error('no working');
  return working;
}
const steps = (formula: string) => workingOf(formula).steps.map(({ text }) => text);
const problem = (formula: string) => {
  workingOf(formula);
  return live.problem('own', 'o1', 'out');
};

describe('the working of a formula', () => {
  it('tells operators with numbers and units, and where each number came from', () => {
    const working = workingOf('=Jars*Price');
    expect(working).toMatchObject({ title: 'Out', value: 32, rule: 'Jars × Price' });
    expect(working.steps.map(({ text }) => text)).toEqual(['Jars 10 quart jars × Price 3.2 = 32']);
    expect(working.inputs).toMatchObject([
      {
        name: 'Jars',
        value: 10,
        unit: 'quart jars',
        origin: 'entered',
        from: { sheet: 'own', row: 'o1', column: 'jars' },
      },
      { name: 'Price', value: 3.2, unit: '' },
    ]);
    expect(working.changes).toContain('another entry in Jars');
  });

  it('carries units through: pounds ÷ pounds a quart jar are quart jars, with fractions as people read them', () => {
    const working = workingOf('=Picked/POUNDS_PER_JAR("tomato","quart")');
    expect(working.unit).toBe('quart jars');
    expect(working.steps.at(-1)!.text).toBe('Picked 53 pounds ÷ 3 pounds a quart jar = 17⅔ quart jars');
    // The published figure stands among what goes in, with its source.
    expect(working.inputs.at(-1)).toMatchObject({ name: 'POUNDS_PER_JAR', value: 3, origin: 'published' });
    expect(working.inputs.at(-1)!.source).toMatch(/USDA|Extension/);
  });

  it('goes from the inside out, with the steps of our own functions inside', () => {
    const working = workingOf('=ROUND(WEEKS_OF_SUPPLY(Jars, 1.5), 1)+1');
    expect(working.steps).toEqual([
      { text: '10 quart jars ÷ 1.5 quart jars a week = 6⅔ weeks', depth: 1 },
      { text: 'WEEKS_OF_SUPPLY of Jars 10 quart jars, 1.5 = 6⅔ weeks' },
      { text: 'ROUND of 6⅔ weeks, 1 = 6.7 weeks' },
      { text: '6.7 weeks + 1 = 7.7 weeks' },
    ]);
  });

  it('takes the branch of IF that holds, and says so', () => {
    expect(steps('=IF(Jars>5,Jars*2,Jars/0)')).toEqual([
      'Jars 10 quart jars > 5 = yes',
      'Jars 10 quart jars × 2 = 20 quart jars',
      'IF Jars > 5: that holds, so = 20 quart jars',
    ]);
  });

  it('says what a standard function took, and of which cells', () => {
    expect(steps('=SUM(Jars)')).toEqual(['SUM of 2 cells in “Jars” = 13 quart jars']);
    expect(steps('=SUM(B1:B2)*2')).toEqual([
      'SUM of 2 cells in “Jars”, rows 1 to 2 = 13 quart jars',
      '13 quart jars × 2 = 26 quart jars',
    ]);
  });

  it('names cells of other rows and sheets', () => {
    const [row] = live.rowIds('foods');
    const working = workingOf('=B2+Foods!E1');
    expect(working.inputs[0]!.name).toBe('Jars of Peas, 3, 7');
    expect(working.inputs[1]).toMatchObject({ from: { sheet: 'foods', row } });
    expect(working.inputs[1]!.name).toMatch(/^On hand of .* on Foods$/);
  });

  it('says what would fill a blank, and what an error says', () => {
    expect(workingOf('=IF(Jars>50,1,"")').missing).toMatch(/nothing here/);
    const failed = workingOf('=Jars/0');
    expect(failed.value).toBe('#DIV/0!');
    expect(failed.missing).toBeTruthy();
  });

  it('explains every cell that a formula of the column fills, each with its own numbers', () => {
    live.addColumn('own', 'Worth', { formula: '=Jars*Price' });
    const { id } = live.columns('own').at(-1)!;
    const last = (row: string) => live.working('own', row, id)!.steps.at(-1)!.text;
    expect([last('o1'), last('o2')]).toEqual([
      'Jars 10 quart jars × Price 3.2 = 32',
      'Jars 3 quart jars × Price 2 = 6',
    ]);
    expect(live.working('own', 'o2', id)!.changes).toContain('another formula for the column');
  });

  it('ends in the value that the cell shows, for a formula of any shape', () => {
    for (const formula of [
      '=-Jars^2',
      '=2^-1*Jars',
      '=Jars%',
      '=(Jars+Pints*0)/(1+2)-4',
      '=Jars-Price-1',
      '=Jars/Price/2',
      '=What&" "&Jars',
      '=IFERROR(Jars/0,Price)',
      '=SUM({1,2;3,4})',
      '=LEARNED(8,{5,6,7})',
    ]) {
      const { value, steps: told } = workingOf(formula);
      const end = told.at(-1)?.text.split(' = ').at(-1) ?? '';
      if (typeof value === 'number') expect(readNumber(end), formula).toBeCloseTo(value, 2);
      else expect(end, formula).toContain(String(value));
    }
  });
});

describe('units that do not go together', () => {
  it('are said at the cell, quietly, and leave the value', () => {
    const found = problem('=Picked+Jars');
    expect(live.value('own', 'o1', 'out')).toBe(63);
    expect(found).toMatchObject({
      code: 'unlike-units',
      message: 'The formula adds pounds to quart jars: Picked and Jars.',
    });
    expect(found!.mend).toMatch(/Convert.*MEASURE/);
    expect(isNote(found!)).toBe(true);
    expect(live.working('own', 'o1', 'out')!.problems).toHaveLength(1);
  });

  it.each([
    ['=VLOOKUP("Peas",A1:D2,3,FALSE())', 'pounds', 7],
    ['=VLOOKUP("Peas",A1:D2,2,FALSE())', 'quart jars', 3],
    ['=INDEX(A1:D2,2,4)', 'pints', 2],
    ['=INDEX(C1:C2,2)', 'pounds', 7],
    ['=XLOOKUP("Peas",A1:A2,C1:C2)', 'pounds', 7],
    ['=CHOOSE(1,Picked,C2)', 'pounds', 53],
    ['=MATCH("Peas",A1:A2,0)', '', 2],
  ])('%s has the unit of the column that it looks up', (formula, unit, value) => {
    expect(workingOf(formula)).toMatchObject({ value, unit });
  });

  it('what is looked up is held to its unit like anything else', () => {
    expect(problem('=Pints+VLOOKUP("Peas",A1:D2,3,FALSE())')).toMatchObject({ code: 'unlike-units' });
    expect(problem('=Picked+VLOOKUP("Peas",A1:D2,3,FALSE())')).toBeUndefined();
    // Which column it is, is not known before it is worked out: nothing is held against it.
    expect(problem('=Pints+VLOOKUP("Peas",A1:D2,1+2,FALSE())')).toBeUndefined();
  });

  it('have no unit when they are put together all the same', () => {
    expect(workingOf('=Picked+Jars')).toMatchObject({ value: 63, unit: '' });
    expect(steps('=Picked+Jars')).toEqual(['Picked 53 pounds + Jars 10 quart jars = 63']);
  });

  it('are found within one column, where its rows are counted in different things', () => {
    expect(problem('=SUM(Shelf!Left)')?.message).toMatch(/puts .* and .* together with SUM: “Left” on Shelf/);
    expect(problem('=SUM(Jars)')).toBeUndefined();
  });

  it('are told apart from those that only want converting first', () => {
    expect(problem('=Pints+Jars')).toMatchObject({ code: 'convert-units' });
    expect(problem('=Pints+Jars')!.mend).toContain('MEASURE(amount, "pint", "quart jar")');
    expect(problem('=Pints+MEASURE(Jars,"quart jar","pint")')).toBeUndefined();
  });

  it.each([
    ['=Picked-Jars', 'takes quart jars from pounds'],
    ['=IF(Picked>Jars,1,2)', 'compares pounds with quart jars'],
    ['=SUM(Picked,Jars)', 'SUM puts pounds together with quart jars'],
    ['=WEEKS_OF_SUPPLY(Jars,1)+Jars', 'adds weeks to quart jars'],
    ['=Day+Jars', 'adds quart jars to a date'],
    ['=Day+WEEKS_OF_SUPPLY(Jars,1)', 'adds weeks to a date'],
    ['=PINTS_FROZEN("summer squash",Jars)', 'gives PINTS_FROZEN quart jars where “pounds” takes pounds'],
    ['=TO_PUT_UP(1,Jars,4)', 'where “weeks_to_cover” takes weeks'],
  ])('%s', (formula, said) => {
    expect(problem(formula)?.message).toContain(said);
  });

  it.each([
    '=Jars+1',
    '=Jars*Price+Picked*Price',
    '=Picked/POUNDS_PER_JAR("tomato","quart")+Jars',
    '=Jars*POUNDS_PER_JAR("tomato","quart")+Picked',
    '=Day+30',
    '=Day-TODAY()',
    '=Jars>3',
    '=SUM(Jars)/COUNT(Jars)+Jars',
    '=PINTS_FROZEN("summer squash",Picked)',
    '=LEFT_AT(Jars,1,"2026-08-02")+Jars',
  ])('and %s is right', (formula) => {
    expect(problem(formula)).toBeUndefined();
  });

  it('a unit that there is not gives an error that says so', () => {
    workingOf('=MEASURE(Jars,"quartz","pint")');
    expect(live.value('own', 'o1', 'out')).toMatchObject({ error: '#VALUE!' });
    expect(live.problem('own', 'o1', 'out')!.message).toMatch(/quart/);
  });
});
