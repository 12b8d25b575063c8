import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { ENGINE, launchEngine } from './engines/engine.js';
import { skipLacking } from './engines/lacking.js';
import { type Served, servePages } from './serve-pages.js';

export interface OpenOptions extends BrowserContextOptions {
  /** Errors of the page that the test is about; any other fails it. */
  readonly expectErrors?: RegExp;
}

/** Pages of this repository in a real browser, for one file of tests. */
export interface Pages {
  /** Opens a page by its path from the repository's root. */
  open(path: string, options?: OpenOptions): Promise<Page>;
  /** The same page for all tests of the file that ask for it: for pages that can begin anew by themselves. */
  shared(path: string, options?: BrowserContextOptions): Promise<Page>;
  /**
   * The same page for all tests of the file, with nothing but its heading on it and nothing kept in its local
   * storage: for tests that do not mind that its scripts are loaded already, and leave it as large, light and loud as
   * they found it.
   */
  emptied(path: string): Promise<Page>;
  /** One more page beside another, sharing its storage: a second tab. */
  openBeside(page: Page, path: string): Promise<Page>;
}

const VIEWPORT = { width: 1280, height: 800 };

/**
 * Serves the pages and starts a browser for the tests of a file, and ends them with it. An error on a
 * page, in its script or its console, fails the test that opened it.
 */
export function usePages(): Pages {
  let server: Served;
  let browser: Browser;
  let address = '';
  const contexts: BrowserContext[] = [];
  const kept = new Map<string, Promise<Page>>();
  const errors: string[] = [];

  beforeAll(async () => {
    server = await servePages();
    address = server.address;
    browser = await launchEngine();
  }, 300_000);

  beforeEach(skipLacking);

  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
    const found = errors.splice(0);
    expect(found, 'errors on the page').toEqual([]);
  });

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const watch = (page: Page, expected?: RegExp): void => {
    const note = (text: string): void => {
      if (!expected?.test(text)) errors.push(text);
    };
    page.on('pageerror', (error) => note(error.stack ?? error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') note(message.text());
    });
  };

  const visit = async (context: BrowserContext, path: string, expected?: RegExp): Promise<Page> => {
    const page = await context.newPage();
    watch(page, expected);
    await page.goto(`${address}/${path}`);
    return page;
  };

  const newContext = async (options: BrowserContextOptions): Promise<BrowserContext> => {
    const context = await browser.newContext({ viewport: VIEWPORT, ...options });
    // Loading a page is no test of speed, and the machine may be busy.
    context.setDefaultNavigationTimeout(120_000);
    // The other engines are told when they start.
    if (ENGINE === 'chromium')
      await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: address });
    return context;
  };

  const open: Pages['open'] = async (path, { expectErrors, ...options } = {}) => {
    const context = await newContext(options);
    contexts.push(context);
    return visit(context, path, expectErrors);
  };

  const shared: Pages['shared'] = async (path, options = {}) => {
    const key = `${path} ${JSON.stringify(options)}`;
    let page = kept.get(key);
    // One that the test before has lost or that hangs is no page for the next.
    const isLost = page && (await page.then((each) => each.isClosed()).catch(() => true));
    if (!page || isLost) {
      page = newContext(options).then((context) => visit(context, path));
      kept.set(key, page);
    }
    return page;
  };

  const emptied: Pages['emptied'] = async (path) => {
    const page = await shared(path);
    await page.mouse.move(0, 0);
    await page.evaluate(() => {
      localStorage.clear();
      for (const each of document.querySelectorAll('main > :not(h1)')) each.remove();
      scrollTo(0, 0);
    });
    return page;
  };

  return {
    open,
    shared,
    emptied,
    openBeside: (page, path) => visit(page.context(), path),
  };
}
