import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { usePages } from './harness/pages.js';
import { codeOf, copyOf, note, noteOf, openKept, PAGE, saidOfKeeping, saved } from './storage-make.js';

vi.setConfig({ testTimeout: 120_000 });
const pages = usePages();

type Store = 'snapshots' | 'updates' | 'texts';
type Damage = 'a byte turned over' | 'the end cut off' | 'another digest' | 'a record of another type';

/** Does harm to the last record of a store, past everything that guards it. */
const damage = (page: Page, store: Store, how: Damage): Promise<void> =>
  page.evaluate(
    ([name, what]) =>
      new Promise<void>((done, failed) => {
        const asked = indexedDB.open('croftsheet');
        asked.onerror = () => failed(asked.error);
        asked.onsuccess = () => {
          const db = asked.result;
          const tx = db.transaction(name, 'readwrite');
          tx.objectStore(name).openCursor(null, 'prev').onsuccess = (event) => {
            const cursor = (event.target as IDBRequest<IDBCursorWithValue>).result;
            const record = cursor.value as Record<string, unknown> & { bytes: Uint8Array };
            if (name === 'texts') record.json = String(record.json).slice(0, 100);
            else if (what === 'a byte turned over') record.bytes[record.bytes.length >> 1]! ^= 1;
            else if (what === 'the end cut off') record.bytes = record.bytes.slice(0, -5);
            else if (what === 'another digest') record.digest = 'none';
            else cursor.update({ ...record, bytes: 'tomatoes' });
            if (what !== 'a record of another type') cursor.update(record);
          };
          tx.oncomplete = () => {
            db.close();
            done();
          };
          tx.onerror = () => failed(tx.error);
        };
      }),
    [store, how] as const,
  );

/** A page without the book, on which its storage was harmed; then the book is opened again. */
async function reopenedAfter(page: Page, harm: () => Promise<void>): Promise<void> {
  await page.reload();
  await harm();
  await openKept(page);
}

/** A book with an edit that the versions hold, and one that came after them. */
async function keptBook(): Promise<Page> {
  const page = await pages.open(PAGE);
  await openKept(page);
  await note(page, 'l-bean', 'typed first');
  await saved(page);
  await page.reload();
  await openKept(page);
  await expect.poll(() => noteOf(page, 'l-bean')).toBe('typed first');
  // Opening keeps a version of it.
  await expect
    .poll(() =>
      page.evaluate(async () => {
        const db = await new Promise<IDBDatabase>((done) => {
          const asked = indexedDB.open('croftsheet');
          asked.onsuccess = () => done(asked.result);
        });
        const count = await new Promise<number>((done) => {
          const asked = db.transaction('texts').objectStore('texts').count();
          asked.onsuccess = () => done(asked.result);
        });
        db.close();
        return count;
      }),
    )
    .toBeGreaterThan(0);
  await note(page, 'l-pea', 'typed last');
  await saved(page);
  return page;
}

async function expectGoesOn(page: Page): Promise<void> {
  expect(await copyOf(page)).toContain('typed first');
  await note(page, 'l-sage', 'typed after');
  await saved(page);
  await page.reload();
  await openKept(page);
  expect(await noteOf(page, 'l-sage')).toBe('typed after');
  expect(await noteOf(page, 'l-bean')).toBe('typed first');
  expect(await codeOf(page)).toBeUndefined();
}

describe('stored bytes that are damaged', () => {
  it.each<Damage>(['a byte turned over', 'a record of another type'])(
    'in an edit, by %s: all others are there, and the status says so',
    async (how) => {
      const page = await keptBook();
      await reopenedAfter(page, () => damage(page, 'updates', how));
      expect(await codeOf(page)).toBe('book-partly-read');
      expect(await saidOfKeeping(page)).toContain('Some of the stored edits are damaged and were left out');
      expect(await noteOf(page, 'l-bean')).toBe('typed first');
      await expectGoesOn(page);
    },
  );

  it.each<Damage>(['the end cut off', 'another digest'])(
    'in the book itself, by %s: the last good version opens, and the status says which',
    async (how) => {
      const page = await keptBook();
      await reopenedAfter(page, () => damage(page, 'snapshots', how));
      expect(await codeOf(page)).toBe('book-recovered');
      expect(await saidOfKeeping(page)).toMatch(
        /The stored book could not be read\. This is the last good version, from \w+ \d+, \d{4} at/,
      );
      expect(await noteOf(page, 'l-bean')).toBe('typed first');
      await expectGoesOn(page);
    },
  );
});
