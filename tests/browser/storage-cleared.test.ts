import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { usePages } from './harness/pages.js';
import { browserSide, note, noteOf, openKept, PAGE, reopen, saidOfKeeping, saved } from './storage-make.js';

vi.setConfig({ testTimeout: 120_000 });
const pages = usePages();

/** As when a person removes this site's data by hand, or another page of the site does. */
const deleteDatabase = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((done) => {
        const asked = indexedDB.deleteDatabase('croftsheet');
        asked.onsuccess = () => done('gone');
        asked.onerror = () => done('refused');
        asked.onblocked = () => done('blocked');
      }),
  );

/** A page with an edit that was saved before, and one that is made after the storage was cleared. */
async function afterClearing(page: Page, clear: () => Promise<unknown>): Promise<void> {
  await openKept(page);
  await note(page, 'l-bean', 'typed before');
  await saved(page);
  await clear();
  await note(page, 'l-pea', 'typed after');
  await saved(page);
  await expect.poll(() => saidOfKeeping(page)).toContain('The storage of this page was cleared');
  expect(await saidOfKeeping(page)).toContain('The whole book has been saved again');
  await reopen(page);
  expect(await noteOf(page, 'l-bean')).toBe('typed before');
  expect(await noteOf(page, 'l-pea')).toBe('typed after');
}

describe('storage that is cleared while the book is open', () => {
  it('by the browser: the next edit keeps the whole book again, and the status says so', async () => {
    const page = await pages.open(PAGE);
    const browser = await browserSide(page);
    await afterClearing(page, browser.clear);
  });

  it('by another tab that deletes the database: the same, and that tab need not wait', async () => {
    const page = await pages.open(PAGE);
    const other = await pages.openBeside(page, PAGE);
    await afterClearing(page, async () => expect(await deleteDatabase(other)).toBe('gone'));
  });

  it('under two tabs: what both type afterwards is kept', async () => {
    const page = await pages.open(PAGE);
    await openKept(page);
    const other = await pages.openBeside(page, PAGE);
    await openKept(other);
    await note(page, 'l-bean', 'typed before');
    await saved(page);
    await expect.poll(() => noteOf(other, 'l-bean')).toBe('typed before');
    const browser = await browserSide(page);
    await browser.clear();
    await Promise.all([note(page, 'l-pea', 'by one'), note(other, 'l-sage', 'by the other')]);
    await saved(page);
    await saved(other);
    await other.close();
    await reopen(page);
    expect(await noteOf(page, 'l-bean')).toBe('typed before');
    expect(await noteOf(page, 'l-pea')).toBe('by one');
    expect(await noteOf(page, 'l-sage')).toBe('by the other');
  });
});
