import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { said, saidByAll } from './elements-make.js';
import { usePages } from './harness/pages.js';
import { hasWords, pagesIn } from './harness/pdf-pages.js';
import { chooseRow, drawsOf, left, openWeek } from './week-make.js';

vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();

async function openDialog(
  sheet: string,
  action: string,
  options: Parameters<typeof openWeek>[2] = {},
): Promise<{ page: Page; dialog: Locator }> {
  const page = await openWeek(pages, `<croft-sheet sheet="${sheet}" view="edit"></croft-sheet>`, options);
  await page.locator('croft-grid-pane:not(.waiting)').waitFor();
  await page.getByRole('group', { name: 'Tools' }).getByRole('button', { name: action }).click();
  const dialog = page.locator('dialog[open]');
  await dialog.waitFor();
  return { page, dialog };
}

const toCellarTop = async (dialog: Locator): Promise<void> => {
  await dialog.getByRole('button', { name: 'Place after' }).click();
  await dialog.getByText('Place 2 of 5').waitFor();
};

const undo = (page: Page): Promise<unknown> =>
  page.evaluate(() => document.querySelector('croft-book')!.undo());

describe('taking from the shelf', () => {
  it('writes a draw by a tap or a line, says what is left, and takes it back', async () => {
    const { page, dialog } = await openDialog('shelf', 'Take from the shelf');
    const before = await drawsOf(page);
    const which = dialog.getByLabel('What is taken', { exact: true });
    await which.fill('green beans 2');
    await page.keyboard.press('Enter');
    await dialog.getByText('10 pint jars left.', { exact: false }).waitFor();
    expect(await left(page, 'l-bean')).toBe(10);
    await dialog.getByRole('button', { name: /^Peas/ }).click();
    await dialog.getByRole('button', { name: 'One more of Peas, frozen' }).click();
    await dialog.getByRole('button', { name: 'Take', exact: true }).click();
    await expect.poll(() => left(page, 'l-pea')).toBe(28);
    // Two wait for which is meant; nothing is written, and what was typed stands.
    await which.fill('bean 1');
    await page.keyboard.press('Enter');
    await dialog.getByText('More than one food is called that.', { exact: false }).waitFor();
    expect([await which.inputValue(), await drawsOf(page)]).toEqual(['bean 1', before + 2]);
    await dialog.getByRole('button', { name: 'Take back: 2 pint jars', exact: false }).click();
    await expect.poll(() => left(page, 'l-bean')).toBe(12);
    await dialog.getByRole('button', { name: /^Green beans/ }).click();
    await dialog
      .getByRole('note', { name: 'Food safety' })
      .getByText('Check every seal', { exact: false })
      .waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('counting the shelf', () => {
  it('goes by the keyboard alone, shows what it changes, and posts a place as one step', async () => {
    const { page, dialog } = await openDialog('shelf', 'Count the shelf');
    const before = await drawsOf(page);
    await toCellarTop(dialog);
    // The first lot of the place has the keyboard.
    await page.keyboard.type('2');
    await dialog.getByText('1 pint jar fewer than written.').waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('17,5');
    await dialog.getByText('2½ quart jars fewer than written.').waitFor();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.type('3');
    await dialog.getByText('as written', { exact: true }).waitFor();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    expect(await drawsOf(page)).toBe(before);
    await page.keyboard.press('Enter');
    await dialog.getByText('2 lots counted, 1 differs.', { exact: false }).waitFor();
    await dialog.getByText('Place 3 of 5').waitFor();
    expect([await left(page, 'l-tom-24'), await left(page, 'l-tom-25')]).toEqual([3, 17.5]);
    expect(await drawsOf(page)).toBe(before + 1);
    await undo(page);
    expect([await left(page, 'l-tom-25'), await drawsOf(page)]).toEqual([20, before]);
  });

  it('keeps apart what was not eaten, and refuses more than were put up', async () => {
    const { page, dialog } = await openDialog('shelf', 'Count the shelf');
    await toCellarTop(dialog);
    await page.keyboard.type('4');
    await dialog.getByText('but only 3 pint jars were put up', { exact: false }).waitFor();
    await dialog.getByRole('button', { name: /^Post/ }).click();
    // It does not post, and goes back to the number that is wrong.
    await expect.poll(() => page.evaluate(() => document.activeElement !== document.body)).toBe(true);
    expect(await left(page, 'l-tom-24')).toBe(3);
    await page.keyboard.type('1');
    await dialog.getByLabel('not eaten', { exact: false }).check();
    await dialog.getByRole('button', { name: /^Post/ }).click();
    await expect.poll(() => left(page, 'l-tom-24')).toBe(1);
    const last = await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const row = live.rowIds('draws').at(-1)!;
      return ['amount', 'purpose', 'lot', 'not_use'].map((column) => live.value('draws', row, column));
    });
    expect(last).toEqual([2, 'count', 'l-tom-24', true]);
  });

  it('asks for what was not seen for months, until it was', async () => {
    const { page, dialog } = await openDialog('shelf', 'Count the shelf');
    await dialog.getByText('foods were not seen for months', { exact: false }).click();
    const asked = () => saidByAll(dialog.locator('.unseen-foods li button'));
    expect(await asked()).toContain('Sage (dried)');
    await dialog.getByRole('button', { name: 'Sage (dried)' }).click();
    await dialog.getByText('Place 4 of 5').waitFor();
    await dialog.getByRole('button', { name: /^2 half-pint jars of Sage \(dried\), as written$/ }).click();
    await dialog.getByRole('button', { name: /^Post/ }).click();
    await expect.poll(asked).not.toContain('Sage (dried)');
    expect(await left(page, 'l-sage')).toBe(2);
  });

  it('does not throw counts away unasked', async () => {
    const { page, dialog } = await openDialog('shelf', 'Count the shelf', {
      viewport: { width: 360, height: 780 },
    });
    await toCellarTop(dialog);
    await page.keyboard.type('1');
    await page.keyboard.press('Escape');
    await dialog.getByText('1 counted and not posted yet.').waitFor();
    await dialog.getByRole('button', { name: 'Post them' }).click();
    await expect.poll(() => left(page, 'l-tom-24')).toBe(1);
    await dialog.waitFor({ state: 'hidden' });
  });

  it('is for a phone: a number pad, and nothing beyond the edge', async () => {
    const { page, dialog } = await openDialog('shelf', 'Count the shelf', {
      viewport: { width: 360, height: 780 },
      hasTouch: true,
    });
    const fields = dialog.locator('input[data-lot]');
    expect(await fields.first().getAttribute('inputmode')).toBe('decimal');
    // No field has taken the keyboard, which would cover half of the shelf.
    expect(await dialog.locator('input:focus').count()).toBe(0);
    const over = await dialog.evaluate((each) => each.scrollWidth - each.clientWidth);
    expect(over).toBeLessThanOrEqual(0);
    expect(await axeViolations(page)).toEqual([]);
    // One fewer than is written, then two more, by taps alone.
    const lot = (await fields.first().getAttribute('data-lot'))!;
    const written = (await left(page, lot)) as number;
    const line = dialog.locator('.line').first();
    const fewer = line.getByRole('button', { name: 'One fewer of' });
    for (const size of Object.values((await fewer.boundingBox())!).slice(2))
      expect(size).toBeGreaterThanOrEqual(44);
    await fewer.tap();
    expect(await fields.first().inputValue()).toBe(String(written - 1));
    for (let i = 0; i < 2; i++) await line.getByRole('button', { name: 'One more of' }).tap();
    expect(await fields.first().inputValue()).toBe(String(written + 1));
    for (let i = 0; i < 2; i++) await fewer.tap();
    await dialog.getByRole('button', { name: 'Post this one' }).tap();
    await dialog.getByRole('button', { name: 'Close' }).tap();
    expect(await left(page, lot)).toBe(written - 1);
    // What was said of the counting goes once it is taken back; the tool for that is in sight.
    const tools = page.getByRole('group', { name: 'Tools' });
    const said = page.locator('croft-sheet .status .said');
    await expect.poll(() => said.textContent()).toContain('1 lot counted');
    await tools.evaluate((each) => each.scrollTo({ left: 900 }));
    const undoTool = tools.getByRole('button', { name: 'Undo' });
    expect((await undoTool.boundingBox())!.x).toBeGreaterThanOrEqual(0);
    await undoTool.tap();
    await expect.poll(() => said.textContent()).toContain('Undone');
    expect(await said.textContent()).not.toContain('counted');
    expect(await left(page, lot)).toBe(written);
  });
});

describe('labels', () => {
  it('are for the chosen lot, or all new ones', async () => {
    const page = await openWeek(pages, '<croft-sheet sheet="shelf" view="edit"></croft-sheet>');
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await chooseRow(page, 1);
    await page.getByRole('button', { name: 'Labels' }).click();
    const dialog = page.locator('dialog[open]');
    await expect.poll(() => dialog.locator('.label').count()).toBe(3);
    await dialog.getByLabel('New since').fill('2025-10-01');
    await expect
      .poll(() => saidByAll(dialog.locator('.label .food')))
      .toEqual([expect.stringContaining('Black beans'), expect.stringContaining('Carrots')]);
    await dialog.getByRole('button', { name: 'Choose none' }).click();
    expect(await dialog.getByRole('button', { name: 'Print' }).isDisabled()).toBe(true);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('on paper', () => {
  it('an open dialog is printed alone, wherever it stands; once it is closed, the sheet', async () => {
    const page = await openWeek(
      pages,
      '<style>@media print { nav { display: none } }</style><nav><details open><summary>Shelf</summary><croft-sheet sheet="shelf" view="edit"></croft-sheet></details></nav><div style="height: 3000px">Behind</div>',
    );
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    const alone = pagesIn(await page.pdf({ format: 'A4' }));
    expect(alone).toBeGreaterThan(2);
    await page.getByRole('button', { name: 'Labels' }).click();
    const dialog = page.locator('dialog[open]');
    await dialog.getByLabel('New since').fill('2025-06-01');
    await expect.poll(() => dialog.locator('.label').count()).toBe(60);
    // All 66, three across, also those for which there is no room on the screen; and nothing else.
    const margin = { top: '10mm', left: '10mm', right: '10mm', bottom: '10mm' };
    const paper = await page.pdf({ format: 'A4', margin });
    // Seven rows on each; were those at the foot cut, three sheets would do.
    expect([pagesIn(paper), hasWords(paper)]).toEqual([4, true]);
    // Paper is narrower than the window: the page may fold up what the dialog stands in.
    await page.evaluate(() => {
      for (const [type, open] of [
        ['beforeprint', false],
        ['afterprint', true],
      ] as const)
        addEventListener(type, () => document.querySelector('details')?.toggleAttribute('open', open));
    });
    expect(hasWords(await page.pdf({ format: 'A4' }))).toBe(true);
    await page.keyboard.press('Escape');
    expect(pagesIn(await page.pdf({ format: 'A4' }))).toBe(alone);
  });

  it('what a meal needs and uses up stands under it, over the whole width', async () => {
    const page = await openWeek(pages, '<croft-sheet sheet="week"></croft-sheet>');
    const row = page.locator('croft-reading-view tbody tr').first();
    await row.waitFor();
    const heads = () => saidByAll(page.locator('croft-reading-view thead .title'));
    const before = await heads();
    expect(before).toContain('Needs from the shelf');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const under = page.locator('croft-reading-view tr.under').first();
    await expect.poll(() => said(under)).toMatch(/^Needs from the shelf: .*In stock or short: in stock/);
    expect(await heads()).not.toContain('Needs from the shelf');
    expect(await heads()).toContain('Dish');
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await expect.poll(heads).toEqual(before);
  });
});

describe('the wish list', () => {
  it('tells what was wished for and what stayed, over Foods', async () => {
    const { page, dialog } = await openDialog('foods', 'Wish list');
    const group = (name: string) => dialog.getByRole('region', { name });
    expect(await said(group('Wished for'))).toContain('saffron 1 teaspoon short for 1 meal');
    expect(await said(group('Stayed on the shelf'))).toContain('Sage dried not touched since Jun 20, 2025');
    expect(await axeViolations(page)).toEqual([]);
  });
});
