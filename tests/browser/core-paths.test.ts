import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { place, said, saidByAll } from './elements-make.js';
import { cellar, column, EMBED_PAGE } from './embed-make.js';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';
import { openWeek } from './week-make.js';

// What every engine must do, as a household or a reader goes about it. See ‘Three engines’ in DEVELOPERS.md.
vi.setConfig({ testTimeout: 600_000, hookTimeout: 120_000 });

const pages = usePages();
const SOON = { timeout: 60_000 };
const NOTE = 'demo/embed/cellar.html';
const ELEMENTS = 'tests/browser/harness/pages/elements.html';

/** The one page for what needs no page of its own, with nothing left of the test before. */
async function blank(): Promise<Page> {
  const page = await pages.shared(ELEMENTS);
  await page.evaluate(() => {
    for (const home of document.querySelectorAll('main > div')) home.remove();
    localStorage.clear();
  });
  return page;
}

describe('an embedded sheet', () => {
  it('shows what stands in the page, works a reader’s number out, and keeps it over a reload', async () => {
    const page = await pages.open(NOTE);
    const weeks = () => column(page, 4);
    const before = await weeks();
    expect(before.slice(0, 4)).toEqual(['8.5', '8.5', '11.3', '28']);
    const field = page.getByLabel('Put up, tomatoes').first();
    await field.fill('60');
    await page.keyboard.press('Enter');
    await expect.poll(weeks, SOON).not.toEqual(before);
    const mine = await weeks();
    expect(Number(mine[0])).toBeGreaterThan(8.5);
    expect(mine[2]).toBe('11.3');
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    await page.reload();
    expect(await weeks()).toEqual(mine);
    await page.getByRole('button', { name: 'Start over' }).click();
    await expect.poll(weeks, SOON).toEqual(before);
  });

  it('stands beside another, each with numbers of its own; also from right to left', async () => {
    const page = await pages.shared(EMBED_PAGE);
    const put = (html: string) =>
      page.evaluate((text) => {
        document.getElementById('here')?.remove();
        document.querySelector('main')!.insertAdjacentHTML('beforeend', `<div id="here">${text}</div>`);
      }, html);
    const ofOne = (key: string) =>
      page.locator(`croft-embed[keep-as="${key}"]`).locator('tbody input').first();
    await put(`${cellar(3, { keepAs: 'one' })}<div dir="rtl">${cellar(3, { keepAs: 'two' })}</div>`);
    const [one, two] = [await ofOne('one').inputValue(), await ofOne('two').inputValue()];
    expect(one).toBe(two);
    await ofOne('two').fill('77');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    expect(await ofOne('one').inputValue()).toBe(one);
    const firstTwo = (key: string) =>
      page
        .locator(`croft-embed[keep-as="${key}"]`)
        .evaluate((host) =>
          [...host.shadowRoot!.querySelectorAll('thead th')]
            .slice(0, 2)
            .map((each) => each.getBoundingClientRect().left),
        );
    const [food, next] = await firstTwo('one');
    expect(food!).toBeLessThan(next!);
    const [foodOfTwo, nextOfTwo] = await firstTwo('two');
    expect(foodOfTwo!).toBeGreaterThan(nextOfTwo!);
  });

  it('opens as a grid in its place, takes every key on the way, and closes at the first press', async () => {
    const page = await pages.shared(EMBED_PAGE);
    const html = cellar(Number.POSITIVE_INFINITY, {
      keepAs: 'grid',
      gridLicenceKey: 'non-commercial-and-evaluation',
    });
    await page.evaluate((text) => {
      document.getElementById('here')?.remove();
      document.querySelector('main')!.insertAdjacentHTML('beforeend', `<div id="here">${text}</div>`);
    }, html);
    await page.getByLabel('Put up, ').first().focus();
    await page.getByRole('button', { name: 'Open as a grid' }).evaluate((button: HTMLElement) => {
      button.focus({ preventScroll: true });
      button.click();
    });
    const stands = (what: string) => expect.poll(() => page.locator(what).count(), SOON).toBeGreaterThan(0);
    // One number over every stage: nothing stands yet, the first grid does, the whole one does behind it.
    await page.keyboard.type('1');
    await stands('croft-embed .first td');
    await page.keyboard.type('2');
    await stands('croft-sheet .ht_master tbody td');
    await page.keyboard.type('3');
    await page.keyboard.press('Enter');
    // Just as the whole one takes its place.
    await page.keyboard.type('45');
    await page.keyboard.press('Enter');
    const back = page.getByRole('button', { name: 'Back to the table' });
    await back.waitFor(SOON);
    // Not ended by Enter: the press of the button ends it, and is a press of the button still.
    await page.keyboard.type('6');
    await back.click({ delay: 300 });
    await expect.poll(async () => (await column(page, 2)).slice(0, 3), SOON).toEqual(['123', '45', '6']);
  });
});

describe('the grid', () => {
  it('takes what is typed by Enter and by Tab, and undoes it', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Put up');
    await grid.type('31');
    await grid.press('Enter');
    await expect.poll(() => grid.value('lot1', 'count'), SOON).toBe(31);
    await expect.poll(async () => (await grid.shown('Left'))[0], SOON).toContain('31');
    await grid.type('7');
    await grid.press('Tab');
    await expect.poll(() => grid.value('lot2', 'count'), SOON).toBe(7);
    await grid.press('Control+z');
    await grid.press('Control+z');
    await expect.poll(() => grid.value('lot1', 'count'), SOON).toBe(24);
    expect(await grid.value('lot2', 'count')).toBe(12);
  });

  it('copies and pastes', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.select([0, 'Alpha'], [1, 'Beta']);
    await grid.press('Control+c');
    await grid.click(2, 'Alpha');
    await grid.press('Control+v');
    await expect.poll(() => grid.value('row4', 'cb'), SOON).toBe(20);
    expect(await grid.value('row3', 'ca')).toBe(1);
    await grid.press('Control+z');
    await expect.poll(() => grid.value('row4', 'cb'), SOON).toBe(40);
  });

  it('works a formula out, and again when what it uses changes', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(1, 'Gamma');
    await grid.type('=SUM(Alpha)');
    await grid.press('Enter');
    await expect.poll(() => grid.value('row2', 'cc'), SOON).toBe(10);
    await grid.click(0, 'Alpha');
    await grid.type('5');
    await grid.press('Enter');
    await expect.poll(async () => (await grid.shown('Gamma'))[1], SOON).toBe('14');
  });
});

describe('a book of one’s own', () => {
  it('takes a sheet, a column and a formula, and has them after a reload', async () => {
    const page = await pages.open('demo/index.html');
    page.setDefaultTimeout(120_000);
    const ready = () => page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane:not(.waiting)').waitFor();
    await ready();
    await page.getByRole('button', { name: '+ Sheet' }).click();
    await page.getByRole('dialog').getByLabel('Title').fill('Eggs');
    await page.getByRole('button', { name: 'Add the sheet' }).click();
    const panel = page.getByRole('tabpanel', { name: 'Eggs' });
    await panel.locator('.empty').getByRole('button', { name: 'Add a column' }).click();
    await panel.getByLabel('Title').fill('Half a dozen');
    await panel.getByLabel('Formula for every row').fill('=6*2');
    await panel.getByRole('button', { name: 'Add the column' }).click();
    await panel.getByRole('button', { name: 'Write the first row' }).click();
    const shown = () => panel.locator('croft-grid-pane td', { hasText: /^12$/ }).waitFor();
    await shown();
    await panel.getByText('Saved', { exact: true }).waitFor();
    await page.reload();
    await page.getByRole('tab', { name: 'Eggs' }).click();
    await shown();
  });
});

describe('what is drawn and printed', () => {
  it('has a bar for each food that runs out, in its width', async () => {
    const page = await pages.open('tests/browser/harness/pages/pictures.html?show=runway');
    const bars = page.locator('croft-runway .rows [data-mark] svg.plot');
    await expect.poll(() => bars.count(), SOON).toBeGreaterThan(20);
    const box = (await bars.first().boundingBox())!;
    expect(box.width).toBeGreaterThan(150);
    await page.getByRole('button', { name: 'Show as a table' }).click();
    await page.locator('croft-runway tbody tr').first().waitFor();
  });

  it('lists what to bring up, and prints the lists with what is ticked', async () => {
    const page = await openWeek(pages, '<croft-lists></croft-lists>');
    const lines = () => saidByAll(page.locator('croft-lists .bringUp .text'));
    await expect.poll(lines, SOON).toContain('3 pint jars of tomatoes (canned)');
    await page.getByRole('checkbox', { name: /carrots/ }).check();
    await page.evaluate(() => {
      const append = document.body.append.bind(document.body);
      document.body.append = (...nodes: (Node | string)[]) => {
        append(...nodes);
        for (const frame of nodes)
          if (frame instanceof HTMLIFrameElement)
            frame.contentWindow!.print = () => {
              document.body.dataset.printed = frame.contentDocument!.body.textContent ?? '';
            };
      };
    });
    await page.getByRole('button', { name: 'Print' }).click();
    const printed = () => page.evaluate(() => document.body.dataset.printed ?? '');
    await expect.poll(printed, SOON).toContain('3 pint jars of tomatoes (canned)');
    expect(await printed()).toContain('Low-acid jar: check the seal');
  });
});

describe('a lesson', () => {
  it('checks an answer, gives a hint, and counts what is right', async () => {
    const page = await blank();
    await place(
      page,
      `<croft-lesson heading="At the tap"><ol>
        <li data-answer="8" data-unit="pints" data-hints="A quart is 2 pints.">How many pints are 4 quarts?</li>
      </ol></croft-lesson>`,
    );
    const status = () => said(page.locator('croft-lesson [role=status]'));
    const answer = page.getByLabel('Answer to question 1, in pints');
    await answer.fill('7');
    await answer.press('Enter');
    await expect.poll(status, SOON).toMatch(/^Question 1: Not yet/);
    await answer.fill('1 gallon');
    await answer.press('Enter');
    await expect.poll(status, SOON).toContain('1 of 1 right');
  });
});
