import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { CellValue, Raw } from '../../../src/book/index.js';
import type { GridPage, StartOptions } from './pages/grid.js';
import type { Pages } from './pages.js';

declare global {
  interface Window {
    grid: GridPage;
  }
}

export interface GridPageOptions extends StartOptions {
  readonly sheet?: 'shelf' | 'draws' | 'foods' | 'household' | 'own1' | 'jars';
  /** Any of these opens a page of its own rather than the one that the tests of a file share. */
  readonly touch?: boolean;
  readonly width?: number;
  readonly dark?: boolean;
}

const PAGE = 'tests/browser/harness/pages/grid.html';

/** A grid on a page of its own, used as a person would and looked at as one would see it. */
export class GridDriver {
  private constructor(
    readonly page: Page,
    readonly sheet: string,
  ) {}

  static async open(pages: Pages, options: GridPageOptions = {}): Promise<GridDriver> {
    const { touch, width, dark, ...start } = options;
    const isPlain = touch === undefined && width === undefined && dark === undefined;
    const page = isPlain
      ? await pages.shared(PAGE)
      : await pages.open(`${PAGE}${dark ? '?scheme=dark' : ''}`, {
          viewport: { width: width ?? 1280, height: 800 },
          hasTouch: touch ?? false,
        });
    await page.waitForFunction(() => window.grid?.view !== undefined, null, { timeout: 60_000 });
    await page.mouse.move(0, 0);
    await page.evaluate((each) => window.grid.start(each), start);
    return new GridDriver(page, start.sheet ?? 'shelf');
  }

  /** Titles as seen, from left to right. */
  async titles(): Promise<string[]> {
    return this.page.locator('.ht_clone_top thead .croft-title').allTextContents();
  }

  header(title: string): Locator {
    // Columns that stand still lie over those that scroll.
    return this.page
      .locator('.ht_clone_top thead th, .ht_clone_top_inline_start_corner thead th', {
        has: this.page.locator(`.croft-title:text-is("${title}")`),
      })
      .last();
  }

  /** A cell as seen: the line from 0, the column by its title. */
  async cell(line: number, title: string): Promise<Locator> {
    const at = (await this.titles()).indexOf(title);
    expect(at, `a column “${title}”`).toBeGreaterThanOrEqual(0);
    const still = this.page.locator('.ht_clone_inline_start tbody tr').nth(line).locator('td');
    const home = at < (await still.count()) ? '.ht_clone_inline_start' : '.ht_master';
    return this.page.locator(`${home} tbody tr`).nth(line).locator('td').nth(at);
  }

  /** What a column shows from top to bottom, the blank line too. */
  async shown(title: string): Promise<string[]> {
    const at = (await this.titles()).indexOf(title);
    return this.page
      .locator('.ht_master tbody tr')
      .evaluateAll(
        (rows, index) => rows.map((row) => row.querySelectorAll('td')[index]?.textContent ?? ''),
        at,
      );
  }

  async click(line: number, title: string, options: Parameters<Locator['click']>[0] = {}): Promise<void> {
    await (await this.cell(line, title)).click({ position: { x: 12, y: 14 }, ...options });
  }

  async select(from: [number, string], to: [number, string]): Promise<void> {
    await this.click(...from);
    await this.click(...to, { modifiers: ['Shift'] });
  }

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }

  /** Opens the menu at a cell and chooses a line of it. */
  async choose(line: number, title: string, item: string): Promise<void> {
    await this.click(line, title, { button: 'right' });
    await this.menuItem(item).click();
  }

  /** Opens the menu at the selection by its key and chooses a line of it. */
  async chooseHere(item: string): Promise<void> {
    await this.press('Shift+F10');
    await this.menuItem(item).click();
  }

  /** Opens the menu of a column's header and chooses a line of it. */
  async chooseInHeader(title: string, item: string): Promise<void> {
    await this.openHeaderMenu(title);
    await this.menuItem(item).click();
  }

  async openHeaderMenu(title: string): Promise<void> {
    await this.header(title).locator('.changeType').click();
  }

  menuItem(item: string): Locator {
    return this.page
      .locator('.htMenu:visible .ht_master td:not(.htSeparator)', { hasText: new RegExp(`^${item}`) })
      .first();
  }

  /** Lines of the open menu. */
  async menu(): Promise<string[]> {
    const lines = await this.page
      .locator('.htMenu:visible .ht_master td:not(.htSeparator)')
      .allTextContents();
    return lines.map((line) => line.trim()).filter(Boolean);
  }

  rowIds(): Promise<readonly string[]> {
    return this.page.evaluate((sheet) => window.grid.live.rowIds(sheet), this.sheet);
  }

  value(row: string, column: string): Promise<CellValue> {
    return this.page.evaluate(
      ([sheet, r, c]) => window.grid.live.value(sheet!, r!, c!),
      [this.sheet, row, column],
    );
  }

  typed(row: string, column: string): Promise<Raw | null> {
    return this.page.evaluate(
      ([sheet, r, c]) => window.grid.live.typed(sheet!, r!, c!),
      [this.sheet, row, column],
    );
  }

  /** The last thing said, in words; blank where it was cleared. */
  said(): Promise<string> {
    return this.page.evaluate(() => {
      const last = window.grid.said.at(-1) ?? null;
      return last === null ? '' : typeof last === 'string' ? last : `${last.message} ${last.mend}`;
    });
  }

  selection(): Promise<{ row: string; column: string } | null> {
    return this.page.evaluate(() => window.grid.view.selection);
  }

  asked(): Promise<unknown> {
    return this.page.evaluate(() => window.grid.asked.at(-1));
  }

  clipboard(): Promise<string> {
    return this.page.evaluate(() => navigator.clipboard.readText());
  }

  /** Puts text on the clipboard, as another program would. */
  async otherProgramCopies(text: string): Promise<void> {
    await this.page.evaluate((each) => navigator.clipboard.writeText(each), text);
  }

  /** Suggestions under the open editor. */
  suggestions(): Locator {
    return this.page.locator('.croft-popup [role=option]');
  }
}
