import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openKeep } from '../../src/storage/index.js';
import { canonical } from '../../src/storage/plain.js';
import { versionsToKeep } from '../../src/storage/thinning.js';
import { failWrites, newDatabase, openTab, type Tab } from '../unit/storage-support.js';

const step = fc.oneof(
  { weight: 5, arbitrary: fc.record({ do: fc.constant('edit' as const), tab: fc.nat(1) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('add row' as const), tab: fc.nat(1) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('flush' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('compact' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('refuse a write' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('reload' as const), tab: fc.nat(1) }) },
);

describe('a book kept by two tabs', () => {
  it('loses no edit that was said to be saved, and both end up showing the same', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 15 }), async (steps) => {
        const name = newDatabase();
        const open = () => openTab(name, { retryAfter: () => 5 });
        const tabs: [Tab, Tab] = [await open(), await open()];
        const opened = await openKeep(name);
        if (!opened.ok) throw new Error('no storage');
        const typed = new Set<string>();
        const saved = new Set<string>();
        for (const [n, { do: what, tab: i }] of steps.entries()) {
          const { book, kept } = tabs[i]!;
          if (what === 'edit') {
            book.set('r1', `c${n}`, n);
            typed.add(`${i}:r1/c${n}`);
          } else if (what === 'add row') {
            book.edit(`sheets/shelf/rows/n${n}`, { order: 'a5', cells: { count: n } });
            typed.add(`${i}:n${n}/count`);
          } else if (what === 'compact') {
            // Not awaited: it runs against whatever comes next, and may be refused the room it needs.
            opened.value.compact('b1').catch(() => {});
          } else if (what === 'refuse a write') {
            const end = failWrites('QuotaExceededError');
            book.set('r2', `c${n}`, n);
            typed.add(`${i}:r2/c${n}`);
            await kept.flush();
            end();
          } else {
            if (what === 'flush' ? await kept.flush() : await kept.close().then(() => true))
              for (const edit of typed) if (edit.startsWith(`${i}:`)) saved.add(edit.slice(2));
            if (what === 'reload') tabs[i] = await open();
          }
        }
        // As after a crash: whatever was said to be saved is there for a page that never met these.
        const found = await openTab(`${name}`, {});
        for (const edit of saved) {
          const [row, column] = edit.split('/') as [string, string];
          expect(found.book.cell(row, column), edit).toBe(
            Number(/\d+$/.exec(edit.replace('/count', ''))![0]),
          );
        }
        for (const { kept } of tabs) while (!(await kept.flush())) {}
        const last = await openTab(name);
        await expect
          .poll(() => tabs.map(({ book }) => canonical(book.doc as never)), { timeout: 5000 })
          .toEqual([canonical(last.book.doc as never), canonical(last.book.doc as never)]);
        for (const edit of typed) {
          const [row, column] = edit.slice(2).split('/') as [string, string];
          expect(last.book.cell(row, column), edit).toBeDefined();
        }
        for (const { kept } of [...tabs, found, last]) await kept.close();
        await opened.value.close();
      }),
      { numRuns: 20 },
    );
  });
});

describe('versions to keep', () => {
  it('are at most ten, the newest and the oldest among them, and none that was not there', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 4e11 }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 0, max: 5e11 }),
        (times, now) => {
          const keep = versionsToKeep(times, now);
          expect(keep.size).toBe(Math.min(10, new Set(times).size));
          expect(keep.has(Math.max(...times)) && keep.has(Math.min(...times))).toBe(true);
          for (const time of keep) expect(times).toContain(time);
        },
      ),
    );
  });
});
