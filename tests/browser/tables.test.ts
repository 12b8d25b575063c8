import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { bookWith, place, said, saidByAll, tomatoes } from './elements-make.js';
import { usePages } from './harness/pages.js';

vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();
const SHOTS = process.env.CROFTSHEET_SHOTS;

async function open(
  options: Parameters<typeof pages.open>[1] = {},
  book: unknown = tomatoes(),
): Promise<Page> {
  const page = await pages.open('tests/browser/harness/pages/elements.html', options);
  await place(page, '<croft-book><croft-book-menu></croft-book-menu></croft-book>', book);
  return page;
}

/** From here on the page runs nothing but scripts of its own site: what a policy forbids fails the test. */
const strict = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const meta = document.createElement('meta');
    meta.httpEquiv = 'Content-Security-Policy';
    meta.content = "script-src 'self'; worker-src 'none'; object-src 'none'";
    document.head.append(meta);
  });

/** Opens a dialog from the book's menu, by keyboard. */
async function dialog(page: Page, name: RegExp): Promise<ReturnType<Page['locator']>> {
  await page.getByRole('button', { name: 'This book' }).focus();
  await page.keyboard.press('Enter');
  const item = page.getByRole('menuitem', { name });
  await item.waitFor();
  for (let i = 0; i < 20 && !(await item.evaluate((node) => node.matches(':focus'))); i++)
    await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  const shown = page.getByRole('dialog');
  await shown.waitFor();
  return shown;
}

const shot = async (page: Page, name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}.png` });
};

const file = (name: string, text: string | Buffer, mimeType = 'text/csv') => ({
  name,
  mimeType,
  buffer: Buffer.from(text),
});

const sheets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    document
      .querySelector('croft-book')!
      .live!.sheets()
      .map(({ title }) => title),
  );

/** What a sheet shows, row by row, by its title. */
const shows = (page: Page, title: string): Promise<unknown[][]> =>
  page.evaluate((called) => {
    const live = document.querySelector('croft-book')!.live!;
    const { id } = live.sheets().find((each) => each.title === called)!;
    return live.rowIds(id).map((row) => live.columns(id).map((column) => live.value(id, row, column.id)));
  }, title);

const textOf = async (download: Download): Promise<string> => readFileSync((await download.path())!, 'utf8');

const SWAPS =
  'What;Pounds;Put up;Sent\nBeans;1,5;24/05/2026;yes\n=HYPERLINK("x");2;01/06/2026;no\nCorn;a few;<img src=x onerror=alert(1)>;yes\n';

describe('bringing a table in', () => {
  it('a file is looked at, decided about and brought in by keyboard alone; undo takes it back in one step', async () => {
    const page = await open();
    const shown = await dialog(page, /Bring in a table/);
    await shown.getByLabel(/A file of separated values/).setInputFiles(file('seed swaps.csv', SWAPS));
    await shown.getByText('seed swaps.csv').waitFor();
    await expect.poll(() => said(shown.locator('.ends'))).toContain('Bring in 3 rows');
    expect(await shown.getByLabel('Fields are separated by').inputValue()).toBe(';');
    expect(await shown.getByLabel('Title of the new sheet').inputValue()).toBe('seed swaps');
    expect(await saidByAll(shown.locator('.column h4'))).toEqual(['What', 'Pounds', 'Put up', 'Sent']);
    expect(await said(shown)).toContain('1 cell begins with “=”');
    // Two of three do not make a column of numbers or dates: the person says that they are.
    await shown.getByLabel('Holds, Pounds').selectOption('number');
    await expect.poll(() => shown.getByLabel('Written, the numbers of Pounds').inputValue()).toBe('comma');
    await shown.getByLabel('Holds, Put up').selectOption('date');
    await shown.getByLabel('Written, the dates of Put up').selectOption('day first');
    await expect.poll(() => said(shown.locator('.ends'))).toContain('2 things to look at');
    await expect.poll(() => said(shown.locator('table').first())).toContain('May 24, 2026');
    expect(
      await saidByAll(shown.locator('section ~ .stack-small tbody td:nth-child(2), details td:nth-child(2)')),
    ).toEqual(['Pounds', 'Put up']);
    await shot(page, 'bring-in');
    await shown.getByRole('button', { name: 'Bring in 3 rows' }).focus();
    await page.keyboard.press('Enter');
    await shown.waitFor({ state: 'detached' });
    expect(await said(page.getByRole('status'))).toContain(
      '3 rows of seed swaps.csv now stand in “seed swaps”',
    );
    expect(await shows(page, 'seed swaps')).toEqual([
      ['Beans', 1.5, '2026-05-24', true],
      ['=HYPERLINK("x")', 2, '2026-06-01', false],
      ['Corn', 'a few', '<img src=x onerror=alert(1)>', true],
    ]);
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.undoLabel)).toBe(
      'import of seed swaps.csv',
    );
    await page.evaluate(() => document.querySelector('croft-book')!.undo());
    expect(await sheets(page)).not.toContain('seed swaps');
  });

  it('into the Shelf: columns are matched, and planning columns are never offered', async () => {
    const page = await open();
    const shown = await dialog(page, /Bring in a table/);
    await shown
      .getByLabel('Or paste a table')
      .fill('Food\tWay kept\tPut up\tPut up on\tLeft\nPeas\tfrozen\t7\t2026-01-05\t7\n');
    await shown.getByRole('button', { name: 'Look at what is pasted' }).click();
    await expect.poll(() => shown.getByLabel('Sheet', { exact: true }).inputValue()).toBe('shelf');
    const goes = (name: string) => shown.getByLabel(`Goes into, from ${name}`, { exact: true });
    expect(await goes('Put up').inputValue()).toBe('=count');
    expect(await goes('Left').inputValue()).toBe('leave out');
    expect(await goes('Left').locator('option').allTextContents()).not.toContain('Left');
    expect(await said(shown)).toMatch(/Planning columns \(.*\) are worked out from the book/);
    await goes('Left').selectOption('new');
    await shown.getByRole('button', { name: 'Bring in 1 row' }).click();
    await shown.waitFor({ state: 'detached' });
    const row = (await shows(page, 'Shelf')).at(-1)!;
    expect(row.slice(0, 5)).toEqual(['Peas', 'frozen', null, 7, '2026-01-05']);
    expect(row.at(-1)).toBe(7);
  });

  it('a large file shows how far it is, and can be stopped with nothing changed', async () => {
    const page = await open();
    await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      live.set('shelf', live.rowIds('shelf')[0]!, 'place', 'Low shelf');
    });
    const before = await page.evaluate(() =>
      JSON.stringify(document.querySelector('croft-book')!.live!.toJSON()),
    );
    const shown = await dialog(page, /Bring in a table/);
    const rows = Array.from(
      { length: 50_000 },
      (_, i) => `Lot ${i},${i},2026-01-0${1 + (i % 9)},Cellar,yes,${i * 2}\n`,
    );
    const large = `Lot,Count,On,Where,Kept,Twice\n${rows.join('')}`;
    await shown.getByLabel(/A file of separated values/).setInputFiles(file('large.csv', large));
    const bring = shown.getByRole('button', { name: 'Bring in 50,000 rows' });
    await bring.waitFor({ timeout: 60_000 });
    await bring.click();
    const stop = shown.getByRole('button', { name: 'Stop, and change nothing' });
    await stop.waitFor();
    await shown.getByText(/Bringing the rows in: [1-9]/).waitFor({ timeout: 60_000 });
    await shot(page, 'progress');
    // Undo has to wait; stopping has the focus, so one key is enough.
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Enter');
    await bring.waitFor({ timeout: 60_000 });
    await expect
      .poll(() => page.evaluate(() => JSON.stringify(document.querySelector('croft-book')!.live!.toJSON())))
      .toBe(before);
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.undoLabel)).toBe(
      'change of a cell',
    );
  });

  it('a workbook: the worksheet is chosen, and a description beside a table is used', async () => {
    const page = await open();
    await strict(page);
    let shown = await dialog(page, /Bring in a table/);
    const made = readFileSync('tests/fixtures/tables/made-by-another-library.xlsx');
    await shown.getByLabel(/A file of separated values/).setInputFiles(file('made.xlsx', made, ''));
    await expect
      .poll(() => shown.getByLabel('Worksheet').locator('option').allTextContents())
      .toHaveLength(1);
    await shown.getByRole('button', { name: 'Bring in 2 rows' }).click();
    await shown.waitFor({ state: 'detached' });
    expect((await shows(page, 'Cellar'))[0]).toEqual(['Snap beans', 42, '2026-08-14', true]);
    shown = await dialog(page, /Bring in a table/);
    const metadata = {
      '@context': 'http://www.w3.org/ns/csvw',
      url: 'codes.csv',
      tableSchema: {
        columns: [
          { titles: 'Packet' },
          { titles: 'Given', datatype: { base: 'date', format: 'dd/MM/yyyy' } },
        ],
      },
    };
    await shown
      .getByLabel(/A file of separated values/)
      .setInputFiles([
        file('codes.csv', 'a,b\n7,01/02/2026\n'),
        file('codes.csv-metadata.json', JSON.stringify(metadata)),
      ]);
    await shown.getByText('Titles and types come from its description').waitFor();
    await shown.getByRole('button', { name: 'Bring in 1 row' }).click();
    await shown.waitFor({ state: 'detached' });
    expect(await shows(page, 'codes')).toEqual([[7, '2026-02-01']]);
  });

  it('what is no table is said so, and a whole book is offered to be opened beside this one', async () => {
    const page = await open();
    const shown = await dialog(page, /Bring in a table/);
    const choose = shown.getByLabel(/A file of separated values/);
    await choose.setInputFiles(file('plan.csv', '%PDF-1.7\n...'));
    await expect.poll(() => said(shown.getByRole('alert'))).toContain('is a PDF, not a table');
    await shot(page, 'refused');
    const other = { ...bookWith({}), id: 'bother', title: 'The other house' };
    await choose.setInputFiles(file('other.croft.json', JSON.stringify(other, null, 2)));
    await shown.getByRole('button', { name: 'Open it as a copy beside this book' }).click();
    await expect
      .poll(() => page.evaluate(() => document.querySelector('croft-book')!.live?.title))
      .toBe('The other house');
    await shown.waitFor({ state: 'detached' });
  });
});

describe('taking tables out', () => {
  it('separated values, and beside them what the columns hold', async () => {
    const page = await open();
    const shown = await dialog(page, /Take out/);
    await shown.getByLabel('What', { exact: true }).selectOption({ label: 'Shelf' });
    await shown.getByLabel('With the planning columns that are shown').check();
    await shown.getByRole('button', { name: 'Make the file' }).click();
    await shown.getByText('1 row, ready to save').waitFor();
    await shot(page, 'take-out');
    const save = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        shown.getByRole('button', { name: `Save ${name}`, exact: true }).click(),
      ]);
      expect(download.suggestedFilename()).toBe(name);
      return textOf(download);
    };
    const lines = (await save('shelf.csv')).split('\r\n');
    expect(lines[0]).toMatch(/^Food,Way kept,Container,Put up,Put up on,Kept where,Left,/);
    expect(lines[1]).toMatch(/^Tomatoes,canned,quart jar,20,2025-09-01,Top shelf,20,/);
    const metadata = JSON.parse(await save('shelf.csv-metadata.json'));
    expect(metadata.url).toBe('shelf.csv');
    expect(
      metadata.tableSchema.columns.find(({ titles }: { titles: string }) => titles === 'Put up on').datatype,
    ).toBe('date');
  });

  it('a workbook of all sheets', async () => {
    const page = await open();
    await strict(page);
    const shown = await dialog(page, /Take out/);
    await shown.getByRole('radio', { name: /Workbook/ }).check();
    await shown.getByLabel('What', { exact: true }).selectOption({ label: 'All sheets of the book' });
    await shown.getByRole('button', { name: 'Make the file' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      shown.getByRole('button', { name: 'Save test-book.xlsx' }).click(),
    ]);
    const bytes = readFileSync((await download.path())!);
    expect(bytes.subarray(0, 4)).toEqual(Buffer.from([0x50, 0x4b, 3, 4]));
  });
});

describe('both dialogs', () => {
  it.each([
    ['a laptop, light', 1280, 'light'],
    ['a telephone, dark', 360, 'dark'],
  ] as const)(
    'fit %s, and have nothing that a checker of accessibility finds',
    async (_name, width, colorScheme) => {
      const page = await open({ viewport: { width, height: 780 }, colorScheme });
      if (colorScheme === 'dark')
        await page.evaluate(() => {
          // The page's own ground is said, too: the checker takes one that is not for white.
          document.documentElement.style.setProperty('color-scheme', 'dark');
          document.documentElement.style.setProperty('background', 'Canvas');
        });
      const narrow = () =>
        page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);
      let shown = await dialog(page, /Bring in a table/);
      await shot(page, `source-${width}`);
      expect(await axeViolations(page)).toEqual([]);
      await shown.getByLabel(/A file of separated values/).setInputFiles(file('swaps.csv', SWAPS));
      await shown.getByRole('button', { name: 'Bring in 3 rows' }).waitFor();
      await shown.getByLabel('Holds, Pounds').selectOption('number');
      await shown.getByText(/to look at; what/).waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(await narrow()).toBe(true);
      const box = await shown.evaluate((node) => node.scrollWidth <= node.clientWidth);
      expect(box).toBe(true);
      await shot(page, `columns-${width}`);
      await shown.getByRole('heading', { name: 'Columns' }).scrollIntoViewIfNeeded();
      await shown.evaluate((node) => node.scrollTo(0, node.scrollHeight));
      await shot(page, `findings-${width}`);
      await page.keyboard.press('Escape');
      await shown.waitFor({ state: 'detached' });
      shown = await dialog(page, /Take out/);
      await shown.getByRole('button', { name: 'Make the file' }).click();
      await shown.getByText('ready to save').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(await narrow()).toBe(true);
      await shot(page, `out-${width}`);
    },
  );
});
