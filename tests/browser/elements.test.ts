import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { bookWith, place, said, saidByAll, tomatoes } from './elements-make.js';
import { librariesLoaded } from './harness/libraries.js';
import { type OpenOptions, usePages } from './harness/pages.js';

const PAGE = 'tests/browser/harness/pages/elements.html';
const SHELF = '<croft-book><croft-sheet sheet="shelf"></croft-sheet></croft-book>';
const EDIT =
  '<croft-book grid-licence-key="non-commercial-and-evaluation"><croft-sheet sheet="SHEET" view="edit"></croft-sheet></croft-book>';
const pages = usePages();

const open = async (path = PAGE, options?: OpenOptions): Promise<Page> => {
  const page = await (options || path !== PAGE ? pages.open(path, options) : pages.emptied(path));
  page.setDefaultTimeout(20_000);
  return page;
};

describe('a sheet to read', () => {
  it('shows what was written and what follows from it, as a table', async () => {
    const page = await open(PAGE);
    await place(page, SHELF, tomatoes());
    await page.getByRole('table', { name: 'Shelf, Test book' }).waitFor();
    expect(await page.getByRole('rowheader').allTextContents()).toEqual(['Tomatoes']);
    const cell = (column: string) => said(page.locator(`[data-column="${column}"]`));
    expect(await cell('left')).toBe('20 quart jars');
    // 20 jars at 2 a week.
    expect(await cell('weeks_of_supply')).toBe('10');
    // Whole months from 1 September to 1 February.
    expect(await cell('months_kept')).toBe('5');
    expect(await cell('put_up_on')).toBe('Sep 1, 2025');
  });

  it('loads neither the grid nor the formula engine for a book without formulas', async () => {
    const page = await open('demo/blog.html');
    const loaded = librariesLoaded(page);
    await page.reload();
    await page.getByRole('table', { name: 'The cellar in February' }).waitFor();
    await page.waitForLoadState('networkidle');
    const libraries = await loaded();
    expect(libraries).toContain('lit-html');
    for (const heavy of ['handsontable', 'hyperformula', 'yjs', 'idb'])
      expect(libraries).not.toContain(heavy);
  });

  it('shows only the columns asked for, in that order', async () => {
    const page = await open(PAGE);
    await place(
      page,
      SHELF.replace('sheet="shelf"', 'sheet="shelf" columns="food, Weeks of supply"'),
      tomatoes(),
    );
    await page.getByRole('table').waitFor();
    expect(await saidByAll(page.getByRole('columnheader'))).toEqual(['Food', 'Weeks of supply']);
  });

  it('marks what is wrong with words, and says how to mend it', async () => {
    const page = await open(PAGE);
    const book = bookWith({ shelf: [{ food: 'Plums', way: 'canned', container: 'quart jar', count: -3 }] });
    await place(page, SHELF, book);
    await page.getByText('look here').waitFor();
    await page.getByText('One cell to look at').click();
    await page.getByText('cannot be below 0', { exact: false }).first().waitFor();
    await page.getByText('Write 0 or more.', { exact: false }).first().waitFor();
  });

  it('never takes text for markup', async () => {
    const page = await open(PAGE);
    const food = '<img src=x onerror="document.title=1">';
    await place(page, SHELF, bookWith({ shelf: [{ food }] }));
    expect(await said(page.getByRole('rowheader'))).toContain(food);
    expect(await page.title()).toBe('Elements');
  });

  it('finds rows', async () => {
    const page = await open(PAGE);
    const shelf = Array.from({ length: 20 }, (_, i) => ({ food: i === 7 ? 'Quince' : `Food ${i}` }));
    await place(page, SHELF, bookWith({ shelf }));
    await page.getByRole('searchbox', { name: 'Find rows' }).fill('quince');
    await page.getByText('1 of 20 rows').waitFor();
    expect(await saidByAll(page.getByRole('rowheader'))).toEqual(['Quince']);
  });

  it('leaves out lots that are used up, until asked for them, and remembers that', async () => {
    const page = await open(PAGE);
    const pears = { food: 'Pears', way: 'canned', container: 'quart jar', count: 2, put_up_on: '2025-09-01' };
    const draws = [{ date: '2026-01-10', food: 'Pears', way: 'canned', amount: 2, purpose: 'gift' }];
    const book = bookWith({ shelf: [pears, { ...pears, food: 'Quinces' }], draws });
    await place(page, SHELF, book);
    const names = () => saidByAll(page.locator('tbody th'));
    await expect.poll(names).toHaveLength(1);
    await page.getByLabel('Hide used-up lots (1)').uncheck();
    await expect.poll(names).toHaveLength(2);
    await page.reload();
    await place(page, SHELF, book);
    await expect.poll(names).toHaveLength(2);
  });

  it('shows the cautions that bear on it', async () => {
    const page = await open(PAGE);
    await place(page, SHELF, tomatoes());
    const care = page.getByRole('complementary', { name: 'Food safety' });
    await care.waitFor();
    expect(await said(care)).toContain('national or local food-safety authority');
    // Tomatoes are on the edge of safe acidity.
    expect(await said(care)).toContain('acid');
  });
});

describe('the working of a figure', () => {
  it('opens for the figure chosen, follows to another, and closes with Escape', async () => {
    const page = await open(PAGE);
    await place(page, SHELF, tomatoes());
    await page.locator('[data-column="weeks_of_supply"] button').click();
    const working = page.getByRole('region', { name: 'Weeks of supply' });
    await working.waitFor();
    const words = await said(working);
    expect(words).toContain('10');
    expect(words).toContain('Tomatoes, canned');
    expect(words).toContain('your own figure');
    await page.locator('[data-column="left"] button').click();
    await page.getByRole('region', { name: 'Left' }).waitFor();
    await page.getByRole('button', { name: 'Close' }).focus();
    await page.keyboard.press('Escape');
    await page.locator('croft-working').waitFor({ state: 'detached' });
  });

  it('is reached and left by keys alone', async () => {
    const page = await open(PAGE);
    await place(page, SHELF, tomatoes());
    await page.getByRole('table').waitFor();
    await page.locator('[data-column="food"]').focus();
    const figure = page.locator('[data-column="weeks_of_supply"] button:focus');
    for (let i = 0; i < 40 && (await figure.count()) === 0; i++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Weeks of supply' }).waitFor();
    const focused = () =>
      page.evaluate(() => {
        let at = document.activeElement;
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        return at?.textContent?.trim().replace(/\s+/g, ' ') ?? '';
      });
    expect(await focused()).toContain('Weeks of supply');
    await page.keyboard.press('Escape');
    await page.locator('croft-working').waitFor({ state: 'detached' });
    await expect.poll(focused).toBe('10');
  });

  it('says what would fill a blank figure', async () => {
    const page = await open(PAGE);
    const book = bookWith({
      shelf: [{ food: 'Plums', way: 'canned', container: 'quart jar', count: 3, put_up_on: '2025-09-01' }],
    });
    await place(page, `${SHELF}<croft-working id="w"></croft-working>`, book);
    await page.evaluate(() => {
      const from = document.querySelector('croft-book')!;
      from.id = 'b';
      const working = document.querySelector('croft-working#w')!;
      working.setAttribute('sheet', 'shelf');
      working.setAttribute('column', 'weeks_of_supply');
      working.setAttribute('row', from.live!.rowIds('shelf')[0]!);
      from.append(working);
    });
    await page.getByText('Blank for now.').waitFor();
  });
});

describe('where a book comes from', () => {
  it('may be an element elsewhere, named by its id', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-sheet sheet="shelf" book="ours"></croft-sheet><croft-book id="ours"></croft-book>',
      tomatoes(),
    );
    await page.getByRole('rowheader', { name: 'Tomatoes' }).waitFor();
  });

  it('lists everything that is wrong with a bad book, with its place', async () => {
    const page = await open(PAGE);
    const bad = {
      ...tomatoes(),
      sheets: { shelf: { kind: 'attic', title: '', order: 'a0', columns: {}, rows: {} } },
    };
    await place(page, SHELF, bad);
    await page.getByText('The book could not be opened').waitFor();
    const words = await said(page.getByRole('alert'));
    expect(words).toContain('sheets.shelf.kind');
    expect(words).toContain('sheets.shelf.title');
  });

  it('is refused from another site, without asking it', async () => {
    const page = await open(PAGE);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await place(
      page,
      SHELF.replace('<croft-book>', '<croft-book src="https://elsewhere.example/book.json">'),
    );
    await page.getByText('another site').waitFor();
    expect(asked.filter((url) => url.includes('elsewhere'))).toEqual([]);
  });

  it('says so when there is no file', async () => {
    const page = await open(PAGE, { expectErrors: /404/ });
    await place(page, SHELF.replace('<croft-book>', '<croft-book src="nothing-here.json">'));
    await page.getByText('There is no book at').waitFor();
  });
});

describe('a sheet to edit', () => {
  it('teaches when it is empty, and begins with a first row', async () => {
    const page = await open(PAGE);
    await place(page, EDIT.replace('SHEET', 'foods'), bookWith({}));
    await page.getByText('No foods yet.', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Write the first food' }).click();
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await page.keyboard.type('Pears');
    await page.keyboard.press('Enter');
    const food = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        return live.value('foods', live.rowIds('foods')[0]!, 'food');
      });
    await expect.poll(food).toBe('Pears');
  });

  it('opens where the reader was, with the first key pressed', async () => {
    // The grid is not loaded yet.
    const page = await open(PAGE, {});
    await place(page, EDIT.replace('SHEET', 'shelf').replace('view="edit"', ''), tomatoes());
    await page.locator('[data-column="place"]').click();
    await page.keyboard.press('C');
    await page.keyboard.type('ellar');
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await page.keyboard.type(' rack', { delay: 30 });
    await page.keyboard.press('Enter');
    const where = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        return live.value('shelf', live.rowIds('shelf')[0]!, 'place');
      });
    await expect.poll(where).toBe('Cellar rack');
  });

  it('does not open without a licence key for the grid, and says why', async () => {
    const page = await open(PAGE);
    await place(page, SHELF, tomatoes());
    await page.getByRole('button', { name: 'Open as a grid' }).click();
    await page.getByText('no licence key for the grid', { exact: false }).waitFor();
    expect(await said(page.getByRole('rowheader'))).toBe('Tomatoes');
  });

  it('is not offered where the page says so', async () => {
    const page = await open(PAGE);
    await place(page, SHELF.replace('sheet="shelf"', 'sheet="shelf" read-only'), tomatoes());
    await page.getByRole('table').waitFor();
    expect(await page.getByRole('button', { name: 'Open as a grid' }).count()).toBe(0);
  });

  it('adds a column whose formula fills every row, and says what is wrong with one', async () => {
    const page = await open(PAGE);
    await place(page, EDIT.replace('SHEET', 'shelf'), tomatoes());
    await page.getByRole('button', { name: 'Add column' }).click();
    await page.getByLabel('Title').fill('Half');
    await page.getByLabel('Formula for every row').fill('=Lef/2');
    await page.getByRole('button', { name: 'Add the column' }).click();
    await expect.poll(() => said(page.locator('croft-column-dialog #wrong'))).not.toBe('');
    await page.getByLabel('Formula for every row').fill('=Left/2');
    await page.getByRole('button', { name: 'Add the column' }).click();
    const half = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        const column = live.columns('shelf').find(({ title }) => title === 'Half');
        return column && live.value('shelf', live.rowIds('shelf')[0]!, column.id);
      });
    await expect.poll(half).toBe(10);
    // The view goes to the new column.
    const selected = () => page.evaluate(() => document.querySelector('croft-book')!.selected?.column);
    const column = await page.evaluate(
      () =>
        document
          .querySelector('croft-book')!
          .live!.columns('shelf')
          .find(({ title }) => title === 'Half')!.id,
    );
    await expect.poll(selected).toBe(column);
  });

  it('advises on names, on a cell’s reference and on a title that is taken, and shows first answers', async () => {
    const page = await open(PAGE, {});
    await place(page, EDIT.replace('SHEET', 'shelf'), tomatoes());
    await page.getByRole('button', { name: 'Add column' }).click();
    const dialog = page.locator('croft-column-dialog');
    const formula = page.getByLabel('Formula for every row');
    await page.getByLabel('Title').fill('left');
    await formula.fill('=Weeks of supply*2');
    await dialog.getByText('=Weeks_of_supply*2').waitFor();
    await dialog.getByRole('button', { name: 'Use that' }).click();
    // 20 quarts at 2 a week are 10 weeks.
    await expect.poll(() => said(dialog.locator('.answers'))).toBe('Tomatoes20');
    // Left is the seventh column.
    await formula.fill('=G2*2');
    await dialog.getByText('=Left*2').waitFor();
    await dialog.getByRole('button', { name: 'Use that' }).click();
    expect(await formula.inputValue()).toBe('=Left*2');
    await page.getByRole('button', { name: 'Add the column' }).click();
    await dialog.getByText('already', { exact: false }).waitFor();
    expect(
      await page.evaluate(() => document.querySelector('croft-book')!.live!.columns('shelf').at(-1)!.role),
    ).toBe('kept');
    await page.setViewportSize({ width: 900, height: 420 });
    const button = page.getByRole('button', { name: 'Add the column' });
    const box = (await button.boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(420);
  });

  it('marks what is only worth knowing quietly, and says the day that figures are for', async () => {
    const page = await open(PAGE);
    const book = bookWith({
      foods: [{ food: 'Pears', way: 'canned', counted_in: 'quart jar' }],
      shelf: [{ food: 'Plums', way: 'canned', container: 'quart jar', count: 3 }],
    });
    await place(page, SHELF, book);
    await page.locator('.noted', { hasText: 'not in Foods' }).waitFor();
    expect(await page.getByText('look here').count()).toBe(0);
    await page.getByText('Figures for Feb 1, 2026').waitFor();
    await page.getByRole('button', { name: 'Change the day that figures are for' }).click();
    await page.getByRole('button', { name: 'Today, every day' }).click();
    await page.getByText('Figures for').waitFor({ state: 'detached' });
  });

  it('shows a column that its kind hides, and hides another', async () => {
    const page = await open(PAGE);
    await place(page, EDIT.replace('SHEET', 'shelf'), tomatoes());
    await page.getByRole('button', { name: 'Columns' }).click();
    await page.getByRole('checkbox', { name: 'Own best-by' }).check();
    await page.getByRole('checkbox', { name: 'Servings' }).uncheck();
    await page.getByRole('dialog').getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Read' }).click();
    const titles = await saidByAll(page.getByRole('columnheader'));
    expect(titles).toContain('Own best-by');
    expect(titles).not.toContain('Servings');
  });

  it('takes settings in a form, and says at a setting what is wrong with it', async () => {
    const page = await open(PAGE);
    await place(
      page,
      EDIT.replace('SHEET', 'household'),
      bookWith({ household: [{ name: 'Ada', share: 1 }] }),
    );
    await page.getByLabel('Cushion').fill('-5');
    await page.keyboard.press('Tab');
    await page.locator('#cushion-problem').waitFor();
    expect(await page.getByLabel('Cushion').getAttribute('aria-invalid')).toBe('true');
    await page.getByLabel('Cushion').fill('25');
    await page.keyboard.press('Tab');
    await page.locator('#cushion-problem').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.household.cushion)).toBe(
      0.25,
    );
  });
});

describe('axe-core', () => {
  it.each(['light', 'dark'] as const)('finds nothing wrong with our own markup (%s)', async (colorScheme) => {
    const page = await open(PAGE, { colorScheme });
    await page.evaluate(() => {
      document.documentElement.style.setProperty('color-scheme', 'light dark');
      document.body.style.background = 'light-dark(#ffffff, #15181b)';
    });
    await place(
      page,
      SHELF,
      tomatoes((live) => live.insertRows('shelf', [{ food: 'Plums', count: -1 }])),
    );
    await page.locator('[data-column="weeks_of_supply"] button').first().click();
    expect(await axeViolations(page)).toEqual([]);
  });
});
