import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { usePages } from './harness/pages.js';
import { openWeek, PAGE, weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 120_000 });
const pages = usePages();
/** Where pictures go for somebody to look at; nowhere unless asked. */
const SHOTS = process.env.CROFTSHEET_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}.png` });
};

const INSIDE = '<croft-book-menu></croft-book-menu><croft-sheet sheet="shelf"></croft-sheet>';

/** Puts a kept book on the page; what is kept under the key already wins. */
async function openKept(page: Page, key: string, json = JSON.stringify(weekBook())): Promise<void> {
  await page.evaluate(
    async ([text, as, inside]) => {
      await Promise.all(['croft-book', 'croft-book-menu'].map((name) => customElements.whenDefined(name)));
      document.querySelector('croft-book')?.remove();
      const book = document.createElement('croft-book');
      book.setAttribute('keep', '');
      book.setAttribute('keep-as', as!);
      book.innerHTML = inside!;
      const script = document.createElement('script');
      script.type = 'application/json';
      script.textContent = text!;
      book.append(script);
      document.querySelector('main')!.append(book);
    },
    [json, key, INSIDE],
  );
  await page.waitForFunction(() => document.querySelector('croft-book')?.status.state === 'saved');
}

const set = (page: Page, sheet: string, row: string, column: string, typed: string | number): Promise<void> =>
  page.evaluate(
    ([s, r, c, t]) =>
      void document.querySelector('croft-book')!.live!.set(s as string, r as string, c as string, t!),
    [sheet, row, column, typed],
  );
const value = (page: Page, sheet: string, row: string, column: string): Promise<unknown> =>
  page.evaluate(
    ([s, r, c]) => document.querySelector('croft-book')!.live!.value(s!, r!, c!),
    [sheet, row, column],
  );
const undo = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.querySelector('croft-book')!.undo());

/** Opens an entry of the book's menu by keyboard. */
async function choose(page: Page, label: string): Promise<void> {
  await page.locator('croft-book-menu .opener').focus();
  await page.keyboard.press('Enter');
  const item = page.getByRole('menuitem', { name: label });
  await item.waitFor();
  await item.focus();
  await page.keyboard.press('Enter');
}
const dialog = (page: Page) => page.getByRole('dialog');

describe('earlier versions', () => {
  it('are kept by name, compared figure by figure, and brought back by cell, row and book', async () => {
    const page = await openWeek(pages, INSIDE);
    await choose(page, 'Earlier versions…');
    const box = dialog(page);
    await box.getByText('This book is not kept on this device').waitFor();
    const name = box.getByLabel('Name of the version to keep now');
    await name.focus();
    await page.keyboard.type('before canning season');
    await page.keyboard.press('Enter');
    await box.getByText('Kept as “before canning season”.').waitFor();
    await shot(page, 'versions');
    await page.keyboard.press('Escape');
    await box.waitFor({ state: 'hidden' });
    const weeks = await value(page, 'foods', 'f1', 'weeks_of_supply');
    await set(page, 'shelf', 'l-tom-25', 'count', 40);
    await set(page, 'shelf', 'l-bean', 'place', 'Attic');
    await page.evaluate(
      () => void document.querySelector('croft-book')!.live!.removeRows('shelf', ['l-sage']),
    );
    expect(await value(page, 'foods', 'f1', 'weeks_of_supply')).not.toBe(weeks);
    await choose(page, 'Earlier versions…');
    await box.getByRole('button', { name: 'Compare before canning season' }).click();
    const lot = box.getByRole('article', { name: /^Tomatoes, canned, quart jar/ });
    await lot.waitFor();
    expect(await lot.textContent()).toMatch(/Put up[\s\S]*20[\s\S]*40/);
    const food = box.getByRole('article', { name: 'Tomatoes, canned', exact: true });
    expect(await food.textContent()).toMatch(/Weeks of supply[\s\S]*weeks/);
    await shot(page, 'comparison');
    expect(await axeViolations(page)).toEqual([]);
    await box.getByLabel('Planning figures too').uncheck();
    expect(await food.count()).toBe(0);
    // One cell, with what will change said before.
    await box.getByRole('button', { name: 'Bring back Put up of Tomatoes' }).click();
    await box.getByText('1 entry becomes what it was').waitFor();
    await shot(page, 'bring-back');
    await box.getByRole('button', { name: 'Bring it back' }).click();
    await box.getByText('Undo takes it back').waitFor();
    expect(await value(page, 'shelf', 'l-tom-25', 'count')).toBe(20);
    expect(await value(page, 'shelf', 'l-bean', 'place')).toBe('Attic');
    // A row that was removed, at its place.
    await box.getByRole('button', { name: /Bring back row Sage/ }).click();
    await box.getByRole('button', { name: 'Bring it back' }).click();
    await expect.poll(() => value(page, 'shelf', 'l-sage', 'count')).toBe(2);
    // And all of the rest.
    await box.getByRole('button', { name: 'Bring back the whole book…' }).click();
    await box.getByRole('button', { name: 'Bring it back' }).click();
    await box.getByText('Nothing differs').waitFor();
    expect(await value(page, 'shelf', 'l-bean', 'place')).toBe('Cellar, low shelf');
    await box.getByRole('button', { name: 'Close' }).click();
    await undo(page);
    expect(await value(page, 'shelf', 'l-bean', 'place')).toBe('Attic');
  });

  it('stay over a reload, with their names, and fit a phone in the dark', async () => {
    const page = await pages.open(PAGE, { viewport: { width: 360, height: 740 }, colorScheme: 'dark' });
    await openKept(page, 'kept');
    await choose(page, 'Earlier versions…');
    const box = dialog(page);
    await box.getByLabel('Name of the version to keep now').fill('before canning season');
    await page.keyboard.press('Enter');
    await box.getByText('Kept as').waitFor();
    await page.keyboard.press('Escape');
    await set(page, 'shelf', 'l-tom-25', 'count', 40);
    await page.evaluate(() => document.querySelector('croft-book')!.tryAgain());
    await page.reload();
    await openKept(page, 'kept');
    // For a provider that a page brings: only a book that is kept has a replicated document.
    expect(
      await page.evaluate(() => document.querySelector('croft-book')!.replicaDoc()?.getMap('cells').size),
    ).toBeGreaterThan(0);
    await choose(page, 'Earlier versions…');
    await shot(page, 'versions-phone');
    await box.getByRole('button', { name: 'Rename before canning season' }).click();
    await page.keyboard.type('spring');
    await page.keyboard.press('Enter');
    await box.getByRole('button', { name: 'Compare spring' }).click();
    await box.getByRole('article', { name: /^Tomatoes, canned, quart jar/ }).waitFor();
    await shot(page, 'comparison-phone');
    const wide = await box.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('a copy merged', () => {
  it('draws from both, asks where both changed one cell, and is one step of undo', async () => {
    const page = await pages.open(PAGE);
    await openKept(page, 'home');
    const given = page.waitForEvent('download');
    await choose(page, 'Merge a copy…');
    const box = dialog(page);
    await box.getByRole('button', { name: 'Save for merging' }).click();
    const file = await readFile(await (await given).path(), 'utf8');
    await page.keyboard.press('Escape');
    const draw = () =>
      page.evaluate(
        () =>
          void document.querySelector('croft-book')!.live!.insertRows('draws', [
            {
              date: '2026-02-10',
              food: 'Tomatoes',
              way: 'canned',
              amount: 1,
              container: 'quart jar',
              lot: 'l-tom-25',
            },
          ]),
      );
    // The other copy: opened from the file elsewhere, edited, and saved for merging again.
    const other = await pages.open(PAGE);
    await openKept(other, 'there', JSON.stringify({ ...weekBook(), id: 'another', title: 'Another' }));
    await other.evaluate((text) => document.querySelector('croft-book')!.openACopy(text), file);
    await other.waitForFunction(() => document.querySelector('croft-book')?.live?.title === 'Week book');
    await other.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      live.insertRows('draws', [
        {
          date: '2026-02-11',
          food: 'Tomatoes',
          way: 'canned',
          amount: 1,
          container: 'quart jar',
          lot: 'l-tom-25',
        },
      ]);
      live.set('shelf', 'l-bean', 'place', 'Attic');
      live.set('shelf', 'l-pea', 'count', 25);
    });
    const back = other.waitForEvent('download');
    await choose(other, 'Merge a copy…');
    await dialog(other).getByRole('button', { name: 'Save for merging' }).click();
    const returned = await readFile(await (await back).path());
    await draw();
    await set(page, 'shelf', 'l-bean', 'place', 'Porch');
    const before = await value(page, 'shelf', 'l-tom-25', 'left');
    await choose(page, 'Merge a copy…');
    const upload = { name: 'copy.croft.json', mimeType: 'application/json', buffer: returned };
    await box.getByLabel('A copy of this book').setInputFiles(upload);
    await box.getByText('Both changed one thing').waitFor();
    await shot(page, 'merge');
    expect(await axeViolations(page)).toEqual([]);
    const both = box.getByRole('group', { name: /Green beans.*Kept where/ });
    expect(await both.textContent()).toMatch(/Mine[\s\S]*Porch[\s\S]*Theirs[\s\S]*Attic/);
    // Left open: mine stands, and it stays to be decided.
    await box.getByRole('button', { name: 'Merge it in' }).click();
    await box.getByText('Still to decide').waitFor();
    await shot(page, 'merge-standing');
    expect(await value(page, 'shelf', 'l-tom-25', 'left')).toBe((before as number) - 1);
    expect(await value(page, 'shelf', 'l-pea', 'count')).toBe(25);
    expect(await value(page, 'shelf', 'l-bean', 'place')).toBe('Porch');
    await page.keyboard.press('Escape');
    await page.locator('croft-book-notices').getByRole('button', { name: 'Decide…' }).click();
    await box.getByRole('radio', { name: /Theirs/ }).check();
    await box.getByRole('button', { name: 'Write this' }).click();
    await box.getByText('Written. Undo takes it back.').waitFor();
    expect(await value(page, 'shelf', 'l-bean', 'place')).toBe('Attic');
    await page.keyboard.press('Escape');
    expect(await page.locator('croft-book-notices').getByText('changed on two copies').count()).toBe(0);
    await undo(page);
    await undo(page);
    expect(await value(page, 'shelf', 'l-pea', 'count')).toBe(30);
    expect(await value(page, 'shelf', 'l-tom-25', 'left')).toBe(before);
    await choose(page, 'Earlier versions…');
    await box.getByText('before merging').waitFor();
  });

  it('is refused where it is another book, with what to do instead', async () => {
    const page = await pages.open(PAGE, { viewport: { width: 360, height: 740 }, colorScheme: 'dark' });
    await openKept(page, 'home');
    await choose(page, 'Merge a copy…');
    const book = {
      format: 'croftsheet-book',
      version: 2,
      id: 'hill',
      title: 'Hill House',
      settings: {},
      sheets: {},
    };
    await dialog(page)
      .getByLabel('A copy of this book')
      .setInputFiles({
        name: 'b.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(book)),
      });
    await dialog(page).getByText('“Hill House” is another book').waitFor();
    await shot(page, 'merge-refused-phone');
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('storage that fails', () => {
  it('is said above the sheet, with a copy and another try right there', async () => {
    const page = await pages.open(PAGE, { viewport: { width: 360, height: 740 } });
    await openKept(page, 'home');
    await page.evaluate(() => {
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('no more', 'QuotaExceededError');
      };
      Object.assign(window, { room: () => Object.assign(IDBObjectStore.prototype, { add }) });
    });
    await set(page, 'shelf', 'l-pea', 'count', 25);
    const notice = page.locator('croft-book-notices').first();
    await notice.getByText('is full').waitFor();
    await shot(page, 'storage-full-phone');
    expect(await axeViolations(page)).toEqual([]);
    const given = page.waitForEvent('download');
    await notice.getByRole('button', { name: 'Save a copy' }).click();
    expect(await readFile(await (await given).path(), 'utf8')).toContain('"count": 25');
    // At once: the page tries again by itself, too.
    await notice.getByRole('button', { name: 'Try again' }).evaluate((button: HTMLElement) => {
      (window as unknown as { room(): void }).room();
      button.click();
    });
    await notice.getByText('is full').waitFor({ state: 'hidden' });
    // Cleared under the page: said until it was read, whatever is saved meanwhile.
    await page.evaluate(
      () =>
        new Promise((done) => {
          indexedDB.deleteDatabase('croftsheet').onsuccess = done;
        }),
    );
    await set(page, 'shelf', 'l-pea', 'count', 24);
    await notice.getByText('was cleared').waitFor();
    await set(page, 'shelf', 'l-pea', 'count', 23);
    await page.evaluate(() => document.querySelector('croft-book')!.tryAgain());
    expect(await notice.getByText('was cleared').count()).toBe(1);
    await notice.getByRole('button', { name: 'I have read it' }).click();
    await notice.getByText('was cleared').waitFor({ state: 'hidden' });
  });
});
