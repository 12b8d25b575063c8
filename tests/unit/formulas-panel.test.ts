import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LiveBook } from '../../src/core.js';
import { formulasOfBook } from '../../src/live/doings/formulas-of-book.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
const NOTES = 'snotes';

beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const listed = (sheet = NOTES) => formulasOfBook(live).find(({ id }) => id === sheet)!;
const words = (places: readonly { words: string }[]) => places.map((place) => place.words);

describe('the formulas of a book, listed', () => {
  it('are grouped by sheet, a whole column as one line with the rows it fills', () => {
    live.set('shelf', 'l2', 'cown', 5);
    const [line, ...more] = listed('shelf').formulas;
    expect(more).toEqual([]);
    expect(line).toMatchObject({ whole: true, shown: '=Left*2', rows: ['l1', 'l3'], value: 40 });
    expect(line!.place.words).toBe('“Twice”');
    expect(words(line!.uses)).toEqual(['“Left”']);
  });

  it('are one line where cells one under another hold the same, and two where they do not', () => {
    live.apply({
      do: 'set cells',
      sheet: NOTES,
      cells: ['=A1*2', '=A2*2', '=A1*2'].map((typed, i) => ({ row: `n${i + 1}`, column: 'cb', typed })),
    });
    const lines = listed().formulas;
    expect(lines.map(({ shown, rows }) => [shown, rows])).toEqual([
      ['=A1*2', ['n1', 'n2']],
      ['=A1*2', ['n3']],
    ]);
    expect(words(lines.map(({ place }) => place))).toEqual(['“B”, rows 1 to 2', '“B”, row 3']);
  });

  it('say what they use and what uses them, and which feed the plan', () => {
    live.addColumn(NOTES, 'Worth', { formula: '=SUM(A)+B' });
    live.set('shelf', 'l1', 'count', '=SUM(Notes!Worth)');
    const worth = listed().formulas.find(({ whole }) => whole)!;
    expect(words(worth.uses)).toEqual(['“A”', '“B”']);
    expect(words(worth.usedBy)).toEqual(['“Put up” of Shelf, row 1']);
    expect(worth.feedsPlan).toBe(false);
    const count = listed('shelf').formulas.find(({ column }) => column === 'count')!;
    expect(count.feedsPlan).toBe(true);
    expect(words(count.uses)).toEqual(['“Worth” of Notes']);
    const first = listed().formulas.find(({ rows }) => rows[0] === 'n1')!;
    expect(words(first.uses)).toEqual(['“A”, rows 1 to 3']);
    expect(words(first.usedBy)).toEqual(['“Worth”']);
  });

  it('show the ring of what depends on itself', () => {
    live.set(NOTES, 'n1', 'cb', '=B2+1');
    live.set(NOTES, 'n2', 'cb', '=A3');
    live.set(NOTES, 'n3', 'ca', '=B1');
    live.addColumn(NOTES, 'After', { formula: '=B*2' });
    const of = (column: string) => listed().formulas.find((line) => line.column === column)!;
    expect(words(of('cb').errors[0]!.ring)).toEqual(['“B”, row 1', '“B”, row 2', '“A”, row 3', '“B”, row 1']);
    // What only hangs on a ring shows the ring.
    const after = listed().formulas.find(({ whole }) => whole)!;
    expect(words(after.errors[0]!.ring)).toContain('“A”, row 3');
  });

  it('show by which planning column a ring closes', () => {
    live.set('shelf', 'l1', 'count', '=Left+1');
    const count = listed('shelf').formulas.find(({ column }) => column === 'count')!;
    expect(words(count.errors[0]!.ring)).toEqual(['“Put up”, row 1', '“Left”', '“Put up”, row 1']);
  });

  it('say where an error comes from', () => {
    live.set(NOTES, 'n1', 'ca', '=1/0');
    live.set(NOTES, 'n2', 'cb', '=A1+1');
    live.addColumn(NOTES, 'Last', { formula: '=B2' });
    const of = (column: string, row: string) =>
      listed().formulas.find((line) => line.column === column && line.rows[0] === row)!;
    expect(of('ca', 'n1').errors[0]!.from).toBeNull();
    expect(of('cb', 'n2').errors[0]!.from?.words).toBe('“A”, row 1');
    expect(listed().formulas.find(({ whole }) => whole)!.errors[0]!.from?.words).toBe('“A”, row 1');
  });

  it('list entries that cannot be read, together where the same is wrong, and no planning columns', () => {
    live.set('shelf', 'l1', 'put_up_on', 'last fall');
    live.set('shelf', 'l2', 'put_up_on', 'last fall');
    live.set('shelf', 'l3', 'count', 'many');
    const { entries } = listed('shelf');
    expect(entries.map(({ place, rows, typed }) => [place.words, rows.length, typed])).toEqual([
      ['“Put up”', 1, 'many'],
      ['“Put up on”', 2, 'last fall'],
    ]);
    expect(entries[0]!.problem.mend).not.toBe('');
    const planning = new Set(
      live
        .columns('shelf')
        .filter(({ role }) => role === 'planning')
        .map(({ id }) => id),
    );
    expect(entries.some(({ column }) => planning.has(column))).toBe(false);
  });
});
