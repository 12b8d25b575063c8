import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseBook, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import { foodKey } from '../../src/live/food-key.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { anyEdit } from '../soak/any-edit.js';
import { asCommand } from '../soak/as-command.js';
import type { Edit } from '../soak/edits.js';
import { AS_OF, shown, startingBook } from '../support/random-book.js';

const RUNS = Number(process.env.CROFTSHEET_RUNS ?? 12);

/** The book of the other tests, with a sheet that shows figures of foods, lots, dishes and plantings. */
function bookWithTaken(): LiveBook {
  const live = startingBook();
  const taken = (id: string, kind: 'foods' | 'shelf' | 'dishes' | 'beds', column: string, by = 'name') => ({
    id,
    title: id,
    as: { plan: { kind, column, by } },
  });
  const done = live.apply({
    do: 'add sheet',
    sheet: 'own',
    title: 'Own',
    columns: [
      { id: 'name', title: 'Name' },
      { id: 'lot', title: 'Lot' },
      taken('hand', 'foods', 'on_hand'),
      taken('weeks', 'foods', 'weeks_of_supply'),
      taken('left', 'shelf', 'left', 'lot'),
      taken('makes', 'dishes', 'makes'),
      taken('feet', 'beds', 'row_feet'),
      { id: 'twice', title: 'Twice', as: { formula: '=Hand*2' } },
    ],
    rows: [
      { id: 'o1', cells: { name: 'tomatoes', lot: 'l1' } },
      { id: 'o2', cells: { name: 'Peas', lot: 'peas' } },
      { id: 'o3', cells: { name: 'stew', lot: 'l2' } },
      { id: 'o4', cells: { name: '=A1' } },
      { id: 'o5', cells: { name: 'Tomatos' } },
    ],
  });
  if (!done.ok) throw new Error(done.problem.message);
  return live;
}

const NAMES: readonly Typed[] = [
  'tomato',
  'Peas',
  'peas, frozen',
  'canned tomatoes',
  'stew',
  'l3',
  'green pea',
  'nothing like it',
  '',
  '=A1',
  '=Foods!A1',
  '=IF(C1>10,"peas","tomatoes")',
  '=IF(C2>10,"peas","tomatoes")',
  '=IF(Hand>10,"peas","tomatoes")',
  '=1/0',
];

type Own =
  | { readonly own: 'name'; readonly row: number; readonly column: 'name' | 'lot'; readonly typed: Typed }
  | { readonly own: 'feed'; readonly formula: string }
  | { readonly own: 'take off' | 'untake' | 'rename foods' | 'new sheet' | 'goes' };

const FEEDING = ['=Own!C1', '=Own!C2+1', '=IF(Own!C1>15,1,30)', '=SUM(Own!C:C)', '=Own!H1', ''];

const own: fc.Arbitrary<Own> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      own: fc.constant('name' as const),
      row: fc.nat({ max: 6 }),
      column: fc.constantFrom('name' as const, 'lot' as const),
      typed: fc.constantFrom(...NAMES),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ own: fc.constant('feed' as const), formula: fc.constantFrom(...FEEDING) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      own: fc.constantFrom('take off', 'untake', 'rename foods', 'new sheet', 'goes' as const),
    }) as fc.Arbitrary<Own>,
  },
);

let made = 0;

function doOwn(live: LiveBook, doing: Own): void {
  const rows = live.rowIds('own');
  switch (doing.own) {
    case 'name':
      if (rows.length > 0) live.set('own', rows[doing.row % rows.length]!, doing.column, doing.typed);
      return;
    case 'feed': {
      const lot = live.rowIds('shelf')[0];
      if (lot) live.set('shelf', lot, 'count', doing.formula);
      return;
    }
    case 'take off':
      live.removeColumns('own', ['hand']);
      return;
    case 'untake':
      live.apply({ do: 'describe column', sheet: 'own', column: 'weeks', as: { plan: null } });
      return;
    case 'rename foods':
      live.apply({ do: 'rename sheet', sheet: 'foods', title: `Stores ${++made}` });
      return;
    case 'new sheet':
      live.apply({ do: 'add sheet', sheet: `n${++made}`, title: `N${made}` });
      return;
    case 'goes':
      live.removeColumns('own', ['name']);
  }
}

/** What is said at each taken cell, beside the value. */
function said(live: LiveBook): Record<string, unknown> {
  const all: Record<string, unknown> = {};
  for (const column of live.columns('own').filter(({ taken }) => taken !== undefined))
    for (const row of live.rowIds('own')) {
      const problem = live.problem('own', row, column.id);
      all[`${row}/${column.id}`] = [live.unit('own', row, column.id), problem?.code, problem?.message];
    }
  return all;
}

/** Whether each figure is the one that the sheet of its kind shows for the row that was named. */
function compareWithKinds(live: LiveBook): void {
  for (const column of live.columns('own')) {
    if (!column.taken) continue;
    for (const row of live.rowIds('own')) {
      const from = live.sourceOf('own', row, column.id);
      const value = live.value('own', row, column.id);
      if (!from) {
        expect(value).toBeNull();
        continue;
      }
      expect(from.column).toBe(column.taken.column);
      expect(value).toEqual(live.value(from.sheet, from.row, from.column));
      expect(live.unit('own', row, column.id)).toBe(live.unit(from.sheet, from.row, from.column));
      const words = live.working('own', row, column.id);
      expect(words).toEqual(live.working(from.sheet, from.row, from.column));
      if (column.taken.kind !== 'foods') continue;
      // The row is the one named.
      const food = foodKey(String(live.value(from.sheet, from.row, 'food')));
      expect(foodKey(String(live.value('own', row, 'name')))).toContain(food);
    }
  }
}

const steps = fc.array(fc.oneof({ weight: 3, arbitrary: anyEdit }, { weight: 3, arbitrary: own }), {
  minLength: 1,
  maxLength: 14,
});
function doIt(live: LiveBook, doing: Edit | Own): void {
  if ('own' in doing) {
    doOwn(live, doing);
    return;
  }
  const command = asCommand(live, doing, () => `x${++made}`, 30);
  if (command) live.apply(command);
}

describe('planning columns on an own sheet, after any sequence of edits', () => {
  it('show the figure of the row that is named, as the sheet of its kind does', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const live = bookWithTaken();
        for (const doing of all) {
          doIt(live, doing);
          compareWithKinds(live);
        }
        live.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('show the same in a book opened afresh from what was saved, in which nothing of them stands', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const live = bookWithTaken();
        for (const doing of all) doIt(live, doing);
        const saved = live.toJSON();
        for (const row of Object.values(saved.sheets.own?.rows ?? {}))
          for (const column of ['hand', 'left', 'makes', 'feet'])
            expect(row.cells).not.toHaveProperty(column);
        const parsed = parseBook(JSON.stringify(saved));
        if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
        const again = openBook(parsed.book, { asOf: AS_OF });
        expect(shown(live)).toEqual(shown(again));
        expect(said(live)).toEqual(said(again));
        live.close();
        again.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('come back when everything is undone', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const live = bookWithTaken();
        const [before, words] = [shown(live), said(live)];
        const label = live.undoLabel;
        let count = 0;
        live.on('change', ({ origin }) => {
          if (origin === 'local') count++;
        });
        for (const doing of all) doIt(live, doing);
        for (let i = 0; i < count; i++) live.undo();
        expect(live.undoLabel).toBe(label);
        expect(shown(live)).toEqual(before);
        expect(said(live)).toEqual(words);
        live.close();
      }),
      { numRuns: RUNS },
    );
  });
});
