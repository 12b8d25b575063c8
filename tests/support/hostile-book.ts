import { expect } from 'vitest';
import { openBook, parseBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { AS_OF, shown, startingBook } from './random-book.js';

const start = startingBook();
/** A small whole book, saved. */
export const SAVED = JSON.stringify(start.toJSON());
const SHOWN = shown(start);
start.close();

/** The content of a book, whatever the order in which its parts were set. */
export const contentOf = (live: LiveBook): unknown => JSON.parse(JSON.stringify(live.toJSON()));

const opened: LiveBook[] = [];

export function open(text: string): LiveBook {
  const parsed = parseBook(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const live = openBook(parsed.book, { asOf: AS_OF });
  opened.push(live);
  return live;
}

/** To be called after each test: lets the books go, and checks that nothing reached other objects. */
export function closeAll(): void {
  for (const live of opened.splice(0)) live.close();
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
}

/** Every cell, problem, working and list of choices can be asked for, and says something. */
export function expectWhole(live: LiveBook) {
  for (const { id: sheet } of live.sheets()) {
    for (const row of live.rowIds(sheet)) {
      for (const { id: column } of live.columns(sheet)) {
        const problem = live.problem(sheet, row, column);
        if (problem) expect(problem.message.length).toBeGreaterThan(5);
        expect(`${problem?.message} ${JSON.stringify(live.working(sheet, row, column))}`).not.toMatch(
          /NaN|Infinity/,
        );
        expect(typeof (live.unit(sheet, row, column) ?? '')).toBe('string');
        live.choices(sheet, row, column);
        live.typed(sheet, row, column);
      }
    }
  }
  for (const value of Object.values(shown(live))) {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  }
}

/** Cells that show something else than in the book untouched, by sheet and row. */
export const changedRows = (live: LiveBook): string[] => {
  const now = shown(live);
  const rows = new Set<string>();
  for (const key of new Set([...Object.keys(SHOWN), ...Object.keys(now)]))
    if (JSON.stringify(now[key]) !== JSON.stringify(SHOWN[key]))
      rows.add(key.split('/').slice(0, 2).join('/'));
  return [...rows].sort();
};

/** A saved book as somebody with a text editor sees it. */
export interface Loose {
  [part: string]: unknown;
  sheets: Record<
    string,
    { columns: Record<string, unknown>; rows: Record<string, LooseRow> } & Record<string, unknown>
  >;
  settings: Record<string, unknown>;
}
interface LooseRow {
  cells: Record<string, unknown>;
  [field: string]: unknown;
}

/** The saved book after a hand has been at it. */
export function edited(edit: (book: Loose) => void): string {
  const book = JSON.parse(SAVED) as Loose;
  edit(book);
  return JSON.stringify(book);
}
