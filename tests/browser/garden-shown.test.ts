import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll } from './elements-make.js';
import { edit, gardenBook, PAGE, tomatoFoods } from './garden-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

const pages = usePages();
const open = async (options?: OpenOptions): Promise<Page> => {
  const page = await (options ? pages.open(PAGE, options) : pages.emptied(PAGE));
  page.setDefaultTimeout(20_000);
  return page;
};

const ROOM = '<croft-book><croft-room></croft-room></croft-book>';
/** 60 quarts at 1 a week; of plums 50 more than last to their season; the shelves hold 100. */
const shelf = [
  { food: 'Tomatoes', way: 'canned', container: 'quart jar', count: 40, put_up_on: '2025-09-01' },
  { food: 'Plums', way: 'canned', container: 'quart jar', count: 70, put_up_on: '2025-09-01' },
] as const;
const foods = [
  ...tomatoFoods,
  {
    food: 'Plums',
    way: 'canned',
    counted_in: 'quart jar',
    own_use: 0.5,
    own_target: 20,
    fresh_from: '08-25',
    fresh_to: '09-10',
  },
] as const;

describe('room over the year', () => {
  it('says that it does not fit, and what to eat first; a choice selects its row of Foods', async () => {
    const page = await open();
    await place(page, ROOM, gardenBook({ shelf, foods }));
    const room = page.locator('croft-room');
    // 110 jars stand there, less the 2.5 that are eaten in the first week, and 100 fit.
    await room.getByText('It does not fit now: 8 quart jars too many', { exact: false }).waitFor();
    await room.getByRole('heading', { name: 'In the freezer' }).waitFor();
    await page.evaluate(() =>
      document.addEventListener('croft-show', (event) => {
        document.title = JSON.stringify((event as CustomEvent).detail);
      }),
    );
    await room.getByRole('button', { name: 'Plums' }).click();
    const detail = JSON.parse(await page.title()) as { sheet: string; row: string };
    const food = await page.evaluate(
      ({ sheet, row }) => document.querySelector('croft-book')!.live!.value(sheet, row, 'food'),
      detail,
    );
    expect(food).toBe('Plums');
  });

  it('follows the book, and says when all fits or no room is written', async () => {
    const page = await open();
    await place(page, ROOM, gardenBook({ shelf, foods }));
    const room = page.locator('croft-room');
    await room.getByText('does not fit now', { exact: false }).waitFor();
    const set = (typed: number | null) =>
      page.evaluate(
        (value) =>
          document
            .querySelector('croft-book')!
            .live!.apply({ do: 'set setting', setting: 'shelf_room', typed: value }),
        typed,
      );
    await set(400);
    await room.getByText('there is room for 400', { exact: false }).waitFor();
    await set(null);
    await room.getByText('see “Shelf room” on the Household sheet', { exact: false }).waitFor();
  });

  it('is read week by week with the arrow keys, or as a table', async () => {
    const page = await open();
    await place(page, ROOM, gardenBook({ shelf, foods }));
    const weeks = page.locator('[data-storey="shelf"] .week');
    await weeks.first().waitFor();
    await weeks.first().focus();
    await page.keyboard.press('ArrowRight');
    const second = page.locator('[data-storey="shelf"] .week:focus');
    expect(await second.getAttribute('aria-label')).toMatch(/^Week of Feb 8, 2026: 105 quart jars, 5 more/);
    expect(await said(page.locator('.readout').first())).toContain('Week of Feb 8, 2026');
    await page.getByRole('button', { name: 'Show as a table' }).click();
    const rows = page.locator('croft-room tbody tr');
    expect(await rows.count()).toBe(await page.locator('croft-room tbody time').count());
    expect(await said(rows.nth(1))).toContain('Feb 8, 2026 105 −5');
  });

  it.each(['light', 'dark'] as const)(
    'is clean by axe-core, and no wider than a phone (%s)',
    async (colorScheme) => {
      const page = await open({ colorScheme, viewport: { width: 360, height: 740 } });
      await page.evaluate(() => {
        document.documentElement.style.setProperty('color-scheme', 'light dark');
        document.body.style.background = 'light-dark(#fcfbf7, #171c21)';
      });
      await place(page, ROOM, gardenBook({ shelf, foods }));
      await page.locator('croft-room .week').first().waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    },
  );
});

describe('the source of a published figure', () => {
  const beds = [{ crop: 'snap bean', plants: 10 }] as const;
  const batches = [
    {
      date: '2026-08-20',
      food: 'Green beans',
      way: 'canned',
      container: 'quart jar',
      pounds_in: 'snap bean 14',
    },
  ] as const;

  it.each([
    ['beds', 'yield', /Yield, usual season (published:|worked out from) .*(Extension|University|Guide)/],
    ['beds', 'harvest_from', /Days to maturity published: \w+/],
    ['batches', 'headspace', /published: .*USDA/],
    ['batches', 'pressure', /published: .*USDA/],
  ])('is one click away on %s, at %s', async (kind, column, source) => {
    const page = await open();
    await place(
      page,
      `<croft-book><croft-sheet sheet="${kind}"></croft-sheet></croft-book>`,
      gardenBook({ foods: tomatoFoods, beds, batches }),
    );
    await page.locator(`[data-column="${column}"] button`).click();
    const working = page.locator('croft-working table');
    await working.waitFor();
    expect(await said(working)).toMatch(source);
  });

  it('stands in its own column on Facts', async () => {
    const page = await open();
    await place(
      page,
      '<croft-book><croft-sheet sheet="facts"></croft-sheet></croft-book>',
      gardenBook({ facts: [{ figure: 'tomato, yield' }] }),
    );
    await page.locator('[data-column="source"]').waitFor();
    expect(await said(page.locator('td[data-column="source"]'))).toMatch(/Extension|University|USDA/);
    await page.locator('td[data-column="published"] button').click();
    expect(await said(page.locator('croft-working h2'))).toContain('tomato, yield');
  });
});

describe('a published suggestion', () => {
  it('is named above Foods, leads to its source, and gives way to the household’s own figure', async () => {
    const page = await open();
    await edit(
      page,
      'foods',
      gardenBook({
        household: [{ name: 'Ada', share: 1 }],
        foods: [{ food: 'Green beans', way: 'canned', counted_in: 'quart jar', crops: 'snap bean' }],
      }),
    );
    const note = page.getByRole('complementary', { name: 'Published suggestions' });
    await note.getByRole('button', { name: 'Green beans, canned' }).click();
    const working = page.locator('croft-working');
    await working.getByText('published:', { exact: false }).first().waitFor();
    await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      live.set('foods', live.rowIds('foods')[0]!, 'own_use', 1);
    });
    await note.waitFor({ state: 'detached' });
  });
});

describe('what it takes', () => {
  it('reckons hens, meat, flour and beans with range and source, and refuses what is no amount', async () => {
    const page = await open();
    await edit(page, 'household', gardenBook({ household: [{ name: 'Ada', share: 1 }] }));
    const panel = page.locator('croft-what-it-takes');
    expect(await panel.getByLabel('Eggs a week').isVisible()).toBe(false);
    await panel.getByText('What it takes').click();
    await panel.getByLabel('Eggs a week').fill('24');
    const card = (title: string) => panel.getByRole('region', { name: title });
    // The example of HENS_FOR: 24 eggs a week want 7 hens.
    await card('Hens for the eggs').getByText('7 (', { exact: false }).waitFor();
    expect(await said(card('Hens for the eggs'))).toMatch(
      /worked out from University of Florida.*=HENS_FOR\(24\)/,
    );
    await panel.getByLabel('Animal', { exact: true }).selectOption('chicken');
    await panel.getByLabel('Live weight').fill('5');
    // The example of MEAT_FROM: a chicken of 5 lb gives 3.5.
    expect(await saidByAll(card('What an animal brings').locator('dd strong'))).toContain('3.5');
    // A bushel of 60 lb of wheat gives 42 lb of white flour, by the example of FLOUR_FROM.
    expect(await said(card('Flour from grain'))).toContain('42 pounds');
    expect(await said(card('Dry food, cooked'))).toMatch(/6 cups .*published: University/);
    await panel.getByLabel('Eggs a week').fill('many');
    await card('Hens for the eggs').getByText('Write a number', { exact: false }).waitFor();
    await panel.getByLabel('Live weight').fill('1e12');
    expect(await said(card('What an animal brings'))).not.toMatch(/Infinity|NaN|3\.5/);
    expect(await axeViolations(page)).toEqual([]);
  });
});
