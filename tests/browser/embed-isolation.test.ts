import { describe, expect, test } from 'vitest';
import { cellar, column, EMBED_PAGE, openWith } from './embed-make.js';
import { usePages } from './harness/pages.js';

/** Loading on demand, on a machine with other work to do. */
const SOON = { timeout: 25_000 };

/** What themes and resets do to tables and everything else. */
const HOSTILE = `<style>
  * { margin: 0; padding: 0; line-height: 3 !important; letter-spacing: 0.3em; text-transform: uppercase; }
  html { font-size: 62.5% } body { font: italic 34px/2 cursive; word-spacing: 1em; text-align: center }
  table, thead, tbody, tr { display: block !important; width: 100% !important; }
  table td, table th { display: block !important; padding: 40px !important; border: 9px solid red !important; }
  input, button { display: none !important; appearance: none; font-size: 60px !important; }
  croft-embed { display: inline; font-size: 70px; color: red; white-space: pre; }
</style>`;

const STRICT =
  "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:";

/**
 * What policies block without anything missing. The grid's place for styles is empty: the hash is that of nothing.
 */
const BLOCKED_FOR_NOTHING = /Applying inline style violates|blocked an inline style .*sha256-47DEQpj8HBSa/;

interface Look {
  readonly row: string;
  readonly heights: readonly number[];
  readonly size: string;
  readonly spacing: string;
}

const look = (page: Awaited<ReturnType<typeof openWith>>): Promise<Look> =>
  page.locator('croft-embed').evaluate((host) => {
    const rows = [...host.shadowRoot!.querySelectorAll<HTMLElement>('tbody tr')];
    const cell = rows[0]!.querySelector('td')!;
    const { fontSize, letterSpacing, lineHeight, textTransform, wordSpacing } = getComputedStyle(cell);
    return {
      row: [...rows[0]!.children].map((each) => each.getBoundingClientRect().top).join(),
      heights: rows.map((each) => Math.round(each.offsetHeight)),
      size: fontSize,
      spacing: [letterSpacing, lineHeight, textTransform, wordSpacing].join(),
    };
  });

describe('An embedded sheet, whatever the page does around it', { timeout: 60_000 }, () => {
  const pages = usePages();

  test('reads the same under hostile styles', async () => {
    const plain = await look(await openWith(pages, () => cellar(5)));
    const page = await openWith(pages, () => cellar(5), { head: HOSTILE });
    const hostile = await look(page);
    expect(hostile.size).toBe(plain.size);
    expect(hostile.spacing).toBe(plain.spacing);
    expect(new Set(hostile.row.split(',')).size).toBe(1);
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('status').textContent(), SOON).toContain('Your own numbers');
  });

  test('reads from right to left, enlarged, on paper', async () => {
    const page = await openWith(pages, () => cellar(5), {
      html: (text) => text.replace('<html lang="en"', '<html lang="en" dir="rtl" style="zoom: 1.5"'),
    });
    const places = await page.locator('croft-embed').evaluate((host) => {
      const row = host.shadowRoot!.querySelector('tbody tr')!;
      return [...row.children].map((each) => each.getBoundingClientRect().left);
    });
    expect(places).toEqual([...places].sort((a, b) => b - a));
    await page.emulateMedia({ media: 'print' });
    const bar = page.locator('croft-embed').locator('.tools');
    await expect(bar.isVisible()).resolves.toBe(false);
  });

  test('works on a page whose scripts have added to every array and element, and reads where to every object', async () => {
    const additions = `
      for (const name of ['each', 'remove', 'first'])
        for (const proto of [Array.prototype, Element.prototype])
          if (!(name in proto)) proto[name] = function () { return this; };
      if (location.hash === '#objects') Object.prototype.each = function () { return this; };`;
    const page = await pages.open(EMBED_PAGE);
    await page.addInitScript(additions);
    await page.route('**/embed.html', async (route) => {
      const answer = await route.fetch();
      const body = (await answer.text()).replace('<!--embed-->', cellar(4));
      await route.fulfill({ response: answer, body });
    });
    await page.reload();
    const before = await column(page, 4);
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 4))[0], SOON).not.toBe(before[0]);
    await expect.poll(() => page.evaluate(() => localStorage.length), SOON).toBe(1);
    await page.evaluate(() => {
      localStorage.clear();
      location.hash = 'objects';
    });
    await page.reload();
    expect(await column(page, 4)).toEqual(before);
  });

  test('works under the strictest policy that lets its script run, as a grid too', async () => {
    const page = await openWith(
      pages,
      () => cellar(4, { gridLicenceKey: 'non-commercial-and-evaluation' }),
      {
        policy: STRICT,
      },
      { expectErrors: BLOCKED_FOR_NOTHING },
    );
    await page.evaluate(() => {
      const refused: string[] = [];
      Object.assign(window, { refused });
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
        refused.push(`${effectiveDirective} ${blockedURI}`),
      );
    });
    const before = await column(page, 4);
    await page.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 4))[0], SOON).not.toBe(before[0]);
    await page.getByLabel('Put up, Tomatoes').first().fill('=40+2');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 2))[0], SOON).toBe('42');
    await page.getByRole('button', { name: 'Open as a grid' }).click();
    await expect.poll(() => page.locator('.ht_master td').count(), SOON).toBeGreaterThan(10);
    await expect(page.locator('.ht_master td').first().isVisible()).resolves.toBe(true);
    // What is refused is reported to whoever keeps the page.
    const refused = await page.evaluate(() => (window as unknown as { refused: string[] }).refused);
    expect(refused.filter((each) => each !== 'style-src-elem inline')).toEqual([]);
  });

  test('works in a frame that may keep nothing, and says so', async () => {
    const page = await pages.open(EMBED_PAGE);
    await page.route('**/embed.html?inner', async (route) => {
      const answer = await route.fetch({ url: route.request().url().replace('?inner', '') });
      const body = (await answer.text()).replace('<!--embed-->', cellar(4));
      const headers = { ...answer.headers(), 'access-control-allow-origin': '*' };
      await route.fulfill({ response: answer, headers, body });
    });
    await page.route('**/*.js', async (route) => {
      const answer = await route.fetch();
      await route.fulfill({
        response: answer,
        headers: { ...answer.headers(), 'access-control-allow-origin': '*' },
      });
    });
    await page.evaluate(() => {
      const frame = document.createElement('iframe');
      frame.sandbox.add('allow-scripts');
      frame.src = `${location.href}?inner`;
      frame.width = '900';
      frame.height = '700';
      document.body.append(frame);
    });
    const inner = page.frameLocator('iframe');
    await inner.getByLabel('Put up, Tomatoes').first().fill('90');
    await page.keyboard.press('Enter');
    await expect.poll(() => inner.getByRole('status').textContent(), SOON).toContain('not kept here');
  });

  test('leaves to a framework all that it wrote, and shows what the framework puts in its place', async () => {
    const page = await openWith(pages, () => cellar(4));
    const before = await column(page, 2);
    // Drawn over, the page still holds what was sent.
    const same = await page.locator('croft-embed').evaluate(async (host) => {
      const text = await (await fetch(location.href)).text();
      const sent = new DOMParser().parseFromString(text, 'text/html').querySelector('croft-embed');
      return host.outerHTML === sent?.outerHTML;
    });
    expect(same).toBe(true);
    const field = page.getByLabel('Put up, Tomatoes').first();
    await field.focus();
    // As frameworks do while they take a page over: everything anew, then one text of it.
    await page.locator('croft-embed').evaluate((host) => {
      const copies = [...host.childNodes].map((each) => each.cloneNode(true));
      host.replaceChildren();
      setTimeout(() => host.replaceChildren(...copies), 30);
    });
    await page.waitForTimeout(60);
    expect(await column(page, 2)).toEqual(before);
    await expect(field.evaluate((e) => e.matches(':focus'))).resolves.toBe(true);
    await page.locator('croft-embed').evaluate((host) => {
      const [, cell] = host.querySelectorAll('tbody tr td:nth-child(3)');
      cell!.firstChild!.nodeValue = '61';
    });
    await expect.poll(async () => (await column(page, 2))[1], SOON).toBe('61');
    await expect(field.evaluate((e) => e.matches(':focus'))).resolves.toBe(true);
    // A property of another framework, set before the element was there or later.
    await page.locator('croft-embed').evaluate((host) => Object.assign(host, { open: 'put_up_on' }));
    await expect.poll(() => page.getByLabel('Put up on, Tomatoes').count(), SOON).toBeGreaterThan(0);
    expect(await page.locator('croft-embed').evaluate((host) => host.isConnected)).toBe(true);
  });

  test('shows its table to those without script', async () => {
    const page = await openWith(pages, () => cellar(3), {}, { javaScriptEnabled: false });
    await expect(page.getByRole('table').isVisible()).resolves.toBe(true);
    await expect(page.getByRole('row').count()).resolves.toBe(4);
    await expect(page.getByText('tested process').first().isVisible()).resolves.toBe(true);
  });

  test('moves nothing on the page when it takes its table over', async () => {
    const page = await pages.open(EMBED_PAGE);
    await page.addInitScript(() => {
      const shifts: number[] = [];
      Object.assign(window, { shifts });
      new PerformanceObserver((list) => {
        for (const each of list.getEntries()) shifts.push((each as unknown as { value: number }).value);
        // Where an engine does not know of shifts, the place of what follows has to do.
      }).observe({ type: 'layout-shift', buffered: true });
    });
    let release = (): void => {};
    const held = new Promise<void>((done) => {
      release = done;
    });
    let ask = (): void => {};
    const asked = new Promise<void>((done) => {
      ask = done;
    });
    // The script comes late, after the page has been painted.
    await page.route('**/*.js', async (route) => {
      ask();
      await held;
      await route.continue();
    });
    await page.route('**/embed.html', async (route) => {
      const answer = await route.fetch();
      await route.fulfill({
        response: answer,
        body: (await answer.text()).replace('<!--embed-->', cellar(8)),
      });
    });
    // In Firefox this ends only when the script has run.
    const reloaded = page.reload({ waitUntil: 'commit' });
    await asked;
    await page.waitForFunction(() => performance.getEntriesByType('paint').length > 0);
    const followsAt = () => page.locator('#after').evaluate((e) => e.getBoundingClientRect().top);
    const before = await followsAt();
    release();
    await reloaded;
    await page.waitForFunction(() => document.querySelector('croft-embed')?.shadowRoot);
    await page.waitForTimeout(100);
    expect(Math.abs((await followsAt()) - before)).toBeLessThan(1);
    expect(await page.evaluate(() => (window as unknown as { shifts: number[] }).shifts)).toEqual([]);
  });
});
