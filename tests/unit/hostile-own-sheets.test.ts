import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bringBack } from '../../src/live/doings/bring-back.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
  live.apply({ do: 'add sheet', sheet: 'own', title: 'Own', columns: [{ id: 'c', title: 'C' }] });
});
afterEach(() => live.close());

const entered = (...typed: readonly (string | number)[]): string[] => {
  const from = live.rowIds('own').length;
  const rows = typed.map((each, i) => ({ id: `o${from + i}`, cells: { c: each } }));
  const done = live.apply({ do: 'insert rows', sheet: 'own', before: null, rows });
  if (!done.ok) throw new Error(done.problem.message);
  return rows.map(({ id }) => id);
};
const shown = () => live.rowIds('own').map((row) => live.value('own', row, 'c'));
const setType = (type: 'any' | 'text' | 'number' | 'date') =>
  live.apply({ do: 'describe column', sheet: 'own', column: 'c', as: { type } });

describe('codes in digits', () => {
  const CODES = ['007', '12345678901234567890', '12e4', '-00417'];

  it('stay as they are typed where any entry will do', () => {
    entered(...CODES, '12', '1,200', '0.5');
    expect(shown()).toEqual([...CODES, 12, 1200, 0.5]);
  });

  it('lose nothing when a column is said to hold numbers, and then text again', () => {
    setType('text');
    entered(...CODES, '12');
    setType('number');
    expect(shown()).toEqual([...CODES, 12]);
    expect(live.problem('own', 'o1', 'c')?.code).toBe('too-many-digits');
    setType('text');
    expect(shown()).toEqual([...CODES, '12']);
  });
});

describe('per cent', () => {
  it('means the same whatever the column holds, and the number of them in a setting', () => {
    entered('12 %');
    setType('number');
    entered('12 %');
    expect(shown()).toEqual([0.12, 0.12]);
    live.apply({ do: 'set setting', setting: 'cushion', typed: '15 %' });
    expect(live.setting('cushion')).toBe(15);
  });
});

describe('what stands under a column', () => {
  it('is no number where the sum is more than one holds: it says so', () => {
    live.apply({ do: 'describe column', sheet: 'own', column: 'c', as: { summary: 'sum' } });
    entered(1.7e308, 1.7e308);
    expect(live.summaryAt('own', 'c')).toMatchObject({ value: null, problem: { code: 'sum-too-large' } });
    live.undo();
    entered(0.1, 0.2);
    expect(live.summaryAt('own', 'c')).toMatchObject({ value: 0.3, of: 2 });
  });
});

describe('a row that is brought back after its columns went', () => {
  it('says what of it was left out', () => {
    entered('beans', 'peas');
    live.apply({ do: 'add column', sheet: 'own', column: 'd', before: null, title: 'D' });
    live.set('own', 'o1', 'd', 'in cellar');
    const before = live.toJSON();
    live.removeColumns('own', ['d']);
    live.removeRows('own', ['o0', 'o1']);
    const back = (row: string) => {
      const found = bringBack(live, before, { part: 'row', sheet: 'own', row }, 'spring');
      if (!found.ok) throw new Error(found.problem.message);
      const done = live.apply(found.value.command);
      return done.ok ? done.notes.map(({ message }) => message) : [done.problem.message];
    };
    expect(back('o1')).toEqual([
      'One entry of a row stood in columns that this sheet does not have now; it was left out.',
    ]);
    expect(back('o0')).toEqual([]);
    expect(shown()).toEqual(['beans', 'peas']);
  });
});
