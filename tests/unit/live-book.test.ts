import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BookChange, LiveBook } from '../../src/core.js';
import { blankBook, evaluate, openBook, parseBook } from '../../src/core.js';
import { AS_OF, shown, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const left = (lot: string) => live.value('shelf', lot, 'left');
const draw = (cells: Record<string, string | number>) =>
  live.insertRows('draws', [{ date: '2026-01-10', ...cells }]).rows[0]!;

describe('a draw', () => {
  it('takes the oldest first, in any measure, and undo brings it back', () => {
    draw({ food: 'tomatoes', amount: 5, container: 'quart' });
    // Nine pints are four and a half quarts; half a quart more comes from the newer lot.
    expect([left('l2'), left('l1')]).toEqual([0, 19.5]);
    live.undo();
    expect([left('l2'), left('l1')]).toEqual([9, 20]);
    live.redo();
    expect([left('l2'), left('l1')]).toEqual([0, 19.5]);
  });

  it('never changes what was put up', () => {
    draw({ food: 'tomatoes', amount: 5, container: 'quart' });
    expect(live.value('shelf', 'l1', 'count')).toBe(20);
  });

  it('goes on taking from the opened jar', () => {
    draw({ food: 'tomatoes', amount: 1, container: 'cup', lot: 'l1' });
    draw({ food: 'tomatoes', amount: 1, container: 'cup' });
    expect([left('l2'), left('l1')]).toEqual([9, 19.5]);
  });

  it('larger than the stock is kept, and the rest shows as not found', () => {
    const id = draw({ food: 'peas', amount: 34, container: 'pint freezer bag' });
    expect(left('l3')).toBe(0);
    expect(live.value('draws', id, 'not_found')).toBe(4);
  });

  it('stays with its lots when an older one is written in later', () => {
    const id = draw({ food: 'peas', amount: 2 });
    live.insertRows('shelf', [
      { food: 'peas', way: 'frozen', container: 'pint freezer bag', count: 5, put_up_on: '2024-07-01' },
    ]);
    expect(left('l3')).toBe(28);
    expect(live.toJSON().sheets.draws!.rows[id]!.allotted).toEqual({ l3: 2 });
  });

  it('named another lot comes from that', () => {
    const id = draw({ food: 'tomatoes', amount: 2, container: 'quart' });
    expect([left('l2'), left('l1')]).toEqual([5, 20]);
    live.set('draws', id, 'lot', 'l1');
    expect([left('l2'), left('l1')]).toEqual([9, 18]);
  });

  it('of a food kept in one way only need not say which', () => {
    draw({ food: 'Peas', amount: 3 });
    expect(left('l3')).toBe(27);
  });

  it('given away or spoiled lowers the stock and is not use', () => {
    for (const purpose of ['gift', 'spoiled'])
      draw({ food: 'tomatoes', amount: 1, container: 'quart', purpose, date: '2025-11-01' });
    expect(live.value('foods', 'f1', 'on_hand')).toBe(22.5);
    expect(live.value('foods', 'f1', 'use_per_week')).toBe(0);
  });

  it('is taken back by a correction', () => {
    const id = draw({ food: 'peas', amount: 10 });
    draw({ food: 'peas', amount: -4, corrects: id });
    expect(left('l3')).toBe(24);
  });
});

describe('bad entries are kept, say what is wrong, and cost nothing else', () => {
  it.each([
    ['put_up_on', '2024-13-45', 'date'],
    ['put_up_on', 'last summer', 'date'],
    ['count', -3, 'below 0'],
    ['count', 'some', 'number'],
    ['way', 'pickeled', 'pickeled'],
    ['container', 'quatr jar', 'quart jar'],
    ['food', 'tomatillo', 'Foods'],
    ['food', 'tomattoes', 'did you mean Tomatoes'],
  ])('%s: %s', (column, typed, words) => {
    const outcome = live.set('shelf', 'l1', column, typed);
    expect(outcome.ok).toBe(true);
    expect(live.value('shelf', 'l1', column)).toBe(typed);
    const problem = live.problem('shelf', 'l1', column);
    expect(`${problem?.message} ${problem?.mend}`).toContain(words);
    expect(left('l3')).toBe(30);
    expect(live.value('foods', 'f2', 'weeks_of_supply')).toBe(20);
    live.undo();
    expect(live.problem('shelf', 'l1', column)).toBeUndefined();
  });

  it.each([
    [{ date: '2026-02-30', food: 'peas', amount: 2 }, 'date'],
    [{ food: 'peas', amount: -2, container: 'jug' }, 'container'],
    [{ food: 'peas', amount: 'two' }, 'amount'],
  ])('a draw with something unread in it is left out until it is mended: %o', (cells, column) => {
    const id = draw(cells);
    expect(live.problem('draws', id, column)).toBeDefined();
    expect(left('l3')).toBe(30);
  });

  it('a draw dated after the day of the figures does not count yet, and says so', () => {
    const id = draw({ date: '2026-03-01', food: 'peas', amount: 2 });
    expect(left('l3')).toBe(30);
    expect(live.problem('draws', id, 'date')?.message).toContain('2026-02-15');
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-03-02' });
    expect(left('l3')).toBe(28);
    expect(live.problem('draws', id, 'date')).toBeUndefined();
  });

  it('dates with the year last go by the household’s measures', () => {
    live.set('shelf', 'l1', 'put_up_on', '9/5/2025');
    expect(live.value('shelf', 'l1', 'put_up_on')).toBe('2025-09-05');
    live.apply({ do: 'set setting', setting: 'measures', typed: 'metric' });
    live.set('shelf', 'l1', 'put_up_on', '9/5/2025');
    expect(live.value('shelf', 'l1', 'put_up_on')).toBe('2025-05-09');
  });

  it('a household setting that cannot be read counts as its default', () => {
    live.apply({ do: 'set setting', setting: 'as_of', typed: 'yesterday' });
    expect(live.settingProblem('as_of')?.message).toContain('yesterday');
    expect(left('l1')).toBe(20);
  });

  it('a second Foods row for the same food says so', () => {
    const { rows } = live.insertRows('foods', [{ food: 'tomato', way: 'canned' }]);
    expect(live.problem('foods', rows[0]!, 'food')?.message).toContain('already');
    expect(live.value('foods', 'f1', 'on_hand')).toBe(24.5);
  });
});

describe('planning columns', () => {
  it('refuse to be typed over, removed, or given a formula, and say why', () => {
    for (const outcome of [
      live.set('shelf', 'l1', 'left', 99),
      live.removeColumns('shelf', ['left']),
      live.apply({ do: 'describe column', sheet: 'shelf', column: 'left', as: { formula: '=1' } }),
    ]) {
      expect(outcome.ok).toBe(false);
      expect(!outcome.ok && outcome.problem.message).toContain('Left');
    }
    expect(left('l1')).toBe(20);
  });

  it('are left out of a paste that covers them, with a note', () => {
    const cells = [
      { row: 'l1', column: 'note', typed: 'seen' },
      { row: 'l1', column: 'left', typed: 1 },
    ];
    const outcome = live.apply({ do: 'set cells', sheet: 'shelf', cells });
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(['planning-column']);
    expect([live.value('shelf', 'l1', 'note'), left('l1')]).toEqual(['seen', 20]);
  });

  it('can be retitled, hidden and moved', () => {
    live.apply({
      do: 'describe column',
      sheet: 'shelf',
      column: 'left',
      as: { title: 'Still there', hidden: true },
    });
    live.moveColumns('shelf', ['left'], 'food');
    const [first] = live.columns('shelf');
    expect(first).toMatchObject({ id: 'left', title: 'Still there', hidden: true, role: 'planning' });
    expect(left('l1')).toBe(20);
  });

  it('have a working with the rule and the numbers', () => {
    const working = live.working('foods', 'f2', 'weeks_of_supply');
    expect(working?.value).toBe(20);
    expect(JSON.stringify(working)).toContain('1.5');
    expect(live.working('foods', 'f2', 'food')).toBeUndefined();
  });
});

describe('the household', () => {
  it('sets the day that figures are for, also for formulas', () => {
    live.set('snotes', 'n2', 'cb', '=MONTHS_KEPT("2025-09-01")');
    expect([live.value('shelf', 'l1', 'months_kept'), live.value('snotes', 'n2', 'cb')]).toEqual([5, 5]);
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-09-01' });
    expect([live.value('shelf', 'l1', 'months_kept'), live.value('snotes', 'n2', 'cb')]).toEqual([12, 12]);
  });

  it('knows each person’s part of the table', () => {
    expect(live.value('household', 'p2', 'part_of_table')).toBeCloseTo(100 / 3, 6);
  });
});

describe('a change is told', () => {
  it('with the cells that may show something else, and only those of the food concerned', () => {
    draw({ food: 'peas', amount: 1 });
    const heard: BookChange[] = [];
    live.on('change', (change) => heard.push(change));
    draw({ food: 'peas', amount: 1 });
    const cells = heard[0]!.cells.map(({ sheet, row, column }) => `${sheet}/${row}/${column}`);
    expect(cells).toContain('shelf/l3/left');
    expect(cells).toContain('foods/f2/weeks_of_supply');
    expect(cells.filter((cell) => cell.startsWith('shelf/l1'))).toEqual([]);
    expect(heard[0]!.label).toBe('new row');
  });

  it('from another copy is shown and is not this one’s to undo', () => {
    const was = live.undoLabel;
    live.applyRemote([{ path: ['sheets', 'shelf', 'rows', 'l1', 'cells', 'count'], to: 7, was: 20 }]);
    expect(left('l1')).toBe(7);
    expect(live.undoLabel).toBe(was);
  });
});

describe('without a page', () => {
  it('a formula gives a number, text, true or false, a date, or an error with a message', () => {
    expect(evaluate('=WEEKS_OF_SUPPLY(20,2)')).toBe(10);
    expect(evaluate('="a"&"b"')).toBe('ab');
    expect(evaluate('=1>2')).toBe(false);
    expect(evaluate('=START_ON("tomato","2026-06-01")')).toBe('2026-04-13');
    expect(evaluate('=NO_SUCH(1)')).toMatchObject({ error: '#NAME?' });
    expect(evaluate('=1+', {})).toMatchObject({ error: '#ERROR!' });
    expect(evaluate('=1', { asOf: 'soon' })).toMatchObject({ error: '#VALUE!' });
  });

  it('can use a book', () => {
    const parsed = parseBook(live.toJSON());
    expect(parsed.ok && evaluate('=SUM(Shelf!D1:D3)', { book: parsed.book, asOf: AS_OF })).toBe(59);
  });

  it('a new book is empty and whole', () => {
    const empty = openBook(blankBook('New'));
    expect(empty.sheets().map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['household', 'shelf', 'draws', 'foods']),
    );
    expect(shown(empty)).toEqual({});
    empty.close();
  });
});
