import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeInBothLights, axeViolations } from './elements-axe.js';
import { said, saidByAll } from './elements-make.js';
import { usePages } from './harness/pages.js';

// A walk through all of the demo in one page, looked at by axe-core at every step.
vi.setConfig({ testTimeout: 300_000 });

const pages = usePages();
const panel = (page: Page): Locator => page.locator('[role=tabpanel]:not([hidden])');

async function demo(): Promise<Page> {
  const page = await pages.open('demo/index.html');
  page.setDefaultTimeout(60_000);
  await gridOpen(page);
  return page;
}

const gridOpen = (page: Page): Promise<void> =>
  panel(page).locator('croft-grid-pane:not(.waiting)').waitFor();

/** Opens what stands behind a button, looks at it, and closes it. */
async function lookInto(page: Page, button: Locator, where: string): Promise<void> {
  await button.click();
  const dialog = page.locator('dialog[open]');
  await dialog.first().waitFor();
  await axeInBothLights(page, where, { inDialog: true });
  await page.keyboard.press('Escape');
  await dialog.first().waitFor({ state: 'hidden' });
}

describe('axe-core finds nothing wrong with our markup', () => {
  it('on any sheet, as a grid and as a table, with a row that has no name yet', async () => {
    const page = await demo();
    const tabs = await saidByAll(page.getByRole('tablist').first().getByRole('tab'));
    expect(tabs.length).toBeGreaterThan(12);
    for (const tab of tabs) {
      await page.getByRole('tablist').first().getByRole('tab', { name: tab, exact: true }).click();
      const sheet = panel(page).locator('croft-sheet');
      if ((await sheet.count()) === 0) continue;
      await gridOpen(page);
      await sheet.getByRole('button', { name: 'Add row', exact: true }).click();
      expect(await axeViolations(page), `${tab} as a grid`).toEqual([]);
      await sheet.getByRole('button', { name: 'Read', exact: true }).click();
      await sheet.getByRole('table').first().waitFor();
      expect(await axeViolations(page), `${tab} as a table`).toEqual([]);
      // Looked at, it need not be gone through again at every sheet that follows.
      await sheet.evaluate((each) => each.remove());
    }
  });

  it.each([
    [
      'Shelf',
      ['Add column', 'Columns', 'Colour', 'Note', 'Take from the shelf', 'Count the shelf', 'Labels'],
    ],
    ['Foods', ['Wish list', 'What if…']],
    ['Week', ['Plan meals', 'Suggest dishes', 'Lists', 'Mark done']],
    ['Beds', ['Share the ground', 'Sowing calendar']],
    ['Harvest', ['Turn the year']],
    ['Jar count', ['Take a planning column', 'Rename sheet', 'Copy sheet']],
  ])('in the dialogs of %s', async (tab, dialogs) => {
    const page = await demo();
    // A cell to write a note on.
    await page.evaluate(async () => {
      const live = document.querySelector('croft-book')!.live!;
      const row = live.rowIds('shelf')[0]!;
      await document.querySelector('croft-sheet')!.showCell({ row, column: 'note' });
    });
    await page.getByRole('tab', { name: tab, exact: true }).click();
    await gridOpen(page);
    for (const name of dialogs)
      await lookInto(page, panel(page).getByRole('button', { name, exact: true }), `${tab}: ${name}`);
  });

  it('in what the book’s menu opens', async () => {
    const page = await demo();
    const menu = page.locator('croft-book-menu').first();
    const opener = menu.getByRole('button').first();
    await opener.click();
    const items = await saidByAll(menu.getByRole('menuitem'));
    expect(items.length).toBeGreaterThan(8);
    await axeInBothLights(page, 'the menu');
    await page.keyboard.press('Escape');
    for (const item of items) {
      await opener.click();
      await lookInto(page, menu.getByRole('menuitem', { name: item }), item);
    }
  });

  it.each(['lessons.html', 'blog.html', 'guide/index.html'])('on %s', async (path) => {
    const page = await pages.open(`demo/${path}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await said(page.getByRole('heading', { level: 1 }))).not.toBe('');
    await page.waitForLoadState('networkidle');
    await axeInBothLights(page, path);
  });
});
