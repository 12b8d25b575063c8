import { randomBytes } from 'node:crypto';
import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { usePages } from './harness/pages.js';
import {
  browserSide,
  codeOf,
  copyOf,
  note,
  noteOf,
  openKept,
  PAGE,
  reopen,
  saidOfKeeping,
  saved,
  stateOf,
} from './storage-make.js';

vi.setConfig({ testTimeout: 120_000 });
const pages = usePages();

/** Bytes: room for the book and a little more. (The browser looks at the quota anew only when it is used up.) */
const ROOM = 400_000;
/** A long note, of letters that storage cannot make smaller. */
const long = (): string => randomBytes(11_000).toString('base64');
const LOTS = ['l-tom-24', 'l-tom-25', 'l-bean', 'l-carrot', 'l-drybean'];

/** Notes without end, until there is no more room; answers what stands in each lot's note at last. */
async function fill(page: Page): Promise<Record<string, string>> {
  const notes: Record<string, string> = {};
  for (let i = 0; (await stateOf(page)) !== 'could not save'; i++) {
    if (i > 200) throw new Error('there is always room');
    const lot = LOTS[i % LOTS.length]!;
    notes[lot] = long();
    await note(page, lot, notes[lot]);
    await expect.poll(() => stateOf(page), { timeout: 20_000 }).not.toBe('saving');
  }
  return notes;
}

describe('storage that is full', () => {
  it('is said with what to do, loses nothing of what is typed, and is written to once there is room', async () => {
    const page = await pages.open(PAGE);
    const browser = await browserSide(page);
    await browser.quota(ROOM);
    await openKept(page);
    const notes = await fill(page);
    expect(await codeOf(page)).toBe('storage-full');
    const words = await saidOfKeeping(page);
    expect(words).toContain('Could not save');
    expect(words).toContain('is full, so the last edits are not saved');
    expect(words).toContain('Save a copy');
    // The book goes on: it takes edits, shows them, undoes them, and gives a file with all of them.
    await note(page, 'l-pea', 'typed while full');
    await note(page, 'l-sage', 'undone');
    await page.evaluate(() => document.querySelector('croft-book')!.undo());
    expect(await noteOf(page, 'l-pea')).toBe('typed while full');
    expect(await noteOf(page, 'l-sage')).toBeNull();
    const copy = await copyOf(page);
    expect(copy).toContain('typed while full');
    for (const text of Object.values(notes)) expect(copy).toContain(text);
    await browser.quota();
    await saved(page);
    expect(await saidOfKeeping(page)).toBe('Saved');
    await reopen(page);
    for (const [lot, text] of Object.entries(notes)) expect(await noteOf(page, lot)).toBe(text);
    expect(await noteOf(page, 'l-pea')).toBe('typed while full');
  });

  it('from the start opens the book all the same, and keeps it whole once there is room', async () => {
    const page = await pages.open(PAGE);
    const browser = await browserSide(page);
    await browser.quota(1);
    await openKept(page);
    await expect.poll(() => stateOf(page)).toBe('could not save');
    expect(await codeOf(page)).toBe('storage-full');
    await note(page, 'l-bean', 'typed while full');
    expect(await noteOf(page, 'l-bean')).toBe('typed while full');
    await browser.quota();
    await saved(page);
    await reopen(page);
    expect(await noteOf(page, 'l-bean')).toBe('typed while full');
    expect(await codeOf(page)).toBeUndefined();
  });

  it('leaves what was saved before as it was, where the page is closed before there is room', async () => {
    const page = await pages.open(PAGE);
    const browser = await browserSide(page);
    await browser.quota(ROOM);
    await openKept(page);
    await note(page, 'l-pea', 'kept before');
    await saved(page);
    await fill(page);
    await reopen(page);
    expect(await noteOf(page, 'l-pea')).toBe('kept before');
    expect(await codeOf(page)).not.toBe('book-unreadable');
  });
});
