import { setTimeout as rest } from 'node:timers/promises';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { findWebkit } from '../../find-engines.mjs';
import { skipForWantOf } from '../lacking.js';
import { withWhatIsLacking } from './lacking-here.js';
import { WebkitPage } from './page.js';
import { Session } from './session.js';
import { ended, startDisplay } from './started.js';

export type Installed = NonNullable<ReturnType<typeof findWebkit>>;

/** So long a page may take to say what went wrong on it, in milliseconds. */
const TOLD_WITHIN = 5_000;

/** What a context can be told: anything else cannot be had through WebDriver. */
const KNOWN = new Set(['viewport', 'locale', 'colorScheme', 'reducedMotion', 'javaScriptEnabled']);

async function newContext(
  installed: Installed,
  display: string,
  options: BrowserContextOptions,
): Promise<BrowserContext> {
  const asked = Object.entries(options).filter(([, value]) => value !== undefined && value !== false);
  for (const [name, value] of asked)
    if (!KNOWN.has(name)) skipForWantOf(`a page with ${name} ${JSON.stringify(value)}`);
  const session = await Session.start(installed, display, options);
  const pages: WebkitPage[] = [];
  const context: BrowserContext = withWhatIsLacking('context', {
    async newPage() {
      const first = pages.length === 0;
      const handle = await session.in('', async (driver) => {
        if (!first) await driver.switchTo().newWindow('tab');
        return driver.getWindowHandle();
      });
      const page = new WebkitPage(session, handle, () => context, options);
      pages.push(page);
      if (options.viewport) await page.setViewportSize(options.viewport);
      return withWhatIsLacking('page', page);
    },
    pages: () => pages,
    // A page is waited for as long as the session says.
    setDefaultNavigationTimeout: () => undefined,
    async setOffline(offline: boolean) {
      session.network.offline = offline;
    },
    async close() {
      if (!session.isStuck)
        for (const page of pages) await Promise.race([page.tellErrors(), rest(TOLD_WITHIN)]);
      await session.close();
    },
  });
  return context;
}

/**
 * WebKitGTK through its own WebDriver, as much like a browser of playwright’s as the tests need. What it cannot
 * do says so by name.
 */
export async function launchWebkit(): Promise<Browser> {
  const installed = findWebkit();
  if (!installed) throw new Error('WebKitGTK was not found: Debian has it as webkit2gtk-driver and xvfb.');
  const display = await startDisplay(installed.display);
  const contexts = new Set<BrowserContext>();
  return withWhatIsLacking('browser', {
    async newContext(options: BrowserContextOptions = {}) {
      const context = await newContext(installed, display.name, options);
      contexts.add(context);
      return context;
    },
    async close() {
      for (const context of contexts) await context.close().catch(() => undefined);
      await ended(display.process);
    },
  });
}
