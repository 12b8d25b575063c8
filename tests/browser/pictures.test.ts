import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { usePages } from './harness/pages.js';

const PAGE = 'tests/browser/harness/pages/pictures.html';
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const pages = usePages();

/** The page of the tests before, begun anew; one of its own where it is to be dark, or of another width. */
async function open(query: string, options?: Parameters<typeof pages.open>[1]): Promise<Page> {
  const still = { reducedMotion: 'reduce' } as const;
  let page: Page;
  if (options) page = await pages.open(`${PAGE}?${query}`, { ...still, ...options });
  else {
    page = await pages.shared(PAGE, still);
    await page.mouse.move(0, 0);
    await page.evaluate((search) => window.start(search), query);
  }
  await page.waitForFunction(() => window.book?.live);
  await page.locator('croft-runway, croft-season').first().locator('h2').waitFor();
  return page;
}

/** What breaks WCAG 2.2 A and AA, or axe's best practice, within an element. */
async function faults(page: Page, element: string, only?: readonly string[]): Promise<string[]> {
  await page.addScriptTag({ path: AXE });
  return page.evaluate(
    async ([name, rules]) => {
      const { axe } = window as unknown as {
        axe: {
          run(
            on: unknown,
            options: object,
          ): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
        };
      };
      const { violations } = await axe.run(
        { include: [[name]] },
        { preload: false, ...(rules && { runOnly: rules }) },
      );
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target }) => `${id}: ${JSON.stringify(target)}`),
      );
    },
    [element, only] as const,
  );
}

const foods = (page: Page) =>
  page.evaluate(() => {
    const live = window.book.live!;
    const sheet = live.sheetOfKind('foods')!;
    return live.rowIds(sheet).map((id) => {
      const of = (column: string) => live.value(sheet, id, column);
      return {
        id,
        food: of('food') as string,
        way: of('way') as string,
        out: of('runs_out_on') as string | null,
        harvest: of('next_harvest') as string | null,
        short: of('short_or_over') as number | string | null,
        weeks: of('weeks_of_supply') as number | string | null,
      };
    });
  });

const marks = (page: Page) => page.locator('croft-runway .rows [data-mark]');
const verdictOf = (page: Page, id: string) =>
  page.locator(`croft-runway [data-mark="${id}"] .verdict`).textContent();

describe('runway', () => {
  let page: Page;
  beforeEach(async () => {
    page = await open('show=runway');
  }, 60_000);

  it('draws each bar to the day on which the Foods sheet says that the food runs out', async () => {
    const days = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;
    const drawn = await page.evaluate(() =>
      [
        ...document.querySelector('croft-runway')!.shadowRoot!.querySelectorAll<HTMLElement>('.rows .mark'),
      ].map((mark) => {
        const middle = (part: string) => {
          const box = mark.querySelector(part)?.getBoundingClientRect();
          return box ? box.x + box.width / 2 : null;
        };
        return {
          id: mark.dataset.mark!,
          asOf: middle('line.as-of')!,
          end: middle('.end'),
          harvest: middle('.harvest'),
        };
      }),
    );
    let compared = 0;
    for (const { id, out, harvest } of await foods(page)) {
      const bar = drawn.find((each) => each.id === id);
      if (!bar || bar.end === null || bar.harvest === null || out === null || harvest === null) continue;
      // Pixels a day by the harvest's place; the end then lies where its days say, to a pixel.
      const perDay = (bar.harvest - bar.asOf) / (days(harvest) - days('2026-02-15'));
      const slack = 1 + (days(out) - days('2026-02-15')) / (days(harvest) - days('2026-02-15'));
      expect(Math.abs(bar.end - bar.asOf - perDay * (days(out) - days('2026-02-15'))), id).toBeLessThan(
        slack,
      );
      compared += 1;
    }
    expect(compared).toBeGreaterThan(50);
  });

  it('says what runs short and what is over, as the sheet has it', async () => {
    for (const { id, short } of await foods(page)) {
      if (
        typeof short !== 'number' ||
        (await marks(page)
          .and(page.locator(`[data-mark="${id}"]`))
          .count()) === 0
      )
        continue;
      const said = await verdictOf(page, id);
      if (short <= -0.05) expect(said).toMatch(/ short$/);
      else if (short >= 0.05) expect(said).toMatch(/ over$/);
      else expect(said).toMatch(/just enough|none over/);
    }
  });

  it('has every food once, those without a bar apart', async () => {
    const all = await foods(page);
    const shown = await page
      .locator('croft-runway [data-mark]')
      .evaluateAll((found) => found.map((each) => (each as HTMLElement).dataset.mark));
    expect([...shown].sort()).toEqual(all.map(({ id }) => id).sort());
    const apart = await page.locator('croft-runway section', { hasText: 'No use' }).textContent();
    expect(apart).toContain('Sage');
  });

  it('puts the short ones first; by name, and one way kept alone, where so asked', async () => {
    const standing = await marks(page).locator('.verdict').allTextContents();
    const lastShort = standing.map((text) => text.endsWith('short')).lastIndexOf(true);
    expect(standing.slice(0, lastShort + 1).every((text) => text.endsWith('short'))).toBe(true);
    await page.getByLabel('Order').selectOption('name');
    await page.getByLabel('Way kept', { exact: true }).selectOption('cellared');
    const names = await marks(page).locator('.name').allTextContents();
    const wanted = (await foods(page)).filter(({ way }) => way === 'cellared').map(({ food }) => food);
    expect(names.map((name) => name.replace(/\s+cellared\s*$/, '').trim())).toEqual(wanted.sort());
  });

  it('stands under headings where grouped', async () => {
    await page.getByLabel('Grouped by way kept').check();
    const headings = await page.locator('croft-runway h3.group').allTextContents();
    expect(headings.slice(0, 3)).toEqual(['canned', 'frozen', 'dried']);
  });

  it('takes one Tab stop, moves by arrows, and Enter shows the row of the Foods sheet', async () => {
    await page.getByRole('button', { name: 'Show as a table' }).focus();
    await page.keyboard.press('Tab');
    const focused = () =>
      page.evaluate(() => {
        const at = document.querySelector('croft-runway')!.shadowRoot!.activeElement as HTMLElement | null;
        return { mark: at?.dataset.mark ?? null, said: at?.textContent?.replace(/\s+/g, ' ').trim() ?? '' };
      });
    const first = await focused();
    const of = (await foods(page)).find(({ id }) => id === first.mark)!;
    expect(first.said.startsWith(`${of.food} ${of.way}`)).toBe(true);
    expect(first.said).toMatch(
      / short ?\. [\d.]+ weeks? .*, to .*\. [\d.]+ .* on hand, next (harvest|supply) /,
    );
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    const second = await focused();
    expect(second.mark).toBe(await marks(page).nth(1).getAttribute('data-mark'));
    await page.keyboard.press('End');
    expect((await focused()).mark).toBe(
      await page.locator('croft-runway [data-mark]').last().getAttribute('data-mark'),
    );
    await page.keyboard.press('Home');
    expect(await focused()).toEqual(first);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => window.shown)).toEqual([
      { sheet: 'foods', row: second.mark, column: 'weeks_of_supply' },
    ]);
    expect(await page.evaluate(() => window.book.selected)).toMatchObject({ row: second.mark });
    await page.keyboard.press('Tab');
    expect((await focused()).mark).toBeNull();
  });

  it('shows the row of a bar that is clicked', async () => {
    const bar = page.locator('croft-runway .rows [data-mark]').nth(4);
    const id = await bar.getAttribute('data-mark');
    await bar.locator('svg.plot').click();
    expect(await page.evaluate(() => window.shown)).toEqual([
      { sheet: 'foods', row: id, column: 'weeks_of_supply' },
    ]);
  });

  it('says the same as a table', async () => {
    const said = await marks(page).evaluateAll((found) =>
      found.map((each) => [
        (each as HTMLElement).dataset.mark,
        each.querySelector('.verdict')!.textContent!.trim(),
        /^[\d.,]+/.exec(each.querySelector('.lasts')!.textContent!.trim())?.[0],
      ]),
    );
    await page.getByRole('button', { name: 'Show as a table' }).click();
    const table = await page.locator('croft-runway tbody tr').evaluateAll((found) =>
      found.map((each) => {
        const cells = [...each.children].map((cell) => cell.textContent!.trim());
        return [(each as HTMLElement).dataset.row, cells[7], /^[\d.,]+/.exec(cells[3]!)?.[0]];
      }),
    );
    expect(table.slice(0, said.length)).toEqual(said);
    expect(table.length).toBe((await foods(page)).length);
  });

  it('follows the book: one more draw, and the bar is shorter; undone, it is as before', async () => {
    const id = (await foods(page)).find(({ food, way }) => food === 'Peaches' && way === 'canned')!.id;
    const bar = page.locator(`croft-runway [data-mark="${id}"]`);
    const before = await bar.textContent();
    const onHand = Number(/([\d.]+) quart jars on hand/.exec(before!)![1]);
    await page.evaluate(() => {
      const live = window.book.live!;
      live.insertRows(live.sheetOfKind('draws')!, [
        {
          date: '2026-02-14',
          food: 'Peaches',
          way: 'canned',
          amount: 4,
          container: 'quart jar',
          purpose: 'gift',
        },
      ]);
    });
    await expect.poll(() => bar.textContent()).toContain(`${onHand - 4} quart jars on hand`);
    await page.evaluate(() => window.book.undo());
    await expect.poll(() => bar.textContent()).toBe(before);
  });

  it('keeps the keyboard on its food when the order changes under it', async () => {
    const id = (await foods(page)).find(({ food, way }) => food === 'Peaches' && way === 'canned')!.id;
    await page.locator(`croft-runway [data-mark="${id}"]`).focus();
    await page.evaluate((row) => {
      const live = window.book.live!;
      live.set(live.sheetOfKind('foods')!, row, 'own_use', 40);
    }, id);
    await expect.poll(() => marks(page).first().getAttribute('data-mark')).toBe(id);
    const at = await page.evaluate(
      () => (document.querySelector('croft-runway')!.shadowRoot!.activeElement as HTMLElement)?.dataset.mark,
    );
    expect(at).toBe(id);
  });
});

describe('a book with no foods', () => {
  it('is told what to fill in', async () => {
    const page = await open('show=runway&book=none');
    await page
      .locator('croft-runway [part="empty"]', { hasText: 'Write one row for each thing you keep' })
      .waitFor();
  });
});

describe('season', () => {
  it('says what to fill in while there are no plantings', async () => {
    const page = await open('show=season&book=none');
    const empty = page.locator('croft-season [part="empty"]');
    await empty.filter({ hasText: 'Write one row in Beds for each crop' }).waitFor();
    await empty.filter({ hasText: 'last spring frost' }).waitFor();
  });

  it('draws harvests and the frost dates on their days, and says their chance', async () => {
    const page = await open('show=season&plantings');
    const places = await page.evaluate(() => {
      const root = document.querySelector('croft-season')!.shadowRoot!;
      const mark = [...root.querySelectorAll('.mark')].find((each) =>
        each.textContent!.includes('Green bean bush'),
      )!;
      const left = (part: string) => mark.querySelector(part)!.getBoundingClientRect().left;
      return {
        asOf: left('line.as-of'),
        last: left('line.last-frost'),
        first: left('line.first-frost'),
        harvest: left('.reap'),
      };
    });
    // Days after 15 February: 24 May is the 98th, 28 July the 163rd, 18 September the 215th.
    const perDay = (places.first - places.asOf) / 215;
    expect(Math.abs((places.last - places.asOf) / perDay - 98)).toBeLessThan(1);
    expect(Math.abs((places.harvest - places.asOf) / perDay - 163)).toBeLessThan(1);
    const words = await page.locator('croft-season [part="frosts"]').textContent();
    expect(words).toContain('Last spring frost May 24: frost comes later one year in two.');
    await page.evaluate(() =>
      window.book.live!.apply({ do: 'set setting', setting: 'last_frost_chance', typed: 10 }),
    );
    await page.locator('croft-season [part="frosts"]', { hasText: 'one year in ten' }).waitFor();
  });

  it('moves by arrows and shows the row of a planting', async () => {
    const page = await open('show=season&plantings');
    await page.locator('croft-season [data-mark][tabindex="0"]').focus();
    expect(await page.locator('croft-season [data-mark][tabindex="0"]').count()).toBe(1);
    await page.keyboard.press('ArrowDown');
    // Nobody presses on before seeing where the keyboard is.
    await page.locator('croft-season [data-mark="beds/bed7"][tabindex="0"]').waitFor();
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.evaluate(() => window.shown))
      .toEqual([{ sheet: 'beds', row: 'bed7', column: 'start_on' }]);
  });

  it('says the same days as a table, and gathers them by week', async () => {
    const page = await open('show=season&plantings');
    await page.getByRole('button', { name: 'Show as a table' }).click();
    const tomato = page.locator('croft-season table').first().locator('tr', { hasText: 'Tomato' });
    expect((await tomato.locator('time').allTextContents()).slice(0, 4)).toEqual([
      'Apr 5, 2026',
      'May 31, 2026',
      'Aug 12, 2026',
      'Sep 18, 2026',
    ]);
    const week = page.locator('croft-season table').last().locator('tr', { hasText: 'May 25, 2026' });
    expect(await week.textContent()).toContain('Tomato, paste');
  });
});

describe.each([
  ['light', undefined],
  // What else could be amiss does not hang on colours.
  ['dark', ['color-contrast']],
] as const)('in a %s scheme', (colorScheme, rules) => {
  it('nothing is amiss by axe-core, and nothing sticks out at any width', async () => {
    const page = await open('plantings', { colorScheme, viewport: { width: 360, height: 900 } });
    for (const view of ['drawn', 'as a table']) {
      for (const element of ['croft-runway', 'croft-season']) {
        if (view === 'as a table')
          await page.locator(element).getByRole('button', { name: 'Show as a table' }).click();
        await page
          .locator(`${element} ${view === 'drawn' ? 'h2' : 'table'}`)
          .first()
          .waitFor();
        expect(await faults(page, element, rules), `${element} ${view}`).toEqual([]);
      }
      for (const width of [360, 768, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        const widest = await page.evaluate(() =>
          [document.documentElement, ...document.querySelectorAll('croft-runway, croft-season')].map(
            (each) => each.scrollWidth,
          ),
        );
        expect(Math.max(...widest), `${view} at ${width} px`).toBeLessThanOrEqual(width);
      }
      await page.setViewportSize({ width: 360, height: 900 });
    }
  });
});

describe('in print', () => {
  it('has no controls, no tint of a dark page, and every bar within the page', async () => {
    const page = await open('show=runway', { colorScheme: 'dark', viewport: { width: 718, height: 1000 } });
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('croft-runway [part="controls"]').isVisible()).toBe(false);
    const { ink, widest } = await page.evaluate(() => {
      const root = document.querySelector('croft-runway')!.shadowRoot!;
      const plots = [...root.querySelectorAll('.rows svg.plot')].map((each) => each.getBoundingClientRect());
      return {
        ink: getComputedStyle(root.querySelector('.name')!).color,
        widest: Math.max(...plots.map(({ right }) => right)),
      };
    });
    expect(ink).toBe('rgb(0, 0, 0)');
    expect(widest).toBeLessThan(718);
  });
});
