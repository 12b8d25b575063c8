import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import type { BookDoc } from '../../src/book/index.js';
import { axeViolations } from './elements-axe.js';
import { bookWith, place, said, saidByAll } from './elements-make.js';
import { usePages } from './harness/pages.js';

vi.setConfig({ testTimeout: 120_000 });

const PAGE = 'tests/browser/harness/pages/elements.html';
const pages = usePages();
const SIZES = [
  { width: 1280, height: 850 },
  { width: 360, height: 780 },
] as const;

/** A price list that Shelf and the list itself reckon with; the amounts of one lot come from it too. */
const prices = (): BookDoc =>
  bookWith(
    {
      foods: [{ food: 'Tomatoes', way: 'canned', counted_in: 'quart jar', own_use: 2 }],
      shelf: [
        { food: 'Tomatoes', way: 'canned', container: 'quart jar', count: 20, put_up_on: '2025-09-01' },
        { food: 'Tomatoes', way: 'canned', container: 'quart jar', count: 'some', put_up_on: '2025-09-01' },
      ],
    },
    (live) => {
      live.apply({
        do: 'add sheet',
        sheet: 'sprices',
        title: 'Prices',
        columns: [
          { id: 'citem', title: 'Item' },
          { id: 'cprice', title: 'Price' },
          { id: 'cper', title: 'Price per jar' },
        ],
        rows: [
          { id: 'r1', cells: { citem: 'Jars', cprice: 12, cper: 1 } },
          { id: 'r2', cells: { citem: 'Lids', cprice: 4, cper: 0.5 } },
        ],
      });
      live.addColumn('sprices', 'Twice', { formula: '=Price*2' });
      live.addColumn('sprices', 'Odd', { formula: '=Prise+1' });
      live.addColumn('shelf', 'Worth', { formula: '=Left*SUM(Prices!Price)' });
      live.set('shelf', live.rowIds('shelf')[0]!, 'count', '=SUM(Prices!Price)');
    },
  );

async function open(options?: Parameters<typeof pages.open>[1], markup?: string): Promise<Page> {
  const page = await (options ? pages.open(PAGE, options) : pages.emptied(PAGE));
  const inside =
    markup ?? '<croft-book-menu></croft-book-menu><croft-sheet sheet="sprices" view="edit"></croft-sheet>';
  await place(
    page,
    `<croft-book grid-licence-key="non-commercial-and-evaluation">${inside}</croft-book>`,
    prices(),
  );
  await page.waitForFunction(() => document.querySelector('croft-book')?.engineReady === true);
  return page;
}

async function openPanel(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'This book' }).press('Enter');
  await page.getByRole('menuitem', { name: 'Formulas and errors…' }).press('Enter');
  const dialog = page.locator('dialog[open]');
  await dialog.locator('croft-formula-line').first().waitFor();
  return dialog;
}

const line = (within: Locator, title: string): Locator =>
  within.locator('croft-formula-line', { has: within.page().locator(`.place:text-is("“${title}”")`) });

/** The words of a line, but for what has an inside of its own. */
const words = (of: Locator): Promise<string> => said(of.locator('.line'));

const value = (page: Page, sheet: string, row: string, column: string) =>
  page.evaluate(
    ([s, r, c]) => document.querySelector('croft-book')!.live!.value(s!, r!, c!),
    [sheet, row, column],
  );

describe.each(SIZES)('the list of formulas at $width × $height', (viewport) => {
  it('opens from the book’s menu, lists formulas and errors, and fits the window', async () => {
    const page = await open({ viewport });
    const dialog = await openPanel(page);
    expect(await said(dialog.getByRole('status').first())).toBe(
      '4 formulas, 1 with an error, 1 entry to look at.',
    );
    const twice = await words(line(dialog, 'Twice'));
    expect(twice).toContain('fills 2 rows');
    expect(twice).toContain('=Price*2');
    expect(twice).toContain('Uses “Price”');
    expect(await words(line(dialog, 'Worth'))).toContain('Uses “Left”, “Price” of Prices');
    await dialog.getByLabel('Errors only').check();
    await expect.poll(() => dialog.locator('croft-formula-line').count()).toBe(1);
    expect(await words(line(dialog, 'Odd'))).toContain('Did you mean “Price”?');
    expect(await saidByAll(dialog.locator('.lines > .line'))).toEqual([
      expect.stringContaining('“Put up” takes a number, not “some”.'),
    ]);
    await dialog.getByLabel('Search').fill('nothing like it');
    expect(await said(dialog.locator('.empty'))).toBe('Nothing here holds those words.');
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('with the keyboard alone', () => {
  it('a formula is changed in the list, refused while it cannot be read, and taken back', async () => {
    const page = await open();
    const dialog = await openPanel(page);
    await line(dialog, 'Twice').getByRole('button', { name: 'Change the formula of “Twice”' }).press('Enter');
    const field = dialog.getByLabel('Formula for the whole column');
    await expect.poll(() => field.evaluate((each) => each.matches(':focus'))).toBe(true);
    expect(await field.inputValue()).toBe('=Price*2');
    await field.fill('=Price*(2');
    await page.keyboard.press('Enter');
    await expect.poll(() => said(dialog.locator('croft-formula-edit .problem'))).toContain('cannot be read');
    await field.fill('=Price*3');
    await page.keyboard.press('Enter');
    await field.waitFor({ state: 'detached' });
    expect(await dialog.isVisible()).toBe(true);
    const column = await page.evaluate(
      () =>
        document
          .querySelector('croft-book')!
          .live!.columns('sprices')
          .find(({ title }) => title === 'Twice')!.id,
    );
    expect(await value(page, 'sprices', 'r1', column)).toBe(36);
    await expect.poll(() => words(line(dialog, 'Twice'))).toContain('36');
    await dialog.getByRole('button', { name: 'Undo' }).press('Enter');
    expect(await value(page, 'sprices', 'r1', column)).toBe(24);
    await expect.poll(() => words(line(dialog, 'Twice'))).toContain('=Price*2');
  });

  it('Escape leaves the field first, then the list', async () => {
    const page = await open();
    const dialog = await openPanel(page);
    await line(dialog, 'Twice').getByRole('button', { name: 'Change' }).press('Enter');
    await page.keyboard.type('x');
    await page.keyboard.press('Escape');
    await expect.poll(() => dialog.locator('croft-formula-edit').count()).toBe(0);
    expect(await dialog.isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  });

  it('a cell is gone to: the list closes, and the page hears which', async () => {
    const page = await open();
    await page.evaluate(() => {
      document.addEventListener('croft-show', (event) => {
        Object.assign(window, { shown: (event as CustomEvent).detail });
      });
    });
    const dialog = await openPanel(page);
    await line(dialog, 'Twice').getByRole('button', { name: '“Twice”', exact: true }).press('Enter');
    await dialog.waitFor({ state: 'hidden' });
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { shown: unknown }).shown))
      .toMatchObject({ sheet: 'sprices', row: 'r1' });
  });

  it('what is missing is mended, in all formulas that miss it', async () => {
    const page = await open();
    await page.evaluate(() =>
      document.querySelector('croft-book')!.live!.removeColumns('sprices', ['cprice']),
    );
    const dialog = await openPanel(page);
    const twice = line(dialog, 'Twice');
    expect(await words(twice)).toContain('The formula uses the column “Price”, which is not there any more.');
    expect(await twice.getByLabel('In place of the column “Price”').inputValue()).toBe('cper');
    await twice.getByRole('button', { name: 'Put it in all 3 formulas' }).press('Enter');
    await expect.poll(() => words(line(dialog, 'Twice'))).toContain('=Price_per_jar*2');
    await expect.poll(() => words(line(dialog, 'Worth'))).toContain('=Left*SUM(Prices!Price_per_jar)');
    expect(await said(dialog.locator('.told'))).toContain(
      '“Price per jar” stands in place of the column “Price”.',
    );
  });
});

describe('removing what others use', () => {
  const removed = (page: Page) =>
    page.evaluate(() => !document.querySelector('croft-book')!.live!.column('sprices', 'cprice'));

  async function remove(page: Page, title: string): Promise<void> {
    const header = page.locator('.ht_clone_top thead th, .ht_clone_top_inline_start_corner thead th', {
      has: page.locator(`.croft-title:text-is("${title}")`),
    });
    await header.last().locator('.changeType').click();
    await page
      .locator('.htMenu:visible td', { hasText: /^Remove this column/ })
      .first()
      .click();
  }

  it('asks first, says what would break and what the plan would lose, and is undone', async () => {
    const page = await open();
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await remove(page, 'Price');
    const dialog = page.locator('dialog[open]');
    await dialog.waitFor();
    expect(await said(dialog.getByRole('heading'))).toBe('Remove “Price”?');
    expect(await said(dialog)).toContain('3 formulas use “Price” and would show #REF!:');
    expect((await saidByAll(dialog.locator('li'))).sort()).toEqual([
      'Prices, column “Twice”: the whole column',
      'Shelf, column “Put up”: one cell',
      'Shelf, column “Worth”: the whole column',
    ]);
    await expect.poll(() => said(dialog)).toMatch(/Figures that would be blank: .*Shelf, “Left” \(1 row\)/);
    expect(await axeViolations(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Leave it' }).click();
    expect(await removed(page)).toBe(false);
    await remove(page, 'Price');
    await dialog.getByRole('button', { name: 'Remove anyway' }).press('Enter');
    await expect.poll(() => removed(page)).toBe(true);
    await page.evaluate(() => document.querySelector('croft-book')!.undo());
    expect(await removed(page)).toBe(false);
    expect(await value(page, 'shelf', await firstRow(page), 'count')).toBe(16);
  });

  it('asks nothing where nothing depends on it', async () => {
    const page = await open();
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await remove(page, 'Price per jar');
    await expect
      .poll(() => page.evaluate(() => !document.querySelector('croft-book')!.live!.column('sprices', 'cper')))
      .toBe(true);
    expect(await page.locator('dialog[open]').count()).toBe(0);
  });

  const firstRow = (page: Page) =>
    page.evaluate(() => document.querySelector('croft-book')!.live!.rowIds('shelf')[0]!);
});

describe('the element by itself', () => {
  it('stands on a page, follows the book, and can be for reading only', async () => {
    const page = await open({ colorScheme: 'dark' }, '<croft-formulas errors read-only></croft-formulas>');
    const list = page.locator('croft-formulas');
    await list.locator('croft-formula-line').first().waitFor();
    expect(await list.getByRole('button', { name: /Change|Put it/ }).count()).toBe(0);
    await page.evaluate(() => {
      const { live } = document.querySelector('croft-book')!;
      const odd = live!.columns('sprices').find(({ title }) => title === 'Odd')!;
      live!.apply({ do: 'describe column', sheet: 'sprices', column: odd.id, as: { formula: '=Price+1' } });
      live!.set('shelf', live!.rowIds('shelf')[1]!, 'count', 3);
    });
    await expect.poll(() => said(list.locator('.empty'))).toContain('No errors');
  });
});
