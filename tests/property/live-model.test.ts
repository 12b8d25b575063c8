import { describe, expect, it } from 'vitest';
import { replay } from '../soak/happenings.js';
import { soakOperations } from '../soak/operations.js';
import type { Happening } from '../soak/table.js';
import { startingBook } from '../support/random-book.js';

/** A share of what `npm run soak` does; `CROFTSHEET_RUNS=1000` makes it longer. */
const OPERATIONS = 24 * Number(process.env.CROFTSHEET_RUNS ?? 12);
const SEED = Number(process.env.CROFTSHEET_SEED ?? Math.floor(Math.random() * 1e9));

const start = startingBook();
const SAVED = JSON.stringify(start.toJSON());
start.close();

describe('a book to which anything happens', () => {
  it(`keeps every entry and every planning column (CROFTSHEET_SEED=${SEED})`, () => {
    const { failures, operations, cells } = soakOperations({ operations: OPERATIONS, seed: SEED });
    console.log(`${operations} operations, ${cells} cells compared, seed ${SEED}`);
    expect(failures.join('\n')).toBe('');
    expect(operations).toBeGreaterThanOrEqual(OPERATIONS);
  }, 600_000);
});

/** Found by the soak, each as short as it could be made: what was wrong there, and the happenings. */
const FOUND: readonly (readonly [string, readonly Happening[]])[] = [
  [
    'a title, while the edit before it was still on its way from another tab',
    [
      { happens: 'open tab' },
      { happens: 'edit', tab: 0, edit: { edit: 'paste over everything', sheet: 0, typed: 0 } },
      { happens: 'edit', tab: 0, edit: { edit: 'rename sheet', sheet: 0, title: 'Left' } },
      { happens: 'reload', tab: 0 },
    ],
  ],
  [
    'a column of the kind about which something was said and taken back',
    [
      { happens: 'edit', tab: 0, edit: { edit: 'describe', sheet: 0, column: 0, as: { pinned: true } } },
      { happens: 'undo', tab: 0 },
    ],
  ],
  [
    'a figure of the table on a copy of its sheet, after its share became none',
    [
      { happens: 'edit', tab: 0, edit: { edit: 'copy sheet', sheet: 0, title: 'Copy' } },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 0, row: 0, column: 1, typed: 'tomato' } },
    ],
  ],
  [
    'what was allotted to a draw, where the version brought back had it as it still was',
    [
      {
        happens: 'edit',
        tab: 0,
        edit: { edit: 'draw', food: 'tomato', amount: 1, container: '', day: 1, purpose: '' },
      },
      { happens: 'take a copy' },
      // The lot that it came from.
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 2, row: 0, column: 9, typed: false } },
      { happens: 'bring back', tab: 0, sheet: null },
    ],
  ],
  [
    'the undo of a removed row, and of a blanked cell, where another tab removed the column since',
    [
      { happens: 'open tab' },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 11, row: 1, column: 0, typed: null } },
      { happens: 'edit', tab: 0, edit: { edit: 'remove', sheet: 11, row: 0, count: 1 } },
      { happens: 'deliver', tab: 1, which: [0, 0] },
      { happens: 'edit', tab: 1, edit: { edit: 'remove column', sheet: 11, column: 0 } },
      { happens: 'deliver', tab: 0, which: [0] },
      { happens: 'undo', tab: 0 },
      { happens: 'undo', tab: 0 },
      { happens: 'reload', tab: 0 },
    ],
  ],
  [
    'a width taken back of a column that another tab removed since',
    [
      { happens: 'open tab' },
      { happens: 'edit', tab: 0, edit: { edit: 'describe', sheet: 11, column: 0, as: { width: 90 } } },
      { happens: 'edit', tab: 0, edit: { edit: 'describe', sheet: 11, column: 0, as: { width: null } } },
      { happens: 'deliver', tab: 1, which: [0, 0] },
      { happens: 'edit', tab: 1, edit: { edit: 'remove column', sheet: 11, column: 0 } },
      { happens: 'deliver', tab: 0, which: [0] },
      { happens: 'undo', tab: 0 },
    ],
  ],
  [
    'a note written in a column that another tab removed meanwhile',
    [
      { happens: 'open tab' },
      { happens: 'edit', tab: 0, edit: { edit: 'remove column', sheet: 11, column: 0 } },
      { happens: 'edit', tab: 1, edit: { edit: 'mark', sheet: 11, row: 0, column: 0, note: 'Ask Ada' } },
      { happens: 'deliver', tab: 0, which: [0] },
      { happens: 'deliver', tab: 1, which: [0] },
      { happens: 'reload', tab: 0 },
    ],
  ],
  [
    'the only entry in a column that came back for it, taken back; and the only row with one, removed',
    [
      { happens: 'edit', tab: 0, edit: { edit: 'paste over everything', sheet: 11, typed: null } },
      { happens: 'open tab' },
      { happens: 'edit', tab: 1, edit: { edit: 'remove column', sheet: 11, column: 1 } },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 11, row: 0, column: 1, typed: false } },
      { happens: 'reload', tab: 1 },
      { happens: 'undo and redo', tab: 0 },
      { happens: 'deliver', tab: 1, which: [0, 0] },
      { happens: 'edit', tab: 1, edit: { edit: 'remove column', sheet: 11, column: 0 } },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 11, row: 0, column: 0, typed: 7 } },
      { happens: 'reload', tab: 1 },
      { happens: 'edit', tab: 0, edit: { edit: 'remove', sheet: 11, row: 0, count: 1 } },
      { happens: 'reload', tab: 1 },
    ],
  ],
  [
    'an entry of a version where figures are shown by now, brought back with its column',
    [
      { happens: 'take a copy' },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 11, row: 0, column: 0, typed: null } },
      {
        happens: 'edit',
        tab: 0,
        edit: { edit: 'take column', sheet: 0, kind: 0, column: 0, by: 1, over: 0 },
      },
      { happens: 'bring back', tab: 0, sheet: null },
    ],
  ],
  [
    'bringing back a sheet without a column that was filled since, taken back and done again',
    [
      { happens: 'take a copy' },
      {
        happens: 'edit',
        tab: 0,
        edit: { edit: 'add column', sheet: 11, before: 0, title: 'Mine', formula: null, as: {} },
      },
      { happens: 'edit', tab: 0, edit: { edit: 'type', sheet: 11, row: 0, column: 0, typed: 5 } },
      { happens: 'edit', tab: 0, edit: { edit: 'mark', sheet: 11, row: 1, column: 0, note: 'Ask Ada' } },
      { happens: 'bring back', tab: 0, sheet: 11 },
      { happens: 'undo and redo', tab: 0 },
    ],
  ],
];

describe('what once went wrong', () => {
  it.each(FOUND)('%s', (_what, happenings) => {
    expect(() => replay(SAVED, happenings)).not.toThrow();
  });
});
