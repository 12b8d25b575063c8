import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { KINDS } from '../../src/book/index.js';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { n } from '../../src/planning/working/closing.js';
import { wrongIn } from '../support/read-steps.js';

let live: LiveBook;
beforeAll(() => {
  const found = parseBook(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  live = openBook(found.book);
});
afterAll(() => live.close());

const PLANNED = Object.values(KINDS).flatMap(({ kind, columns }) =>
  columns.filter(({ role }) => role === 'planning').map(({ id }) => [kind, id] as const),
);

/** The workings of a column, row by row. */
function read(kind: string, column: string) {
  const sheet = live.sheets().find((each) => each.kind === kind)!.id;
  return live.rowIds(sheet).map((row) => ({
    row,
    sheet,
    value: live.value(sheet, row, column),
    working: live.working(sheet, row, column),
  }));
}

const known = new Map<string, ReturnType<typeof read>>();

/** No test edits the book, so what one has read serves the others. */
function workingsOf(kind: string, column: string) {
  const key = `${kind}.${column}`;
  const found = known.get(key) ?? read(kind, column);
  known.set(key, found);
  return found;
}

describe.each(PLANNED)('%s.%s of the demo book', (kind, column) => {
  it('has a working for every row, that ends in the figure shown', () => {
    const all = workingsOf(kind, column);
    expect(all.length).toBeGreaterThan(0);
    for (const { row, value, working } of all) {
      expect(working, row).toBeDefined();
      if (!working) continue;
      expect(working.value, row).toBe(value);
      expect(working.rule.length, row).toBeGreaterThan(10);
      expect(working.changes?.length, row).toBeGreaterThan(0);
      if (value === null) {
        expect(working.missing?.length, `${row} is blank and says why`).toBeGreaterThan(10);
        continue;
      }
      const last = working.steps.at(-1)?.text ?? '';
      expect(last.slice(last.lastIndexOf('=') + 1), row).toContain(
        typeof value === 'number' ? n(value) : String(value),
      );
    }
  });

  it('has steps whose arithmetic is right', () => {
    const wrong = workingsOf(kind, column).flatMap(({ row, working }) =>
      (working?.steps ?? []).flatMap(({ text }) => {
        const found = wrongIn(text);
        return found === null ? [] : [`${row}: ${found}`];
      }),
    );
    expect(wrong.slice(0, 3)).toEqual([]);
  });

  it('names no cell but one that holds the very number', () => {
    for (const { row, working } of workingsOf(kind, column)) {
      for (const { from, value, name } of working?.inputs ?? []) {
        if (!from) continue;
        const there = live.value(from.sheet, from.row, from.column);
        if (typeof value === 'number') expect(there, `${row} ${name}`).toBeCloseTo(value, 6);
        else expect(String(value).split(' to ')[0], `${row} ${name}`).toBe(there);
      }
    }
  });
});

describe('where the numbers of a working come from', () => {
  it('is a cell that one can go to, for most of what was entered or worked out', () => {
    let [known, all] = [0, 0];
    for (const [kind, column] of PLANNED)
      for (const { working } of workingsOf(kind, column).slice(0, 20))
        for (const { from, origin, source } of working?.inputs ?? []) {
          if (origin !== 'entered' && origin !== 'computed') continue;
          all += 1;
          if (from || source) known += 1;
        }
    expect(known / all).toBeGreaterThan(0.6);
  });

  it('says which settings of the household count', () => {
    const [first] = workingsOf('shelf', 'days_left').filter(({ value }) => value !== null);
    expect(first!.working!.inputs.find(({ name }) => name === 'As-of date')?.source).toBe(
      'a setting of the household',
    );
  });
});
