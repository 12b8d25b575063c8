import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { parseBook } from '../../src/book/index.js';
import { embedOf } from '../../src/live/embed/index.js';
import { axeViolations } from './elements-axe.js';
import { CELLAR, cellar, column, demoBook, openWith } from './embed-make.js';
import { usePages } from './harness/pages.js';

/** Loading on demand, on a machine with other work to do. */
const SOON = { timeout: 25_000 };
const LEFT = 3;
const WEEKS = 4;

/** Whether a row of the kept copy is ticked. */
const keptTick = (page: Page, row: string): Promise<boolean> =>
  page.evaluate((id) => {
    const { book } = JSON.parse(localStorage.getItem(localStorage.key(0) ?? '') ?? '{}');
    return book.sheets.shelf.rows[id].cells.still_counting === true;
  }, row);

describe('An embedded sheet', { timeout: 60_000 }, () => {
  const pages = usePages();

  test('shows its figures at once, and loads what works them out only when a reader tries something', async () => {
    const page = await openWith(pages, () => cellar(6));
    const scripts: string[] = [];
    page.on('request', (request) => scripts.push(request.url()));
    const left = await column(page, LEFT);
    expect(left).toHaveLength(6);
    expect(left[0]).toMatch(/^\d/);
    expect(scripts).toEqual([]);
    const field = page.getByLabel('Put up, Tomatoes').first();
    await field.click();
    await page.keyboard.type('90');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, LEFT))[0], SOON).not.toBe(left[0]);
    // The figures are those that the book itself gives.
    const live = demoBook();
    const [row] = live.rowIds('shelf');
    live.set('shelf', row!, 'count', 90);
    expect((await column(page, LEFT))[0]).toContain(String(live.value('shelf', row!, 'left')));
    expect(scripts.some((url) => url.endsWith('.js'))).toBe(true);
    // The grid and the engine stay where they are.
    expect(scripts.filter((url) => /handsontable|hyperformula/i.test(url))).toEqual([]);
    // Enter went on to the next open cell.
    await expect(
      page
        .getByLabel('Put up, Tomatoes')
        .nth(1)
        .evaluate((e) => e.matches(':focus')),
    ).resolves.toBe(true);
  });

  test('can be written into by keyboard alone, takes back, and says what is wrong', async () => {
    const page = await openWith(pages, () => cellar(4));
    const before = await column(page, WEEKS);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.type('many');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('takes a number');
    const first = page.getByLabel('Put up, Tomatoes').first();
    await expect(first.getAttribute('aria-invalid')).resolves.toBe('true');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.type('200');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, WEEKS))[0], SOON).not.toBe(before[0]);
    await expect(first.getAttribute('aria-invalid')).resolves.toBe(null);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => column(page, WEEKS), SOON).toEqual(before);
  });

  test('keeps a reader’s numbers, gives them to take home, and starts over', async () => {
    const page = await openWith(pages, () => cellar(4));
    const before = await column(page, WEEKS);
    await page.getByLabel('Put up, Tomatoes').first().fill('120');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('kept in this browser');
    const mine = await column(page, WEEKS);
    expect(mine).not.toEqual(before);
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    const scripts: string[] = [];
    await page.reload();
    page.on('request', (request) => scripts.push(request.url()));
    expect(await column(page, WEEKS)).toEqual(mine);
    expect(scripts).toEqual([]);
    // On paper, too, they are not taken for the page's.
    const onPaper = page.getByText('With your own numbers.');
    expect(await onPaper.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    expect(await onPaper.isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Take home' }).click(),
    ]);
    const parsed = parseBook(await readFile(await file.path(), 'utf8'));
    expect(parsed.ok && Object.values(parsed.book.sheets.shelf!.rows)[0]!.cells.count).toBe(120);
    await page.getByRole('button', { name: 'Start over' }).click();
    expect(await column(page, WEEKS)).toEqual(before);
    await page.getByRole('button', { name: 'Bring mine back' }).click();
    expect(await column(page, WEEKS)).toEqual(mine);
    await page.getByRole('button', { name: 'Start over' }).click();
    expect(await onPaper.count()).toBe(0);
    await page.reload();
    expect(await column(page, WEEKS)).toEqual(before);
  });

  test('offers the page’s new figures to a reader who has numbers of their own', async () => {
    let changed = false;
    const snippet = () => {
      const live = demoBook();
      if (changed) live.set('shelf', live.rowIds('shelf')[1]!, 'count', 50);
      return cellar(4, {}, live);
    };
    const page = await openWith(pages, snippet);
    await page.getByLabel('Put up, Tomatoes').first().fill('120');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    const mine = await column(page, WEEKS);
    changed = true;
    await page.reload();
    expect(await column(page, WEEKS)).toEqual(mine);
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('newer figures');
    await page.getByRole('button', { name: 'Take the new figures' }).click();
    expect((await column(page, 2)).slice(0, 2)).toEqual(['28', '50']);
  });

  test('loads the engine, and no grid, for a formula of the reader’s own', async () => {
    const page = await openWith(pages, () => cellar(3));
    const scripts: string[] = [];
    page.on('request', (request) => scripts.push(request.url()));
    await page.getByLabel('Put up, Tomatoes').first().fill('=20*3');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 2))[0], SOON).toBe('60');
    expect(scripts.some((url) => /hyperformula/i.test(url))).toBe(true);
    expect(scripts.some((url) => /handsontable|mount/i.test(url))).toBe(false);
  });

  test('opens as a grid in its place, and nothing moves', async () => {
    const page = await openWith(pages, () => cellar(40, { gridLicenceKey: 'non-commercial-and-evaluation' }));
    await page.getByLabel('Put up, ').nth(14).focus();
    await page.evaluate(() => scrollTo(0, 300));
    await page.getByRole('button', { name: 'Open as a grid' }).evaluate((button: HTMLElement) => {
      button.focus({ preventScroll: true });
      button.click();
    });
    // Written before the grid stands: one cell to its end, and the next one begun.
    await page.keyboard.type('55');
    await page.keyboard.press('Enter');
    await page.keyboard.type('7');
    await expect.poll(() => page.locator('.handsontableInput').first().inputValue(), SOON).toBe('7');
    // From the window's top, and most of it: what is under it can be reached beside it.
    const { top, height } = await page.locator('croft-sheet').evaluate((e) => e.getBoundingClientRect());
    expect(Math.abs(top)).toBeLessThan(2);
    expect(height).toBeGreaterThan(0.75 * 800);
    expect(height).toBeLessThan(0.9 * 800);
    await page.keyboard.type('7');
    await page.keyboard.press('Enter');
    // Once each: what is to be known about keeping, and about jars.
    await page.getByText('Your own numbers, kept in this browser.').waitFor();
    expect(await page.getByText(/not kept/i).count()).toBe(0);
    expect(
      await page
        .getByText(/follow a current,? tested process/)
        .filter({ visible: true })
        .count(),
    ).toBe(1);
    await page.getByRole('button', { name: 'Back to the table' }).click();
    await expect.poll(async () => (await column(page, 2)).slice(14, 16), SOON).toEqual(['55', '77']);
  });

  test('keeps what was worked out late, tells tables of one name apart, and is as wide as its place lets it', async () => {
    const page = await openWith(
      pages,
      () => `<croft-embed id="cellar" open="c2"><table><thead><tr><th>Food</th><th>Pounds</th>
        <th data-formula="=Pounds/6">Each</th></tr></thead><tbody>
        <tr><th>Potatoes</th><td>300</td><td>50</td></tr></tbody></table></croft-embed>`,
    );
    const waiting: (() => void)[] = [];
    await page.route(/hyperformula/, async (route) => {
      await new Promise<void>((go) => waiting.push(go));
      await route.continue().catch(() => {});
    });
    await page.getByLabel('Pounds, Potatoes').fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    expect(waiting.length).toBeGreaterThan(0);
    await page.reload();
    await expect.poll(() => waiting.length, SOON).toBeGreaterThan(1);
    for (const go of waiting.splice(0)) go();
    await page.unroute(/hyperformula/);
    await expect.poll(() => column(page, 2), SOON).toEqual(['15']);
    const kept = (change: { readonly page?: string; readonly digest?: string }) =>
      page.evaluate((more) => {
        const key = localStorage.key(0)!;
        const copy = { ...JSON.parse(localStorage.getItem(key)!), ...more };
        localStorage.setItem(key, JSON.stringify(copy));
        return copy as { unfinished?: boolean; digest: string };
      }, change);
    await expect.poll(async () => (await kept({})).unfinished ?? false, SOON).toBe(false);
    // Nothing is worked out or kept any more on a page that only shows the copy.
    await page.reload();
    const { digest } = await kept({ page: '/another-post.html' });
    await page.reload();
    await expect.poll(() => column(page, 2), SOON).toEqual(['15']);
    await kept({ digest: 'of-another-table' });
    await page.reload();
    expect(await column(page, 2)).toEqual(['50']);
    await kept({ digest });
    await page.reload();
    await expect.poll(() => column(page, 2), SOON).toEqual(['15']);

    await page.evaluate(() => {
      const embed = document.querySelector('croft-embed')!;
      localStorage.clear();
      embed.remove();
      embed.id = 'attic';
      embed.querySelector('td')!.textContent = '60';
      setTimeout(() => document.querySelector('main')!.append(embed), 50);
    });
    await expect.poll(() => page.getByLabel('Pounds, Potatoes').inputValue(), SOON).toBe('60');

    const widths = await page.evaluate(() => {
      const embed = document.querySelector('croft-embed')!;
      const around = ['display:flex', 'display:flex;flex-direction:column;align-items:center', 'float:left'];
      around.push(
        'display:inline-block',
        'width:fit-content',
        'display:table-cell',
        'display:grid;justify-items:start',
      );
      return around.map((style) => {
        const home = document.createElement('div');
        home.style.cssText = style;
        document.body.append(home);
        home.append(embed);
        return Math.round(embed.getBoundingClientRect().width);
      });
    });
    expect(Math.min(...widths)).toBeGreaterThan(500);
    await page.setViewportSize({ width: 360, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });

  test('takes a table written by hand for its data: to try, worked out by formula, and as a grid', async () => {
    const hand = `<croft-embed id="cellar" open="c2" grid-licence-key="non-commercial-and-evaluation"><table>
      <caption>In the root cellar</caption>
      <thead><tr><th>Food</th><th>Pounds</th><th data-formula="=Pounds/6">Each</th><th>Brought in</th></tr></thead>
      <tbody><tr><th>Potatoes</th><td>300</td><td>50</td><td><time datetime="2025-09-28">28 September</time></td></tr>
      <tr><th>Carrots</th><td>72</td><td>12</td><td></td></tr></tbody></table></croft-embed>`;
    const page = await openWith(pages, () => hand);
    expect(await column(page, 2)).toEqual(['50', '12']);
    await page.getByLabel('Pounds, Carrots').fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(() => column(page, 2), SOON).toEqual(['50', '15']);
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    await page.reload();
    expect(await column(page, 1)).toEqual(['300', '90']);
    await page.getByRole('button', { name: 'Open as a grid' }).click();
    await expect
      .poll(async () => (await page.locator('.ht_master tbody td').allTextContents()).join(' '), SOON)
      .toMatch(/Carrots 90 15/);
  });

  test('takes tables as people write them, and leaves what a reader did not touch as it stands', async () => {
    const rows = `<tr><th rowspan="2"><a href="/beds">Cellar</a></th><td>28 jars</td><td>7</td><td>2 <b>September</b></td></tr>
      <tr><td>19,5 jars</td><td>4,875</td><td>later</td></tr>
      <tr><td colspan="4">And in the shed</td></tr>
      <tr><th>Shed</th><td>a few</td><td>some</td><td></td></tr>`;
    const hand = `<croft-embed id="cellar" lang="fr"><figure><table><tr><th>Where</th><th data-open>How many</th>
      <th data-formula="=How_many/4">A week</th><th>Since</th></tr>${rows}
      <tfoot><tr><th>Together</th><td>47,5</td><td>11,875</td><td></td></tr></tfoot></table></figure></croft-embed>
      <croft-embed id="shared" open="c2"><table><thead><tr><th>A</th><th>B</th><th data-open>C</th></tr></thead>
      <tr><td>1</td><td rowspan="2">2</td><td>3</td></tr><tr><td>4</td><td>5</td></tr></table></croft-embed>
      <p><croft-embed id="lost"><table><tr><td>1</td></tr></table></croft-embed></p>`;
    const said: string[] = [];
    const page = await openWith(pages, () => hand);
    page.on('console', (message) => said.push(message.text()));
    await page.reload();
    const cells = (id: string) =>
      page
        .locator(`#${id}`)
        .evaluate((host) =>
          [...host.shadowRoot!.querySelectorAll<HTMLTableRowElement>('tr')].map((row) =>
            [...row.cells]
              .filter((cell) => !cell.hidden)
              .map((cell) => cell.querySelector('input')?.value ?? cell.textContent!),
          ),
        );
    const before = await cells('cellar');
    expect(before[1]).toEqual(['Cellar', '28 jars', '7', '2 September']);
    const first = page.locator('#cellar input').first();
    await first.fill('41,5 jars');
    await first.blur();
    await expect
      .poll(async () => (await cells('cellar'))[1], SOON)
      .toEqual(['Cellar', '41,5', '10,375', '2 September']);
    const mine = await cells('cellar');
    expect(mine.slice(2, 6)).toEqual(before.slice(2, 6));
    expect(mine[6]?.join()).toContain('do not follow');
    await page.locator('#cellar').getByRole('button', { name: 'Undo' }).click();
    // The line under the totals stays where a copy has been kept meanwhile.
    await expect.poll(async () => (await cells('cellar')).slice(0, 6), SOON).toEqual(before);
    await first.fill('41,5');
    await first.blur();
    await expect.poll(() => cells('cellar'), SOON).toEqual(mine);
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    await page.locator('#shared input').first().waitFor();
    expect((await cells('shared')).slice(1)).toEqual([
      ['1', '2', '3'],
      ['4', '5'],
    ]);
    expect(await page.locator('#shared input').count()).toBe(2);
    await expect.poll(() => said.join(), SOON).toMatch(/"shared".*rowspan/);
    await expect.poll(() => said.join(), SOON).toMatch(/"lost".*<p>/);
    await page.reload();
    expect(await cells('cellar')).toEqual(mine);
    expect(await page.locator('#cellar').getByRole('link', { name: 'Cellar' }).count()).toBe(1);
    expect(await page.locator('#cellar .frame b').count()).toBe(1);
  });

  test('a grid shows at once what the table showed, and the same once all is worked out', async () => {
    const { html } = embedOf(demoBook(), 'shelf', {
      ...CELLAR,
      gridLicenceKey: 'non-commercial-and-evaluation',
    });
    const page = await openWith(pages, () => html);
    const seen = (within: string) =>
      page.evaluate(
        (selector) =>
          new Promise<string[]>((done) => {
            const root = document.querySelector('croft-embed')!.shadowRoot!;
            const look = (): void => {
              const sheet = root.querySelector(selector)?.querySelector('croft-sheet')?.shadowRoot;
              const whole = sheet?.querySelector('croft-grid-pane')?.shadowRoot;
              const ready = whole ? root.querySelector('croft-book')!.live!.isPlanned : true;
              const from = selector.includes('waiting') ? whole : root.querySelector(selector);
              const rows = [...(from?.querySelectorAll('.ht_master tbody tr') ?? [])].slice(0, 8);
              if (rows.length < 8 || !ready) return void requestAnimationFrame(look);
              done(rows.map((row) => [...row.children].map((cell) => cell.textContent).join(' | ')));
            };
            look();
          }),
        within,
      );
    await page.getByRole('button', { name: 'Open as a grid' }).evaluate((button) => {
      button.focus({ preventScroll: true });
      (button as HTMLElement).click();
    });
    const first = await seen('.first .croft-grid');
    const whole = await seen('.grid .grid:not(.waiting)');
    expect(first[0]).toMatch(/^1 \| Tomatoes \|/);
    expect(whole).toEqual(first);
    // The table went on below the window: its grid takes what was in sight of it.
    const moved = await page.evaluate(
      () =>
        new Promise<number>((done) => {
          let sum = 0;
          new PerformanceObserver((list) => {
            for (const each of list.getEntries()) sum += (each as unknown as { value: number }).value;
          }).observe({ type: 'layout-shift', buffered: true });
          setTimeout(() => done(sum), 100);
        }),
    );
    expect(moved).toBe(0);
  });

  test('reads well to assistive technology, in narrow windows and in the dark', async () => {
    const page = await openWith(pages, () => cellar(6), {}, { viewport: { width: 360, height: 740 } });
    expect(await axeViolations(page)).toEqual([]);
    const frame = page.locator('croft-embed').getByRole('region');
    await expect(frame.evaluate((e) => e.scrollWidth > e.clientWidth)).resolves.toBe(true);
    await expect(page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).resolves.toBe(true);
    // The page's own ground is said, too: the checker takes one that is not for white.
    await page.evaluate(() => {
      document.documentElement.style.setProperty('color-scheme', 'dark');
      document.documentElement.style.setProperty('background', 'Canvas');
    });
    expect(await axeViolations(page)).toEqual([]);
  });

  test('opens cells far down too, and tries what is written there', async () => {
    const page = await openWith(pages, () => cellar(60));
    const fields = page.locator('croft-embed tbody input');
    await expect.poll(() => fields.count(), SOON).toBe(60);
    await fields.nth(55).fill('1');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    await expect.poll(() => fields.nth(55).inputValue(), SOON).toBe('1');
  });

  test('draws its table from a file, where none stands inside', async () => {
    const live = demoBook();
    const { json } = embedOf(live, 'shelf', { ...CELLAR, rows: live.rowIds('shelf').slice(0, 3) });
    const page = await openWith(pages, () => '<croft-embed src="cellar.json" keep-as="file"></croft-embed>', {
      files: { 'cellar.json': json },
    });
    await page.getByLabel('Put up, Tomatoes').first().waitFor();
    const asked = (name: string, value: string): Promise<void> =>
      page
        .locator('croft-embed')
        .evaluate((host, said) => host.setAttribute(...said), [name, value] as const);
    const titles = page.getByRole('columnheader');
    await asked('columns', 'left, food, banana');
    await expect.poll(() => titles.allTextContents()).toEqual(['Left', 'Food']);
    await asked('sheet', 'cellar');
    await expect
      .poll(() => page.getByRole('alert').textContent(), SOON)
      .toContain('no sheet called “cellar”');
    await page.reload();
    await page.getByLabel('Put up, Tomatoes').first().waitFor();
    const before = await column(page, WEEKS);
    expect(before).toHaveLength(3);
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(() => column(page, WEEKS), SOON).not.toEqual(before);
  });

  test('lets readers set ticks where the author opened them', async () => {
    const page = await openWith(pages, () =>
      cellar(3, {
        columns: ['food', 'best_by', 'still_counting', 'weeks_of_supply'],
        open: ['still_counting'],
      }),
    );
    const tick = page.getByRole('checkbox', { name: 'Still counting on it, Tomatoes' }).first();
    expect(await tick.isChecked()).toBe(false);
    await tick.focus();
    await page.keyboard.press('Space');
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('kept in this browser');
    await page.reload();
    expect(await tick.isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Start over' }).click();
    expect(await tick.isChecked()).toBe(false);
    await page.getByRole('button', { name: 'Bring mine back' }).click();
    expect(await tick.isChecked()).toBe(true);
    const [row] = demoBook().rowIds('shelf');
    expect(await keptTick(page, row!)).toBe(true);
    await tick.uncheck();
    await expect.poll(() => keptTick(page, row!), SOON).toBe(false);
  });

  test('shows a sheet of the reader’s own book, and where one is started while there is none', async () => {
    const page = await openWith(
      pages,
      () =>
        '<croft-embed source="own" sheet="shelf" columns="food,count,left" open="count" start-at="/demo/index.html"></croft-embed>',
    );
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('no book of your own');
    const beside = await pages.openBeside(page, 'demo/index.html');
    await beside.getByText('Saved').first().waitFor();
    const title = await beside.evaluate(() => document.querySelector('croft-book')?.live?.title ?? '');
    expect(title).not.toBe('');
    expect(await page.getByRole('link', { name: 'Start a book' }).getAttribute('href')).toBe(
      '/demo/index.html',
    );
    await beside.close();
    await page.reload();
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain(`“${title}”`);
    const before = await column(page, 2);
    expect(before).toHaveLength(demoBook().rowIds('shelf').length);
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 2))[0], SOON).not.toBe(before[0]);
    // What is tried stays beside the book.
    await page.reload();
    await expect.poll(async () => (await column(page, 2))[0], SOON).toBe(before[0]);
  });

  test('asks nothing of other sites, and says why', async () => {
    const page = await openWith(
      pages,
      () => '<croft-embed src="https://elsewhere.example/book.json"></croft-embed>',
    );
    await expect(page.getByRole('alert').textContent()).resolves.toContain('another site');
  });

  test('stands in the example page, and plans with the reader', async () => {
    const page = await pages.open('demo/embed/cellar.html', { viewport: { width: 390, height: 800 } });
    await page.waitForFunction(() => document.querySelector('croft-embed')?.shadowRoot);
    const before = await column(page, 4);
    await page.getByLabel('Put up, onions').fill('900');
    await page.keyboard.press('Enter');
    await expect.poll(() => column(page, 4), SOON).not.toEqual(before);
    expect(await axeViolations(page)).toEqual([]);
    if (process.env.SHOT) await page.screenshot({ path: process.env.SHOT, fullPage: true });
  });
});
