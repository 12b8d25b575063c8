import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll, tomatoes } from './elements-make.js';
import { usePages } from './harness/pages.js';

const PAGE = 'tests/browser/harness/pages/elements.html';
/** Pictures of the panel are put into this folder, where one is named. */
const SHOTS = process.env.CROFTSHEET_SHOTS;
const pages = usePages();

/** Shelf with a formula of Left × a price, and one that adds pounds to quart jars. */
const book = () =>
  tomatoes((live) => {
    live.addColumn('shelf', 'Price each');
    const price = live.columns('shelf').at(-1)!.id;
    live.apply({
      do: 'add column',
      sheet: 'shelf',
      column: 'picked',
      before: null,
      title: 'Picked',
      as: { type: 'number', measure: 'pound' },
    });
    live.addColumn('shelf', 'Worth', { formula: '=Left*Price_each' });
    live.addColumn('shelf', 'Jars of it', {
      formula: '=ROUND(Picked/POUNDS_PER_JAR("tomato","quart")+WEEKS_OF_SUPPLY(Left,2)*0,1)+Picked',
    });
    const [row] = live.rowIds('shelf');
    live.set('shelf', row!, price, 3.2);
    live.set('shelf', row!, 'picked', 53);
  });

async function opened(column: string, options = {}): Promise<Page> {
  const page = await pages.open(PAGE, options);
  page.setDefaultTimeout(20_000);
  await place(page, '<croft-book><croft-working theme="auto"></croft-working></croft-book>', book());
  await page.waitForFunction(() => document.querySelector('croft-book')?.live?.needsEngine === false);
  await page.evaluate((title) => {
    const from = document.querySelector('croft-book')!;
    const live = from.live!;
    const id = live.columns('shelf').find((each) => each.title === title)!.id;
    from.select({ sheet: 'shelf', row: live.rowIds('shelf')[0]!, column: id });
  }, column);
  await page.locator('croft-working .answer').waitFor();
  return page;
}

describe('the working of a formula', () => {
  it('shows what goes in with the cells, the steps with their units, and what would change it', async () => {
    const page = await opened('Worth');
    const panel = page.locator('croft-working');
    expect(await said(panel.locator('.answer'))).toBe('64');
    expect(await saidByAll(panel.locator('.steps li'))).toEqual(['Left 20 quart jars × Price each 3.2 = 64']);
    expect(await said(panel.locator('.changes'))).toContain('whatever changes Left');
    expect(await said(panel.getByRole('status').first())).toMatch(
      /^Working of Worth, Tomatoes.*: 64, 1 step\.$/,
    );
  });

  it('leads to the cell that a number came from', async () => {
    const page = await opened('Worth');
    await page.evaluate(() => {
      document.addEventListener('croft-show', (event) => {
        document.title = JSON.stringify((event as CustomEvent).detail);
      });
    });
    await page.locator('croft-working').getByRole('button', { name: 'Left' }).press('Enter');
    expect(JSON.parse(await page.title())).toMatchObject({ sheet: 'shelf', column: 'left' });
    // The panel follows to the planning figure.
    await page.locator('croft-working h2', { hasText: 'Left' }).waitFor();
  });

  it.each([
    ['light', 1280],
    ['dark', 1280],
    ['light', 360],
    ['dark', 360],
  ] as const)(
    'says which units do not go together, and keeps to the page: %s, %i px',
    async (colorScheme, width) => {
      const page = await opened('Jars of it', { colorScheme, viewport: { width, height: 1000 } });
      const panel = page.locator('croft-working');
      expect(await said(panel.locator('.units'))).toMatch(/Units|adds/);
      expect(await panel.locator('.steps li.inside').count()).toBeGreaterThan(0);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await axeViolations(page)).toEqual([]);
      if (SHOTS)
        await page.screenshot({ path: `${SHOTS}/working-${colorScheme}-${width}.png`, fullPage: true });
    },
  );
});
