import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import { type Browser, chromium, type Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { findChromium, NO_CHROMIUM } from './harness/find-chromium.mjs';
import { chooseRow, PAGE, weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 240_000 });

/** Milliseconds from the click to the end of the browser: from before anything is written to well after. */
const AFTER_THE_CLICK = [0, 4, 30, 400];

const repository = resolve(import.meta.dirname, '../..');
let server: ViteDevServer;
let address = '';

beforeAll(async () => {
  server = await createServer({
    root: repository,
    configFile: false,
    logLevel: 'error',
    appType: 'mpa',
    cacheDir: resolve(repository, 'node_modules/.vite-tests'),
    server: { port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: ['tests/browser/harness/pages/*.html'] },
    oxc: { target: 'es2022' },
  });
  await server.listen();
  address = `http://127.0.0.1:${(server.httpServer!.address() as { port: number }).port}`;
}, 120_000);
afterAll(() => server?.close());

interface Running {
  readonly page: Page;
  readonly browser: Browser;
  readonly process: ChildProcess;
}

/** A browser of its own, with a profile that outlives it, so that it can be killed as a power cut would. */
async function start(profile: string): Promise<Running> {
  const executable = findChromium();
  if (!executable) throw new Error(NO_CHROMIUM);
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const flags = [
    '--headless=new',
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
    'about:blank',
  ];
  const process = spawn(executable, flags, { stdio: 'ignore', detached: true });
  await expect
    .poll(() => existsSync(portFile) && readFileSync(portFile, 'utf8').includes('\n'), { timeout: 30_000 })
    .toBe(true);
  const [port] = readFileSync(portFile, 'utf8').split('\n');
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  const [context] = browser.contexts();
  const page = await context!.newPage();
  return { page, browser, process };
}

/** Ends all of a browser at once: the process that was started here, with the group that it leads. */
async function kill(
  { process: { pid, exitCode }, browser }: Running,
  ended: Promise<unknown>,
): Promise<void> {
  if (pid !== undefined && exitCode === null) process.kill(-pid, 'SIGKILL');
  await ended;
  await browser.close().catch(() => {});
}

const endOf = ({ process }: Running): Promise<unknown> =>
  process.exitCode === null ? new Promise((done) => process.once('exit', done)) : Promise.resolve();

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
      const first = await start(profile);
      await openBook(first.page);
      await chooseRow(first.page, 1);
      await first.page.getByRole('button', { name: 'Mark done' }).click();
      const post = first.page.getByRole('button', { name: 'Mark done and post 2 draws' });
      await post.waitFor();
      // The answer to the click may never come.
      const clicked = post.click({ noWaitAfter: true }).catch(() => {});
      if (after > 0) await clicked;
      await rest(after);
      await kill(first, endOf(first));

      const second = await start(profile);
      await openBook(second.page);
      const { draws, done } = await meal(second.page);
      await kill(second, endOf(second));
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
