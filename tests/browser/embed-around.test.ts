import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { embedOf } from '../../src/live/embed/index.js';
import { CELLAR, column, demoBook, openWith } from './embed-make.js';
import { usePages } from './harness/pages.js';

/** Loading on demand, on a machine with other work to do. */
const SOON = { timeout: 25_000 };

const HAND = `<croft-embed id="cellar" open="c2" grid-licence-key="non-commercial-and-evaluation"><table>
  <caption>Beds: what is left?</caption><thead><tr><th>Food</th><th>Pounds</th><th data-formula="=Pounds/6">Each</th></tr></thead>
  <tbody><tr data-row="1"><th>Potatoes<br>early</th><td>1 200</td><td><a href="/beds">200</a></td></tr>
  <tr><th>Carrots</th><td>72</td><td>12</td></tr>
  <tr data-total><th>Together</th><td>1 272</td><td>212</td></tr></tbody></table></croft-embed>`;

/** A page with commands on single keys, which leaves fields alone as pages do, and names of its own for colours. */
const COMMANDS = `<style>* { --ink: red; --paper: red; --pad: 90px; --radius: 40px }</style><script>
  window.heard = [];
  for (const type of ['keydown', 'keypress', 'keyup'])
    for (const at of [document, window])
      at.addEventListener(type, (event) => {
        if (event.target.matches?.('input, textarea, button')) return;
        if (/^(Control|Shift|Tab)$/.test(event.key)) return;
        if (type === 'keydown') window.heard.push(event.key);
        if (!event.ctrlKey && event.key !== 'Escape') event.preventDefault();
      });
</script>`;

const heard = (page: Page): Promise<string[]> =>
  page.evaluate(() => [...new Set((window as unknown as { heard: string[] }).heard.splice(0))]);

const gridText = async (page: Page): Promise<string> =>
  (await page.locator('.ht_master tbody td').allTextContents()).join('|');

const openGrid = (page: Page) => page.getByRole('button', { name: 'Open as a grid' });

/** What stands in the element. */
const standing = (page: Page) =>
  page.evaluate(() => {
    const root = document.querySelector('croft-embed')!.shadowRoot!;
    return {
      tables: root.querySelectorAll('.frame').length,
      grids: root.querySelectorAll('croft-book, .first').length,
      menus: document.querySelectorAll('croft-grid-menus').length,
    };
  });

describe('An embedded sheet and the page around it', { timeout: 60_000 }, () => {
  const pages = usePages();

  test('keeps the keys that it uses from the page’s commands, as a grid too, and its colours from the page’s names', async () => {
    const page = await openWith(pages, () => HAND, { head: COMMANDS });
    const cells = page.locator('croft-embed .frame td');
    expect(
      await cells.nth(1).evaluate((e) => [getComputedStyle(e).color, getComputedStyle(e).paddingTop]),
    ).not.toEqual(expect.arrayContaining([expect.stringMatching(/^(rgb\(255, 0, 0\)|90px)$/)]));
    const field = page.getByLabel('Pounds, Potatoes early');
    await field.focus();
    await page.keyboard.type('/j 9');
    await page.keyboard.press('Escape');
    expect(await heard(page)).toEqual([]);
    expect(await field.inputValue()).toMatch(/^1 ?200$/);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+s');
    expect(await heard(page)).toEqual(['Escape', 's']);
    await page.keyboard.type('600');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => cells.nth(1).textContent(), SOON).toBe('100');
    // What a page says is a total is none of its data.
    await page.getByText('These totals are the page’s own').waitFor();
    expect(await page.locator('croft-embed .frame input').count()).toBe(2);
    await page.getByRole('button', { name: 'Undo' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('link', { name: '200', exact: true }).waitFor(SOON);
    expect(await heard(page)).toEqual([]);

    // What is being written when the button is pressed is in the grid.
    await field.fill('660');
    await openGrid(page).click();
    await expect
      .poll(() => gridText(page), SOON)
      .toMatch(/^Potatoes early\|660\|110\|Carrots\|72\|12\|\|\|$/);
    await page.getByRole('button', { name: 'Back to the table' }).waitFor();
    await heard(page);
    await page.locator('.ht_master tbody td').nth(4).click();
    await page.keyboard.type('9/j');
    await page.keyboard.press('Escape');
    await page.keyboard.type('90');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => gridText(page), SOON).toContain('Carrots|90|15');
    expect(await heard(page)).toEqual([]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => gridText(page), SOON).toContain('Carrots|72|12');
    await page.keyboard.press('Control+s');
    await page.keyboard.press('Escape');
    expect(await heard(page)).toEqual(['s', 'Escape']);
  });

  test('a grid on its way is one however often it is asked for, and ends with its table', async () => {
    const page = await openWith(pages, () => HAND);
    const ask = (times: number) =>
      openGrid(page).evaluate((button: HTMLElement, n) => {
        for (let i = 0; i < n; i++) button.click();
      }, times);
    await ask(1);
    await page.evaluate(() => {
      document.querySelector('croft-embed td')!.textContent = '300';
    });
    await expect.poll(() => page.getByLabel('Pounds, Potatoes').inputValue(), SOON).toBe('300');
    await openGrid(page).waitFor();
    expect(await standing(page)).toEqual({ tables: 1, grids: 0, menus: 0 });
    // Off the page: keys are the page's again.
    await ask(1);
    await page.evaluate(() => {
      const embed = document.querySelector('croft-embed')!;
      embed.remove();
      document.body.insertAdjacentHTML('beforeend', '<input id="elsewhere">');
      Object.assign(window, { embed });
    });
    await page.locator('#elsewhere').focus();
    await page.evaluate(() => document.querySelector<HTMLElement>('#elsewhere')!.blur());
    const free = await page.evaluate(() => {
      const stroke = new KeyboardEvent('keydown', { key: 'x', bubbles: true, cancelable: true });
      return document.body.dispatchEvent(stroke);
    });
    expect(free).toBe(true);
    await page.evaluate(() => document.body.append((window as unknown as { embed: Element }).embed));
    await openGrid(page).waitFor();
    expect(await standing(page)).toEqual({ tables: 1, grids: 0, menus: 0 });
    // With what was written just before, though what works it out comes late.
    let release = (): void => {};
    const held = new Promise<void>((done) => {
      release = done;
    });
    await page.route(/\/trial-.*\.js/, async (route) => {
      await held;
      await route.continue();
    });
    await page.getByLabel('Pounds, Potatoes').fill('90');
    await page.evaluate(() => {
      const { activeElement } = document.querySelector('croft-embed')!.shadowRoot!;
      (activeElement as HTMLElement).blur();
    });
    await ask(2);
    setTimeout(release, 300);
    await page.getByRole('button', { name: 'Back to the table' }).waitFor(SOON);
    expect(await gridText(page)).toContain('early|90|15|');
    expect(await standing(page)).toEqual({ tables: 0, grids: 1, menus: 1 });
    await page.evaluate(() => document.body.prepend(document.querySelector('croft-embed')!));
    await page.getByRole('button', { name: 'Back to the table' }).click();
    expect(await standing(page)).toEqual({ tables: 1, grids: 0, menus: 0 });
    // In another document, too, it has its look.
    const borders = await page.evaluate(async () => {
      const frame = document.body.appendChild(document.createElement('iframe'));
      const embed = document.querySelector('croft-embed')!;
      frame.contentDocument!.body.append(embed);
      await new Promise((done) => setTimeout(done, 50));
      const cell = embed.shadowRoot!.querySelector('thead th')!;
      return frame.contentWindow!.getComputedStyle(cell).borderBottomWidth;
    });
    expect(borders).toBe('1px');
  });

  test('embed.html takes what its address says, and nothing that leads elsewhere', async () => {
    const page = await pages.open('demo/guide/embed.html');
    const live = demoBook();
    const rows = live.rowIds('shelf').slice(0, 3);
    const title = '<img src=x onerror="window.ran=1"></script>';
    const open = embedOf(live, 'shelf', { ...CELLAR, rows, title }).json;
    const alone = embedOf(live, 'shelf', { columns: CELLAR.columns!, rows }).json;
    for (const [name, body] of Object.entries({ open, alone }))
      await page.route(`**/${name}.json`, (route) =>
        route.fulfill({ body, contentType: 'application/json' }),
      );
    await page.addInitScript(() => {
      const warned: string[] = [];
      Object.assign(window, { warned });
      console.warn = (text: string) => void warned.push(text);
    });
    const address = page.url();
    const visit = async (asked: Readonly<Record<string, string>>) => {
      await page.goto(`${address}?${new URLSearchParams(asked)}`);
      await page.locator('croft-embed').locator('table, [role=alert], [role=status]').first().waitFor();
    };
    await visit({
      src: 'open.json',
      columns: 'food,count,left',
      open: 'count',
      lang: 'de',
      theme: 'dark',
      'keep-as': 'ours',
      sheet: 'Shelf',
      'grid-licence-key': 'non-commercial-and-evaluation',
    });
    await page.getByRole('button', { name: 'Als Raster öffnen' }).waitFor();
    expect(await page.getByRole('columnheader').count()).toBe(3);
    expect(await page.getByRole('table', { name: title }).count()).toBe(1);
    const paper = page.locator('croft-embed .frame td').first();
    expect(await paper.evaluate((e) => getComputedStyle(e).colorScheme)).toBe('dark');
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.evaluate(() => Object.keys(localStorage)), SOON)
      .toEqual(['croft-embed ours']);
    expect(await column(page, 1)).toContain('90');
    await page.evaluate(() => localStorage.clear());

    await visit({ source: 'own', 'start-at': 'javascript:window.ran=1', database: 'none of it' });
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('no book of your own');
    expect(await page.getByRole('link').count()).toBe(0);
    for (const src of ['javascript:window.ran=1', 'data:application/json,{}', '//elsewhere.example/a.json']) {
      await visit({ src });
      await expect.poll(() => page.getByRole('alert').textContent(), SOON).toContain('another site');
    }
    const long = '<b>'.repeat(300);
    await visit({ src: 'open.json', sheet: long, theme: long, lang: long, columns: long });
    const problem = page.getByRole('alert');
    await expect.poll(() => problem.textContent(), SOON).toMatch(/^There is no sheet called “<b><b>.{0,80}”/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);

    // A file that was saved with nothing open has nothing to try in it: whoever keeps the page is told.
    await visit({ src: 'alone.json', open: 'count', 'grid-licence-key': 'non-commercial-and-evaluation' });
    expect(await page.getByRole('row').count()).toBe(4);
    expect(await page.locator('croft-embed').locator('input, button').count()).toBe(0);
    const warned = () => page.evaluate(() => (window as unknown as { warned: string[] }).warned.join());
    await expect.poll(warned, SOON).toContain('Save it again with the columns');
  });
});
