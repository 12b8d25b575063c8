import { describe, expect, it } from 'vitest';
import { blankBook } from '../../src/book/index.js';
import { amountTyped, drawOf, linesNamed, takeLines } from '../../src/live/doings/take-from-shelf.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

function bench(): LiveBook {
  const live = openBook(blankBook());
  const rows = (
    kind: 'foods' | 'shelf' | 'draws',
    cells: readonly Record<string, string | number>[],
  ): void => {
    const done = live.insertRows(live.sheetOfKind(kind)!, cells);
    expect(done.ok).toBe(true);
  };
  const lot = { container: 'quart jar', put_up_on: '2025-09-01' };
  rows('foods', [
    { food: 'Tomatoes', way: 'canned', counted_in: 'quart jar' },
    { food: 'Tomatoes', way: 'frozen', counted_in: 'quart freezer bag' },
    { food: 'Plums', way: 'canned', counted_in: 'quart jar' },
    { food: 'Quinces', way: 'canned', counted_in: 'quart jar' },
  ]);
  rows('shelf', [
    { food: 'Tomatoes', way: 'canned', count: 12, ...lot },
    { food: 'Tomatoes', way: 'frozen', count: 3, ...lot, container: 'quart freezer bag' },
    { food: 'Plums', way: 'canned', count: 7, ...lot },
    { food: 'Quinces', way: 'canned', count: 1, ...lot },
  ]);
  rows('draws', [
    { date: '2025-10-01', food: 'plums', way: 'canned', amount: 1 },
    { date: '2025-10-02', food: 'plums', way: 'canned', amount: 1 },
    { date: '2025-10-03', food: 'quince', way: 'canned', amount: 1 },
  ]);
  return live;
}

const named = (live: LiveBook, text: string): string[] =>
  linesNamed(takeLines(live), text).map(({ food, way }) => `${food}, ${way}`);

describe('what can be taken from the shelf', () => {
  it('is what is left, what is taken most often first', () => {
    const lines = takeLines(bench());
    expect(lines.map(({ food, way, left }) => [food, way, left])).toEqual([
      ['Plums', 'canned', 5],
      ['Tomatoes', 'canned', 12],
      ['Tomatoes', 'frozen', 3],
    ]);
  });

  it('is what stands on the Shelf too, where Foods does not list it', () => {
    const live = bench();
    const pears = { food: 'Pears', way: 'canned', container: 'pint jar', put_up_on: '2025-09-20' };
    live.insertRows(live.sheetOfKind('shelf')!, [
      { ...pears, count: 4 },
      { ...pears, count: 2 },
    ]);
    const [line] = linesNamed(takeLines(live), 'pears');
    expect(line).toMatchObject({ food: 'Pears', way: 'canned', counted: 'pint jar', left: 6 });
    live.insertRows(live.sheetOfKind('draws')!, [
      drawOf({ line: line!, amount: 1, measure: null }, '2025-11-02', 'gift'),
    ]);
    expect(linesNamed(takeLines(live), 'pears')[0]!.left).toBe(5);
  });

  it('is found by its name in one or many, by a part of it, and by the way it is kept', () => {
    const live = bench();
    expect(named(live, 'plum')).toEqual(['Plums, canned']);
    expect(named(live, 'tom')).toEqual(['Tomatoes, canned', 'Tomatoes, frozen']);
    expect(named(live, 'tomatoes froz')).toEqual(['Tomatoes, frozen']);
    expect(named(live, '')).toHaveLength(3);
    expect(named(live, 'pears')).toEqual([]);
  });

  it('leaves the shelf by as much as is written', () => {
    const live = bench();
    const line = linesNamed(takeLines(live), 'tomatoes canned')[0]!;
    const row = drawOf({ line, amount: 1.5, measure: null }, '2025-11-02', 'dish');
    expect(live.insertRows(live.sheetOfKind('draws')!, [row]).ok).toBe(true);
    expect(linesNamed(takeLines(live), 'tomatoes canned')[0]!.left).toBe(10.5);
    live.undo();
    expect(linesNamed(takeLines(live), 'tomatoes canned')[0]!.left).toBe(12);
  });

  it.each(['', 'two', '0', '-1'])('refuses %j as how much, and says how to write it', (typed) => {
    const read = amountTyped(typed);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem.mend).toContain('digits');
  });

  it('reads halves and fractions', () => {
    expect(['2', '0.5', '1 1/2'].map((typed) => amountTyped(typed))).toMatchObject([
      { value: 2 },
      { value: 0.5 },
      { value: 1.5 },
    ]);
  });
});
