import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll } from './elements-make.js';
import { usePages } from './harness/pages.js';
import { pagesIn } from './harness/pdf-pages.js';
import { openWeek, PAGE, weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 120_000 });

const pages = usePages();
const LISTS = '<croft-lists></croft-lists>';

const lines = (page: Page, list: string): Promise<string[]> =>
  saidByAll(page.locator(`croft-lists .${list} .text`));
const box = (page: Page, name: RegExp) => page.getByRole('checkbox', { name });

/** The page again, as after closing and opening it: what the browser keeps is all that stays. */
async function reload(page: Page, book = weekBook()): Promise<void> {
  await page.reload();
  await place(page, `<croft-book>${LISTS}</croft-book>`, book);
  await page.locator('croft-lists h2').waitFor();
}

describe('the lists of a week', () => {
  it('say what to bring up from each place, oldest first, what to buy and what to do ahead', async () => {
    const page = await openWeek(pages, LISTS);
    expect(await saidByAll(page.locator('croft-lists .bringUp h4'))).toEqual([
      'Cellar, low shelf',
      'Cellar, top shelf',
      'Chest freezer',
      'Pantry',
      'Root cellar',
    ]);
    // A stew of 2 cups takes one pint, the chili's quart the other two: all three of the older lot.
    expect(await lines(page, 'bringUp')).toEqual([
      '1 pint jar of green beans (canned)',
      '3 pint jars of tomatoes (canned)',
      '2 pint freezer bags of peas (frozen)',
      '¾ pound of black beans (dry goods)',
      '1 pound of carrots (cellared)',
    ]);
    expect(await lines(page, 'shopping')).toEqual(['1 eggs', '2 onions', '1 teaspoon of saffron']);
    expect(await lines(page, 'prep')).toEqual(['Black beans: soak overnight', 'Peas: thaw 1 day']);
    expect(await saidByAll(page.locator('croft-lists .prep h4'))).toEqual(['Mon, Feb 16', 'Tue, Feb 17']);
  });

  it('put each caution where it bears', async () => {
    const page = await openWeek(pages, LISTS);
    const lists = page.locator('croft-lists');
    expect(await said(lists.locator('.line', { hasText: 'green beans' }))).toContain(
      'Low-acid jar: check the seal',
    );
    expect(await said(lists.locator('.line', { hasText: 'pint jars of tomatoes' }))).toContain(
      'Past best quality',
    );
    expect(await said(lists.locator('.meals li li', { hasText: 'egg sauce' }))).toContain('Raw egg');
    expect(await said(lists.locator('.line', { hasText: 'carrots' }))).not.toMatch(
      /low-acid|past best|raw egg/i,
    );
    // What an opened jar leaves over is for the refrigerator.
    await page.evaluate(() => document.querySelector('croft-book')!.live!.set('week', 'm2', 'times', 1.5));
    await expect
      .poll(() => said(lists.locator('.line', { hasText: 'quart jar of tomatoes' })))
      .toMatch(/leaves 2 cups.*Once open: refrigerate/);
  });

  it('keep their ticks over a reload, week by week, and ask again when more is needed', async () => {
    const page = await openWeek(pages, LISTS);
    await box(page, /peas \(frozen\)/).check();
    await box(page, /onions/).check();
    expect(await said(page.locator('croft-lists .bringUp .left'))).toBe('4 of 5 left');
    await reload(page);
    expect(await box(page, /peas \(frozen\)/).isChecked()).toBe(true);
    expect(await box(page, /onions/).isChecked()).toBe(true);
    expect(await box(page, /carrots/).isChecked()).toBe(false);
    // Two guests on Wednesday: twice as many bags as were ticked; the onions are for Monday.
    await page.evaluate(() => document.querySelector('croft-book')!.live!.set('week', 'm3', 'shares', 4));
    const peas = page.locator('croft-lists .line', { hasText: '4 pint freezer bags of peas' });
    await peas.waitFor();
    expect(await peas.getByRole('checkbox').isChecked()).toBe(false);
    expect(await said(peas)).toContain('More than was ticked before');
    expect(await box(page, /onions/).isChecked()).toBe(true);
    // Fewer than were ticked stand fetched already.
    await page.evaluate(() => document.querySelector('croft-book')!.live!.set('week', 'm3', 'shares', 1));
    await expect.poll(() => box(page, /1 pint freezer bag of peas/).isChecked()).toBe(true);
  });

  it('say that ticks will not stay where the browser keeps nothing, and tick all the same', async () => {
    const page = await openWeek(pages, LISTS, { locale: 'en-US' });
    await page.addInitScript(() =>
      Object.defineProperty(window, 'localStorage', {
        get() {
          throw new DOMException('denied', 'SecurityError');
        },
      }),
    );
    await reload(page);
    await page.getByText('ticks are gone when it is closed', { exact: false }).waitFor();
    await box(page, /carrots/).check();
    expect(await said(page.locator('croft-lists .bringUp .left'))).toBe('4 of 5 left');
  });

  it('go from week to week, and teach where there is nothing', async () => {
    const page = await openWeek(pages, LISTS);
    const heading = page.locator('croft-lists h2');
    // On Sunday with no meal left, the week that comes.
    expect(await said(heading)).toBe('Week of Feb 16, 2026');
    await page.getByRole('button', { name: 'Week after' }).click();
    expect(await said(heading)).toBe('Week of Feb 23, 2026');
    await page.getByText('No meals are planned for these days.', { exact: false }).waitFor();
    expect(await page.locator('croft-lists').getAttribute('week')).toBe('2026-02-23');
    await page.getByRole('button', { name: 'Week before' }).click();
    await page.locator('croft-lists .meals', { hasText: 'Pease pudding' }).waitFor();
    await page.evaluate(() => document.querySelector('croft-lists')!.setAttribute('week', 'next week'));
    await page.getByRole('alert').getByText('is not a day', { exact: false }).waitFor();
  });

  it('are for a phone: big targets, nothing beyond the edge, no network', async () => {
    const page = await openWeek(pages, LISTS, { viewport: { width: 360, height: 780 }, hasTouch: true });
    const low = await page
      .locator('croft-lists .line label, croft-lists .top .button')
      .evaluateAll((all) =>
        all.map((each) => each.getBoundingClientRect().height).filter((height) => height < 44),
      );
    expect(low).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await page.context().setOffline(true);
    await page.getByText('1 pound of carrots').tap();
    expect(await box(page, /carrots/).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Week after' }).tap();
    await page.getByRole('button', { name: 'Week before' }).tap();
    expect(await box(page, /carrots/).isChecked()).toBe(true);
  });

  it.each(['light', 'dark'] as const)('have no faults that axe finds (%s)', async (colorScheme) => {
    const page = await openWeek(pages, `${LISTS}<croft-wish-list></croft-wish-list>`, { colorScheme });
    await page.locator('croft-wish-list h3').first().waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('on paper', () => {
  interface Printed {
    readonly html: string;
    readonly css: string;
  }

  /** What would be printed when `act` asks for it. */
  async function printed(page: Page, act: () => Promise<unknown>): Promise<Printed> {
    await page.evaluate(() => {
      const append = document.body.append.bind(document.body);
      document.body.append = (...nodes: (Node | string)[]) => {
        append(...nodes);
        for (const frame of nodes) {
          if (!(frame instanceof HTMLIFrameElement)) continue;
          frame.contentWindow!.print = () => {
            const { body, adoptedStyleSheets } = frame.contentDocument!;
            const css = adoptedStyleSheets.flatMap(({ cssRules }) =>
              [...cssRules].map(({ cssText }) => cssText),
            );
            document.body.dataset.printed = JSON.stringify({ html: body.outerHTML, css: css.join('\n') });
          };
        }
      };
    });
    await act();
    const text = await page.evaluate(() => document.body.dataset.printed ?? '');
    expect(text).not.toBe('');
    return JSON.parse(text) as Printed;
  }

  async function sheetsOf({ html, css }: Printed, format: 'A4' | 'Letter'): Promise<number> {
    const page = await pages.open(PAGE);
    await page.setContent(`<style>${css}</style>${html}`);
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    return pagesIn(pdf);
  }

  it('the lists of a full week stand on one page, A4 or Letter', async () => {
    const DAYS = ['16', '17', '18', '19', '20', '21', '22'];
    const book = weekBook((live) => {
      const dishes: object[] = [];
      const meals: object[] = [];
      DAYS.forEach((day, d) => {
        for (const meal of ['breakfast', 'midday', 'supper']) {
          const dish = `Dish ${d} ${meal}`;
          const foods = ['tomatoes', 'carrots', 'peas', `greens ${d}`, `herb ${d} ${meal}`];
          foods.forEach((food, i) => {
            dishes.push({
              dish,
              serves: i === 0 ? 2 : null,
              food,
              amount: 1,
              measure: 'cup',
              prep: i === 0 ? 'soak overnight' : null,
            });
          });
          meals.push({ date: `2026-02-${day}`, meal, dish });
        }
      });
      live.insertRows('dishes', dishes as never);
      live.insertRows('week', meals as never);
    });
    const page = await openWeek(pages, LISTS, { book });
    const paper = await printed(page, () => page.getByRole('button', { name: 'Print' }).click());
    expect(paper.html).toContain('herb 6 supper');
    expect(await sheetsOf(paper, 'A4')).toBe(1);
    expect(await sheetsOf(paper, 'Letter')).toBe(1);
  });

  it('ticked lines are struck out, and each line has a box', async () => {
    const page = await openWeek(pages, LISTS);
    await box(page, /carrots/).check();
    const paper = await printed(page, () => page.getByRole('button', { name: 'Print' }).click());
    const other = await pages.open(PAGE);
    await other.setContent(`<style>${paper.css}</style>${paper.html}`);
    const struck = await other
      .locator('.text')
      .evaluateAll((all) =>
        all
          .filter((each) => getComputedStyle(each).textDecorationLine === 'line-through')
          .map((each) => each.textContent),
      );
    expect(struck).toEqual(['1 pound of carrots (cellared)']);
    expect(await other.locator('input').count()).toBe(10);
  });

  it('labels hold food, way, day, place and the lot’s id, one for each jar that is left', async () => {
    const page = await openWeek(pages, '<croft-labels lots="l-tom-24, l-drybean"></croft-labels>');
    await page.locator('croft-labels .label').first().waitFor();
    const paper = await printed(page, () =>
      page.evaluate(() => document.querySelector('croft-labels')!.print()),
    );
    const other = await pages.open(PAGE);
    await other.setContent(`<style>${paper.css}</style>${paper.html}`);
    const labels = await saidByAll(other.locator('.label'));
    expect(labels).toHaveLength(4);
    expect(labels[2]).toMatch(/^Tomatoes\s*canned, pint jar Sep 1, 2024.*Cellar, top shelf l-tom-24 3\/3$/);
    // What is kept loose, nine pounds in one bin, has one label.
    expect(labels[3]).toMatch(/Black beans.*dry goods, pound.*Pantry l-drybean$/);
    expect(await sheetsOf(paper, 'A4')).toBe(1);
  });
});
