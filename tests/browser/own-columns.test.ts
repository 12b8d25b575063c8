import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Command } from '../../src/book/index.js';
import { axeViolations } from './elements-axe.js';
import { bookWith, place, said } from './elements-make.js';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

const jars: Command = {
  do: 'add sheet',
  sheet: 'jars',
  title: 'Borrowed jars',
  columns: [
    { id: 'who', title: 'Who' },
    { id: 'kind', title: 'Kind', as: { type: 'choice', choices: ['neighbour', 'family', 'fair'] } },
    { id: 'many', title: 'How many', as: { type: 'number', measure: 'quart jar', summary: 'sum' } },
    { id: 'back', title: 'Back by', as: { type: 'date' } },
    { id: 'came', title: 'Came back', as: { type: 'tick' } },
  ],
  rows: [
    ['Alma', 'neighbour', 12, '2026-05-04'],
    ['Ben', 'family', 2, '2026-06-01'],
    ['Cora', 'neighbour', 5, '2026-04-01'],
    ['Dov', 'fair', 3, '2026-08-01'],
  ].map(([who, kind, many, back], i) => ({
    id: `r${i + 1}`,
    cells: { who: who!, kind: kind!, many: many!, back: back! },
  })),
};

/** A grid of the sheet above. */
const grid = (): Promise<GridDriver> => GridDriver.open(pages, { sheet: 'jars', first: [jars] });

const apply = (page: Page, command: Command) =>
  page.evaluate((each) => window.grid.live.apply(each as never).ok, command as object);

describe('entries of typed own columns', () => {
  it('are ticked by Space, chosen from the list, and marked where they cannot be read', async () => {
    const at = await grid();
    await at.click(0, 'Came back', { position: { x: 60, y: 14 } });
    await at.press('Space');
    expect(await at.value('r1', 'came')).toBe(true);
    await at.press('Space');
    expect(await at.value('r1', 'came')).toBe(null);
    await at.click(0, 'Kind');
    await at.press('F2');
    expect(await at.suggestions().allTextContents()).toEqual(['neighbour', 'family', 'fair']);
    await at.press('Escape', 'Escape');
    await at.type('fa');
    await at.press('Enter');
    expect(await at.value('r1', 'kind')).toBe('family');
    await at.click(1, 'How many');
    await at.type('a few');
    await at.press('Enter');
    expect(await at.typed('r2', 'many')).toBe('a few');
    expect(await (await at.cell(1, 'How many')).getAttribute('aria-invalid')).toBe('true');
  });

  it('are passed by Tab without typing while a row is being written; Escape lets Tab out', async () => {
    const at = await grid();
    await at.click(4, 'Who');
    for (const text of ['Edda', 'fam', '', '2026-08-01']) {
      if (text !== '') await at.type(text);
      await at.press('Tab');
    }
    await at.press('Space', 'Tab');
    const made = (await at.rowIds())[4]!;
    expect(await at.value(made, 'kind')).toBe('family');
    expect(await at.value(made, 'back')).toBe('2026-08-01');
    expect(await at.value(made, 'came')).toBe(true);
    await at.type('Finn');
    await at.press('Tab', 'Tab');
    const next = (await at.rowIds())[5]!;
    expect(await at.value(next, 'who')).toBe('Finn');
    expect(await at.selection()).toEqual({ row: next, column: 'many' });
    await at.press('Escape', 'Tab');
    expect(await at.page.evaluate(() => document.activeElement?.id)).toBe('after');
  });

  it('are read alike when they are pasted', async () => {
    const at = await grid();
    await at.otherProgramCopies('1 1/2\tMay 9 2026\tyes\nmany\tsoon\tno');
    await at.click(2, 'How many');
    await at.press('Control+v');
    expect(await at.value('r3', 'many')).toBe(1.5);
    expect(await at.value('r3', 'back')).toBe('2026-05-09');
    expect(await at.value('r3', 'came')).toBe(true);
    expect(await at.typed('r4', 'back')).toBe('soon');
    expect(await (await at.cell(3, 'Back by')).getAttribute('aria-description')).not.toBe(null);
  });

  it('take today for the day that it is', async () => {
    const at = await grid();
    await at.click(0, 'Back by');
    await at.type('today');
    await at.press('Enter');
    expect(await at.value('r1', 'back')).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  });

  it('say in the header what they are measured in', async () => {
    const at = await grid();
    expect(await at.header('How many').locator('.croft-unit').textContent()).toBe('quart jars');
    expect((await at.shown('How many'))[0]).toBe('12');
  });
});

describe('colours and notes on cells', () => {
  it('are asked for all chosen cells, shown with a sign and a corner, said, and taken back', async () => {
    const at = await grid();
    await at.select([0, 'Who'], [1, 'Kind']);
    await at.chooseHere('Colour…');
    const { cells, ask } = (await at.asked()) as { ask: string; cells: { row: string; column: string }[] };
    expect(ask).toBe('colour');
    expect(cells.map(({ row, column }) => `${row}/${column}`).sort()).toEqual([
      'r1/kind',
      'r1/who',
      'r2/kind',
      'r2/who',
    ]);
    await apply(at.page, { do: 'mark cells', sheet: 'jars', cells, colour: 'sky', note: 'from the fair' });
    const cell = await at.cell(1, 'Kind');
    expect(await cell.getAttribute('aria-description')).toBe('Marked sky. Note: from the fair');
    const sign = (pseudo: string) =>
      cell.evaluate((element, which) => getComputedStyle(element, which).content, pseudo);
    expect(await sign('::before')).toContain('■');
    expect(await sign('::after')).toBe('""');
    const plain = await at.cell(2, 'Kind');
    const paper = (of: Locator) => of.evaluate((element) => getComputedStyle(element).backgroundColor);
    expect(await paper(cell)).not.toBe(await paper(plain));
    await at.click(2, 'Who');
    await at.press('Control+z');
    expect(await cell.getAttribute('aria-description')).toBe(null);
  });

  it('follow the rules of a column, as figures change', async () => {
    const at = await grid();
    await apply(at.page, {
      do: 'describe column',
      sheet: 'jars',
      column: 'many',
      as: {
        marks: [
          { when: 'above', value: 10, colour: 'rose' },
          { when: 'double', colour: 'leaf' },
        ],
      },
    });
    const marked = async (line: number) => (await at.cell(line, 'How many')).getAttribute('aria-description');
    expect(await marked(0)).toBe('Marked rose.');
    expect(await marked(1)).toBe(null);
    await at.click(1, 'How many');
    await at.type('5');
    await at.press('Enter');
    expect(await marked(1)).toBe('Marked leaf.');
    expect(await marked(2)).toBe('Marked leaf.');
  });
});

describe('what stands under the columns', () => {
  const foot = (at: GridDriver, title: string): Locator =>
    at.page
      .getByRole('list', { name: 'Under the columns' })
      .getByRole('listitem', { name: new RegExp(`^${title}:`) });

  it('stands in line with its column, follows edits and filters, and is no row', async () => {
    const at = await grid();
    const sum = foot(at, 'How many');
    expect(await sum.getAttribute('aria-label')).toBe('How many: sum: 22 quart jars (of 4 cells)');
    const [under, above] = [(await sum.boundingBox())!, (await at.header('How many').boundingBox())!];
    expect(Math.abs(under.x - above.x)).toBeLessThan(2);
    expect(Math.abs(under.width - above.width)).toBeLessThan(2);
    await at.click(0, 'How many');
    await at.type('2');
    await at.press('Enter');
    await expect.poll(() => sum.textContent()).toBe('sum12 quart jars');
    expect((await at.shown('How many')).filter((text) => text !== '')).toEqual(['2', '2', '5', '3']);
    await at.page.evaluate(() => window.grid.view.leaveOut('many', 2));
    await expect.poll(() => sum.textContent()).toBe('sum, rows shown8 quart jars');
    await at.page.evaluate(() => window.grid.view.clearFilters());
  });

  it('stays in line while the columns scroll, and goes with the last one', async () => {
    const at = await GridDriver.open(pages, { sheet: 'jars', first: [jars], width: 420 });
    await apply(at.page, {
      do: 'describe column',
      sheet: 'jars',
      column: 'back',
      as: { summary: 'least' },
    });
    await at.click(0, 'Kind');
    await at.press('End');
    const scrolled = () => at.page.locator('.ht_master .wtHolder').evaluate((holder) => holder.scrollLeft);
    await expect.poll(scrolled).toBeGreaterThan(100);
    const inLine = async () =>
      Math.abs((await foot(at, 'Back by').boundingBox())!.x - (await at.header('Back by').boundingBox())!.x);
    await expect.poll(inLine).toBeLessThan(2);
    const isSeen = () =>
      foot(at, 'Back by').evaluate((cell) => {
        const { right, bottom } = cell.getBoundingClientRect();
        const there = (cell.getRootNode() as ShadowRoot).elementFromPoint(right - 14, bottom - 8);
        return cell.contains(there);
      });
    await expect.poll(isSeen).toBe(true);
    for (const column of ['back', 'many'])
      await apply(at.page, { do: 'describe column', sheet: 'jars', column, as: { summary: null } });
    await expect.poll(() => at.page.getByRole('list', { name: 'Under the columns' }).count()).toBe(0);
  });
});

describe('rows in groups', () => {
  const bands = (at: GridDriver) => at.page.locator('.croft-band').allTextContents();

  it('are a view with a heading at each beginning, and edits go to the row that is seen', async () => {
    const at = await grid();
    await at.chooseInHeader('Kind', 'Show in groups by this column');
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Alma', 'Cora', '']);
    expect(await bands(at)).toEqual([
      'fair1 rowHow many: sum 3 quart jars',
      'family1 rowHow many: sum 2 quart jars',
      'neighbour2 rowsHow many: sum 17 quart jars',
    ]);
    expect(await at.rowIds()).toEqual(['r1', 'r2', 'r3', 'r4']);
    await at.click(3, 'How many');
    await at.type('6');
    await at.press('Enter');
    expect(await at.value('r3', 'many')).toBe(6);
    await at.chooseInHeader('Kind', 'No groups');
    expect(await at.shown('Who')).toEqual(['Alma', 'Ben', 'Cora', 'Dov', '']);
    expect(await bands(at)).toEqual([]);
  });

  it('fold and unfold, by the heading and by the menu', async () => {
    const at = await grid();
    await at.chooseInHeader('Kind', 'Show in groups by this column');
    await at.page.locator('.croft-band', { hasText: 'neighbour' }).click();
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', '']);
    expect(await bands(at)).toHaveLength(3);
    await at.click(1, 'Who', { position: { x: 12, y: 44 } });
    await at.chooseHere('Unfold all groups');
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Alma', 'Cora', '']);
    await at.page.evaluate(() => {
      window.grid.view.focus({ row: 'r1', column: 'who' });
    });
    await at.chooseHere('Fold the group neighbour');
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', '']);
    await at.page.evaluate(() => window.grid.view.focus({ row: 'r3', column: 'who' }));
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Alma', 'Cora', '']);
  });

  it('take a new row in, and a row whose value changes goes to its group with the selection', async () => {
    const at = await grid();
    await at.chooseInHeader('Kind', 'Show in groups by this column');
    await at.page.evaluate(() => window.grid.view.focus({ row: 'r2', column: 'who' }));
    await at.chooseHere('Insert a row below');
    expect((await at.shown('Kind')).slice(0, 3)).toEqual(['fair', 'family', 'family']);
    const made = (await at.selection())!.row;
    expect(await at.value(made, 'kind')).toBe('family');
    await at.page.evaluate(() => window.grid.live.set('jars', 'r2', 'kind', 'fair'));
    expect((await at.shown('Who')).slice(0, 2)).toEqual(['Ben', 'Dov']);
    expect((await at.selection())?.row).toBe(made);
    await at.page.evaluate(() => window.grid.live.undo());
    expect((await at.shown('Who')).slice(0, 2)).toEqual(['Dov', 'Ben']);
  });

  it('keep a sorting within each group, and a filter', async () => {
    const at = await grid();
    await at.chooseInHeader('Kind', 'Show in groups by this column');
    await at.chooseInHeader('Who', 'Sort largest');
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Cora', 'Alma', '']);
    await at.page.evaluate(() => window.grid.view.leaveOut('many', 12));
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Cora', '']);
    expect((await bands(at))[2]).toContain('1 row');
    await at.page.evaluate(() => window.grid.view.clearFilters());
    expect(await at.shown('Who')).toEqual(['Dov', 'Ben', 'Cora', 'Alma', '']);
  });
});

describe('dialogs', () => {
  const PAGE = 'tests/browser/harness/pages/elements.html';
  const MARKUP =
    '<croft-book grid-licence-key="non-commercial-and-evaluation"><croft-sheet sheet="SHEET" VIEW></croft-sheet></croft-book>';
  const book = bookWith(
    {
      foods: [
        { food: 'Tomatoes', way: 'canned', counted_in: 'quart jar', own_use: 2 },
        { food: 'Corn', way: 'frozen', counted_in: 'pint freezer bag', own_use: 1 },
      ],
      shelf: [
        { food: 'Tomatoes', way: 'canned', container: 'quart jar', count: 6, put_up_on: '2025-09-01' },
        { food: 'Corn', way: 'frozen', container: 'pint freezer bag', count: 30, put_up_on: '2025-08-01' },
      ],
    },
    (live) => live.apply(jars),
  );
  const open = async (sheet: string, edit: boolean): Promise<Page> => {
    const page = await pages.open(PAGE);
    page.setDefaultTimeout(20_000);
    await place(page, MARKUP.replace('SHEET', sheet).replace('VIEW', edit ? 'view="edit"' : ''), book);
    if (edit) await page.locator('.ht_master td').first().waitFor();
    return page;
  };
  const column = (page: Page, sheet: string, title: string) =>
    page.evaluate(
      ([s, t]) => {
        const found = document
          .querySelector('croft-book')!
          .live!.columns(s!)
          .find((each) => each.title === t);
        return found && { type: found.type, measure: found.measure, listed: found.listed, note: found.note };
      },
      [sheet, title],
    );

  it('ask for what belongs to the type of a column only, and say at the field what is missing', async () => {
    const page = await open('jars', true);
    await page.getByRole('button', { name: 'Add column' }).click();
    await page.getByLabel('Title').fill('Lent out');
    expect(await page.getByLabel('Measured in').count()).toBe(0);
    await page.getByLabel('What it holds').selectOption('number');
    await page.getByLabel('Measured in').selectOption('pint jar');
    await page.getByLabel('What it holds').selectOption('choice');
    expect(await page.getByLabel('Measured in').count()).toBe(0);
    await page.getByRole('button', { name: 'Add the column' }).click();
    await page.getByText('Write at least one choice.', { exact: false }).waitFor();
    await page.getByLabel('The list').fill('yes, all\n\n some ');
    await page.getByLabel('Note on the column').fill('Ask Alma');
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Add the column' }).click();
    await expect
      .poll(() => column(page, 'jars', 'Lent out'))
      .toMatchObject({
        type: 'choice',
        listed: ['yes, all', 'some'],
        note: 'Ask Alma',
      });
    expect((await column(page, 'jars', 'Lent out'))!.measure).toBeUndefined();
  });

  it('colour a planning column by rules, and tell beforehand how many cells each takes', async () => {
    const page = await open('foods', true);
    await page.evaluate(() =>
      document.querySelector('croft-sheet')!.showCell({
        row: document.querySelector('croft-book')!.live!.rowIds('foods')[0]!,
        column: 'weeks_of_supply',
      }),
    );
    const header = page.locator('.ht_clone_top thead th', {
      has: page.getByText('Weeks of supply', { exact: true }),
    });
    await header.locator('.changeType').click();
    await page.locator('.htMenu:visible td', { hasText: 'Colour rules…' }).first().click();
    await page.getByLabel('Rule 1: when the cell').selectOption('below');
    await page.getByLabel('Rule 1: value').fill('4');
    // 6 quarts at 2 a week are 3 weeks; 30 bags at 1 a week are 30.
    await page.getByText('Takes 1 cell now.').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Add a rule' }).click();
    await page.getByRole('button', { name: 'Keep the rules' }).click();
    await page.getByText('Write what to compare with', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Rule 2: remove' }).click();
    await page.getByRole('button', { name: 'Keep the rules' }).click();
    const marked = page.locator('.ht_master td.croft-rose');
    await expect.poll(() => marked.count()).toBe(1);
    expect(await said(marked)).toContain('3');
    const [paper, plain] = await page.locator('.ht_master td.croft-planning').evaluateAll((cells) => {
      const of = (rose: boolean) => cells.find((cell) => cell.classList.contains('croft-rose') === rose)!;
      return [true, false].map((rose) => getComputedStyle(of(rose)).backgroundColor);
    });
    expect(paper).not.toBe(plain);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => marked.count()).toBe(0);
  });

  it('write a note by keys alone, say it at the cell, and take it away', async () => {
    const page = await open('jars', true);
    await page.locator('.ht_master tbody tr').first().locator('td').nth(1).click();
    await page.keyboard.press('Shift+F10');
    await page.locator('.htMenu:visible td', { hasText: 'Note…' }).first().waitFor();
    await page.locator('.htMenu:visible td', { hasText: 'Note…' }).first().click();
    await page.getByLabel('On Kind, row 1').waitFor();
    await page.keyboard.type('Lent at the fair');
    await page.keyboard.press('Control+Enter');
    const line = page.locator('croft-sheet .said');
    await expect.poll(() => said(line)).toBe('Note kept.');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => said(line)).toBe('Note: Lent at the fair');
    await page.getByRole('button', { name: 'Note', exact: true }).click();
    await page.getByRole('button', { name: 'Take it away' }).click();
    await expect.poll(() => page.locator('td.croft-noted').count()).toBe(0);
  });

  it('show it all to a reader: groups that fold, a foot, colours, notes', async () => {
    const page = await open('jars', false);
    await page.getByRole('table').waitFor();
    await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const cells = [{ row: 'r3', column: 'kind' }];
      live.apply({ do: 'mark cells', sheet: 'jars', cells, colour: 'leaf', note: 'asks every spring' });
      live.apply({ do: 'group rows', sheet: 'jars', by: 'kind' });
    });
    const headings = page.locator('tr.group th');
    await expect.poll(() => headings.count()).toBe(3);
    expect(await said(headings.nth(2))).toBe('neighbour 2 rows');
    expect(await said(page.locator('tr.group').nth(2).locator('.sum > [aria-hidden]'))).toBe(
      'sum 17 quart jars',
    );
    expect(await said(page.locator('tfoot .sum .unseen'))).toBe('How many: sum: 22 quart jars (of 4 cells)');
    const cell = page.locator('[data-row="r3"][data-column="kind"]');
    expect(await said(cell)).toBe('neighbour, marked leafnote, note: asks every spring');
    await page.getByRole('button', { name: 'Kind, row 3' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'neighbour 2 rows' }).click();
    await expect.poll(() => cell.count()).toBe(0);
    expect(await said(page.locator('tfoot .sum .unseen'))).toBe('How many: sum: 22 quart jars (of 4 cells)');
  });
});
