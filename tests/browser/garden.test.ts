import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { said, saidByAll } from './elements-make.js';
import { choose, edit, gardenBook, PAGE, tomatoFoods, undo, valuesOf } from './garden-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

const pages = usePages();
const open = async (options?: OpenOptions): Promise<Page> => {
  const page = await (options ? pages.open(PAGE, options) : pages.emptied(PAGE));
  page.setDefaultTimeout(20_000);
  return page;
};

const batch = {
  date: '2026-08-20',
  food: 'Tomatoes',
  way: 'canned',
  container: 'quart jar',
  pounds_in: 'tomato 45',
};

describe('posting a batch', () => {
  it('puts what was filled, less failed seals, on the Shelf as one step of undo', async () => {
    const page = await open();
    const sheet = await edit(
      page,
      'batches',
      gardenBook({ foods: tomatoFoods, batches: [{ ...batch, filled: 15, failed: 1 }] }),
    );
    await choose(page, 'Tomatoes');
    await page.getByRole('button', { name: 'Post the batch' }).click();
    await sheet.getByText('On the Shelf: 14 × Tomatoes', { exact: false }).waitFor();
    expect(await valuesOf(page, 'shelf', 'count')).toEqual([14]);
    expect(await valuesOf(page, 'shelf', 'put_up_on')).toEqual(['2026-08-20']);
    await page.getByRole('button', { name: 'Post the batch' }).click();
    await sheet.getByText('stands on the Shelf already', { exact: false }).waitFor();
    expect(await valuesOf(page, 'shelf', 'count')).toEqual([14]);
    await undo(page);
    expect(await valuesOf(page, 'shelf', 'count')).toEqual([]);
    expect(await valuesOf(page, 'batches', 'lot')).toEqual([null]);
  });

  it('says what is missing, and that a row is to be chosen', async () => {
    const page = await open();
    const sheet = await edit(page, 'batches', gardenBook({ foods: tomatoFoods, batches: [batch] }));
    await page.getByRole('button', { name: 'Post the batch' }).click();
    await sheet.getByText('No batch is chosen.', { exact: false }).waitFor();
    await choose(page, 'Tomatoes');
    await page.getByRole('button', { name: 'Post the batch' }).click();
    await sheet.getByText('Write how many were filled.', { exact: false }).waitFor();
    expect(await valuesOf(page, 'shelf', 'count')).toEqual([]);
  });

  it('stands among the cautions for canning, and nowhere gives a time', async () => {
    const page = await open();
    const beans = { ...batch, food: 'Green beans', pounds_in: 'snap bean 14' };
    const sheet = await edit(
      page,
      'batches',
      gardenBook({ foods: tomatoFoods, batches: [{ ...batch, filled: 15 }, beans] }),
    );
    const care = page.getByRole('complementary', { name: 'Food safety' });
    await care.getByText('More on food safety').click();
    const words = await said(care);
    expect(words).toContain('current tested process');
    expect(words).toContain('only in a pressure canner');
    expect(words).toContain('need acid added to every jar');
    expect(words).toContain('Check every seal');
    expect(words).toContain('Flat metal lids seal reliably once');
    expect(await sheet.evaluate((each) => each.shadowRoot!.textContent)).not.toMatch(/\d+\s*min/);
  });
});

const beds = [
  { crop: 'tomato', variety: 'Amish Paste', plants: 20 },
  { crop: 'snap bean', plants: 10 },
] as const;
const bothFoods = [
  ...tomatoFoods,
  {
    food: 'Green beans',
    way: 'canned',
    counted_in: 'quart jar',
    comes_from: 'ground',
    crops: 'snap bean 2',
    own_use: 1,
    fresh_from: '07-20',
    fresh_to: '09-10',
  },
] as const;

describe('sharing the ground', () => {
  it('shows what is wanted and given up before it plans anything, and plans it as one step', async () => {
    const page = await open();
    await edit(page, 'beds', gardenBook({ foods: bothFoods, beds }, 60));
    const wanted = (await valuesOf(page, 'beds', 'plants_wanted')) as number[];
    await page.getByRole('button', { name: 'Share the ground' }).click();
    const dialog = page.getByRole('dialog', { name: 'Share the ground' });
    await dialog.getByText('Given up in all', { exact: false }).first().waitFor();
    expect(await said(dialog)).toContain('there are 60.');
    expect(await valuesOf(page, 'beds', 'plants')).toEqual([20, 10]);
    expect(await saidByAll(dialog.locator('[data-row] th'))).toEqual(['tomato, Amish Paste', 'snap bean']);
    const would = (await saidByAll(dialog.locator('[data-row] td:nth-child(4)'))).map(Number);
    expect(would.every((plants, i) => plants < wanted[i]!)).toBe(true);
    await dialog.getByText('How it is worked out').click();
    expect(await said(dialog)).toContain('smallest share of any crop');
    expect(await axeViolations(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Plan it so' }).click();
    await page.getByText('Plants planned in 2 plantings.', { exact: false }).waitFor();
    expect(await valuesOf(page, 'beds', 'plants')).toEqual(would);
    await undo(page);
    expect(await valuesOf(page, 'beds', 'plants')).toEqual([20, 10]);
  });

  it('changes nothing when left, and says what it lacks', async () => {
    const page = await open();
    await edit(page, 'beds', gardenBook({ foods: bothFoods, beds }));
    await page.getByRole('button', { name: 'Share the ground' }).click();
    const dialog = page.getByRole('dialog', { name: 'Share the ground' });
    await dialog.getByText('does not say how much ground there is', { exact: false }).waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await valuesOf(page, 'beds', 'plants')).toEqual([20, 10]);
  });
});

describe('the sowing calendar', () => {
  it('lists by week what to start, sow and set out, and prints it alone', async () => {
    const page = await open({});
    await page.addInitScript(() => {
      window.print = () => window.top!.postMessage({ printed: document.body.textContent }, '*');
    });
    await page.reload();
    await edit(page, 'beds', gardenBook({ foods: bothFoods, beds }));
    const start = String((await valuesOf(page, 'beds', 'start_on'))[0]);
    await page.getByRole('button', { name: 'Sowing calendar' }).click();
    const dialog = page.getByRole('dialog', { name: 'Sowing calendar' });
    await dialog.getByText('tomato, Amish Paste', { exact: false }).first().waitFor();
    const first = dialog.locator('.weeks > li').first();
    const monday = await first.locator('time').getAttribute('datetime');
    expect(monday! <= start && Date.parse(start) - Date.parse(monday!) < 7 * 86_400_000).toBe(true);
    expect(new Date(`${monday}T00:00:00Z`).getUTCDay()).toBe(1);
    expect(await said(first)).toContain('Start indoors');
    expect(await said(dialog.locator('.weeks'))).toContain('Sow or plant where it grows snap bean');
    expect(await axeViolations(page)).toEqual([]);
    const printed = page.evaluate(
      () =>
        new Promise<string>((resolve) =>
          addEventListener('message', ({ data }) => data?.printed && resolve(data.printed)),
        ),
    );
    await dialog.getByRole('button', { name: 'Print' }).click();
    const paper = await printed;
    expect(paper).toContain('Sowing calendar, Test book');
    expect(paper).toContain('tomato, Amish Paste');
    expect(paper).not.toContain('Close');
  });

  it('says what would fill it', async () => {
    const page = await open();
    await edit(page, 'beds', gardenBook({ beds: [{ variety: 'no crop yet' }] }));
    await page.getByRole('button', { name: 'Sowing calendar' }).click();
    await page.getByText('No planting of Beds has a day', { exact: false }).waitFor();
  });
});

describe('turning the year', () => {
  const harvest = [{ date: '2025-08-20', crop: 'tomato', amount: 160, unit: 'pound', plants: 20 }] as const;

  it('tells what the season taught, closes it in one step, and undo brings all back', async () => {
    const page = await open();
    await edit(page, 'harvest', gardenBook({ foods: tomatoFoods, beds, harvest }));
    await page.getByRole('button', { name: 'Turn the year' }).click();
    const dialog = page.getByRole('dialog', { name: 'Turn the year' });
    await dialog.getByText('tomato, yield', { exact: false }).waitFor();
    // 160 lb from 20 plants.
    expect(await said(dialog.locator('tbody td').first())).toBe('8');
    expect(await valuesOf(page, 'harvest', 'amount')).toEqual([160]);
    expect(await axeViolations(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Close the season of 2025' }).click();
    await page.getByText('The season of 2025 is closed.', { exact: false }).waitFor();
    expect(await valuesOf(page, 'harvest', 'amount')).toEqual([]);
    expect(await valuesOf(page, 'facts', 'pounds')).toEqual([160]);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await valuesOf(page, 'harvest', 'amount')).toEqual([160]);
    expect(await valuesOf(page, 'facts', 'pounds')).toEqual([]);
  });

  it('is refused while nothing came in', async () => {
    const page = await open();
    const sheet = await edit(page, 'facts', gardenBook({ facts: [{ figure: 'tomato, yield' }] }));
    await page.getByRole('button', { name: 'Turn the year' }).click();
    await sheet.getByText('There is no season to close', { exact: false }).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
  });
});

describe('rows that a sheet begins with', () => {
  it('lists the published figures in use on Facts, each with its source, once', async () => {
    const page = await open();
    const sheet = await edit(page, 'facts', gardenBook({ foods: bothFoods, beds }));
    await sheet.locator('.empty').getByRole('button', { name: 'Add the figures in use' }).click();
    await sheet.getByText('figures added.', { exact: false }).waitFor();
    const figures = await valuesOf(page, 'facts', 'figure');
    expect(figures).toContain('tomato, yield');
    expect(figures).toContain('snap bean, days to maturity');
    expect(figures).not.toContain('snap bean, weeks indoors');
    for (const source of await valuesOf(page, 'facts', 'source')) expect(source).toMatch(/\w{4}/);
    await page.getByRole('button', { name: 'Add the figures in use' }).click();
    await sheet.getByText('not here already', { exact: false }).waitFor();
    expect(await valuesOf(page, 'facts', 'figure')).toEqual(figures);
    await undo(page);
    expect(await valuesOf(page, 'facts', 'figure')).toEqual([]);
  });

  it('lists the lids, jars and what recipes take on Supplies, less what is there', async () => {
    const page = await open();
    const sheet = await edit(
      page,
      'supplies',
      gardenBook({ foods: tomatoFoods, supplies: [{ item: 'Vinegar', on_hand: 3 }] }),
    );
    await page.getByRole('button', { name: 'Add the usual items' }).click();
    await sheet.getByText('items added.', { exact: false }).waitFor();
    const items = await valuesOf(page, 'supplies', 'item');
    expect(items.slice(0, 4)).toEqual(['Vinegar', 'lids', 'rings', 'quart jar']);
    expect(items).not.toContain('vinegar');
    // What the batches still to be put up take, not what is to be put up: there is no batch.
    expect((await valuesOf(page, 'supplies', 'wanted'))[1]).toBe(0);
  });
});
