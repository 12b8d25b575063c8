import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { kill, startBrowser } from '../soak/killable.js';
import { type Served, servePages } from './harness/serve-pages.js';
import { chooseRow, PAGE, weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 240_000 });

/** Milliseconds from the click to the end of the browser: from before anything is written to well after. */
const AFTER_THE_CLICK = [0, 10, 400];

let server: Served;
let address = '';

beforeAll(async () => {
  server = await servePages();
  address = server.address;
}, 240_000);
afterAll(() => server?.close());

async function openBook(page: Page): Promise<void> {
  await page.goto(`${address}/${PAGE}`);
  await page.evaluate(async (json) => {
    await customElements.whenDefined('croft-book');
    const home = document.createElement('div');
    home.innerHTML =
      '<croft-book keep keep-as="week" grid-licence-key="non-commercial-and-evaluation"><croft-sheet sheet="week" view="edit"></croft-sheet></croft-book>';
    const script = document.createElement('script');
    script.type = 'application/json';
    script.textContent = json;
    home.querySelector('croft-book')!.append(script);
    document.querySelector('main')!.append(home);
  }, JSON.stringify(weekBook()));
  await page.locator('croft-grid-pane:not(.waiting)').waitFor({ timeout: 60_000 });
  await page.getByText('Saved', { exact: true }).waitFor();
}

/** How the meal stands: how many of its draws are there, and whether it is ticked. */
const meal = (page: Page): Promise<{ draws: number; done: unknown }> =>
  page.evaluate(() => {
    const live = document.querySelector('croft-book')!.live!;
    const draws = live.rowIds('draws').filter((id) => id.startsWith('w-m1-')).length;
    return { draws, done: live.value('week', 'm1', 'done') };
  });

it('a browser killed while it posts leaves all of a meal’s draws or none', async () => {
  const seen: string[] = [];
  for (const after of AFTER_THE_CLICK) {
    const profile = mkdtempSync(join(tmpdir(), 'croft-kill-'));
    try {
      const first = await startBrowser(profile);
      await openBook(first.page);
      await chooseRow(first.page, 1);
      await first.page.getByRole('button', { name: 'Mark done' }).click();
      const post = first.page.getByRole('button', { name: 'Mark done and post 2 draws' });
      await post.waitFor();
      // The answer to the click may never come.
      const clicked = post.click({ noWaitAfter: true }).catch(() => {});
      if (after > 0) await clicked;
      await rest(after);
      await kill(first);

      const second = await startBrowser(profile);
      await openBook(second.page);
      const { draws, done } = await meal(second.page);
      await kill(second);
      expect([0, 2], `killed ${after} ms after the click`).toContain(draws);
      // The tick and the draws are one, too.
      expect(done === true, `killed ${after} ms after the click`).toBe(draws === 2);
      seen.push(draws === 0 ? 'none' : 'all');
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
    }
  }
  // Long after, it is kept: else the test would also pass where nothing ever is.
  expect(seen.at(-1)).toBe('all');
});
