import { afterEach, describe, expect, it, vi } from 'vitest';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { type BookChange, openBook } from '../../src/live/live-book.js';
import { PlanBook } from '../../src/live/plan-book.js';
import { aBook } from './storage-support.js';

afterEach(() => {
  vi.restoreAllMocks();
});

const opened = () => {
  const live = openBook(aBook(), { today: () => 20_000 });
  const heard: BookChange[] = [];
  live.on('change', (change) => heard.push(change));
  return { live, heard };
};
const cell = (row: string, column: string) => ['sheets', 'shelf', 'rows', row, 'cells', column];

describe('undo beside another copy', () => {
  it('leaves a cell that the other copy has changed since, takes back the rest, and says so', () => {
    const { live, heard } = opened();
    live.apply({
      do: 'set cells',
      sheet: 'shelf',
      cells: [
        { row: 'r1', column: 'count', typed: 30 },
        { row: 'r2', column: 'count', typed: 20 },
      ],
    });
    live.applyRemote([{ path: cell('r1', 'count'), to: 28, was: 30 }]);
    expect(live.undo()).toBe(true);
    expect(live.value('shelf', 'r1', 'count')).toBe(28);
    expect(live.value('shelf', 'r2', 'count')).toBe(12);
    const note = heard.at(-1)?.notes?.[0];
    expect(note?.message).toMatch(/another copy/);
    expect(note?.where).toEqual({ sheet: 'shelf', row: 'r1', column: 'count' });
    expect(live.redo()).toBe(true);
    expect(live.value('shelf', 'r1', 'count')).toBe(28);
    expect(live.value('shelf', 'r2', 'count')).toBe(20);
  });

  it('does not remove a new row in which the other copy has written', () => {
    const { live, heard } = opened();
    const { rows } = live.insertRows('shelf', [{ food: 'beans', count: 4 }]);
    live.applyRemote([{ path: cell(rows[0]!, 'place'), to: 'cellar', was: undefined }]);
    live.undo();
    expect(live.value('shelf', rows[0]!, 'place')).toBe('cellar');
    expect(heard.at(-1)?.notes).toHaveLength(1);
  });

  it('says nothing when both copies did the same', () => {
    const { live, heard } = opened();
    live.set('shelf', 'r1', 'count', 30);
    live.applyRemote([{ path: cell('r1', 'count'), to: 24, was: 30 }]);
    live.undo();
    expect(live.value('shelf', 'r1', 'count')).toBe(24);
    expect(heard.at(-1)?.notes).toBeUndefined();
  });
});

describe('a planner that breaks off', () => {
  const breakOff = () => {
    const { replan } = PlanBook.prototype;
    let left = 1;
    vi.spyOn(PlanBook.prototype, 'replan').mockImplementation(function (this: PlanBook, touched) {
      // After the work is half done, so that what it remembers is no longer true.
      const changed = replan.call(this, touched);
      if (left-- > 0) throw new TypeError('no such lot');
      return changed;
    });
  };

  it('takes the command back, with history and figures as before, and refuses it in words', () => {
    const { live, heard } = opened();
    live.apply({
      do: 'insert rows',
      sheet: 'foods',
      before: null,
      rows: [{ id: 'f1', cells: { food: 'tomatoes', way: 'canned', use_per_week: 2 } }],
    });
    live.apply({
      do: 'set cells',
      sheet: 'shelf',
      cells: ['r1', 'r2'].flatMap((row) => [
        { row, column: 'way', typed: 'canned' },
        { row, column: 'container', typed: 'quart jar' },
      ]),
    });
    const [before, label] = [JSON.stringify(live.toJSON()), live.undoLabel];
    const weeks = live.value('foods', 'f1', 'weeks_of_supply');
    expect(weeks).not.toBeNull();
    heard.length = 0;
    breakOff();
    const outcome = live.apply({
      do: 'all',
      of: [
        { do: 'set cells', sheet: 'shelf', cells: [{ row: 'r1', column: 'count', typed: 6 }] },
        { do: 'remove rows', sheet: 'shelf', rows: ['r2'] },
      ],
    });
    expect(outcome.ok).toBe(false);
    expect(!outcome.ok && outcome.problem.message).toMatch(/taken back.*no such lot/);
    expect(JSON.stringify(live.toJSON())).toBe(before);
    expect(live.undoLabel).toBe(label);
    expect(live.value('foods', 'f1', 'weeks_of_supply')).toBe(weeks);
    expect(heard).toEqual([]);
    // And goes on working.
    expect(live.set('shelf', 'r1', 'count', 6).ok).toBe(true);
    expect(live.value('foods', 'f1', 'weeks_of_supply')).not.toBe(weeks);
    const anew = openBook(live.toJSON(), { today: () => 20_000 });
    expect(live.value('foods', 'f1', 'weeks_of_supply')).toBe(anew.value('foods', 'f1', 'weeks_of_supply'));
  });

  it('leaves formulas as they were too', () => {
    const live = openBook(aBook(), {
      today: () => 20_000,
      engine: new HyperFormulaEngine({ asOf: 20_000, basis: 'usual' }),
    });
    const { column } = live.addColumn('shelf', 'Twice', {
      formula: `=${live.column('shelf', 'count')!.name}*2`,
    });
    breakOff();
    expect(live.removeRows('shelf', ['r1']).ok).toBe(false);
    expect(live.value('shelf', 'r1', column)).toBe(48);
    live.set('shelf', 'r1', 'count', 5);
    expect(live.value('shelf', 'r1', column)).toBe(10);
  });

  it('keeps another copy’s change all the same', () => {
    const { live, heard } = opened();
    breakOff();
    live.applyRemote([{ path: cell('r1', 'count'), to: 3, was: 24 }]);
    expect(live.value('shelf', 'r1', 'count')).toBe(3);
    expect(heard.at(-1)?.changes).toHaveLength(1);
  });
});
