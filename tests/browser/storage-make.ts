import type { CDPSession, Page } from 'playwright-core';
import { expect } from 'vitest';
import { said } from './elements-make.js';
import { PAGE, weekBook } from './week-make.js';

export { PAGE };

/** Puts a book that is kept on the page, with its Shelf to read, and waits until it is open. */
export async function openKept(page: Page): Promise<void> {
  await page.evaluate(async (json) => {
    await customElements.whenDefined('croft-book');
    const home = document.createElement('div');
    home.innerHTML = '<croft-book keep keep-as="kept"><croft-sheet sheet="shelf"></croft-sheet></croft-book>';
    const script = document.createElement('script');
    script.type = 'application/json';
    script.textContent = json;
    home.querySelector('croft-book')!.append(script);
    document.querySelector('main')!.append(home);
  }, JSON.stringify(weekBook()));
  await page.waitForFunction(() => {
    const book = document.querySelector('croft-book');
    return book?.live && book.status.state !== 'opening';
  });
}

/** The page left and come back to. */
export async function reopen(page: Page): Promise<void> {
  await page.reload();
  await openKept(page);
}

/** Writes a note to a lot. */
export const note = (page: Page, lot: string, text: string): Promise<void> =>
  page.evaluate(
    ([row, typed]) => {
      const done = document.querySelector('croft-book')!.live!.set('shelf', row!, 'note', typed!);
      if (!done.ok) throw new Error(done.problem.message);
    },
    [lot, text],
  );

export const noteOf = (page: Page, lot: string): Promise<unknown> =>
  page.evaluate((row) => document.querySelector('croft-book')!.live!.value('shelf', row, 'note'), lot);

export const stateOf = (page: Page): Promise<string> =>
  page.evaluate(() => document.querySelector('croft-book')!.status.state);

export const codeOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.querySelector('croft-book')!.status.problem?.code);

/** What the line under the sheet says of keeping the book, as a person reads it. */
export const saidOfKeeping = (page: Page): Promise<string> =>
  said(page.locator('croft-sheet span.kept[role=status]'));

export const saved = (page: Page): Promise<void> =>
  expect.poll(() => stateOf(page), { timeout: 40_000 }).toBe('saved');

/** The book as the file that the person gets by the button beside what is said of keeping it. */
export async function copyOf(page: Page): Promise<string> {
  const given = page.waitForEvent('download');
  await page.locator('croft-book-notices').getByRole('button', { name: 'Save a copy' }).first().click();
  const stream = await (await given).createReadStream();
  let text = '';
  for await (const part of stream) text += String(part);
  return text;
}

/** The browser's own side: its quota, and clearing as 'clear site data' does. */
export async function browserSide(page: Page) {
  const session: CDPSession = await page.context().newCDPSession(page);
  const { origin } = new URL(page.url());
  return {
    /** Bytes that the origin may keep; undefined: as usual. */
    quota: (bytes?: number) =>
      session.send('Storage.overrideQuotaForOrigin', {
        origin,
        ...(bytes !== undefined && { quotaSize: bytes }),
      }),
    clear: () => session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' }),
  };
}
