import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { blankBook, type LiveBook, openBook } from '../../src/core.js';
import { postBatchCommand } from '../../src/live/doings/post-batch.js';
import { roomAhead } from '../../src/live/doings/room-ahead.js';
import { groundToShare } from '../../src/live/doings/share-ground.js';
import { yearToTurn } from '../../src/live/doings/turn-year.js';
import type { Result } from '../../src/problem.js';
import { AS_OF, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
  live.set('foods', 'f1', 'own_use', 1);
});
afterEach(() => live.close());

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const bed = (column: string, row = 'b1') => live.value('beds', row, column) as number;

describe('from the shelf to the ground', () => {
  it('one draw changes the plants wanted, and undo brings them back', () => {
    const before = bed('plants_wanted');
    live.set('foods', 'f1', 'next_supply', '2026-03-15');
    const stocked = bed('plants_wanted');
    live.insertRows('draws', [{ date: '2026-02-10', food: 'tomatoes', amount: 15, container: 'quart' }]);
    expect(bed('plants_wanted')).toBeGreaterThan(stocked);
    live.undo();
    expect(bed('plants_wanted')).toBe(stocked);
    live.undo();
    expect(bed('plants_wanted')).toBe(before);
  });

  it('pounds, plants and what is expected of them follow from one another', () => {
    const put = live.value('foods', 'f1', 'to_put_up') as number;
    expect(live.value('foods', 'f1', 'pounds_to_grow')).toBe(put * 3);
    expect(bed('pounds_wanted')).toBe(put * 3);
    expect(bed('plants_wanted')).toBe(Math.ceil(bed('pounds_wanted') / bed('yield')));
    expect(bed('expected_pounds')).toBeCloseTo(20 * bed('yield'), 6);
    expect(bed('short_or_over')).toBeCloseTo(bed('expected_pounds') - bed('pounds_wanted'), 6);
  });

  it('a food takes its season from the beds where none is written', () => {
    live.apply({
      do: 'set cells',
      sheet: 'foods',
      cells: [
        { row: 'f1', column: 'fresh_from', typed: null },
        { row: 'f1', column: 'fresh_to', typed: null },
      ],
    });
    expect(live.value('foods', 'f1', 'next_harvest')).toBe(live.value('beds', 'b1', 'harvest_from'));
    live.apply({ do: 'set setting', setting: 'last_frost', typed: '06-10' });
    expect(live.value('foods', 'f1', 'next_harvest')).toBe(live.value('beds', 'b1', 'harvest_from'));
  });

  it('an own figure of Facts goes before what was learned, and that before the published one', () => {
    expect(bed('yield')).toBeCloseTo((1 / 3) * 10 + (2 / 3) * 8, 9);
    live.insertRows('facts', [{ figure: 'tomato, yield', own_value: 6 }]);
    expect(bed('yield')).toBe(6);
    expect(live.value('beds', 'b1', 'yield_from')).toContain('own');
  });

  it('a leaner season never wants fewer plants', () => {
    const usual = bed('plants_wanted');
    live.apply({ do: 'set setting', setting: 'basis', typed: 'lean' });
    expect(bed('plants_wanted')).toBeGreaterThan(usual);
  });

  it('frost dates in the southern half of the year give a season that spans the new year', () => {
    live.apply({ do: 'set setting', setting: 'last_frost', typed: '10-05' });
    live.apply({ do: 'set setting', setting: 'first_frost', typed: '04-20' });
    expect(String(live.value('beds', 'b1', 'set_out_on'))).toMatch(/^20\d\d-10-/);
    expect(String(live.value('beds', 'b1', 'harvest_from'))).toMatch(/^20\d\d-(12|01)-/);
  });

  it('every figure of the garden has a working', () => {
    for (const sheet of ['beds', 'harvest', 'batches', 'facts']) {
      const [row] = live.rowIds(sheet);
      for (const { id, role } of live.columns(sheet)) {
        if (role !== 'planning') continue;
        const working = live.working(sheet, row!, id);
        expect(working, `${sheet}.${id}`).toBeDefined();
        expect(working!.value ?? null).toEqual(live.value(sheet, row!, id));
      }
    }
  });
});

describe('a batch', () => {
  it('is posted to the shelf once, filled less failed, and undo takes it back', () => {
    live.set('batches', 'q1', 'filled', 14);
    live.set('batches', 'q1', 'failed', 2);
    live.set('batches', 'q1', 'date', '2026-02-01');
    const lots = live.rowIds('shelf').length;
    const outcome = live.apply(value(postBatchCommand(live, 'q1')));
    expect(outcome.ok).toBe(true);
    const lot = live.rowIds('shelf').at(-1)!;
    expect(
      ['food', 'container', 'count', 'put_up_on'].map((column) => live.value('shelf', lot, column)),
    ).toEqual(['tomatoes', 'quart jar', 12, '2026-02-01']);
    const again = postBatchCommand(live, 'q1');
    expect(!again.ok && again.problem.code).toBe('already-posted');
    live.undo();
    expect(live.rowIds('shelf')).toHaveLength(lots);
    expect(postBatchCommand(live, 'q1').ok).toBe(true);
  });

  it('with nothing filled is refused', () => {
    const refused = postBatchCommand(live, 'q1');
    expect(!refused.ok && refused.problem.mend).toContain('filled');
  });
});

describe('turning the year', () => {
  it('keeps the season’s totals, empties Harvest, and is one step of undo', () => {
    const before = JSON.stringify(live.toJSON());
    const { turned, command } = value(yearToTurn(live));
    expect(turned.season).toBe(2025);
    live.apply(command);
    expect(live.rowIds('harvest')).toEqual([]);
    const record = live.rowIds('facts').at(-1)!;
    expect(['season', 'pounds', 'plants'].map((column) => live.value('facts', record, column))).toEqual([
      2025, 30, 20,
    ]);
    // Two seasons: Z = 2/4; own mean = (120 + 30) ÷ (12 + 20).
    expect(bed('yield')).toBeCloseTo(0.5 * (150 / 32) + 0.5 * 8, 9);
    live.undo();
    expect(JSON.parse(JSON.stringify(live.toJSON()))).toEqual(JSON.parse(before));
  });

  it('is refused while nothing came in', () => {
    live.removeRows('harvest', ['h1']);
    live.removeRows('week', ['m1', 'm2']);
    const refused = yearToTurn(live);
    expect(!refused.ok && refused.problem.code).toBe('nothing-to-close');
  });
});

describe('ground that is too small', () => {
  it('is shared so that it fits, and planned in one step', async () => {
    live.apply({ do: 'set setting', setting: 'ground_row_feet', typed: 20 });
    const { plan, command } = value(await groundToShare(live));
    expect(plan.fits).toBe(false);
    expect(plan.used).toBeLessThanOrEqual(20);
    live.apply(command);
    expect(bed('plants')).toBeLessThan(bed('plants_wanted'));
    expect(bed('row_feet')).toBeLessThanOrEqual(20);
  });

  it('asks for the ground where the household does not say', async () => {
    const refused = await groundToShare(live);
    expect(!refused.ok && refused.problem.mend).toContain('Household');
  });
});

describe('room', () => {
  it('is looked ahead for a year, week by week', () => {
    live.apply({ do: 'set setting', setting: 'shelf_room', typed: 30 });
    const room = roomAhead(live)!;
    expect(room.weeks.length).toBeGreaterThanOrEqual(52);
    expect(room.now.shelf).toBeCloseTo(24.5, 6);
    expect(room.shelfFull).not.toBeNull();
  });
});

describe('a household without a single draw', () => {
  it('gets a published amount to begin with, marked as a suggestion', () => {
    const fresh = openBook(blankBook('New'), { asOf: AS_OF });
    fresh.insertRows('household', [{ name: 'Ada' }, { name: 'Ben' }]);
    const { rows } = fresh.insertRows('foods', [
      { food: 'Tomatoes', way: 'canned', counted_in: 'quart', crops: 'tomato' },
    ]);
    expect(fresh.value('foods', rows[0]!, 'use_per_week')).toBeGreaterThan(0);
    expect(fresh.problem('foods', rows[0]!, 'use_per_week')?.message).toContain('published suggestion');
    fresh.insertRows('draws', [{ date: '2026-02-01', food: 'Tomatoes', way: 'canned', amount: 1 }]);
    expect(fresh.value('foods', rows[0]!, 'use_per_week')).toBeNull();
    fresh.close();
  });
});
