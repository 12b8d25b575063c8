import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type CellValue, isCellError, openBook, parseBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { AS_OF, shown, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const set = (column: string, typed: string, row = 'n1') => {
  expect(live.set('snotes', row, column, typed).ok).toBe(true);
  return live.value('snotes', row, column);
};
const message = (value: CellValue) => (isCellError(value) ? value.message : '');

/** What the live book shows is what a book opened from its saved JSON shows. */
function expectSameWhenReopened() {
  const parsed = parseBook(JSON.stringify(live.toJSON()));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const again = openBook(parsed.book, { asOf: AS_OF });
  expect(shown(live)).toEqual(shown(again));
  again.close();
}

describe('a formula that cannot be worked out costs its own cell only', () => {
  it.each([
    '=REPT("x",1000000000)',
    '=REPT("x",200000)',
    '=SUBSTITUTE(REPT("a",32000),"a",REPT("b",32000))',
    `=${'1+'.repeat(9000)}1`,
    `=${'-'.repeat(15000)}1`,
    `=${'{'.repeat(3000)}`,
  ])('%s', (formula) => {
    const value = set('cb', formula);
    expect(isCellError(value)).toBe(true);
    expect(message(value)).toMatch(/Repeat or join less|Work out a part of it|cannot be read/);
    // Others go on working, and a formula that refers to it shows an error, not a wrong number.
    expect(set('cb', '=A1+A2', 'n3')).toBe(3);
    expect(isCellError(set('cb', '=B1+1', 'n2'))).toBe(true);
    expect(live.value('shelf', 'l1', 'left')).toBe(20);
    expectSameWhenReopened();
    live.set('snotes', 'n1', 'cb', '=5');
    expect(live.value('snotes', 'n2', 'cb')).toBe(6);
  });

  it('so long that the engine’s stack may just hold it: it is right, or says that it is too long', () => {
    const value = set('cb', `=${'1+'.repeat(1500)}1`);
    if (isCellError(value)) expect(message(value)).toMatch(/Work out a part of it/);
    else expect(value).toBe(1501);
    expect(set('cb', '=A1+A2', 'n3')).toBe(3);
  });

  it('text that doubles from cell to cell ends at a length', () => {
    live.set('snotes', 'n1', 'ca', '0123456789');
    const rows = Array.from({ length: 30 }, (_, i) => ({
      id: `w${i}`,
      cells: { ca: `=A${i + 3}&A${i + 3}` },
    }));
    live.apply({ do: 'insert rows', sheet: 'snotes', before: null, rows });
    expect(message(live.value('snotes', 'w29', 'ca'))).toContain('more than 100,000 characters');
  });

  it('a number too small to be shown is an error, not NaN', () => {
    expect(message(set('cb', '=1E-300'))).toContain('too small');
  });
});

describe('a formula that gives many values', () => {
  const many = [
    '=TRANSPOSE(A1:A3)',
    '=ARRAYFORMULA(A2:A3*2)',
    '={1,2;3,4}',
    '=FILTER(A1:A3,A1:A3>1)',
    '=SEQUENCE(2,2)',
  ];

  it.each(many)('%s says so in its own cell, and spreads nowhere', (formula) => {
    live.addColumn('snotes', 'C');
    const column = live.columns('snotes').at(-1)!.id;
    live.apply({ do: 'insert rows', sheet: 'snotes', before: null, rows: [{ id: 'n4' }, { id: 'n5' }] });
    expect(message(set(column, formula, 'n2'))).toContain('INDEX(…, 1)');
    expect(set(column, 'mine', 'n3')).toBe('mine');
    live.apply({ do: 'insert rows', sheet: 'snotes', before: 'n3', rows: [{ id: 'n6' }] });
    live.removeRows('snotes', ['n3']);
    live.undo();
    expect(live.value('snotes', 'n3', column)).toBe('mine');
    expectSameWhenReopened();
  });

  it.each(many)('%s beside planning columns leaves them alone', (formula) => {
    live.set('shelf', 'l1', 'place', formula);
    live.insertRows('draws', [{ date: '2026-01-10', food: 'peas', amount: 1 }], null);
    expect([live.value('shelf', 'l1', 'left'), live.value('shelf', 'l3', 'left')]).toEqual([20, 29]);
    expectSameWhenReopened();
  });

  it('can be made one value', () => {
    expect(set('cb', '=INDEX(TRANSPOSE(A1:A3),1,2)')).toBe(2);
    expect(set('cb', '=SUM(ARRAYFORMULA(A1:A3*2))')).toBe(12);
  });
});

describe('references', () => {
  it('to rows of another sheet that were not there when typed stay where they were typed', () => {
    live.set('snotes', 'n1', 'ca', '=Shelf!D9');
    live.set('snotes', 'n2', 'ca', '=SUM(Shelf!D1:D9)');
    const lots = [1, 2, 3, 4].map((count) => ({ food: 'beans', count }));
    live.insertRows('shelf', lots, 'l1');
    expectSameWhenReopened();
    live.insertRows('shelf', lots);
    live.removeRows('shelf', ['l2']);
    expectSameWhenReopened();
  });

  it('tell apart sheets whose ids differ by capitals', () => {
    live.apply({ do: 'add sheet', sheet: 'Snotes', title: 'Upper' });
    live.apply({ do: 'add sheet', sheet: 'SHELF', title: 'Other' });
    live.apply({ do: 'add column', sheet: 'Snotes', column: 'ca', before: null, title: 'A' });
    live.insertRows('Snotes', [{ ca: 77 }]);
    expect(set('ca', '=Upper!A1')).toBe(77);
    expect(set('ca', '=Notes!A2')).toBe(2);
    expectSameWhenReopened();
  });

  it.each(['TRUE', 'false', 'A1', "Ben's", 'Say "hi"', 'x!y', '#REF!', '=x', 'שלום', '__proto__', 'Σ 🫙'])(
    'as shown can be typed again on a sheet called %s',
    (title) => {
      live.apply({ do: 'rename sheet', sheet: 'snotes', title });
      live.set('shelf', 'l1', 'note', `='${title.replaceAll("'", "''")}'!A2`);
      const stored = live.toJSON().sheets.shelf!.rows.l1!.cells.note;
      expect(stored).toBe('=[snotes.ca@n2]');
      live.set('shelf', 'l1', 'note', live.typed('shelf', 'l1', 'note'));
      expect(live.toJSON().sheets.shelf!.rows.l1!.cells.note).toBe(stored);
    },
  );

  it.each([
    'R',
    'C',
    'rc',
    'A1',
    'TRUE',
    '½ cup',
    'İ',
    'عدد',
    '🫙',
    'SUM',
    '[x@y]',
    '__proto__',
    'constructor',
  ])('by name find a column called %s', (title) => {
    live.apply({ do: 'describe column', sheet: 'snotes', column: 'ca', as: { title } });
    expect(set('cb', `=${live.column('snotes', 'ca')!.name}*2`, 'n3')).toBe(6);
  });

  it('inside text are text', () => {
    expect(set('cb', '="_ref_0_"&[ca@n2]')).toBe('_ref_0_2');
    expect(set('cb', '="[ca@n2]"')).toBe('[ca@n2]');
  });
});
