import { describe, expect, it } from 'vitest';
import { CODES } from '../../src/book/formula/in-measure.js';
import { formulaTurnings } from '../../src/book/measured-formulas.js';
import { blankBook, type LiveBook, openBook, parseBook } from '../../src/core.js';
import { formulasOfBook } from '../../src/live/doings/formulas-of-book.js';
import { formulasTurned } from '../../src/live/doings/formulas-turned.js';
import { takesOneValue } from '../../src/live/engine-sync.js';
import { convertOpenFormula, metricOf } from '../../src/units/index.js';

/** A book with two beds of kale and an own sheet that looks at them. */
function gardenBook(): { live: LiveBook; beds: string; rows: readonly string[] } {
  const live = openBook(blankBook('Tamarack Bench'));
  const beds = live.sheets().find(({ kind }) => kind === 'beds')!.id;
  const { rows } = live.insertRows(beds, [
    { crop: 'kale', plants: 10, own_spacing: 18, own_yield: 1.5 },
    { crop: 'kale', plants: 30, own_spacing: 12, own_yield: 1 },
  ]);
  return { live, beds, rows };
}

const go = (live: LiveBook, measures: string) =>
  live.apply({ do: 'set setting', setting: 'measures', typed: measures });

/** What a formula in a cell becomes in metric measures, and whether the way back gives it as it was. */
function turned(column: string, formula: string): { metric: unknown; back: unknown; values: number[] } {
  const { live, beds, rows } = gardenBook();
  live.apply({ do: 'add column', sheet: beds, column: 'own1', title: 'Mine', before: null });
  live.apply({ do: 'add column', sheet: beds, column: 'price', title: 'Price', before: null });
  live.set(beds, rows[0]!, 'price', 3);
  live.set(beds, rows[0]!, column, formula);
  const value = (): number => Number(live.value(beds, rows[0]!, column));
  const values = [value()];
  go(live, 'metric');
  const metric = live.typed(beds, rows[0]!, column);
  values.push(value());
  go(live, 'US customary');
  const back = live.typed(beds, rows[0]!, column);
  values.push(value());
  live.close();
  return { metric, back, values };
}

/** Columns are called by the household’s measures. */
const inMetricWords = (text: string): string =>
  text.replaceAll('Row_feet', 'Metres_of_row').replaceAll('Pounds_wanted', 'Kilograms_wanted');

const INCH = 2.54;
const POUND = 0.45359237;
const FOOT = 0.3048;

describe('a formula in a cell that has a measure', () => {
  it.each([
    ['own_spacing', '=3*4', '=CONVERT(3*4,"in","cm")', INCH],
    ['own_spacing', '=12', '=CONVERT(12,"in","cm")', INCH],
    ['own_spacing', '= ( 3 + 4 ) * 2', '= CONVERT(( 3 + 4 ) * 2,"in","cm")', INCH],
    ['own_yield', '=3/2', '=CONVERT(3/2,"lbm","kg")', POUND],
    ['own_yield', '=Price/4', '=CONVERT(Price/4,"lbm","kg")', POUND],
    ['own_spacing', '=0', '=0', INCH],
    // What is added up from cells that are turned is turned already.
    ['own_spacing', '=D2', '=D2', INCH, 'own_spacing'],
    ['own_spacing', '=MAX(D2,12)', '=MAX(D2,CONVERT(12,"in","cm"))', INCH, 'own_spacing'],
    ['own_spacing', '=D2+6', '=D2+CONVERT(6,"in","cm")', INCH, 'own_spacing'],
    ['own_spacing', '=-D2*2', '=CONVERT(CONVERT(-D2,"cm","in")*2,"in","cm")', INCH, 'own_spacing'],
    [
      'own_spacing',
      '=IF(D2>6,D2,9)',
      '=IF(CONVERT(D2,"cm","in")>6,D2,CONVERT(9,"in","cm"))',
      INCH,
      'own_spacing',
    ],
    [
      'own_spacing',
      '=IF(D2+D2>6,1,2)',
      '=IF(CONVERT(D2+D2,"cm","in")>6,CONVERT(1,"in","cm"),CONVERT(2,"in","cm"))',
      INCH,
      'own_spacing',
    ],
    [
      'own_spacing',
      '=100-(D2+D2)*3',
      '=CONVERT(100,"in","cm")-CONVERT(CONVERT((D2+D2),"cm","in")*3,"in","cm")',
      INCH,
      'own_spacing',
    ],
    // From another measure.
    ['own_spacing', '=D2', '=CONVERT(CONVERT(D2,"kg","lbm"),"in","cm")', INCH, 'own_yield'],
    // Written as a conversion by the household: what it converts is what is wanted now.
    ['own_spacing', '=CONVERT(30,"cm","in")', '=30', INCH],
  ])('%s %s becomes %s, and comes back', (column, formula, metric, factor, of = '') => {
    const { live, beds } = gardenBook();
    const letter = of === '' ? 'D' : lettersOf(live, beds, of);
    live.close();
    const there = (text: string): string => text.replaceAll('D2', `${letter}2`);
    const found = turned(column, there(formula));
    expect(found.metric).toBe(there(metric));
    expect(found.back).toBe(there(formula));
    expect(found.values[1]).toBeCloseTo(found.values[0]! * factor, 4);
    expect(found.values[2]).toBeCloseTo(found.values[0]!, 4);
  });
});

/** The column's letters as the grid and formulas have them. */
function lettersOf(live: LiveBook, sheet: string, column: string): string {
  return String.fromCharCode(65 + live.columns(sheet).findIndex(({ id }) => id === column));
}

describe('a formula of one’s own', () => {
  it.each([
    // Numbers beside a cell may have a measure in them: a sack of 50 pounds.
    ['=Pounds_wanted/50', '=CONVERT(Pounds_wanted,"kg","lbm")/50'],
    ['=Row_feet*Price', '=CONVERT(Row_feet,"m","ft")*Price'],
    ['=PLANTS_FOR("kale",Pounds_wanted)', '=PLANTS_FOR("kale",CONVERT(Pounds_wanted,"kg","lbm"))'],
    ['="need "&Row_feet', '="need "&CONVERT(Row_feet,"m","ft")'],
    ['=SUM(Row_feet)/2+1', '=CONVERT(SUM(Row_feet),"m","ft")/2+1'],
    ['=CONVERT(Row_feet,"ft","m")', '=CONVERT(CONVERT(Row_feet,"m","ft"),"ft","m")'],
    ['=ROUND(Row_feet/3,0)', '=ROUND(CONVERT(Row_feet,"m","ft")/3,0)'],
    ['=IF(Row_feet>10,"long","short")', '=IF(CONVERT(Row_feet,"m","ft")>10,"long","short")'],
    // What only adds up, or is a share, goes along or stays by itself.
    ['=SUM(Row_feet)', '=SUM(Row_feet)'],
    ['=Row_feet/SUM(Row_feet)', '=Row_feet/SUM(Row_feet)'],
    ['=COUNT(Row_feet)*2', '=COUNT(Row_feet)*2'],
    ['=3*4', '=3*4'],
    ['=Price*2', '=Price*2'],
  ])('%s becomes %s, and comes back', (formula, metric) => {
    const found = turned('own1', formula);
    expect(found.metric).toBe(inMetricWords(metric));
    expect(found.back).toBe(formula);
    const follows = formula === metric && formula === '=SUM(Row_feet)';
    if (Number.isFinite(found.values[0]))
      expect(found.values[1]).toBeCloseTo(found.values[0]! * (follows ? FOOT : 1), 4);
    if (Number.isFinite(found.values[0])) expect(found.values[2]).toBeCloseTo(found.values[0]!, 9);
  });

  it('in a column with a unit gives what it gave in that unit', () => {
    const { live, beds, rows } = gardenBook();
    live.apply({
      do: 'add column',
      sheet: beds,
      column: 'own1',
      title: 'Long',
      before: null,
      formula: '=Row_feet',
    });
    live.apply({ do: 'describe column', sheet: beds, column: 'own1', as: { measure: 'foot' } });
    const feet = Number(live.value(beds, rows[0]!, 'own1'));
    expect(feet).toBeGreaterThan(0);
    go(live, 'metric');
    expect(live.value(beds, rows[0]!, 'own1')).toBeCloseTo(feet, 6);
    expect(live.toJSON().sheets[beds]!.columns.own1!.formula).toBe('=CONVERT([row_feet],"m","ft")');
    go(live, 'US customary');
    expect(live.toJSON().sheets[beds]!.columns.own1!.formula).toBe('=[row_feet]');
    live.close();
  });

  it('that adds up a column which goes along goes along too', () => {
    const { live, beds, rows } = gardenBook();
    live.apply({
      do: 'add column',
      sheet: beds,
      column: 'own1',
      title: 'Long',
      before: null,
      formula: '=SUM(Row_feet)',
    });
    live.apply({
      do: 'add column',
      sheet: beds,
      column: 'own2',
      title: 'Rolls',
      before: null,
      formula: '=Long/25',
    });
    const rolls = Number(live.value(beds, rows[0]!, 'own2'));
    go(live, 'metric');
    expect(live.value(beds, rows[0]!, 'own2')).toBeCloseTo(rolls, 6);
    expect(live.toJSON().sheets[beds]!.columns.own2!.formula).toBe('=CONVERT([own1],"m","ft")/25');
    live.close();
  });
});

describe('what cannot be turned', () => {
  it.each(['=SUMPRODUCT(Row_feet,Row_feet)', '=SUMIF(Row_feet,">10")', '=STDEV(D1:H2)*2'])(
    'is left as it stands, and named: %s',
    (formula) => {
      const { live, beds, rows } = gardenBook();
      live.apply({ do: 'add column', sheet: beds, column: 'own1', title: 'Mine', before: null });
      live.set(beds, rows[0]!, 'own1', formula);
      const found = formulaTurnings(live.inside.state, 'metric', takesOneValue);
      expect(found).toMatchObject([{ place: { sheet: beds, row: rows[0], column: 'own1' }, to: null }]);
      go(live, 'metric');
      expect(live.typed(beds, rows[0]!, 'own1')).toBe(inMetricWords(formula));
      live.close();
    },
  );
});

describe('going over to other measures', () => {
  it('is one step with its formulas: undo brings all of them back', () => {
    const { live, beds, rows } = gardenBook();
    live.set(beds, rows[0]!, 'own_spacing', '=3*4');
    live.apply({
      do: 'add column',
      sheet: beds,
      column: 'own1',
      title: 'Sacks',
      before: null,
      formula: '=Pounds_wanted/50',
    });
    const before = live.toJSON();
    go(live, 'metric');
    expect(live.toJSON()).not.toEqual(before);
    live.undo();
    expect(live.toJSON()).toEqual(before);
    live.close();
  });

  it('says the units by codes that mean what the measures mean', () => {
    for (const [unit, code, metric] of CODES) {
      const one = convertOpenFormula(1, code, metric);
      expect(one.ok && one.value, unit).toBeCloseTo(metricOf(unit)!.factor, 12);
    }
  });
});

describe('a formula that could not be turned', () => {
  it('waits until somebody has looked at it, changed it, or gone back', () => {
    const { live, beds, rows } = gardenBook();
    const [row] = rows as [string];
    live.apply({ do: 'add column', sheet: beds, column: 'own1', title: 'Mine', before: null });
    live.set(beds, row, 'own1', '=SUMPRODUCT(Row_feet,Row_feet)');
    const before = live.toJSON();
    const code = () => live.problem(beds, row, 'own1')?.code;
    expect(formulasTurned(live, 'metric')).toMatchObject([
      {
        place: expect.stringContaining('“Mine” of Beds'),
        was: '=SUMPRODUCT(Row_feet,Row_feet)',
        becomes: null,
      },
    ]);
    go(live, 'metric');
    expect(code()).toBe('formula-of-other-measures');
    const read = parseBook(JSON.stringify(live.toJSON()));
    const again = read.ok ? openBook(read.book) : undefined;
    expect(again?.problem(beds, row, 'own1')?.code).toBe('formula-of-other-measures');
    again?.close();
    const [line] = formulasOfBook(live).flatMap(({ formulas }) => formulas);
    expect(line?.units?.code).toBe('formula-of-other-measures');
    go(live, 'US customary');
    expect(live.toJSON().sheets[beds]).toEqual(before.sheets[beds]);
    go(live, 'metric');
    live.apply({ do: 'mark cells', sheet: beds, cells: [{ row, column: 'own1' }], lookedAt: true });
    expect(code()).not.toBe('formula-of-other-measures');
    live.undo();
    expect(code()).toBe('formula-of-other-measures');
    live.set(beds, row, 'own1', '=SUMPRODUCT(Row_feet,Row_feet)/2');
    expect(code()).not.toBe('formula-of-other-measures');
    live.close();
  });

  it('waits as the formula of a column, too', () => {
    const { live, beds, rows } = gardenBook();
    const formula = '=SUMPRODUCT(Row_feet,Row_feet)';
    live.apply({ do: 'add column', sheet: beds, column: 'own1', title: 'Mine', before: null, formula });
    go(live, 'metric');
    const codes = () => rows.map((row) => live.problem(beds, row, 'own1')?.code);
    expect(codes()).toEqual(rows.map(() => 'formula-of-other-measures'));
    const cells = rows.map((row) => ({ row, column: 'own1' }));
    live.apply({ do: 'mark cells', sheet: beds, cells, lookedAt: true });
    expect(codes()).not.toContain('formula-of-other-measures');
    live.close();
  });
});
