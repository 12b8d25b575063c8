import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namedDay } from '../../components/grid/handsontable/named-day.js';
import { draftOf, lookOf, misfits, NEW_COLUMN } from '../../components/sheet/column-draft.js';
import { summaryInWords, summaryWords } from '../../components/sheet/looks/summary-words.js';
import { sectionsOf } from '../../components/sheet/reading-sections.js';
import { fixedNumber, shownCell } from '../../components/sheet/shown.js';
import { blankBook } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { parseDay } from '../../src/planning/parse-date.js';

const jars = () => {
  const live = openBook(blankBook());
  live.apply({
    do: 'add sheet',
    sheet: 'jars',
    title: 'Borrowed jars',
    columns: [
      { id: 'who', title: 'Who' },
      { id: 'kind', title: 'Kind', as: { type: 'choice', choices: ['neighbour', 'family'] } },
      { id: 'many', title: 'How many', as: { type: 'number', measure: 'quart jar', summary: 'sum' } },
      { id: 'cost', title: 'Cost', as: { type: 'number', decimals: 2, summary: 'mean' } },
    ],
    rows: [
      { id: 'r1', cells: { who: 'Alma', kind: 'neighbour', many: 12, cost: 1.5 } },
      { id: 'r2', cells: { who: 'Ben', kind: 'family', many: 1, cost: 2 } },
      { id: 'r3', cells: { who: 'Cora', kind: 'neighbour', many: 'few', cost: '' } },
    ],
  });
  return live;
};

describe('cells of own columns', () => {
  it('show the digits chosen, and leave the measure to the header', () => {
    const live = jars();
    const shown = (row: string, id: string) => shownCell(live, 'jars', row, live.column('jars', id)!, false);
    expect(shown('r1', 'cost').text).toBe('1.50');
    expect(shown('r1', 'many')).toMatchObject({ text: '12', unit: '' });
    expect(shown('r3', 'many').problem).toBeDefined();
  });

  it('never show a minus before nothing', () => {
    expect(fixedNumber(-0.001, 2)).toBe('0.00');
    expect(fixedNumber(-1234.5, 1)).toBe('−1,234.5');
  });
});

describe('what stands under a column', () => {
  it('says the figure with its unit, of how many cells, and what was left out', () => {
    const live = jars();
    const many = live.column('jars', 'many')!;
    const figure = live.summaryAt('jars', 'many')!;
    expect(summaryWords(figure, many)).toBe('13 quart jars');
    expect(summaryInWords(figure, many, true)).toBe(
      'How many: sum of the rows shown: 13 quart jars (of 2 cells; one was left out)',
    );
    expect(summaryWords(live.summaryAt('jars', 'cost')!, live.column('jars', 'cost')!)).toBe('1.75');
  });

  it('says why where there is none', () => {
    const live = openBook(blankBook());
    live.insertRows('shelf', [
      { food: 'Corn', way: 'canned', container: 'quart jar', count: 2, put_up_on: '2026-01-01' },
      { food: 'Corn', way: 'frozen', container: 'pint freezer bag', count: 2, put_up_on: '2026-01-01' },
    ]);
    live.apply({ do: 'describe column', sheet: 'shelf', column: 'left', as: { summary: 'sum' } });
    const words = summaryInWords(live.summaryAt('shelf', 'left')!, live.column('shelf', 'left')!, false);
    expect(words).toMatch(/quart jars and pint freezer bags/);
  });
});

describe('rows in groups, to read', () => {
  it('hold every row once, in folded groups none, and no more than are asked for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('a', 'A', 'b', ''), { maxLength: 20 }),
        fc.nat(25),
        fc.boolean(),
        (kinds, most, folds) => {
          const live = openBook(blankBook());
          live.apply({
            do: 'add sheet',
            sheet: 's',
            title: 'S',
            columns: [{ id: 'k', title: 'K' }],
            rows: kinds.map((k, i) => ({ id: `r${i}`, cells: { k } })),
          });
          live.apply({ do: 'group rows', sheet: 's', by: 'k' });
          const folded = new Set(folds ? ['a'] : []);
          const sections = sectionsOf(live, 's', live.rowIds('s'), most, folded);
          const rows = sections.flatMap((section) => section.rows);
          const open = kinds.filter((kind) => !(folds && kind.toLowerCase() === 'a')).length;
          expect(rows).toHaveLength(Math.min(most, open));
          expect(new Set(rows).size).toBe(rows.length);
        },
      ),
    );
  });
});

describe('the column dialog', () => {
  it('says how many entries do not fit what the column is to hold', () => {
    const live = jars();
    expect(misfits(live, 'jars', 'many', { ...NEW_COLUMN, type: 'number' })).toMatch(/^One entry/);
    expect(misfits(live, 'jars', 'who', { ...NEW_COLUMN, type: 'date' })).toMatch(/^3 entries/);
    expect(misfits(live, 'jars', 'kind', { ...NEW_COLUMN, type: 'choice', choices: 'Family' })).toMatch(
      /^2 /,
    );
    expect(misfits(live, 'jars', 'who', { ...NEW_COLUMN, type: 'text' })).toBe('');
  });

  it('keeps a column just as it is when nothing is changed in it', () => {
    const live = jars();
    const before = JSON.stringify(live.toJSON());
    for (const column of live.columns('jars'))
      live.apply({
        do: 'describe column',
        sheet: 'jars',
        column: column.id,
        as: lookOf(draftOf(column), true),
      });
    expect(JSON.stringify(live.toJSON())).toBe(before);
  });

  it('lets go of what does not belong to the type', () => {
    const look = lookOf(
      { ...NEW_COLUMN, type: 'text', measure: 'quart jar', decimals: '2', choices: 'a' },
      true,
    );
    expect(look).toMatchObject({ type: 'text', measure: null, decimals: null, choices: null });
  });
});

it('takes today, yesterday and tomorrow for the days that they are', () => {
  const day = parseDay('2026-03-01');
  const today = day.ok ? day.value : 0;
  expect(namedDay(' Today', today)).toBe('2026-03-01');
  expect(namedDay('yesterday', today)).toBe('2026-02-28');
  expect(namedDay('tomorrow', today)).toBe('2026-03-02');
  expect(namedDay('constructor', today)).toBe('constructor');
});
