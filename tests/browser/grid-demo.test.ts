import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { said } from './elements-make.js';
import { usePages } from './harness/pages.js';

// Loads of a whole page, each of many modules: more than the usual time on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();

/** The demo's shelf as a visitor finds it, its grid open. */
async function shelf(width = 1280): Promise<Page> {
  const page = await pages.open('demo/index.html', { viewport: { width, height: 800 } });
  page.setDefaultTimeout(30_000);
  await page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane:not(.waiting)').waitFor();
  return page;
}

const titles = (page: Page): Promise<string[]> =>
  page.locator('croft-grid-pane .ht_clone_top thead .croft-title').allTextContents();

async function cell(page: Page, line: number, title: string): Promise<Locator> {
  const at = (await titles(page)).indexOf(title);
  return page.locator('croft-grid-pane .ht_master tbody tr').nth(line).locator('td').nth(at);
}

/** The selected cell: its line from 0 and its column. */
const selection = (page: Page): Promise<[number, string] | null> =>
  page.evaluate(() => {
    const book = document.querySelector('croft-book')!.live!;
    const pane = [...document.querySelectorAll('croft-sheet')]
      .map((sheet) => sheet.shadowRoot!.querySelector('croft-grid-pane'))
      .find((each) => each && each.clientWidth > 0);
    const chosen = pane?.view?.selection;
    return chosen ? [book.rowIds(pane.sheet).indexOf(chosen.row), chosen.column] : null;
  });

/** The line under the sheet. */
const line = (page: Page): Locator => page.locator('[role=tabpanel]:not([hidden]) croft-sheet .said');

describe('the grid in the demo’s page', () => {
  it('takes the keyboard by Tab from the toolbar, and back from after it', async () => {
    const page = await shelf();
    const current = page.locator('croft-grid-pane td.current');
    await page.getByRole('button', { name: 'Read', exact: true }).focus();
    await page.keyboard.press('Tab');
    expect(await selection(page)).toEqual([0, 'food']);
    await current.waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowRight');
    expect(await selection(page)).toEqual([1, 'way']);
    await page.keyboard.press('Tab');
    expect(await selection(page)).toBeNull();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('ArrowRight');
    expect(await selection(page)).toEqual([1, 'container']);
    await page.keyboard.press('Shift+Tab');
    const focused = page.getByRole('button', { name: 'Read', exact: true });
    expect(await focused.evaluate((each) => (each.getRootNode() as ShadowRoot).activeElement === each)).toBe(
      true,
    );
  });

  it('says in sight why a planning cell takes nothing, whatever is tried', async () => {
    const page = await shelf();
    await (await cell(page, 1, 'Left')).click();
    const refusal = /“Left” is worked out from the book.*add a column/s;
    await page.evaluate(() => navigator.clipboard.writeText('1\t2\n4\t5'));
    for (const key of ['x', 'Enter', 'F2', 'Delete', 'Control+v']) {
      await page.evaluate(() => document.querySelector('croft-sheet')!.say(null));
      await expect.poll(() => said(line(page))).toBe('');
      await page.keyboard.press(key);
      await expect.poll(() => said(line(page)), { message: key }).toMatch(refusal);
    }
    expect(await said(line(page))).toMatch(/4 cells in 2 worked-out columns were left out/);
    const box = (await line(page).boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(800);
    await (await cell(page, 1, 'Kept where')).click();
    await page.evaluate(() => navigator.clipboard.writeText('Porch\t2'));
    await page.keyboard.press('Control+v');
    await expect.poll(() => said(line(page))).toMatch(/^One cell was left out/);
    expect(await said(await cell(page, 1, 'Kept where'))).toBe('Porch');
  });
});
