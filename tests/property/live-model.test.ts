import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS, parseBook } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import { AS_OF, shown, startingBook, step, take } from '../support/random-book.js';

const RUNS = Number(process.env.CROFTSHEET_RUNS ?? 25);

function reopened(json: string) {
  const parsed = parseBook(json);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return { live: openBook(parsed.book, { asOf: AS_OF }), book: parsed.book };
}

describe('a book after any sequence of edits', () => {
  it('shows the same as one opened afresh from what it saved', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
        const live = startingBook();
        for (const doing of steps) take(live, doing);
        const again = reopened(JSON.stringify(live.toJSON()));
        expect(shown(live)).toEqual(shown(again.live));
        live.close();
        again.live.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('is saved and read back as it was', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const live = startingBook();
        for (const doing of steps) take(live, doing);
        const saved = JSON.stringify(live.toJSON());
        const { book, live: again } = reopened(saved);
        expect(book).toEqual(JSON.parse(saved));
        expect(JSON.parse(JSON.stringify(again.toJSON()))).toEqual(JSON.parse(saved));
        live.close();
        again.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('comes back to where it began when everything is undone, and forth again when redone', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        const live = startingBook();
        const commands = steps.filter(({ step: kind }) => kind !== 'undo' && kind !== 'redo');
        const entered = JSON.stringify(live.toJSON());
        const figures = shown(live);
        let before = 0;
        for (const doing of commands) {
          const label = live.undoLabel;
          const saved = JSON.stringify(live.toJSON());
          take(live, doing);
          if (JSON.stringify(live.toJSON()) !== saved) before++;
          else expect(live.undoLabel).toBe(label);
        }
        const last = JSON.stringify(live.toJSON());
        const lastFigures = shown(live);
        for (let i = 0; i < before; i++) live.undo();
        expect(JSON.parse(JSON.stringify(live.toJSON()))).toEqual(JSON.parse(entered));
        expect(shown(live)).toEqual(figures);
        for (let i = 0; i < before; i++) live.redo();
        expect(JSON.parse(JSON.stringify(live.toJSON()))).toEqual(JSON.parse(last));
        expect(shown(live)).toEqual(lastFigures);
        live.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('has every planning column, and no stock below nothing', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const live = startingBook();
        for (const doing of steps) take(live, doing);
        for (const { id, kind } of live.sheets()) {
          const there = live
            .columns(id)
            .filter(({ role }) => role === 'planning')
            .map((column) => column.id);
          const declared = KINDS[kind as keyof typeof KINDS].columns
            .filter(({ role }) => role === 'planning')
            .map((column) => column.id);
          expect([...there].sort()).toEqual([...declared].sort());
        }
        for (const row of live.rowIds('shelf')) {
          const left = live.value('shelf', row, 'left');
          if (typeof left === 'number') expect(left).toBeGreaterThanOrEqual(0);
        }
        for (const value of Object.values(shown(live))) {
          if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        }
        live.close();
      }),
      { numRuns: RUNS },
    );
  });
});
