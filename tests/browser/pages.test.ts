import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import type { BookDoc } from '../../src/book/index.js';
import { axeInBothLights, axeViolations } from './elements-axe.js';
import { said, saidByAll } from './elements-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';

// Several loads of a whole page, each of many modules: more than the usual time on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const DEMO = 'demo/index.html';
const pages = usePages();

async function open(path = DEMO, options?: OpenOptions): Promise<Page> {
  const page = await pages.open(path, options);
  page.setDefaultTimeout(30_000);
  return page;
}

const gridOpen = (page: Page): Promise<void> =>
  page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane:not(.waiting)').waitFor();

const saved = (page: Page): Promise<void> =>
  page.locator('[role=tabpanel]:not([hidden])').getByText('Saved', { exact: true }).waitFor();

/** One edit as a person makes it: the note of the shelf's first lot. */
const noteOf = (page: Page, note?: string): Promise<unknown> =>
  page.evaluate((text) => {
    const live = document.querySelector('croft-book')!.live!;
    const sheet = live.sheetOfKind('shelf')!;
    const row = live.rowIds(sheet)[0]!;
    if (text !== undefined) live.set(sheet, row, 'note', text);
    return live.value(sheet, row, 'note');
  }, note);

const titleOf = (page: Page): Promise<string> => said(page.getByRole('heading', { level: 1 }));

describe('the demo', () => {
  it('opens on a shelf that plans itself, with a tab for each sheet', async () => {
    const page = await open();
    await gridOpen(page);
    expect(await titleOf(page)).toBe('Tamarack Bench');
    const tabs = await saidByAll(page.getByRole('tab'));
    expect(tabs.slice(0, 3)).toEqual(['Shelf', 'Draws', 'Foods']);
    for (const sheet of ['Week', 'Beds', 'Harvest', 'Batches', 'Supplies', 'Facts', 'Pictures'])
      expect(tabs).toContain(sheet);
    await page.getByRole('tab', { name: 'Shelf', selected: true }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('tab', { name: 'Draws', selected: true }).waitFor();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Home');
    await page.getByRole('tab', { name: 'Shelf', selected: true }).waitFor();
    await page.getByRole('tab', { name: 'Household' }).click();
    await page.getByLabel('Figures for the day').waitFor();
    // A plan of months opens at the week to come: the figures are for a Sunday.
    await page.getByRole('tab', { name: 'Week', exact: true }).click();
    await gridOpen(page);
    const inSight = () =>
      page
        .locator('[role=tabpanel]:not([hidden]) .ht_clone_inline_start tbody td')
        .evaluateAll((cells) =>
          cells
            .filter((each) => each.getBoundingClientRect().bottom < innerHeight)
            .map((each) => each.textContent),
        );
    await expect.poll(inSight).toContain('Feb 16, 2026');
    // The table to read does, too, and what stands far below in the grid is found by its words.
    await page.getByRole('button', { name: 'Read', exact: true }).click();
    const first = () =>
      page.locator('[role=tabpanel]:not([hidden]) croft-reading-view tbody th').evaluateAll((days) => {
        const head = days[0]!.closest('table')!.tHead!.querySelector('th')!.getBoundingClientRect().bottom;
        return days.find((each) => each.getBoundingClientRect().top > head - 2)?.textContent;
      });
    await expect.poll(first).toBe('Feb 16, 2026');
    await page.goBack();
    await page.goBack();
    await page.getByRole('tab', { name: 'Shelf', selected: true }).waitFor();
    await page.getByRole('button', { name: 'Find', exact: true }).click();
    await page.keyboard.type('kale');
    await expect.poll(inSight).toContain('Kale');
  });

  it('speaks German when it is chosen, all around the book too, and its tools stand in one line', async () => {
    const page = await open();
    await gridOpen(page);
    const lines = () =>
      page
        .locator('croft-sheet')
        .first()
        .evaluate((sheet) => {
          const tools = [...sheet.shadowRoot!.querySelectorAll('.tools .tool')];
          return new Set(tools.map((each) => Math.round(each.getBoundingClientRect().top))).size;
        });
    expect(await lines()).toBe(1);
    await page.locator('.top').getByLabel('Language').selectOption('de');
    await page.getByRole('button', { name: 'Eigenes Buch beginnen' }).click();
    await page.getByLabel('Wer isst am Tisch mit?').waitFor();
    const around = await page.locator('croft-demo').evaluate((demo) => {
      const own = [...demo.querySelectorAll(':not(option, h1)')].filter(
        (each) => !each.closest('croft-sheet'),
      );
      const words = own.flatMap((each) => [
        ...[...each.childNodes].filter((node) => node.nodeType === 3).map((node) => node.nodeValue!.trim()),
        ...['aria-label', 'title', 'placeholder'].map((name) => each.getAttribute(name) ?? ''),
      ]);
      return [...new Set(words)].filter((each) => each !== '');
    });
    expect(around.length).toBeGreaterThan(50);
    const english = /\b(?:the|of|and|your|book|sheets?|copy|open|look|place|foods|many)\b/i;
    expect(around.filter((each) => english.test(each) && each !== 'About this book')).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Vorrat', selected: true }).waitFor();
    expect(await lines()).toBe(1);
    await page.reload();
    await page.getByRole('button', { name: '+ Blatt' }).waitFor();
  });

  it('computes every sheet again when the day is set to another', async () => {
    const page = await open(`${DEMO}#household`);
    const months = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        const shelf = live.sheetOfKind('shelf')!;
        return live.value(shelf, live.rowIds(shelf)[0]!, 'months_kept') as number;
      });
    await page.getByLabel('Figures for the day').waitFor();
    const before = await months();
    const day = await page.getByLabel('Figures for the day').inputValue();
    await page.getByLabel('Figures for the day').fill(`${Number(day.slice(0, 4)) + 1}${day.slice(4)}`);
    await page.keyboard.press('Tab');
    await expect.poll(months).toBe(before + 12);
    await page.getByRole('heading', { level: 1 }).click();
    await page.keyboard.press('Control+z');
    await expect.poll(months).toBe(before);
  });

  it('keeps an edit over a reload, and says saved', async () => {
    const page = await open();
    await gridOpen(page);
    await noteOf(page, 'behind the plums');
    await saved(page);
    await page.reload();
    await gridOpen(page);
    expect(await noteOf(page)).toBe('behind the plums');
  });

  it('keeps what two tabs write, and shows it in both', async () => {
    const page = await open();
    await gridOpen(page);
    const other = await pages.openBeside(page, DEMO);
    await gridOpen(other);
    await noteOf(page, 'from the first');
    await other.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const sheet = live.sheetOfKind('shelf')!;
      live.set(sheet, live.rowIds(sheet)[1]!, 'note', 'from the second');
    });
    await expect.poll(() => noteOf(other)).toBe('from the first');
    await page.reload();
    await gridOpen(page);
    const both = await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const sheet = live.sheetOfKind('shelf')!;
      return [0, 1].map((i) => live.value(sheet, live.rowIds(sheet)[i]!, 'note'));
    });
    expect(both).toEqual(['from the first', 'from the second']);
  });

  it('takes many lots line after line, and takes one back', async () => {
    const page = await open();
    await gridOpen(page);
    const rows = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        return live.rowIds(live.sheetOfKind('shelf')!).length;
      });
    const before = await rows();
    await page.getByRole('button', { name: 'Add lots' }).click();
    await page.keyboard.type('West wall');
    await page.getByLabel('Way kept').selectOption('canned');
    await page.getByLabel('Container').selectOption('pint jar');
    await page.getByLabel('Food and how many').fill('plums 12');
    await page.keyboard.press('Enter');
    await page.keyboard.type('3 1/2 quinces');
    await page.keyboard.press('Enter');
    await page.keyboard.type('12');
    await page.keyboard.press('Enter');
    await page.getByText('names no food', { exact: false }).waitFor();
    expect(await rows()).toBe(before + 2);
    const last = await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const sheet = live.sheetOfKind('shelf')!;
      const row = live.rowIds(sheet).at(-1)!;
      return ['food', 'count', 'container', 'place'].map((column) => live.value(sheet, row, column));
    });
    expect(last).toEqual(['quinces', 3.5, 'pint jar', 'West wall']);
    await page.getByRole('button', { name: 'Take back' }).first().click();
    expect(await rows()).toBe(before + 1);
    await page.getByLabel('Food and how many').fill('quince jelly 8 half-pints');
    await page.keyboard.press('Enter');
    await page.getByText('Foods does not list quince jelly, canned', { exact: false }).waitFor();
    await page.getByRole('listitem').getByRole('button', { name: 'Add it to Foods' }).first().click();
    const listed = () =>
      page.evaluate(() => {
        const live = document.querySelector('croft-book')!.live!;
        const foods = live.sheetOfKind('foods')!;
        const row = live.rowIds(foods).at(-1)!;
        return ['food', 'way', 'counted_in'].map((column) => live.value(foods, row, column));
      });
    expect(await listed()).toEqual(['quince jelly', 'canned', 'half-pint jar']);
    await page.getByRole('button', { name: 'Done' }).click();
    await page.locator('croft-grid-pane td.current', { hasText: 'plums' }).first().waitFor();
  });

  it('shows the working of a figure chosen in the grid', async () => {
    const page = await open(`${DEMO}#foods`);
    await gridOpen(page);
    await page
      .locator('croft-grid-pane td', { hasText: /^\d.* quart jars$/ })
      .first()
      .click();
    const working = page.locator('croft-working');
    await working.getByRole('heading', { level: 2 }).waitFor();
    expect(await said(working.getByRole('heading', { level: 2 }))).toContain('On hand');
  });

  it('offers to rename a food wherever else it stands, once Foods calls it otherwise', async () => {
    const page = await open(`${DEMO}#foods`);
    await gridOpen(page);
    const lots = (name: string) =>
      page.evaluate((food) => {
        const live = document.querySelector('croft-book')!.live!;
        return live.rowIds('shelf').filter((row) => live.value('shelf', row, 'food') === food).length;
      }, name);
    const cell = page.locator('croft-grid-pane .ht_clone_inline_start td', { hasText: /^Peaches$/ }).first();
    const before = await lots('Peaches');
    expect(before).toBeGreaterThan(0);
    await cell.click();
    await page.keyboard.type('Clingstone peaches');
    await page.keyboard.press('Enter');
    const offer = page.getByRole('status', { name: 'A food has another name' });
    await offer.getByText(`Shelf (${before})`, { exact: false }).waitFor();
    await offer.getByRole('button', { name: 'Rename it there too' }).click();
    await page.getByText('everywhere now. Undo takes it back.', { exact: false }).waitFor();
    expect(await offer.isVisible()).toBe(false);
    expect(await lots('Clingstone peaches')).toBe(before);
    await page.getByRole('button', { name: /^Undo/ }).filter({ visible: true }).first().click();
    await expect.poll(() => lots('Peaches')).toBe(before);
  });

  it('prints every row as a table, from the grid too', async () => {
    const page = await open(`${DEMO}#draws`);
    await gridOpen(page);
    const rows = await page.evaluate(
      () => document.querySelector('croft-book')!.live!.rowIds('draws').length,
    );
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    await expect
      .poll(() =>
        page.locator('[role=tabpanel]:not([hidden]) croft-reading-view tbody tr:not(.under)').count(),
      )
      .toBe(rows);
    expect(await page.locator('croft-grid-pane').first().isVisible()).toBe(false);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.locator('croft-reading-view').waitFor({ state: 'detached' });
  });

  it('takes a sheet of one’s own, with a column and a formula', async () => {
    const page = await open();
    await gridOpen(page);
    await page.getByRole('button', { name: '+ Sheet' }).click();
    await page.getByRole('dialog').getByLabel('Title').fill('Eggs');
    await page.getByRole('button', { name: 'Add the sheet' }).click();
    await page.getByRole('tab', { name: 'Eggs', selected: true }).waitFor();
    const panel = page.getByRole('tabpanel', { name: 'Eggs' });
    await panel.getByText('An empty sheet.', { exact: false }).waitFor();
    await panel.locator('.empty').getByRole('button', { name: 'Add a column' }).click();
    await panel.getByLabel('Title').fill('Half a dozen');
    await panel.getByLabel('Formula for every row').fill('=6*2');
    await panel.getByRole('button', { name: 'Add the column' }).click();
    await panel.getByRole('button', { name: 'Write the first row' }).click();
    await panel.locator('croft-grid-pane td', { hasText: /^12$/ }).waitFor();
  });
});

describe('the pictures of the demo', () => {
  const picture = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

  it('are loaded when they are looked at, each by itself', async () => {
    const page = await open();
    await gridOpen(page);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.reload();
    await gridOpen(page);
    await page.waitForLoadState('networkidle');
    const drawn = () => asked.filter((url) => /croft-(runway|season|room)|d3-scale/.test(url));
    expect(drawn()).toEqual([]);
    await picture(page, 'Pictures');
    await page.locator('croft-runway .mark').first().waitFor();
    expect(drawn().some((url) => url.includes('croft-runway'))).toBe(true);
    expect(drawn().some((url) => /croft-(season|room)/.test(url))).toBe(false);
    await picture(page, 'Room');
    await page.locator('croft-room .week').first().waitFor();
    await picture(page, 'The growing year');
    await page.locator('croft-season [part="chart"]').waitFor();
    await page.reload();
    await page.locator('croft-season [part="chart"]').waitFor();
  });

  it('lead to the row behind what is drawn', async () => {
    const page = await open(`${DEMO}#pictures`);
    const all = [
      ['How long it lasts', 'croft-runway', 'Foods', 'weeks_of_supply'],
      ['The growing year', 'croft-season', 'Beds', 'start_on'],
      ['Room', 'croft-room', 'Foods', 'short_or_over'],
    ] as const;
    for (const [name, element, sheet, column] of all) {
      await page.getByRole('tab', { name: 'Pictures' }).click();
      await picture(page, name);
      const mark = page.locator(`${element} button.mark`).first();
      await mark.waitFor();
      const words = await said(mark);
      await mark.click();
      await page.getByRole('tab', { name: sheet, selected: true }).waitFor();
      await gridOpen(page);
      const selected = () =>
        page.evaluate(() => {
          const book = document.querySelector('croft-book')!;
          const { sheet, row, column } = book.selected!;
          const of = (id: string) => book.live!.value(sheet, row, id);
          return { name: of('food') ?? of('crop'), column };
        });
      await expect.poll(async () => (await selected()).column).toBe(column);
      expect(words.startsWith(String((await selected()).name)), name).toBe(true);
      // The keyboard is on that very cell: the next key moves on from it.
      await expect
        .poll(() => page.locator('[role=tabpanel]:not([hidden]) td.current').count())
        .toBeGreaterThan(0);
    }
  });
});

describe('copies and books', () => {
  const SHELF_TITLE = 'A copy from elsewhere';

  const chooseFile = async (page: Page, text: string): Promise<void> => {
    await page.locator('#file').setInputFiles({
      name: 'copy.croft.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    });
  };

  it('saves a copy, and opens it beside the book', async () => {
    const page = await open();
    await gridOpen(page);
    await noteOf(page, 'in the copy');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a copy' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/^tamarack-bench-\d{4}-\d\d-\d\d\.croft\.json$/);
    const book = JSON.parse(readFileSync((await file.path())!, 'utf8')) as BookDoc;
    await noteOf(page, 'after the copy');
    // A copy with a title that is taken gets one that tells it from the other.
    await chooseFile(page, JSON.stringify(book));
    await expect.poll(() => titleOf(page)).toBe('Tamarack Bench (copy)');
    await chooseFile(page, JSON.stringify({ ...book, title: SHELF_TITLE }));
    await expect.poll(() => titleOf(page)).toBe(SHELF_TITLE);
    expect(await noteOf(page)).toBe('in the copy');
    await gridOpen(page);
    await page.reload();
    await expect.poll(() => titleOf(page)).toBe(SHELF_TITLE);
    await page.getByLabel('Book', { exact: true }).selectOption({ index: 0 });
    await expect.poll(() => titleOf(page)).toBe('Tamarack Bench');
    expect(await noteOf(page)).toBe('after the copy');
  });

  it('says what is wrong with a bad file, and leaves the book as it is', async () => {
    const page = await open();
    await gridOpen(page);
    await noteOf(page, 'still here');
    const hostile =
      '{"format":"croftsheet-book","version":1,"id":"b","title":"t","settings":{},"sheets":{"__proto__":{}}}';
    for (const [text, message] of [
      ['{"format":"croftsheet-book","version":1,"id":"b', /stops in the middle/],
      ['{"format":"croftsheet-book","version":99}', /version 99/],
      [hostile, /__proto__/],
      ['hello', /not a book|not a saved book/],
    ] as const) {
      await chooseFile(page, text);
      const dialog = page.getByRole('dialog', { name: 'That could not be opened' });
      await dialog.waitFor();
      await expect.poll(() => said(dialog.getByRole('listitem').first())).toMatch(message);
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'hidden' });
    }
    expect(await noteOf(page)).toBe('still here');
    await saved(page);
    await page.reload();
    await gridOpen(page);
    expect(await noteOf(page)).toBe('still here');
  });

  it('starts a household’s own book beside the demo, and both stay within reach', async () => {
    const page = await open();
    await gridOpen(page);
    await page.getByRole('button', { name: 'Start your own book' }).click();
    await page.getByLabel('What shall the book be called?').fill('Hill House');
    await page.getByLabel('Who eats at the table?').fill('Ada, little Jo 0.5');
    await page.getByLabel('Last spring frost').fill('05-10');
    await page.getByLabel('Altitude in feet').fill('1,200 ft');
    await page.getByLabel('Place of place 1').fill('Cellar');
    await page.getByLabel('Foods and how many of place 1').fill('tomatoes 24, beans 18 bushels');
    await page.getByLabel('Place of place 2').fill('Freezer');
    await page.getByLabel('Foods and how many of place 2').fill('peas 12 pints');
    await page.getByRole('button', { name: 'Start the book' }).click();
    await page.getByText('Cellar: “bushels” is not a container', { exact: false }).waitFor();
    await page.getByLabel('Foods and how many of place 1').fill('tomatoes 24, beans 18 pints');
    await page.getByRole('button', { name: 'Start the book' }).click();
    await expect.poll(() => titleOf(page)).toBe('Hill House');
    const book = await page.evaluate(() => document.querySelector('croft-book')!.live!.toJSON());
    const cells = (sheet: string) => Object.values(book.sheets[sheet]!.rows).map((row) => row.cells);
    expect(cells('household')).toEqual([
      { name: 'Ada', share: 1 },
      { name: 'little Jo', share: 0.5 },
    ]);
    expect(cells('shelf')).toEqual([
      { food: 'tomatoes', way: 'canned', container: 'quart jar', count: 24, place: 'Cellar' },
      { food: 'beans', way: 'canned', container: 'pint jar', count: 18, place: 'Cellar' },
      { food: 'peas', way: 'frozen', container: 'pint freezer bag', count: 12, place: 'Freezer' },
    ]);
    expect(cells('foods')).toEqual([
      { food: 'tomatoes', way: 'canned', counted_in: 'quart jar' },
      { food: 'beans', way: 'canned', counted_in: 'pint jar' },
      { food: 'peas', way: 'frozen', counted_in: 'pint freezer bag' },
    ]);
    expect(book.settings).toEqual({ last_frost: '05-10', altitude_ft: 1200 });
    // Figures at once: 24 jars, and weeks of them at what publications reckon for one and a half at table.
    const figures = await page.evaluate(() => {
      const live = document.querySelector('croft-book')!.live!;
      const row = live.rowIds('foods')[0]!;
      return ['on_hand', 'weeks_of_supply'].map((column) => live.value('foods', row, column));
    });
    expect(figures[0]).toBe(24);
    expect(figures[1]).toBeGreaterThan(0);
    await page.getByText('write your use a week in Foods', { exact: false }).first().waitFor();
    await page.reload();
    await expect.poll(() => titleOf(page)).toBe('Hill House');
    await page.getByLabel('Book', { exact: true }).selectOption({ index: 0 });
    await expect.poll(() => titleOf(page)).toBe('Tamarack Bench');
  });

  it('says so when an address names a book that is not kept here', async () => {
    const page = await open(`${DEMO}?book=gone`);
    await page.getByRole('dialog', { name: 'That could not be opened' }).waitFor();
  });
});

describe('a blog post with a sheet in it', () => {
  it('reads as a table that the blog’s own style leaves alone, and opens as a grid', async () => {
    const page = await open('demo/blog.html');
    const table = page.getByRole('table', { name: 'The cellar in February' });
    await table.waitFor();
    // The blog sets `display: block` on tables and capitals on buttons.
    expect(await table.evaluate((each) => getComputedStyle(each).display)).toBe('table');
    const button = page.getByRole('button', { name: 'Open as a grid' });
    expect(await button.evaluate((each) => getComputedStyle(each).textTransform)).toBe('none');
    await button.click();
    await page.locator('croft-grid-pane:not(.waiting)').waitFor();
    await page.getByRole('button', { name: 'Read' }).click();
    await table.waitFor();
  });
});

describe('axe-core', () => {
  // What stands on the sheets and behind their buttons is looked at in `axe-pages`.
  it('finds nothing wrong with our markup, in the light and in the dark', async () => {
    const page = await open();
    await gridOpen(page);
    await page.getByRole('button', { name: 'Add lots' }).click();
    await page.getByRole('button', { name: 'Add column' }).click();
    await axeInBothLights(page, 'adding');
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Pictures' }).click();
    for (const [name, element] of [
      ['How long it lasts', 'croft-runway'],
      ['The growing year', 'croft-season'],
      ['Room', 'croft-room'],
    ] as const) {
      await page.getByRole('tab', { name, exact: true }).click();
      await page.locator(`${element} [part="chart"]`).waitFor();
      await axeInBothLights(page, name);
    }
    await page.getByRole('button', { name: 'Start your own book' }).click();
    await axeInBothLights(page, 'start');
    await page.goto(new URL('blog.html', page.url()).href);
    await page.getByRole('table').first().waitFor();
    await page.locator('td.planning button').first().click();
    await axeInBothLights(page, 'blog');
  });
});

describe('narrow and wide', () => {
  it('offers the sheets and pictures in one field on a phone', async () => {
    const page = await open(DEMO, { viewport: { width: 360, height: 740 } });
    await gridOpen(page);
    expect(await page.getByRole('tab').count()).toBe(0);
    // The page's own words leave room: the grid begins in the upper third, its tools in one row.
    const grid = (await page.locator('croft-grid-pane').first().boundingBox())!;
    expect(grid.y).toBeLessThan(260);
    // A figure selected in the grid is not covered by its working, which opens when asked for.
    await page.evaluate(async () => {
      const live = document.querySelector('croft-book')!.live!;
      const row = live.rowIds(live.sheetOfKind('shelf')!)[0]!;
      await document.querySelector('croft-sheet')!.showCell({ row, column: 'left' });
    });
    expect(await page.locator('croft-working').count()).toBe(0);
    await page.getByRole('button', { name: 'Working' }).click();
    await page.locator('croft-working').waitFor();
    await page.locator('croft-working').getByRole('button', { name: 'Close' }).click();
    const field = page.getByLabel('Go to');
    expect(await field.evaluate((each) => (each as HTMLSelectElement).selectedOptions[0]!.text)).toBe(
      'Shelf',
    );
    await field.selectOption({ label: 'Batches' });
    await page.locator('[role=tabpanel]:not([hidden]) croft-sheet[sheet="batches"]').waitFor();
    await field.selectOption({ label: 'Pictures' });
    await page.getByRole('tab', { name: 'Room' }).click();
    await page.locator('croft-room .week').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('never scrolls the page sideways', async () => {
    const page = await open(DEMO);
    const over = async (width: number): Promise<number> => {
      await page.setViewportSize({ width, height: 800 });
      return page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    };
    await gridOpen(page);
    for (const width of [360, 768, 1600])
      expect(await over(width), `demo at ${width}`).toBeLessThanOrEqual(0);
    await page.goto(new URL('blog.html', page.url()).href);
    await page.getByRole('table').first().waitFor();
    for (const width of [360, 768, 1600])
      expect(await over(width), `blog at ${width}`).toBeLessThanOrEqual(0);
  });
});
