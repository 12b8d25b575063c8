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
  const home = at === 0 ? 'ht_clone_inline_start' : 'ht_master';
  return page.locator(`croft-grid-pane .${home} tbody tr`).nth(line).locator('td').nth(at);
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
    const current = page.locator('croft-grid-pane .ht_clone_inline_start td.current');
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

  it('keeps the row’s name in sight while the rest scrolls, and the swipe to itself, also on a phone', async () => {
    for (const width of [1280, 360]) {
      const page = await shelf(width);
      const holder = page.locator('croft-grid-pane .ht_master .wtHolder');
      expect(await holder.evaluate((each) => getComputedStyle(each).overscrollBehaviorX)).toBe('contain');
      await holder.evaluate((each) => each.scrollBy({ left: 600 }));
      const name = page.locator('croft-grid-pane .ht_clone_inline_start tbody td').first();
      const box = (await name.boundingBox())!;
      expect(await said(name)).toBe('Tomatoes');
      expect(box.x).toBeGreaterThan(0);
      expect(box.x + box.width).toBeLessThan(width === 360 ? 200 : 300);
    }
  });

  it('opens a column’s menu beside its button, with a list to look through, and marks what it did', async () => {
    const page = await shelf();
    const header = page.locator('croft-grid-pane .ht_clone_top thead th', { hasText: 'Way kept' });
    const button = header.locator('.changeType');
    const menu = page.locator('.htDropdownMenu:visible').first();
    await button.click();
    await menu.getByText('Sort smallest').click();
    await button.click();
    const [own, opened] = [(await button.boundingBox())!, (await menu.boundingBox())!];
    const beside = opened.x >= own.x + own.width || opened.x + opened.width <= own.x;
    expect(beside || opened.y >= own.y + own.height).toBe(true);
    const list = (await menu.locator('.htUIMultipleSelectHot').boundingBox())!;
    const value = (await menu.getByText('cellared', { exact: true }).boundingBox())!;
    expect(list.height).toBeGreaterThanOrEqual(8 * value.height);
    await menu.getByText('canned', { exact: true }).click();
    await menu.getByText('Show these').click();
    await header.getByRole('img', { name: 'filtered' }).waitFor();
    await header.getByRole('img', { name: /^sorted, smallest/ }).waitFor();
    expect(await said(await cell(page, 0, 'Way kept'))).toBe('cellared');
  });

  it('goes to a cell of a new row and a new column, out of sight until then', async () => {
    const page = await shelf();
    const [row, column] = await page.evaluate(async () => {
      const live = document.querySelector('croft-book')!.live!;
      const sheet = live.sheetOfKind('shelf')!;
      live.apply({ do: 'add column', sheet, column: 'cnew', before: null, title: 'Lid size' });
      const made = live.insertRows(sheet, [{ note: 'last' }]).rows[0]!;
      await document.querySelector('croft-sheet')!.showCell({ row: made, column: 'cnew' });
      return [live.rowIds(sheet).indexOf(made), 'cnew'] as const;
    });
    expect(await selection(page)).toEqual([row, column]);
    const box = (await page.locator('croft-grid-pane .ht_master td.current').boundingBox())!;
    const grid = (await page.locator('croft-grid-pane').boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(grid.x + grid.width);
    expect(box.y + box.height).toBeLessThanOrEqual(grid.y + grid.height);
    await page.keyboard.type('wide');
    await page.keyboard.press('Enter');
    const typed = await page.evaluate((at) => {
      const live = document.querySelector('croft-book')!.live!;
      const sheet = live.sheetOfKind('shelf')!;
      return live.value(sheet, live.rowIds(sheet)[at]!, 'cnew');
    }, row);
    expect(typed).toBe('wide');
  });

  it('shows what is at risk with weight and a mark, and nothing at risk quietly, in both views', async () => {
    const page = await shelf();
    const looks = (of: string): Promise<{ weight: number; marked: boolean }> =>
      page
        .locator(of)
        .first()
        .evaluate((each) => ({
          weight: Number(getComputedStyle(each).fontWeight),
          marked: [each, ...each.children].some(
            (part) => getComputedStyle(part, '::before').content !== 'none',
          ),
        }));
    const plain = { weight: 400, marked: false };
    for (const [strong, quiet] of [
      ['.ht_master td.croft-strong', '.ht_master td.croft-quiet'],
      ['croft-reading-view td.strong', 'croft-reading-view td.quiet'],
    ] as const) {
      if (strong.startsWith('croft')) await page.getByRole('button', { name: 'Read', exact: true }).click();
      const loud = await looks(strong);
      expect(loud.marked).toBe(true);
      expect(loud.weight).toBeGreaterThan(500);
      expect(await looks(quiet)).toEqual(plain);
      expect(await said(page.locator(quiet).first())).toMatch(/^0/);
    }
  });
});
