import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll } from './elements-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

const PAGE = 'tests/browser/harness/pages/elements.html';
const DEMO = 'demo/lessons.html';
const GARDEN = readFileSync('demo/data/school-garden.json', 'utf8');
const pages = usePages();

const open = async (path: string, options?: OpenOptions): Promise<Page> => {
  const page = await pages.open(path, options);
  page.setDefaultTimeout(30_000);
  return page;
};

/** Engine and grid load when they are first asked for. */
const soon = <T>(ask: () => T) => expect.poll(ask, { timeout: 20_000 });

const field = (page: Page) => page.getByRole('textbox', { name: /^Formula for every row of/ });
const feedback = (page: Page) => said(page.locator('croft-lesson-sheet .feedback'));
/** What stands in the blanked column, row by row. */
const filled = (page: Page) => saidByAll(page.locator('croft-lesson-sheet td.asked'));

describe('a planning column for which pupils write the formula', () => {
  it('is blank, takes a formula by keyboard, and tells wrong from right with a row and its numbers', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-book><croft-lesson-sheet task="beds/expected_pounds"></croft-lesson-sheet></croft-book>',
      GARDEN,
    );
    await soon(() => filled(page)).toEqual(['blank', 'blank', 'blank', 'blank', 'blank']);
    // The plan's figure stands nowhere before it is worked out.
    const plan = await page.evaluate(() =>
      document.querySelector('croft-book')!.live!.value('beds', 'tomatoes', 'expected_pounds'),
    );
    expect(plan).toBe(86);
    expect(await said(page.locator('croft-lesson-sheet table'))).not.toContain('86');
    await field(page).focus();
    await page.keyboard.type('=Plants planned + Yield a plant');
    await page.keyboard.press('Enter');
    await soon(() => feedback(page)).toMatch(
      /^Not yet: with Plants planned 12 and Yield a plant .+ yours gives .+, the plan .+\.$/,
    );
    expect(await field(page).getAttribute('aria-invalid')).toBe('true');
    await soon(() => said(page.locator('croft-lesson-sheet [role=status]'))).toMatch(/^Not yet: with /);
    await field(page).fill('');
    await page.getByRole('button', { name: 'Plants planned' }).click();
    await page.keyboard.type('*');
    await page.getByRole('button', { name: 'Yield a plant' }).click();
    expect(await field(page).inputValue()).toBe('=Plants_planned*Yield_a_plant');
    await page.keyboard.press('Enter');
    await soon(() => feedback(page)).toMatch(/^Right: in all 5 rows, and \d+ times with other numbers\.$/);
    expect((await filled(page)).every((text) => /^[\d,.]+ .*✓/.test(text))).toBe(true);
    expect(await page.evaluate(() => document.querySelector('croft-book')!.live!.undoLabel)).toBeUndefined();
    // Another formula is not right because the last one was.
    await field(page).fill('=1');
    await soon(() => filled(page)).toEqual(['blank', 'blank', 'blank', 'blank', 'blank']);
  });

  it('shows a counterexample where a formula fits these rows by chance', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-book><croft-lesson-sheet task="household/part_of_table"></croft-lesson-sheet></croft-book>',
      GARDEN,
    );
    // 6, 7 and 3 shares: 16 together.
    await field(page).fill('=Share at the table/16*100');
    await page.getByRole('button', { name: 'Check' }).click();
    await soon(() => feedback(page)).toMatch(
      /^Right for these rows, but not always: with Share at the table [\d.]+ yours gives [\d.]+, the plan [\d.]+ %\.$/,
    );
  });

  it('refuses the answer itself kindly, and says what cannot be read', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-book><croft-lesson-sheet task="foods/weeks_of_supply"></croft-lesson-sheet></croft-book>',
      GARDEN,
    );
    await field(page).fill('=Weeks of supply');
    await field(page).press('Enter');
    await soon(() => feedback(page)).toMatch(/^That reads “Weeks of supply” itself/);
    await field(page).fill('=On hand/(');
    await field(page).press('Enter');
    await soon(() => feedback(page)).toMatch(/cannot be read/);
    const hint = page.getByRole('button', { name: 'Hint', exact: true });
    await hint.click();
    await soon(() => saidByAll(page.locator('croft-lesson-sheet .steps li'))).toHaveLength(1);
    for (let step = 0; step < 10; step++) {
      const next = page.getByRole('button', { name: /^(?:Next hint|The formula)$/ });
      if ((await next.count()) === 0) break;
      await next.click();
    }
    await soon(async () => (await saidByAll(page.locator('croft-lesson-sheet .steps li'))).at(-1)).toBe(
      'So every row has =On_hand/Use_a_week',
    );
  });

  it('says which tasks there are, and what a book lacks', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-book><croft-lesson-sheet task="rain"></croft-lesson-sheet></croft-book>',
      GARDEN,
    );
    await soon(() => said(page.locator('croft-lesson-sheet .problem'))).toMatch(
      /no task “rain”.*foods\/weeks_of_supply/,
    );
    await page.evaluate(() => {
      document.querySelector('croft-lesson-sheet')!.task = 'supplies/short';
    });
    await soon(() => said(page.locator('croft-lesson-sheet .quiet'))).toMatch(/no rows.*Write supplies/);
  });
});

describe('a planning column blank in the grid of its sheet', () => {
  /** What is said of the cells of the blank column: their text, and what a screen reader hears beside it. */
  const cells = (page: Page) =>
    page
      .locator(
        'croft-lesson-grid .ht_master td.croft-asked, croft-lesson-grid .ht_master td:is(.croft-right, .croft-wrong)',
      )
      .evaluateAll((all) =>
        all.map(
          (cell) =>
            `${cell.getAttribute('data-sign') ?? ''}|${cell.textContent}|${cell.getAttribute('aria-description')}`,
        ),
      );
  const stands = (page: Page) => said(page.locator('croft-lesson-grid .asked-task .feedback'));

  it('is written by keyboard alone, marked in words, undone, and there again after a reload', async () => {
    const page = await open(`${DEMO}#until-the-potatoes-are-gone`, { viewport: { width: 360, height: 760 } });
    const before = await page.evaluate(async () => {
      await customElements.whenDefined('croft-book');
      const book = document.querySelector('croft-book')!;
      while (!book.live) await new Promise((resolve) => setTimeout(resolve, 20));
      return JSON.stringify(book.live.toJSON());
    });
    await page.getByRole('button', { name: 'Write it in the grid' }).press('Enter');
    const grid = page.getByRole('grid', { name: /to be written into$/ }).or(page.getByRole('treegrid'));
    await grid.first().waitFor();
    await soon(async () => (await cells(page)).at(0)).toBe('||To be written: a formula.');
    expect(await stands(page)).toBe('Not written yet.');
    // The keyboard is on the first cell already; Enter ends the formula.
    await soon(() => page.locator('croft-lesson-grid td.current').getAttribute('aria-description')).toBe(
      'To be written: a formula.',
    );
    await page.keyboard.type('=On hand*Use a week');
    await page.keyboard.press('Enter');
    await soon(() => stands(page)).toMatch(
      /^✗ 0 of 4 rows right\. .+: Not yet: with On hand .+ the plan .+\.$/,
    );
    expect((await cells(page)).filter((cell) => /^✗ not yet\|[\d.]+\|Not yet: with/.test(cell))).toHaveLength(
      4,
    );
    await soon(() => said(page.locator('croft-lesson-grid p[role=status]'))).toMatch(
      /^Weeks of supply\. 0 of 4 rows right\./,
    );
    await page.keyboard.press('ArrowUp');
    await page.keyboard.type('=On hand/Use a week');
    await page.keyboard.press('Enter');
    await soon(() => stands(page)).toMatch(/^✓ Right: in all 4 rows, and \d+ times with other numbers\.$/);
    await soon(() => said(page.locator('croft-lesson .progress'))).toBe('1 of 7 right');
    expect(await axeViolations(page)).toEqual([]);
    await page.keyboard.press('Control+z');
    await soon(() => stands(page)).toMatch(/^✗ 0 of 4/);
    await page.keyboard.press('Control+y');
    await soon(() => stands(page)).toMatch(/^✓ Right/);
    // A number of the book is not for writing here.
    await page.keyboard.press('Home');
    await page.keyboard.type('Peas');
    await page.keyboard.press('Enter');
    await soon(() => said(page.locator('croft-lesson-grid p[role=status]'))).toMatch(
      /^In this lesson only “Weeks of supply” is written/,
    );
    expect(
      await page.evaluate(() => JSON.stringify(document.querySelector('croft-book')!.live!.toJSON())),
    ).toBe(before);
    await page.reload();
    await page.getByRole('button', { name: 'Write it in the grid' }).click();
    await soon(() => stands(page)).toMatch(/^✓ Right/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  });
});

describe('a lesson that asks for a formula', () => {
  it('counts it among its answers, prints it with its key, dark and narrow without violations', async () => {
    const page = await open(`${DEMO}#until-the-potatoes-are-gone`, {
      viewport: { width: 360, height: 760 },
      colorScheme: 'dark',
    });
    await page.locator('croft-lesson-sheet table').waitFor();
    await soon(() => said(page.locator('croft-lesson .progress'))).toBe('0 of 7 right');
    await field(page).fill('on hand / use a week');
    await field(page).press('Enter');
    await soon(() => said(page.locator('croft-lesson .progress'))).toBe('1 of 7 right');
    expect(await said(page.locator('croft-lesson .paper .sheet'))).toContain('Formula for every row: =');
    expect(await said(page.locator('croft-lesson .paper .sheet'))).not.toContain('=On_hand/Use_a_week');
    expect(await said(page.locator('croft-lesson .paper .key'))).toContain('=On_hand/Use_a_week');
    expect(await axeViolations(page)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth),
    ).toBe(true);
  });
});
