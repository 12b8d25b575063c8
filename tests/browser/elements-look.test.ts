import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { bookWith, place, tomatoes } from './elements-make.js';
import { usePages } from './harness/pages.js';
import { pagesIn } from './harness/pdf-pages.js';

vi.setConfig({ testTimeout: 180_000 });

const PAGE = 'tests/browser/harness/pages/elements.html';
const pages = usePages();

const open = async (markup: string, book: unknown, options = {}): Promise<Page> => {
  const page = await pages.open(PAGE, options);
  page.setDefaultTimeout(60_000);
  await place(
    page,
    `<croft-book grid-licence-key="non-commercial-and-evaluation">${markup}</croft-book>`,
    book,
  );
  return page;
};

const lots = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    food: i === 3 ? 'Quince' : `Food ${i}`,
    way: 'canned',
    container: 'quart jar',
    count: i + 1,
  }));

describe('a sheet', () => {
  it('is printed whole from the grid, its head on each page, and without what serves the screen', async () => {
    const page = await open(
      '<croft-sheet sheet="shelf" view="edit"></croft-sheet>',
      bookWith({ shelf: lots(90) }),
    );
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    const table = page.getByRole('table', { name: 'Shelf, Test book' });
    await expect.poll(() => table.locator('tbody tr').count()).toBe(90);
    expect(await table.locator('thead').evaluate((each) => getComputedStyle(each).display)).toBe(
      'table-header-group',
    );
    expect(await page.locator('croft-grid-pane').isVisible()).toBe(false);
    expect(await page.getByRole('button', { name: 'Add row' }).isVisible()).toBe(false);
    // As wide as the paper.
    await page.setViewportSize({ width: 702, height: 900 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(702);
    // With its many columns Foods is wider: browsers would cut off what goes beyond the left edge.
    await page.evaluate(() => {
      dispatchEvent(new Event('afterprint'));
      document.documentElement.dir = 'rtl';
      document.querySelector('croft-sheet')!.sheet = 'foods';
      document.querySelector('croft-book')!.live!.insertRows('foods', [{ food: 'Quince', way: 'canned' }]);
    });
    await page.locator('croft-grid-pane:not(.waiting)').waitFor({ state: 'attached' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const foods = page.getByRole('table', { name: 'Foods, Test book' });
    expect((await foods.boundingBox())!.x).toBeGreaterThanOrEqual(0);
  });

  it('is printed so by the browser itself: no blank page, and the grid again afterwards', async () => {
    const page = await open(
      '<croft-sheet sheet="shelf" view="edit"></croft-sheet>',
      bookWith({ shelf: lots(300) }),
    );
    const grid = page.locator('croft-grid-pane:not(.waiting)');
    await grid.waitFor();
    expect(pagesIn(await page.pdf({ format: 'A4' }))).toBeGreaterThan(3);
    await page.locator('croft-reading-view').waitFor({ state: 'detached' });
    expect(await grid.isVisible()).toBe(true);
  });

  it('turns round on a page from right to left: columns, arrow keys, and the grid when the page turns', async () => {
    const page = await open('<croft-sheet sheet="shelf"></croft-sheet>', tomatoes());
    await page.evaluate(() => {
      document.documentElement.dir = 'rtl';
    });
    const at = async (column: string) => (await page.locator(`[data-column="${column}"]`).boundingBox())!.x;
    await page.getByRole('rowheader', { name: 'Tomatoes' }).focus();
    expect(await at('way')).toBeLessThan(await at('food'));
    await page.keyboard.press('ArrowLeft');
    await page.locator('[data-column="way"]:focus').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.locator('[data-column="food"]:focus').waitFor();
    await page.getByRole('button', { name: 'Open as a grid' }).click();
    const heading = (name: string) => page.locator('.ht_clone_top th', { hasText: name }).first();
    const left = async (name: string) => (await heading(name).boundingBox())?.x ?? 0;
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await expect.poll(async () => (await left('Way kept')) < (await left('Container'))).toBe(false);
    await page.evaluate(() => {
      document.documentElement.dir = 'ltr';
    });
    await expect.poll(async () => (await left('Way kept')) < (await left('Container'))).toBe(true);
  });

  it('is used at 400 %: nothing scrolls sideways but the table, and a dialog fits', async () => {
    const book = bookWith({ shelf: lots(20) });
    const page = await open('<croft-sheet sheet="shelf" view="edit"></croft-sheet>', book, {
      viewport: { width: 320, height: 256 },
    });
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    expect((await page.locator('croft-grid-pane').boundingBox())!.height).toBeLessThan(256);
    await page.getByRole('button', { name: 'Add column' }).click();
    const dialog = page.locator('dialog[open]');
    await dialog.waitFor();
    const box = (await dialog.boundingBox())!;
    expect([box.x >= 0, box.y >= 0, box.x + box.width <= 320, box.y + box.height <= 256]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(await dialog.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0);
    const add = dialog.getByRole('button').last();
    await add.scrollIntoViewIfNeeded();
    expect((await add.boundingBox())!.y).toBeLessThan(256);
  });
});
