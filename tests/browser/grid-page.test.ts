import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

const HOSTILE = `
  * { line-height: 3 !important; text-transform: uppercase }
  table { display: block; width: 100%; border: 9px solid red }
  table td { padding: 30px !important; background: hotpink !important }
  textarea, input { font-size: 40px !important }
  div { white-space: pre }
`;

describe('in a page that was not made for it', () => {
  it('keeps its look and its menus', async () => {
    const grid = await GridDriver.open(pages, { width: 1280 });
    await grid.page.addStyleTag({ content: HOSTILE });
    await grid.page.evaluate(() => {
      document.body.style.cssText = 'position: relative; overflow: hidden; transform: translateX(40px)';
    });
    // The first line has the header's rule on top of it.
    const cell = await grid.cell(1, 'Food');
    expect(await cell.evaluate((td) => td.getBoundingClientRect().height)).toBe(32);
    expect(await cell.evaluate((td) => getComputedStyle(td).textTransform)).toBe('none');
    const place = (await cell.boundingBox())!;
    await grid.click(1, 'Food', { button: 'right' });
    const menu = (await grid.page.locator('.htMenu:visible').first().boundingBox())!;
    expect(Math.abs(menu.x - place.x - 12)).toBeLessThan(4);
    expect(menu.height).toBeLessThan(600);
    await grid.menuItem('Insert a row above').click();
    expect(await grid.rowIds()).toHaveLength(6);
  });

  it('works under a strict content security policy without writing styles into the head', async () => {
    const grid = await GridDriver.open(pages, { width: 1280 });
    const written = await grid.page.evaluate(async () => {
      const blocked: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => blocked.push(event.violatedDirective));
      const meta = document.createElement('meta');
      meta.httpEquiv = 'Content-Security-Policy';
      meta.content = "script-src 'self'; style-src 'self'; img-src 'self' data:";
      document.head.append(meta);
      await window.grid.start({});
      await new Promise((done) => setTimeout(done, 50));
      return {
        blocked,
        styles: document.head.querySelectorAll('style:not(#handsontable-core-styles)').length,
      };
    });
    expect(written.blocked).toEqual([]);
    await grid.click(0, 'Food');
    await grid.type('Figs');
    await grid.press('Enter');
    expect(await grid.value('lot1', 'food')).toBe('Figs');
    await grid.click(0, 'Food', { button: 'right' });
    expect(await grid.menu()).toContain('Insert a row above');
  });

  it('shows hostile text as text', async () => {
    const grid = await GridDriver.open(pages);
    const text = '<img src=x onerror="document.title=`gone`"><b>bold</b>';
    await grid.page.evaluate((each) => {
      const { live } = window.grid;
      live.set('shelf', 'lot1', 'food', each);
      live.set('shelf', 'lot1', 'place', each);
    }, text);
    expect((await grid.shown('Food'))[0]).toBe(text);
    await grid.openHeaderMenu('Food');
    await grid.press('Escape');
    await grid.click(1, 'Kept where');
    await grid.press('F2');
    expect(await grid.suggestions().allTextContents()).toContain(text);
    expect(await grid.page.locator('img').count()).toBe(0);
    expect(await grid.page.title()).not.toBe('gone');
  });
});

describe('by touch', () => {
  it('selects by a tap, edits by a double tap, and opens menus', async () => {
    const grid = await GridDriver.open(pages, { touch: true, width: 360 });
    const at = async (line: number, title: string) => {
      const box = (await (await grid.cell(line, title)).boundingBox())!;
      return [box.x + 20, box.y + 16] as const;
    };
    await grid.page.touchscreen.tap(...(await at(1, 'Food')));
    expect(await grid.selection()).toEqual({ row: 'lot2', column: 'food' });
    await grid.page.touchscreen.tap(...(await at(2, 'Food')));
    await grid.page.touchscreen.tap(...(await at(2, 'Food')));
    await expect.poll(() => grid.page.locator('textarea.handsontableInput').inputValue()).toBe('Green beans');
    await grid.page.keyboard.press('Escape');
    await grid.page.keyboard.press('Escape');
    await grid.header('Food').locator('.changeType').tap();
    const menu = (await grid.page.locator('.htMenu:visible').first().boundingBox())!;
    expect(menu.x).toBeGreaterThanOrEqual(0);
    expect(menu.x + menu.width).toBeLessThanOrEqual(360);
    await grid.menuItem('Sort smallest').tap();
    expect((await grid.shown('Food'))[0]).toBe('Corn');
  });
});

describe('for assistive technology', () => {
  it('has a name, counts its rows, and names its editor', async () => {
    const grid = await GridDriver.open(pages);
    const table = grid.page.getByRole('treegrid', { name: 'Shelf' });
    expect(await table.getAttribute('aria-rowcount')).toBe('7');
    await grid.click(5, 'Food');
    await grid.type('Leeks');
    await grid.press('Enter');
    expect(await table.getAttribute('aria-rowcount')).toBe('8');
    await grid.press('F2');
    expect(await grid.page.locator('textarea.handsontableInput').getAttribute('aria-label')).toBe(
      'Food, new row',
    );
  });

  it('has no fault that axe finds, but for those of the library’s own markup', async () => {
    const grid = await GridDriver.open(pages, { width: 1280 });
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    await grid.page.evaluate(axe);
    const faults = async (): Promise<string[]> =>
      grid.page.evaluate(async () => {
        const { axe: tool } = window as unknown as {
          axe: { run(where: unknown, options: object): Promise<{ violations: { id: string }[] }> };
        };
        const { violations } = await tool.run(document, {
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'],
        });
        return violations.map(({ id }) => id);
      });
    // A focusable child that is only layout, inside the table.
    expect(await faults()).toEqual(['aria-required-children']);
    await grid.click(0, 'Way kept');
    await grid.press('F2');
    expect(await faults()).toEqual(['aria-required-children']);
    await grid.press('Escape', 'Escape');
    await grid.click(0, 'Food', { button: 'right' });
    // Lines of the menu lie in rows of a table.
    expect(await faults()).toEqual(['aria-required-children', 'aria-required-parent']);
  });
});
