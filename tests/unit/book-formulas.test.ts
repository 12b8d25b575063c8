import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isCellError, type LiveBook } from '../../src/core.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
const NOTES = 'snotes';

beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const write = (row: string, column: string, typed: string | number) => live.set(NOTES, row, column, typed);
const value = (row: string, column: string) => live.value(NOTES, row, column);
const typed = (row: string, column: string) => live.typed(NOTES, row, column);
const message = (row: string, column: string): string => {
  const shown = value(row, column);
  return isCellError(shown) ? shown.message : `no error but ${shown}`;
};

describe('references stay with what they refer to', () => {
  it('when rows are inserted above', () => {
    live.insertRows(NOTES, [{ ca: 100 }], 'n1');
    expect(typed('n1', 'cb')).toBe('=SUM(A2:A4)');
    expect(value('n1', 'cb')).toBe(6);
  });

  it('when a row inside a range is removed, and one at its end', () => {
    live.removeRows(NOTES, ['n2']);
    expect([typed('n1', 'cb'), value('n1', 'cb')]).toEqual(['=SUM(A1:A2)', 4]);
    live.removeRows(NOTES, ['n3']);
    expect([typed('n1', 'cb'), value('n1', 'cb')]).toEqual(['=SUM(A1:A1)', 1]);
    live.undo();
    live.undo();
    expect([typed('n1', 'cb'), value('n1', 'cb')]).toEqual(['=SUM(A1:A3)', 6]);
  });

  it('when columns are added, moved and removed', () => {
    const { column } = live.addColumn(NOTES, 'New', { before: 'ca' });
    expect(typed('n1', 'cb')).toBe('=SUM(B1:B3)');
    live.moveColumns(NOTES, ['ca'], column);
    expect([typed('n1', 'cb'), value('n1', 'cb')]).toEqual(['=SUM(A1:A3)', 6]);
    live.removeColumns(NOTES, [column]);
    expect([typed('n1', 'cb'), value('n1', 'cb')]).toEqual(['=SUM(A1:A3)', 6]);
  });

  it('in other sheets, and when the sheet is called otherwise', () => {
    write('n3', 'cb', '=Shelf!D2+SUM(Shelf!D1:D3)');
    expect(value('n3', 'cb')).toBe(9 + 59);
    live.apply({ do: 'rename sheet', sheet: 'shelf', title: 'What we have' });
    expect(typed('n3', 'cb')).toBe("='What we have'!D2+SUM('What we have'!D1:D3)");
    live.insertRows('shelf', [{}], 'l1');
    expect(typed('n3', 'cb')).toBe("='What we have'!D3+SUM('What we have'!D2:D4)");
    expect(value('n3', 'cb')).toBe(9 + 59);
  });

  it('and say so when it is gone', () => {
    write('n2', 'cb', '=A3*2');
    live.removeRows(NOTES, ['n3']);
    expect(typed('n2', 'cb')).toBe('=#REF!*2');
    expect(message('n2', 'cb')).toContain('not there any more');
  });
});

describe('a column called by its name', () => {
  it('means the cell of the same row, or the whole column where a range belongs', () => {
    write('n1', 'cb', '=A*10');
    write('n2', 'cb', '=SUM(A)');
    write('n3', 'cb', '=ROUND(A/2,0)+SUM(A*1)');
    expect([value('n1', 'cb'), value('n2', 'cb'), value('n3', 'cb')]).toEqual([10, 6, 2 + 3]);
  });

  it('follows a new title', () => {
    write('n1', 'cb', '=A*10');
    live.apply({ do: 'describe column', sheet: NOTES, column: 'ca', as: { title: 'Jars to bring' } });
    expect(typed('n1', 'cb')).toBe('=Jars_to_bring*10');
    expect(value('n1', 'cb')).toBe(10);
  });

  it('can be a planning column, whose figures follow the plan', () => {
    const { column } = live.addColumn('shelf', 'Months', { formula: '=ROUND(Weeks_of_supply/4.345,1)' });
    live.insertRows('draws', [{ date: '2026-01-04', food: 'peas', amount: 5 }]);
    const weeks = live.value('shelf', 'l3', 'weeks_of_supply') as number;
    expect(weeks).toBeCloseTo(25 / 1.5, 6);
    expect(live.value('shelf', 'l3', column)).toBeCloseTo(weeks / 4.345, 1);
  });

  it('fills every row of the column, new rows too, unless a cell says otherwise', () => {
    const { column } = live.addColumn(NOTES, 'Twice', { formula: '=A*2' });
    const { rows } = live.insertRows(NOTES, [{ ca: 21 }]);
    expect(value(rows[0]!, column)).toBe(42);
    live.set(NOTES, 'n1', column, 'none');
    expect(value('n1', column)).toBe('none');
    live.set(NOTES, 'n1', column, null);
    expect(value('n1', column)).toBe(2);
  });
});

describe('a formula that cannot be worked out says why, and the others go on', () => {
  it.each([
    ['=JARS_PER_BUSHEL("tomatos","quart")', 'tomato'],
    ['=WEKS_OF_SUPPLY(1,2)', 'did you mean WEEKS_OF_SUPPLY'],
    ['=A1+nonsense', 'nonsense'],
    ['=1/0', 'Division by zero'],
    ['=SUM(A1', 'cannot be read'],
    ['=B2', 'depends on itself'],
    ['=SEQUENCE(40000,18000)', 'more cells than a sheet can hold'],
    ['=WEEKS_OF_SUPPLY("many",2)', 'takes a number'],
  ])('%s', (formula, words) => {
    write('n2', 'cb', formula);
    expect(message('n2', 'cb')).toContain(words);
    expect(value('n1', 'cb')).toBe(6);
    expect(live.value('shelf', 'l1', 'left')).toBe(20);
    write('n2', 'cb', '=A2*3');
    expect(value('n2', 'cb')).toBe(6);
  });

  it('two hundred brackets are refused, and the cell keeps what it had', () => {
    const outcome = write('n1', 'cb', `=${'('.repeat(200)}1${')'.repeat(200)}`);
    expect(outcome.ok).toBe(false);
    expect(!outcome.ok && outcome.problem.message).toContain('brackets');
    expect(value('n1', 'cb')).toBe(6);
  });

  it('a formula in a kept cell that its own plan feeds says that it depends on itself', () => {
    live.set('shelf', 'l1', 'count', '=Left+1');
    expect(live.problem('shelf', 'l1', 'count')?.message).toContain('depends on');
    expect(live.value('shelf', 'l3', 'left')).toBe(30);
    live.set('shelf', 'l1', 'count', '=10*2');
    expect(live.value('shelf', 'l1', 'left')).toBe(20);
  });

  it('a formula in a kept cell may hang on the plan of another food', () => {
    live.set('shelf', 'l1', 'count', '=G3+5');
    expect(live.value('shelf', 'l1', 'left')).toBe(35);
    live.insertRows('draws', [{ date: '2026-01-04', food: 'peas', amount: 4 }]);
    expect(live.value('shelf', 'l1', 'left')).toBe(31);
  });
});

describe('what is typed', () => {
  it.each([
    ['12', 12],
    ['1,200', 1200],
    ['.5', 0.5],
    ['2026-5-4', '2026-05-04'],
    ['true', true],
    ["'=SUM(1)", '=SUM(1)'],
    ['007 jars', '007 jars'],
    ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>'],
    [' =1+1', 2],
  ])('%s in a column of one’s own', (text, wanted) => {
    write('n1', 'ca', text);
    expect(value('n1', 'ca')).toBe(wanted);
  });

  it('accepts semicolons between arguments and small letters', () => {
    write('n2', 'cb', '=sum(a1;a2)');
    expect([typed('n2', 'cb'), value('n2', 'cb')]).toEqual(['=SUM(A1,A2)', 3]);
  });

  it('takes a name in brackets for the column of that name', () => {
    const name = live.columns(NOTES).find(({ id }) => id === 'ca')!.name;
    write('n2', 'cb', `=[${name}]*2+LEN("[${name}]")-LEN("[${name}]")`);
    expect(value('n2', 'cb')).toBe(2 * Number(value('n2', 'ca')));
    expect(typed('n2', 'cb')).toContain(`=${name}*2`);
    write('n2', 'cb', '=[nowhere]*2');
    expect(message('n2', 'cb')).not.toMatch(/no error/);
  });

  it('text that looks like a number stays text for formulas only when marked', () => {
    write('n2', 'ca', "'5");
    write('n2', 'cb', '=ISTEXT(A2)');
    expect(value('n2', 'cb')).toBe(true);
  });
});
