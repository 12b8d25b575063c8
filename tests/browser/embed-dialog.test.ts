import { describe, expect, test } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { column, openWith } from './embed-make.js';
import { usePages } from './harness/pages.js';

const SOON = { timeout: 25_000 };

describe('For a web page…', { timeout: 60_000 }, () => {
  const pages = usePages();

  test('gives HTML that works on a page, with what the author opened', async () => {
    const demo = await pages.open('demo/index.html');
    await demo.getByRole('button', { name: 'This book' }).click();
    await demo.getByRole('menuitem', { name: 'For a web page…' }).click();
    const dialog = demo.getByRole('dialog', { name: 'For a web page' });
    await dialog.waitFor();
    await expect(dialog.getByText('Only what the table shows').isVisible()).resolves.toBe(true);
    await dialog.getByRole('checkbox', { name: 'Readers may try Put up', exact: true }).check();
    await expect(dialog.getByText('this goes into the page too').textContent()).resolves.toContain('Draws');
    await dialog.getByLabel('Title over it').fill('What we have <left>');
    // What is long goes into a file, and a few lines that name it into the page.
    const ways = dialog.getByRole('heading', { level: 3 });
    await expect
      .poll(() => ways.allTextContents())
      .toEqual([
        expect.stringMatching(/^As a file.* about \d\d0 kB$/),
        expect.stringMatching(/^All of it in the page about \d\d0 kB$/),
      ]);
    const lines = dialog.getByLabel('Lines to paste into your page');
    await dialog.getByLabel('Where the script lies on your site').fill('/croft/embed.js');
    await dialog.getByLabel('Where the file will lie on your site').fill('/figures/left.json');
    await dialog.getByRole('button', { name: 'Copy these lines' }).click();
    await expect
      .poll(() => lines.inputValue())
      .toMatch(
        /^<div>\n<script type="module" src="\/croft\/embed\.js"><\/script>\n<croft-embed sheet="shelf" src="\/figures\/left\.json" keep-as="[^"]+"><\/croft-embed>\n<\/div>$/,
      );
    expect(await axeViolations(demo)).toEqual([]);
    const html = await dialog.getByLabel('To paste into your page', { exact: true }).inputValue();
    const snippet = html.replace(/<script type="module".*\n/, '');
    const page = await openWith(pages, () => snippet);
    await expect(page.getByRole('table', { name: 'What we have <left>' }).isVisible()).resolves.toBe(true);
    const put = await page.getByRole('columnheader').allTextContents();
    const left = put.findIndex((title) => title.startsWith('Left'));
    const before = await column(page, left);
    await page
      .getByLabel(/^Put up, /)
      .first()
      .fill('500');
    await page.keyboard.press('Enter');
    await expect.poll(() => column(page, left), SOON).not.toEqual(before);
  });
});
