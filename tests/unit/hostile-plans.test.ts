import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LiveBook } from '../../src/live/live-book.js';
import { closeAll, open, SAVED } from '../support/hostile-book.js';
import { shown } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = open(SAVED);
});
afterEach(closeAll);

/** What the live book shows is what a book opened from its saved JSON shows. */
const expectSameWhenReopened = () => expect(shown(live)).toEqual(shown(open(JSON.stringify(live.toJSON()))));

describe('numbers at the edge', () => {
  const edge = [5e-324, 1e-300, 1e-9, 1e9, 1e308, -1e308, 0];

  // Amounts that are next to nothing once took more memory than there was.
  it.each([
    'dishes/amount',
    'dishes/serves',
    'week/shares',
    'shelf/count',
    'foods/own_use',
    'household/share',
  ])('in %s end, and show no NaN', (place) => {
    const [sheet, column] = place.split('/') as [string, string];
    for (const number of edge) {
      live.set(sheet, live.rowIds(sheet)[0]!, column, number);
      for (const [at, value] of Object.entries(shown(live))) {
        if (typeof value === 'number') expect(Number.isFinite(value), at).toBe(true);
        if (typeof value === 'string') expect(value).not.toMatch(/NaN|Infinity|undefined/);
      }
      live.undo();
    }
    expect(live.value('shelf', 'l1', 'left')).toBe(20);
  });
});

describe('planning follows', () => {
  it('when a Foods row goes while a formula on Facts reads the plan', () => {
    live.set('facts', 'k1', 'figure', '=Shelf!G2+1');
    live.removeRows('foods', ['f1']);
    expect(live.value('beds', 'b1', 'plants_wanted')).toBeNull();
    expectSameWhenReopened();
  });

  it('when the second of two Foods rows is moved above the first', () => {
    const { rows } = live.insertRows('foods', [
      { food: 'tomato', way: 'canned', counted_in: 'pint', own_use: 5 },
    ]);
    live.moveRows('foods', rows, 'f1');
    expect(live.problem('foods', rows[0]!, 'food')).toBeUndefined();
    expect(live.problem('foods', 'f1', 'food')?.message).toContain('already');
    expectSameWhenReopened();
  });

  it('when the table changes while there is no food line at all: meals need what those at it eat', () => {
    const live = open(SAVED);
    for (const sheet of ['shelf', 'foods', 'batches']) live.removeRows(sheet, live.rowIds(sheet));
    live.set('household', 'p1', 'share', 0);
    // A stew for two takes two cups; half a share takes half a cup.
    expect(live.value('week', 'm1', 'needs')).toContain('½ cup of tomatoes');
    expect(shown(live)).toEqual(shown(open(JSON.stringify(live.toJSON()))));
  });

  it('when both Foods rows are pasted over with one word: the second shows nothing of what it was', () => {
    const live = open(SAVED);
    const cells = live
      .rowIds('foods')
      .flatMap((row) => live.columns('foods').map(({ id }) => ({ row, column: id, typed: 'canned' })));
    live.apply({ do: 'set cells', sheet: 'foods', cells });
    expect(live.value('foods', 'f2', 'on_hand')).toBeNull();
    expect(shown(live)).toEqual(shown(open(JSON.stringify(live.toJSON()))));
  });

  it('when rows that others are named in the order of are moved', () => {
    for (const { id: sheet } of live.sheets()) {
      const rows = live.rowIds(sheet);
      if (rows.length < 2) continue;
      live.moveRows(sheet, [rows.at(-1)!], rows[0]!);
      expectSameWhenReopened();
    }
  });
});

describe('text as long as a cell holds', () => {
  const texts = [
    'x'.repeat(20_000),
    `a${' '.repeat(19_000)}!`,
    '1 '.repeat(9_900),
    'tomato 1;'.repeat(2_200),
    '1'.repeat(20_000),
  ];

  it.each([
    'shelf/food',
    'shelf/container',
    'foods/food',
    'foods/crops',
    'beds/crop',
    'batches/food',
    'harvest/unit',
  ])('in %s costs no more than that row, and messages stay short', (place) => {
    const [sheet, column] = place.split('/') as [string, string];
    const row = live.rowIds(sheet)[0]!;
    for (const text of texts) {
      live.set(sheet, row, column, text);
      for (const { id } of live.columns(sheet)) {
        const problem = live.problem(sheet, row, id);
        expect((problem?.message ?? '').length + (problem?.mend ?? '').length).toBeLessThan(1300);
      }
      expect(live.value('shelf', 'l3', 'left')).toBe(30);
      live.undo();
    }
  });
});
