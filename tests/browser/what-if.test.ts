import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll, tomatoes } from './elements-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

const PAGE = 'tests/browser/harness/pages/elements.html';
const GARDEN = readFileSync('demo/data/school-garden.json', 'utf8');
const pages = usePages();

const open = async (options?: OpenOptions): Promise<Page> => {
  const page = await (options ? pages.open(PAGE, options) : pages.emptied(PAGE));
  page.setDefaultTimeout(30_000);
  return page;
};

const TOMATOES = 'foods / Tomatoes, canned / own_use [0 to 10 by 1]';
const slider = (page: Page, name: string) => page.getByRole('slider', { name });
const lines = (page: Page) => saidByAll(page.locator('croft-what-if tbody tr'));
const figure = (page: Page, column: string): Promise<unknown> =>
  page.evaluate((id) => {
    const { live } = document.querySelector('croft-book')!;
    return live!.value('foods', live!.rowIds('foods')[0]!, id);
  }, column);

describe('values tried on a copy', () => {
  it('by keyboard alone: the figures that would change, said once the hand rests, and the way back', async () => {
    const page = await open();
    await place(
      page,
      `<croft-book><croft-what-if vary="${TOMATOES}" sheet="foods"></croft-what-if></croft-book>`,
      tomatoes(),
    );
    const use = slider(page, 'Tomatoes, canned: Own use a week');
    await use.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => use.getAttribute('aria-valuetext')).toBe('4 quart jars');
    // 20 quarts: at 2 a week 10 weeks, at 4 a week 5.
    await expect
      .poll(() => lines(page))
      .toContainEqual(expect.stringContaining('Weeks of supply 10 weeks 5 weeks −5 weeks'));
    expect(await figure(page, 'weeks_of_supply')).toBe(10);
    // Canned food shows: so does the usual caution.
    expect(await said(page.locator('croft-what-if .cautions'))).toMatch(/tested process/);
    await expect
      .poll(() => said(page.locator('croft-what-if [role=status]')))
      .toMatch(
        /^\d figures in 1 row would change\. Tomatoes, canned, Use a week: 2 quart jars, would be 4 quart jars\.$/,
      );
    const box = page.getByRole('spinbutton', { name: 'Tomatoes, canned: Own use a week, written' });
    await box.fill('5');
    await expect
      .poll(() => lines(page))
      .toContainEqual(expect.stringContaining('Weeks of supply 10 weeks 4 weeks'));
    expect(await use.inputValue()).toBe('5');
    await page.getByRole('button', { name: 'Back to that: Tomatoes' }).click();
    await expect.poll(() => page.locator('croft-what-if table').count()).toBe(0);
    expect(await use.inputValue()).toBe('2');
  });

  it('show in what stands inside, while what stands beside shows the book', async () => {
    const page = await open();
    await place(
      page,
      `<croft-book><croft-what-if vary="${TOMATOES}" without-table><croft-sheet sheet="foods" columns="food, weeks_of_supply" bare read-only></croft-sheet></croft-what-if>
       <croft-sheet id="beside" sheet="foods" columns="food, weeks_of_supply" bare read-only></croft-sheet></croft-book>`,
      tomatoes(),
    );
    const row = (of: string) => said(page.locator(`${of} tbody tr`).first());
    await expect.poll(() => row('croft-what-if croft-sheet')).toMatch(/Tomatoes.*10/);
    await slider(page, 'Own use a week').fill('5');
    await expect.poll(() => row('croft-what-if croft-sheet')).toMatch(/Tomatoes.*4/);
    expect(await row('#beside')).toMatch(/Tomatoes.*10/);
    // The book changes: both follow, and what is tried stays.
    await page.evaluate(() => {
      const { live } = document.querySelector('croft-book')!;
      live!.set('shelf', live!.rowIds('shelf')[0]!, 'count', 30);
    });
    await expect.poll(() => row('#beside')).toMatch(/Tomatoes.*15/);
    await expect.poll(() => row('croft-what-if croft-sheet')).toMatch(/Tomatoes.*6/);
    expect(await page.locator('croft-what-if table').count()).toBe(1);
  });

  it('come into the book when asked to, and undo by keyboard takes that back', async () => {
    const page = await open();
    await place(
      page,
      `<croft-book><croft-what-if vary="${TOMATOES}; cushion; basis" sheet="foods"></croft-what-if></croft-book>`,
      tomatoes(),
    );
    await slider(page, 'Own use a week').fill('5');
    await page.getByRole('combobox', { name: 'Season to count on' }).selectOption('lean');
    await page.getByRole('button', { name: 'Put it into the book…' }).click();
    await expect
      .poll(() => saidByAll(page.locator('croft-what-if .writes li')))
      .toEqual([
        'Tomatoes, canned: Own use a week: 2 quart jars → 5 quart jars',
        'Season to count on: blank → lean',
      ]);
    await page.getByRole('button', { name: 'Write these 2 values' }).click();
    await expect.poll(() => figure(page, 'weeks_of_supply')).toBe(4);
    await expect
      .poll(() => said(page.locator('croft-what-if [role=status]')))
      .toContain('Undo takes it back');
    await page.locator('body').click();
    await page.keyboard.press('Control+z');
    await expect.poll(() => figure(page, 'weeks_of_supply')).toBe(10);
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.undoLabel)).toBeUndefined();
  });

  it('of formulas that feed the plan are worked out, too', async () => {
    const page = await open();
    const book = tomatoes((live) => {
      live.set('foods', live.rowIds('foods')[0]!, 'own_use', '=[carry]*2');
      live.set('foods', live.rowIds('foods')[0]!, 'carry', 1);
    });
    await place(
      page,
      `<croft-book><croft-what-if vary="foods / Tomatoes, canned / carry" figures="foods / weeks_of_supply"></croft-what-if></croft-book>`,
      book,
    );
    await page.getByRole('spinbutton', { name: 'Carry past harvest' }).fill('2');
    await expect
      .poll(() => lines(page))
      .toEqual(['Tomatoes, canned Weeks of supply 10 weeks 5 weeks −5 weeks']);
  });

  it('that change nothing on the sheet looked at say where they would', async () => {
    const page = await open();
    await place(
      page,
      '<croft-book><croft-what-if vary="foods / Tomatoes, canned / own_use" sheet="household"></croft-what-if></croft-book>',
      tomatoes(),
    );
    await slider(page, 'Own use a week').fill('4');
    await expect
      .poll(() => said(page.locator('croft-what-if .doings p')))
      .toBe('None of these figures would change. On Shelf and Foods some would. The book stays as it is.');
  });

  it('that cannot be found say so; with nothing to vary, that too', async () => {
    const page = await open();
    await place(
      page,
      '<croft-book><croft-what-if vary="rain; foods / Turnips / own_use"></croft-what-if></croft-book>',
      tomatoes(),
    );
    await expect
      .poll(() => said(page.locator('croft-what-if [role=alert]')))
      .toMatch(/no setting “rain” to vary.*Foods has no row called “Turnips”/);
    expect(await said(page.locator('croft-what-if section'))).toContain('Nothing is chosen to vary yet.');
  });
});

describe('the dialog of a sheet', () => {
  it('begins with the chosen row, takes more, and has no violations, dark and narrow too', async () => {
    const page = await open({ viewport: { width: 360, height: 760 }, colorScheme: 'dark' });
    await place(page, '<croft-book theme="auto"><croft-book-menu></croft-book-menu></croft-book>', GARDEN);
    await page.getByRole('button', { name: 'Book' }).click();
    await page.getByRole('menuitem', { name: /What if/ }).click();
    await page.locator('croft-what-if .control').first().waitFor();
    await page.getByLabel('Something else to vary').selectOption({ label: 'Carry past harvest' });
    await page.getByLabel('of', { exact: true }).selectOption({ label: 'Carrots, cellared' });
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await expect
      .poll(() => saidByAll(page.locator('croft-what-if .label')))
      .toEqual([
        'Tomatoes, frozen: Own use a week',
        'Cushion',
        'Season to count on',
        'Carrots, cellared: Carry past harvest',
      ]);
    await page.getByRole('button', { name: 'Leave out Cushion' }).click();
    await expect.poll(() => page.locator('croft-what-if .control').count()).toBe(3);
    await page.getByRole('spinbutton', { name: 'Tomatoes' }).fill('2');
    await page.locator('croft-what-if table').first().waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth),
    ).toBe(true);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('croft-what-if-dialog').count()).toBe(0);
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.undoLabel)).toBeUndefined();
  });
});
