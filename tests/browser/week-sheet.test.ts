import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { said, saidByAll } from './elements-make.js';
import { usePages } from './harness/pages.js';
import { chooseRow, drawsOf, left, openWeek, weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();
const SIZES = [
  { width: 1280, height: 850 },
  { width: 360, height: 780 },
] as const;

async function openSheet(options: Parameters<typeof openWeek>[2] = {}): Promise<Page> {
  const page = await openWeek(
    pages,
    '<croft-sheet sheet="week" view="edit"></croft-sheet><croft-lists></croft-lists>',
    options,
  );
  await page.locator('croft-grid-pane:not(.waiting)').waitFor();
  return page;
}

async function start(page: Page, action: string): Promise<Locator> {
  await page.getByRole('group', { name: 'Tools' }).getByRole('button', { name: action }).click();
  const dialog = page.locator('dialog[open]');
  await dialog.waitFor();
  return dialog;
}

const noteUnder = (page: Page): Locator => page.locator('croft-sheet .said');

const meals = (page: Page): Promise<[string, string | null][]> =>
  page.evaluate(() => {
    const live = document.querySelector('croft-book')!.live!;
    return live
      .rowIds('week')
      .map((row): [string, string | null] => [
        `${live.value('week', row, 'date')} ${live.value('week', row, 'meal')}`,
        live.value('week', row, 'dish') as string | null,
      ]);
  });

describe.each(SIZES)('a week at $width × $height', (viewport) => {
  it('is planned, listed, marked done, and taken back', async () => {
    const page = await openSheet({ viewport });
    const plan = await start(page, 'Plan meals');
    await plan.getByLabel('midday').check();
    await plan.getByText('Adds 8 meals, without a dish yet: Mon, Feb 16 to Sun, Feb 22.').waitFor();
    await plan.getByRole('button', { name: 'Write it' }).click();
    await expect.poll(async () => (await meals(page)).length).toBe(14);

    const tomatoes = page.locator('croft-lists .line', { hasText: '3 pint jars of tomatoes' });
    await tomatoes.waitFor();
    await chooseRow(page, 1);
    const mark = await start(page, 'Mark done');
    expect(await saidByAll(mark.locator('.draws li'))).toEqual([
      '2 cups of tomatoes (canned), from 1 pint jar put up Sep 1, 2024, Cellar, top shelf',
      '1 pound of carrots (cellared), from 1 pound put up Oct 12, 2025, Root cellar',
    ]);
    const before = await drawsOf(page);
    await mark.getByRole('button', { name: 'Mark done and post 2 draws' }).click();
    await expect
      .poll(() => said(noteUnder(page)))
      .toBe('1 meal marked done, 2 draws posted. Undo takes it back.');
    expect([await left(page, 'l-tom-24'), await left(page, 'l-carrot'), await drawsOf(page)]).toEqual([
      2,
      39,
      before + 2,
    ]);
    // What was fetched for Monday is off the lists.
    await page.locator('croft-lists .line', { hasText: '2 pint jars of tomatoes' }).waitFor();

    const again = await start(page, 'Mark done');
    await again.getByText('marked done already', { exact: false }).waitFor();
    expect(await again.getByRole('button').allTextContents()).toEqual([expect.stringContaining('Close')]);
    await again.getByRole('button', { name: 'Close' }).click();
    expect(await drawsOf(page)).toBe(before + 2);

    await page.getByRole('button', { name: 'Undo' }).click();
    await tomatoes.waitFor();
    expect([await left(page, 'l-tom-24'), await left(page, 'l-carrot'), await drawsOf(page)]).toEqual([
      3,
      40,
      before,
    ]);
  });

  it('takes suggestions, only those ticked', async () => {
    const page = await openSheet({ viewport });
    const dialog = await start(page, 'Suggest dishes');
    await dialog.getByText('1 dish suggested.').waitFor();
    expect(await said(dialog.locator('.takes li'))).toMatch(/^Saturday supper: .+ (Eats|Uses|All in stock)/);
    await dialog.getByRole('checkbox').uncheck();
    expect(await dialog.getByRole('button', { name: /^Write/ }).count()).toBe(0);
    await dialog.getByRole('checkbox').check();
    expect((await meals(page)).at(-1)).toEqual(['2026-02-21 supper', null]);
    await dialog.getByRole('button', { name: 'Write 1 dish' }).click();
    await expect.poll(async () => (await meals(page)).at(-1)?.[1]).toBeTruthy();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await meals(page)).at(-1)?.[1]).toBeNull();
  });
});

describe('marking done', () => {
  it('takes what went otherwise into the draws and onto the row, as one step', async () => {
    const page = await openSheet();
    await chooseRow(page, 1);
    const dialog = await start(page, 'Mark done');
    await dialog.getByText('It went otherwise').click();
    await dialog.getByLabel('Amount ×').fill('2');
    await dialog.getByLabel('Amount ×').press('Tab');
    await expect
      .poll(() => saidByAll(dialog.locator('.draws li')))
      .toEqual([expect.stringMatching(/^4 cups of tomatoes/), expect.stringMatching(/^2 pounds of carrots/)]);
    await dialog.getByLabel('Dish that was cooked').selectOption('Pease pudding');
    await expect
      .poll(() => saidByAll(dialog.locator('.draws li')))
      .toEqual([expect.stringMatching(/^4 pint freezer bags of peas/)]);
    await dialog.getByRole('button', { name: /^Mark done and post 1 draw$/ }).click();
    await expect.poll(() => left(page, 'l-pea')).toBe(26);
    expect((await meals(page))[0]![1]).toBe('Pease pudding');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => left(page, 'l-pea')).toBe(30);
    expect((await meals(page))[0]![1]).toBe('Stew');
  });

  it('of the week posts each meal once, says what is short, and leaves open ones alone', async () => {
    const page = await openSheet();
    await chooseRow(page, 1);
    const dialog = await start(page, 'Mark done');
    await dialog.getByLabel('Week of Feb 16, 2026').check();
    await dialog.getByText('Not on the shelf, so not posted: 1 teaspoon of saffron').waitFor();
    await dialog.getByText('1 meal has no dish and stay', { exact: false }).waitFor();
    const button = dialog.getByRole('button', { name: /^Mark done and post \d+ draws$/ });
    const n = Number(/\d+/.exec(await said(button))![0]);
    const before = await drawsOf(page);
    await button.click();
    await expect.poll(() => drawsOf(page)).toBe(before + n);
    expect([await left(page, 'l-tom-24'), await left(page, 'l-bean'), await left(page, 'l-pea')]).toEqual([
      0, 11, 28,
    ]);
    const again = await start(page, 'Mark done');
    await again.getByLabel('Week of Feb 16, 2026').check();
    await again.getByRole('button', { name: 'Close' }).click();
    expect(await drawsOf(page)).toBe(before + n);
  });

  it('is offered where someone ticked Done by hand', async () => {
    const page = await openSheet();
    await page.evaluate(() => document.querySelector('croft-book')!.live!.set('week', 'm1', 'done', true));
    await chooseRow(page, 1);
    const strip = page.locator('croft-sheet .urged');
    await strip.getByText('nothing was taken off the shelf', { exact: false }).waitFor();
    await strip.getByRole('button', { name: 'Mark done' }).click();
    await page.locator('dialog[open]').getByRole('button', { name: 'Mark done and post 2 draws' }).click();
    await expect.poll(() => left(page, 'l-tom-24')).toBe(2);
    await strip.waitFor({ state: 'detached' });
  });
});

describe('planning', () => {
  it('copies the week before, with weekends left loose', async () => {
    const page = await openSheet({ book: weekBook((live) => live.set('week', 'm6', 'dish', 'Stew')) });
    const dialog = await start(page, 'Plan meals');
    await dialog.getByLabel('The week before, again').check();
    await dialog.getByRole('button', { name: 'Week after' }).click();
    await dialog.getByText('Adds 6 meals: Mon, Feb 23 to Sat, Feb 28.').waitFor();
    await dialog.getByLabel('Leave Saturdays and Sundays').check();
    await dialog.getByText('Adds 6 meals, 1 of them without a dish: Mon, Feb 23 to Sat, Feb 28.').waitFor();
    await dialog.getByRole('button', { name: 'Write it' }).click();
    await expect
      .poll(async () => (await meals(page)).slice(6, 8))
      .toEqual([
        ['2026-02-23 supper', 'Stew'],
        ['2026-02-24 supper', 'Chili'],
      ]);
  });

  it('repeats some weeks in turn', async () => {
    const page = await openSheet();
    const dialog = await start(page, 'Plan meals');
    await dialog.getByLabel('Some weeks, in turn').check();
    await dialog.getByRole('button', { name: 'Week after' }).click();
    await dialog.getByLabel('How many weeks').fill('1');
    await dialog.getByLabel('How many rounds').fill('3');
    await dialog.getByLabel('How many rounds').press('Tab');
    await dialog.getByText('Adds 18 meals', { exact: false }).waitFor();
    await dialog.getByRole('button', { name: 'Write it' }).click();
    await expect.poll(async () => (await meals(page)).at(-2)).toEqual(['2026-03-13 supper', 'Saffron rice']);
  });

  it('writes guests and days away by meal', async () => {
    const page = await openSheet();
    await chooseRow(page, 2);
    const dialog = await start(page, 'Plan meals');
    await dialog.getByLabel('Guests, and days away').check();
    await dialog.getByLabel('Shares').fill('2.5');
    await dialog.getByLabel('Shares').press('Tab');
    await dialog.getByText('1 meal with other shares at the table. The whole table is 2.').waitFor();
    await dialog.getByRole('button', { name: 'Write it' }).click();
    const of = (column: string) =>
      page.evaluate((each) => document.querySelector('croft-book')!.live!.value('week', 'm2', each), column);
    await expect.poll(() => of('shares')).toBe(4.5);
    const away = await start(page, 'Plan meals');
    await away.getByLabel('Guests, and days away').check();
    await away.getByLabel('Who').selectOption('everyone is away');
    await away.getByRole('button', { name: 'Write it' }).click();
    await expect.poll(() => of('skipped')).toBe(true);
  });

  it('opens the suppers of a week that has none, and suggests for them', async () => {
    const book = weekBook((live) => live.removeRows('week', live.rowIds('week')));
    const page = await openWeek(pages, '<croft-sheet sheet="week" view="edit"></croft-sheet>', { book });
    // An empty sheet offers the same first step.
    await page.locator('croft-sheet .empty').getByRole('button', { name: 'Plan meals' }).waitFor();
    const dialog = await start(page, 'Suggest dishes');
    await dialog.getByRole('button', { name: 'Open a row for each supper' }).click();
    await dialog.locator('.takes li').first().waitFor();
    expect(await dialog.locator('.takes li').count()).toBeGreaterThan(3);
    await dialog.getByRole('button', { name: /^Write \d dishes$/ }).click();
    await expect
      .poll(async () => (await meals(page)).filter(([, dish]) => dish !== null).length)
      .toBeGreaterThan(3);
  });
});

it('the dialogs of the week have no faults that axe finds', async () => {
  const page = await openSheet({ colorScheme: 'dark' });
  await page.evaluate(() => document.querySelector('croft-book > croft-lists')!.remove());
  await chooseRow(page, 1);
  for (const action of ['Plan meals', 'Suggest dishes', 'Lists', 'Mark done']) {
    const dialog = await start(page, action);
    if (action === 'Suggest dishes') await dialog.locator('.takes li').first().waitFor();
    if (action === 'Mark done') await dialog.getByText('It went otherwise').click();
    expect(await axeViolations(page), action).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  }
});
