import type { Page } from 'playwright-core';
import { expect, it, vi } from 'vitest';
import { ELEMENT_ENTRIES } from '../../components/package/entries.mjs';
import { axeViolations } from './elements-axe.js';
import { said } from './elements-make.js';
import { usePages } from './harness/pages.js';

// One walk through all pages: whatever comes late on a busy machine is waited for.
vi.setConfig({ testTimeout: 300_000 });

const pages = usePages();
const GUIDE = 'demo/guide';
const SOON = { timeout: 120_000 };

/** Brings everything on the page into sight once, and waits until what waited for that has come. */
const seeAll = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (const waiting of document.querySelectorAll('[data-later]')) {
      waiting.scrollIntoView();
      while (waiting.hasAttribute('data-later')) await new Promise(requestAnimationFrame);
    }
  });

/** What the tables of embedded sheets show, cell by cell; none while one of them is not there yet. */
const embedded = (page: Page): Promise<string[][]> =>
  page
    .locator('croft-embed')
    .evaluateAll((hosts) =>
      hosts.map((host) =>
        [...(host.shadowRoot?.querySelectorAll('tbody tr > *') ?? [])].map((cell) => cell.textContent ?? ''),
      ),
    );

it('the pages of the guide show what runs, and nothing goes wrong on them', async () => {
  const page = await pages.open(`${GUIDE}/functions.html`);
  page.setDefaultTimeout(120_000);
  const visit = (name: string) => page.goto(new URL(`./${name}.html`, page.url()).href);

  // Functions: by the keyboard alone, from the search to a figure of one's own.
  const reference = page.locator('croft-functions');
  await reference.getByLabel('Search').fill('jars per bushel');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('End');
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await reference.getByRole('heading', { name: /^JARS_PER_BUSHEL\(crop/ }).waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('peach');
  const value = reference.locator('croft-function-reference .says');
  await expect.poll(() => said(value), SOON).toMatch(/^[\d.⅓⅔]+ quart jars a bushel$/);
  const peaches = await said(value);
  await page.keyboard.type('x');
  await expect.poll(() => said(value), SOON).toMatch(/did you mean peach/);
  await reference.getByRole('button', { name: 'The example again' }).click();
  await expect.poll(() => said(value), SOON).toBe('15 quart jars a bushel');
  expect(peaches).not.toBe('15 quart jars a bushel');
  await page.locator('a[data-function="HENS_FOR"]').click();
  await reference.getByRole('heading', { name: /^HENS_FOR/ }).waitFor();
  expect(await axeViolations(page)).toEqual([]);

  // Ready sheets: each worked out where it stands.
  await visit('gallery');
  await seeAll(page);
  await expect
    .poll(async () => (await embedded(page)).map((cells) => cells.length > 10), SOON)
    .toEqual(Array.from({ length: 10 }, () => true));
  await expect
    .poll(async () => (await embedded(page)).flat().filter((text) => /^#|…$/.test(text)), SOON)
    .toEqual([]);
  const first = page.locator('.example').first();
  await first.getByText('The code to paste').click();
  await first.getByRole('button', { name: 'Copy: freezer list by age' }).click();
  await expect.poll(() => said(page.locator('#said')), SOON).toBe('Copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('<croft-embed sheet="freezer"');

  // Elements: every one of them is there and drawn.
  await visit('elements');
  await seeAll(page);
  for (const tag of Object.keys(ELEMENT_ENTRIES).filter((each) => each !== 'croft-book'))
    await page.locator(`.live ${tag}`).first().waitFor({ state: 'visible' });

  // For developers: what is shown is what the button does.
  await visit('developer');
  const button = page.getByRole('button', { name: 'Take two quarts' });
  // Pressed again where its script was not there yet.
  await expect
    .poll(() => button.click().then(() => said(page.locator('#told'))), { ...SOON, interval: 500 })
    .toMatch(/\d+ cells show something else/);

  // For blogs: the frame is as high as what it shows.
  await visit('blogger');
  await page.waitForFunction(() => document.querySelector('iframe')?.height !== '400');

  await visit('family');
  await page.locator('croft-season').getByRole('heading', { name: 'The growing year' }).waitFor();
  await visit('problems');
  await page.getByLabel('Search the codes').fill('storage full');
  await expect.poll(() => page.locator('tbody tr:visible').count(), SOON).toBeLessThan(4);
  for (const name of ['index', 'columns', 'units', 'changes']) {
    await visit(name);
    await page.getByRole('heading', { level: 1 }).waitFor();
  }
});
