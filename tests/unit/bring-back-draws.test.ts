import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/core.js';
import { bringBack } from '../../src/live/doings/bring-back.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { AS_OF, startingBook } from '../support/random-book.js';

const allottedTo = (live: LiveBook, row: string) => live.toJSON().sheets.draws!.rows[row]!.allotted;

/** One quart of tomatoes: two of the pints put up first. */
const drawn = (): LiveBook => {
  const live = startingBook();
  live.apply({
    do: 'insert rows',
    sheet: 'draws',
    before: null,
    rows: [{ id: 'd1', cells: { date: '2026-01-01', food: 'tomato', way: 'canned', amount: 1 } }],
  });
  expect(allottedTo(live, 'd1')).toEqual({ l2: 2 });
  return live;
};

const back = (
  live: LiveBook,
  version: ReturnType<LiveBook['toJSON']>,
  what: Parameters<typeof bringBack>[2],
) => {
  const found = bringBack(live, version, what, 'before');
  if (!found.ok) throw new Error(found.problem.message);
  expect(live.apply(found.value.command)).toMatchObject({ ok: true, notes: [] });
};

describe('bringing back what was drawn', () => {
  it.each([
    { part: 'book' },
    { part: 'sheet', sheet: 'draws' },
    { part: 'row', sheet: 'draws', row: 'd1' },
  ] as const)('$part: the draw has the lots that it had, though older jars stand there now', (what) => {
    const live = drawn();
    const version = live.toJSON();
    // The same lots as before, now by name.
    live.set('draws', 'd1', 'lot', 'l2');
    expect(allottedTo(live, 'd1')).toEqual({ l2: 2 });
    live.apply({
      do: 'insert rows',
      sheet: 'shelf',
      before: null,
      rows: [
        {
          id: 'l0',
          cells: { food: 'tomato', way: 'canned', container: 'pint', count: 9, put_up_on: '2023-09-01' },
        },
      ],
    });
    back(live, version, what);
    expect(live.typed('draws', 'd1', 'lot')).toBeNull();
    expect(allottedTo(live, 'd1')).toEqual({ l2: 2 });
    live.undo();
    expect(allottedTo(live, 'd1')).toEqual({ l2: 2 });
    expect(live.value('draws', 'd1', 'lot')).toBe('l2');
  });

  it('one cell: the draw is allotted anew, as when it is typed, and that is stored', () => {
    const live = drawn();
    const version = live.toJSON();
    live.set('draws', 'd1', 'lot', 'l1');
    expect(allottedTo(live, 'd1')).toEqual({ l1: 1 });
    back(live, version, { part: 'cell', sheet: 'draws', row: 'd1', column: 'lot' });
    expect(allottedTo(live, 'd1')).toEqual({ l2: 2 });
  });
});

describe('the undo of a draw that another copy has changed since', () => {
  it('allots it anew, as it stands now, and stores that', () => {
    const live = drawn();
    live.apply({
      do: 'set cells',
      sheet: 'draws',
      cells: [
        { row: 'd1', column: 'food', typed: 'peas' },
        { row: 'd1', column: 'way', typed: 'frozen' },
      ],
    });
    expect(allottedTo(live, 'd1')).toEqual({ l3: 1 });
    const other = openBook(live.toJSON(), { asOf: AS_OF });
    const four = other.set('draws', 'd1', 'amount', 4);
    if (!four.ok) throw new Error(four.problem.message);
    expect(allottedTo(other, 'd1')).toEqual({ l3: 4 });
    live.applyRemote(four.changes);
    live.undo();
    expect([live.value('draws', 'd1', 'food'), live.value('draws', 'd1', 'amount')]).toEqual(['tomato', 4]);
    // Eight pints are four quarts.
    expect(allottedTo(live, 'd1')).toEqual({ l2: 8 });
    live.redo();
    expect(allottedTo(live, 'd1')).toEqual({ l3: 4 });
  });
});
