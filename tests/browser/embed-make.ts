import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { parseBook } from '../../src/book/index.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { type EmbedOptions, embedOf } from '../../src/live/embed/index.js';
import { LiveBook, openBook } from '../../src/live/live-book.js';
import type { OpenOptions, Pages } from './harness/pages.js';

export const EMBED_PAGE = 'tests/browser/harness/pages/embed.html';

/** The demo household's book, open. */
export function demoBook(engine = false): LiveBook {
  const text = readFileSync(resolve(import.meta.dirname, '../../demo/data/tamarack-bench.json'), 'utf8');
  const parsed = parseBook(text);
  if (!parsed.ok) throw new Error(parsed.problems[0]!.message);
  if (!engine) return openBook(parsed.book);
  return new LiveBook(parsed.book, { engine: new HyperFormulaEngine({ asOf: 0, basis: 'usual' }) });
}

export const CELLAR: EmbedOptions = {
  columns: ['food', 'put_up_on', 'count', 'left', 'weeks_of_supply', 'eaten_by', 'best_by'],
  open: ['count'],
  keepAs: 'cellar',
};

let planned: LiveBook | undefined;
/** The demo household's book for what only reads it: planned once. */
function demoToRead(): LiveBook {
  planned ??= demoBook();
  return planned;
}

/** The first rows of the Shelf as a snippet. */
export function cellar(rows: number, options: EmbedOptions = {}, live = demoToRead()): string {
  return embedOf(live, 'shelf', { ...CELLAR, rows: live.rowIds('shelf').slice(0, rows), ...options }).html;
}

export interface PageAround {
  /** HTML for the head, after the script. */
  readonly head?: string;
  /** Content security policy, as a header. */
  readonly policy?: string;
  readonly html?: (page: string) => string;
  /** Files beside the page. */
  readonly files?: Readonly<Record<string, string>>;
}

/** Opens a page with a snippet in it, as a blogger would have pasted it. */
export async function openWith(
  pages: Pages,
  snippet: () => string,
  around: PageAround = {},
  options: OpenOptions = {},
): Promise<Page> {
  const page = await pages.open(EMBED_PAGE, options);
  await page.route('**/embed.html', async (route) => {
    const answer = await route.fetch();
    let body = (await answer.text())
      .replace('<!--embed-->', snippet())
      .replace('</head>', `${around.head ?? ''}</head>`);
    if (around.html) body = around.html(body);
    const headers = {
      ...answer.headers(),
      ...(around.policy && { 'content-security-policy': around.policy }),
    };
    await route.fulfill({ response: answer, headers, body });
  });
  for (const [name, body] of Object.entries(around.files ?? {}))
    await page.route(`**/${name}`, (route) => route.fulfill({ body, contentType: 'application/json' }));
  const { origin } = new URL(page.url());
  await page.goto(`${origin}/${EMBED_PAGE}`);
  return page;
}

/** What the cells of one column show, as a reader sees them. */
export const column = (page: Page, index: number): Promise<string[]> =>
  page.locator('croft-embed').evaluate((host, at) => {
    const rows = host.shadowRoot!.querySelectorAll<HTMLTableRowElement>('tbody tr');
    return [...rows].map((row) => {
      const cell = row.cells[at]!;
      return cell.querySelector('input')?.value ?? cell.textContent!;
    });
  }, index);
