import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import type { BookDoc } from '../../src/book/index.js';
import { axeViolations } from './elements-axe.js';
import { bookWith, place, said, tomatoes } from './elements-make.js';
import { edit, PAGE, undo } from './garden-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();
const open = async (path = PAGE, options?: OpenOptions): Promise<Page> => {
  const page = await pages.open(path, options);
  page.setDefaultTimeout(30_000);
  return page;
};

/** Tomatoes on the shelf, and a sheet with names that are there and one that is not. */
const fair: BookDoc = tomatoes((live) =>
  live.apply({
    do: 'add sheet',
    sheet: 'fair',
    title: 'For the fair',
    columns: [
      { id: 'what', title: 'What' },
      { id: 'who', title: 'Who' },
    ],
    rows: [
      { id: 'a1', cells: { what: 'tomato', who: 'Ada' } },
      { id: 'a2', cells: { what: 'Tomatoey', who: 'Ben' } },
    ],
  }),
);

const titles = (page: Page, sheet: string): Promise<string[]> =>
  page.evaluate(
    (id) =>
      document
        .querySelector('croft-book')!
        .live!.columns(id)
        .map(({ title }) => title),
    sheet,
  );
const sheetTitles = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    document
      .querySelector('croft-book')!
      .live!.sheets()
      .map(({ title }) => title),
  );

/** The menu of the book, and one line of it. */
async function bookMenu(page: Page, book: BookDoc, item: string): Promise<void> {
  await place(page, '<croft-book><croft-book-menu></croft-book-menu></croft-book>', book);
  await page.getByRole('button', { name: 'This book' }).click();
  await page.getByRole('menuitem', { name: item }).click();
  await page.getByRole('dialog').waitFor();
}

const overflows = (dialog: Locator): Promise<boolean> =>
  dialog.evaluate((element) => element.scrollWidth > element.clientWidth + 1);

describe('taking a planning column', () => {
  it('shows it beside the names, says what is not found, follows the plan, and undo takes it off', async () => {
    const page = await open();
    const sheet = await edit(page, 'fair', fair);
    await page.getByRole('button', { name: 'Take a planning column' }).click();
    const dialog = page.getByRole('dialog');
    expect(await said(dialog)).toContain('All that is left of this food');
    await dialog.getByRole('button', { name: 'Show the column' }).click();
    await dialog.getByText('No figure is chosen yet.', { exact: false }).waitFor();
    await dialog.getByRole('checkbox', { name: /^On hand/ }).check();
    await dialog.getByRole('checkbox', { name: /^Runs out on/ }).check();
    await dialog.getByRole('button', { name: 'Show 2 columns' }).click();
    await sheet.getByText('One row names nothing in Foods', { exact: false }).waitFor();
    expect(await titles(page, 'fair')).toEqual(['What', 'On hand', 'Runs out on', 'Who']);
    const cell = sheet.locator('croft-grid-pane td', { hasText: '20 quart jars' }).first();
    await cell.waitFor();
    // Typing over it is refused.
    await cell.click();
    await page.keyboard.type('7');
    await sheet.getByText('is worked out from the book', { exact: false }).first().waitFor();
    await page.evaluate(() =>
      document
        .querySelector('croft-book')!
        .live!.insertRows('draws', [
          { date: '2026-01-20', food: 'tomato', amount: 3, container: 'quart jar' },
        ]),
    );
    await sheet.locator('croft-grid-pane td', { hasText: '17 quart jars' }).first().waitFor();
    await undo(page);
    await undo(page);
    expect(await titles(page, 'fair')).toEqual(['What', 'Who']);
  });

  it('suggests names, by keyboard alone too', async () => {
    const page = await open();
    const sheet = await edit(page, 'fair', fair);
    await page.getByRole('button', { name: 'Take a planning column' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    // Two lists to choose from, then the figures; in Firefox what holds and scrolls them is a stop before them.
    const figure = page.getByRole('checkbox', { name: /^On hand/ });
    const isThere = (): Promise<boolean> => figure.evaluate((each) => each.matches(':focus'));
    for (let i = 0; i < 4 && !(await isThere()); i++) await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await figure.isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Show the column' }).focus();
    await page.keyboard.press('Enter');
    await sheet.getByText('One row names nothing', { exact: false }).waitFor();
    // The first column stands still, over the others.
    await sheet.locator('.ht_clone_inline_start td', { hasText: 'Tomatoey' }).click();
    await page.keyboard.press('F2');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('Tom');
    await page.locator('[role=option]', { hasText: 'Tomatoes' }).first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => sheet.locator('td', { hasText: '20 quart jars' }).count()).toBe(2);
  });
});

describe('a new sheet', () => {
  it('is like one of a kind, with the figures chosen', async () => {
    const page = await open();
    await bookMenu(page, tomatoes(), 'New sheet…');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('radio', { name: /^Like a sheet/ }).check();
    await dialog.getByLabel('Like', { exact: true }).selectOption('Dishes');
    await dialog.getByRole('checkbox', { name: /^Can be cooked/ }).check();
    await dialog.getByLabel('Title').fill('Shelf');
    await dialog.getByRole('button', { name: 'Add the sheet' }).click();
    await dialog.getByText('There is a sheet called “Shelf” already.', { exact: false }).waitFor();
    await dialog.getByLabel('Title').fill('Feast');
    await page.keyboard.press('Enter');
    await page.getByText('“Feast” is there.', { exact: false }).waitFor();
    expect(await sheetTitles(page)).toContain('Feast');
    const id = await page.evaluate(
      () =>
        document
          .querySelector('croft-book')!
          .live!.sheets()
          .find(({ title }) => title === 'Feast')!.id,
    );
    expect(await titles(page, id)).toEqual(expect.arrayContaining(['Dish', 'Serves', 'Can be cooked']));
    expect(await titles(page, id)).not.toContain('On hand');
  });

  it('is a copy, or begins with a table', async () => {
    const page = await open();
    await bookMenu(page, fair, 'New sheet…');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('radio', { name: /^A copy/ }).check();
    await dialog.getByLabel('Sheet', { exact: true }).selectOption('For the fair');
    await dialog.getByRole('button', { name: 'Make the copy' }).click();
    await page.getByText('“For the fair, copy” is there.', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'This book' }).click();
    await page.getByRole('menuitem', { name: 'New sheet…' }).click();
    await page.getByRole('radio', { name: /^A table/ }).check();
    await page.getByRole('button', { name: 'Choose the table' }).click();
    await page.getByRole('dialog', { name: 'Bring in a table' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.getByRole('button', { name: 'This book' }).evaluate((b) => b.matches(':focus'))).toBe(
      true,
    );
  });

  it.each([
    [360, 'light'],
    [360, 'dark'],
    [1280, 'light'],
  ] as const)(
    'has nothing wrong for screen readers at %i px in the %s, nor wider than the page',
    async (width, scheme) => {
      const page = await open(`${PAGE}${scheme === 'dark' ? '?scheme=dark' : ''}`, {
        viewport: { width, height: 740 },
        colorScheme: scheme,
      });
      await bookMenu(page, bookWith({}), 'New sheet…');
      await page.getByRole('radio', { name: /^Like a sheet/ }).check();
      expect(await axeViolations(page)).toEqual([]);
      expect(await overflows(page.getByRole('dialog'))).toBe(false);
    },
  );
});

it('in the demo, own sheets are copied, moved, renamed and removed', async () => {
  const page = await open('demo/index.html');
  await page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane:not(.waiting)').waitFor();
  const tabs = async (): Promise<string[]> =>
    (await page.getByRole('tab').allTextContents()).map((t) => t.trim());
  await page.getByRole('tab', { name: 'Jar count' }).click();
  const panel = page.locator('[role=tabpanel]:not([hidden])');
  await panel.getByRole('button', { name: 'Copy sheet' }).click();
  await page.getByRole('dialog').getByLabel('Title').fill('Jars lent');
  await page.getByRole('button', { name: 'Make the copy' }).click();
  await page.getByRole('tab', { name: 'Jars lent', selected: true }).waitFor();
  expect(await panel.getByRole('button', { name: 'Move right' }).isDisabled()).toBe(true);
  await panel.getByRole('button', { name: 'Move left' }).click();
  await expect.poll(async () => (await tabs()).slice(-2)[0]).toBe('Jars lent');
  await panel.getByRole('button', { name: 'Rename sheet' }).click();
  await page.getByRole('dialog').getByLabel('Title').fill('Shelf');
  await page.keyboard.press('Enter');
  await page.getByText('There is a sheet called “Shelf” already.', { exact: false }).waitFor();
  await page.getByRole('dialog').getByLabel('Title').fill('Lent');
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: 'Lent', selected: true }).waitFor();
  await panel.getByRole('button', { name: 'Remove sheet' }).click();
  await expect.poll(tabs).not.toContain('Lent');
});
