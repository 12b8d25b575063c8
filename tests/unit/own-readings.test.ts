import jstat from 'jstat';
import { expect, it } from 'vitest';
import { blankBook, type ColumnLook, type Marking, readEntry, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import type { BookChange } from '../../src/live/live-book.js';

const AS_OF = '2026-02-15';

/** A sheet with one column of values, seen through `as`. */
function columnOf(values: readonly Typed[], as: ColumnLook = {}) {
  const live = openBook(blankBook('Test', 'btest'), { asOf: AS_OF });
  live.apply({
    do: 'add sheet',
    sheet: 's',
    title: 'Mine',
    columns: [{ id: 'c', title: 'C', as }],
    rows: values.map((typed, i) => ({ id: `r${i}`, cells: { c: typed } })),
  });
  const colours = () => live.rowIds('s').map((row) => live.colourOf('s', row, 'c') ?? '');
  const problems = () => live.rowIds('s').map((row) => live.problem('s', row, 'c')?.code ?? '');
  return { live, colours, problems, summary: (rows?: readonly string[]) => live.summaryAt('s', 'c', rows) };
}

const rose = (when: Marking['when'], value?: Marking['value'], to?: Marking['to']): ColumnLook => ({
  marks: [{ when, colour: 'rose', ...(value !== undefined && { value }), ...(to !== undefined && { to }) }],
});
const marked = (values: readonly Typed[], as: ColumnLook): Typed[] => {
  const { colours } = columnOf(values, as);
  return values.filter((_, i) => colours()[i] === 'rose');
};

it('marks numbers with numbers, days as days, and words without case', () => {
  expect(marked([3, 12, '12 jars', '2026-05-01', true, null], rose('above', 5))).toEqual([12]);
  expect(marked([3, -1, 0], rose('below', 1))).toEqual([-1, 0]);
  expect(marked([1, 2, 3, 4, 5], rose('between', 4, 2))).toEqual([2, 3, 4]);
  expect(marked(['2026-05-01', '2026-05-10', 7], rose('between', '2026-05-01', '2026-05-05'))).toEqual([
    '2026-05-01',
  ]);
  expect(marked(['2026-05-01', '2026-5-2', 'may'], rose('after', '2026-05-01'))).toEqual(['2026-5-2']);
  expect(marked(['Plum', ' plum ', 'plums', 3], rose('is', 'PLUM'))).toEqual(['Plum', ' plum ']);
  expect(marked(['Plum', 'pear', null, 3], rose('is not', 'plum'))).toEqual(['pear', 3]);
  expect(marked(['Sour plum', 'pear', 3], rose('contains', 'PLUM'))).toEqual(['Sour plum']);
  expect(marked(['a', null, '  ', 0], rose('blank'))).toEqual([null, '  ']);
  expect(marked(['a', null, 0, '=1/0'], rose('filled'))).toEqual(['a', 0, '=1/0']);
});

it('marks days from the day of the figures on, so many ahead', () => {
  const days = ['2026-02-14', '2026-02-15', '2026-02-22', '2026-02-23', 'soon'];
  expect(marked(days, rose('within days', 7))).toEqual(['2026-02-15', '2026-02-22']);
  const { live, colours } = columnOf(days, rose('within days', 7));
  const seen: BookChange[] = [];
  live.on('change', (change) => seen.push(change));
  live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-16' });
  expect(colours()).toEqual(['', '', 'rose', 'rose', '']);
  // Views repaint what an event names.
  expect(seen[0]?.cells.map(({ row }) => row)).toEqual(expect.arrayContaining(['r1', 'r3']));
});

it('marks what stands there twice, and says which cells look another way when one of two is changed', () => {
  const { live, colours } = columnOf(['Plum', 'plum ', 'pear', 2, 2, null, null], rose('double'));
  expect(colours()).toEqual(['rose', 'rose', '', 'rose', 'rose', '', '']);
  const seen: BookChange[] = [];
  live.on('change', (change) => seen.push(change));
  live.set('s', 'r1', 'c', 'pear');
  expect(colours()).toEqual(['', 'rose', 'rose', 'rose', 'rose', '', '']);
  expect(new Set(seen[0]?.cells.map(({ row }) => row))).toEqual(new Set(['r0', 'r1', 'r2']));
  live.removeRows('s', ['r2']);
  expect(colours()).toEqual(['', '', 'rose', 'rose', '', '']);
});

it('lets the colour of a cell go before rules, and the first rule before the others', () => {
  const { live, colours } = columnOf([1, 9, 5], {
    marks: [
      { when: 'above', value: 8, colour: 'amber' },
      { when: 'above', value: 4, colour: 'sky' },
    ],
  });
  expect(colours()).toEqual(['', 'amber', 'sky']);
  live.apply({ do: 'mark cells', sheet: 's', cells: [{ row: 'r1', column: 'c' }], colour: 'leaf' });
  expect(colours()).toEqual(['', 'leaf', 'sky']);
  live.apply({ do: 'mark cells', sheet: 's', cells: [{ row: 'r1', column: 'c' }], colour: null });
  expect(colours()).toEqual(['', 'amber', 'sky']);
});

it('marks planning figures and what formulas give', () => {
  const { live } = columnOf(['=5*2', '=1+1'], rose('above', 4));
  expect([live.colourOf('s', 'r0', 'c'), live.colourOf('s', 'r1', 'c')]).toEqual(['rose', undefined]);
  live.insertRows('shelf', [
    { food: 'peas', way: 'frozen', container: 'pint freezer bag', count: 30, put_up_on: '2025-07-01' },
  ]);
  live.apply({ do: 'describe column', sheet: 'shelf', column: 'left', as: rose('above', 20) });
  expect(live.colourOf('shelf', live.rowIds('shelf')[0]!, 'left')).toBe('rose');
});

it('adds as on paper, like a general library, and leaves out what is none', () => {
  const { live, summary } = columnOf([0.1, 0.2, 0.3, 'many', '=1/0', null], {
    type: 'number',
    summary: 'sum',
  });
  expect(summary()).toMatchObject({ value: 0.6, of: 3, leftOut: 2 });
  const as = (which: NonNullable<ColumnLook['summary']>) => {
    live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { summary: which } });
    return summary()?.value;
  };
  expect(as('mean')).toBe(0.2);
  expect(as('count')).toBe(3);
  expect([as('least'), as('most')]).toEqual([0.1, 0.3]);
  expect(summary(['r0', 'r1'])?.value).toBe(0.2);
  const numbers = Array.from({ length: 400 }, (_, i) => ((i * 7919) % 1013) / 8 - 40);
  const many = columnOf(numbers, { type: 'number', summary: 'sum' });
  expect(many.summary()?.value).toBe(jstat.jStat.sum(numbers));
  many.live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { summary: 'mean' } });
  expect(many.summary()?.value).toBeCloseTo(jstat.jStat.mean(numbers), 12);
  expect(columnOf([1e21, 1, -1e21, 1e-7], { type: 'number', summary: 'sum' }).summary()?.value).toBe(
    1.0000001,
  );
});

it('finds the first and last day, counts ticks that are set, and says nothing of nothing', () => {
  const days = columnOf(['2026-05-04', '2026-4-9', 'soon'], { type: 'date', summary: 'least' });
  expect(days.summary()).toMatchObject({ value: '2026-04-09', of: 2, leftOut: 1 });
  expect(columnOf(['yes', 'no', 'x', 'maybe'], { type: 'tick', summary: 'count' }).summary()).toMatchObject({
    value: 2,
    leftOut: 1,
  });
  expect(columnOf([], { type: 'number', summary: 'sum' }).summary()).toMatchObject({ value: null, of: 0 });
  expect(columnOf([1]).summary()).toBeUndefined();
});

it('does not add quarts and pounds, nor jars of two sizes', () => {
  const { live } = columnOf([]);
  live.insertRows('shelf', [
    { food: 'peas', way: 'frozen', container: 'quart freezer bag', count: 3, put_up_on: '2025-07-01' },
    { food: 'flour', way: 'dry goods', container: 'pound', count: 5, put_up_on: '2025-07-01' },
  ]);
  const sum = (column: string, rows?: readonly string[]) => {
    live.apply({ do: 'describe column', sheet: 'shelf', column, as: { summary: 'sum' } });
    return live.summaryAt('shelf', column, rows);
  };
  expect(sum('holds')).toMatchObject({ value: null, problem: { code: 'units-differ' } });
  expect(sum('holds')?.problem?.message).toMatch(/quarts and pounds/);
  expect(sum('count')?.problem?.code).toBe('units-differ');
  expect(sum('count', live.rowIds('shelf').slice(1))).toMatchObject({ value: 5, unit: 'pound' });
  expect(sum('months_kept')).toMatchObject({ value: 14, unit: 'months' });
});

it('puts rows in groups by what they show, blank ones last', () => {
  const { live } = columnOf(['pear', 10, 'Plum', null, 2, 'plum', '']);
  expect(live.groupsOf('s')).toBeUndefined();
  live.apply({ do: 'group rows', sheet: 's', by: 'c' });
  expect(live.groupsOf('s')?.map(({ label, rows, count }) => [label, rows, count])).toEqual([
    ['2', ['r4'], 1],
    ['10', ['r1'], 1],
    ['pear', ['r0'], 1],
    ['Plum', ['r2', 'r5'], 2],
    ['(blank)', ['r3', 'r6'], 2],
  ]);
  expect(live.groupsOf('s', ['r5', 'r0'])?.map(({ label }) => label)).toEqual(['pear', 'plum']);
  live.removeColumns('s', ['c']);
  expect([live.groupOf('s'), live.groupsOf('s')]).toEqual([undefined, undefined]);
});

it('says what an entry of a typed column is not, and reads entries anew when the type is set', () => {
  const { live, problems } = columnOf(['12', "'12", 'a dozen', '2026-05-04', 'yes', '=1&"x"'], {
    type: 'text',
  });
  const type = (as: ColumnLook) => live.apply({ do: 'describe column', sheet: 's', column: 'c', as });
  const values = () => live.rowIds('s').map((row) => live.value('s', row, 'c'));
  const before = JSON.stringify(live.toJSON());
  type({ type: 'number' });
  expect(values().slice(0, 5)).toEqual([12, 12, 'a dozen', '2026-05-04', 'yes']);
  expect(problems()).toEqual(['', '', ...Array(4).fill('not-a-number')]);
  live.undo();
  expect(JSON.stringify(live.toJSON())).toBe(before);
  expect(problems()).toEqual(Array(6).fill(''));
  type({ type: 'date' });
  expect(problems()).toEqual(['not-a-date', 'not-a-date', 'not-a-date', '', 'not-a-date', 'not-a-date']);
  type({ type: 'tick' });
  expect(values()[4]).toBe(true);
  expect(problems()[4]).toBe('');
  type({ type: 'choice', choices: ['A dozen', '12'] });
  expect(problems().slice(0, 4)).toEqual(['', '', '', 'not-a-choice']);
  expect(live.choices('s', 'r0', 'c')?.map(({ value }) => value)).toEqual(['A dozen', '12']);
  type({ type: 'text' });
  expect(live.choices('s', 'r0', 'c')).toBeUndefined();
  expect(values().slice(0, 4)).toEqual(['12', '12', 'a dozen', '2026-05-04']);
});

it('says the unit of an own column, and shows its notes', () => {
  const { live } = columnOf([3], { type: 'number', measure: 'quart jars', summary: 'sum' });
  expect(live.unit('s', 'r0', 'c')).toBe('quart jar');
  expect(live.summaryAt('s', 'c')).toMatchObject({ value: 3, unit: 'quart jar' });
  live.apply({ do: 'mark cells', sheet: 's', cells: [{ row: 'r0', column: 'c' }], note: 'lent' });
  expect(live.noteOf('s', 'r0', 'c')).toBe('lent');
});

it('lets go of a column’s formula in formulas that read it too', () => {
  const { live } = columnOf([null]);
  live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { formula: '=5' } });
  const { column } = live.addColumn('s', 'Twice', { formula: '=A1*2' });
  expect(live.value('s', 'r0', column)).toBe(10);
  live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { formula: null } });
  expect([live.value('s', 'r0', 'c'), live.value('s', 'r0', column)]).toEqual([null, 0]);
});

it('a day that can only be one is read, whichever number is usually the month', () => {
  expect(readEntry('15.2.2026', 'date', 'month first')).toBe('2026-02-15');
  expect(readEntry('2/15/2026', 'date', 'day first')).toBe('2026-02-15');
  expect(readEntry('5/4/2026', 'date', 'month first')).toBe('2026-05-04');
  expect(readEntry('5/4/2026', 'date', 'day first')).toBe('2026-04-05');
  expect(readEntry('31.2.2026', 'date', 'month first')).toBe('31.2.2026');
});
