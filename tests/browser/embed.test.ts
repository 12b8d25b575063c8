import { describe, expect, test } from 'vitest';
import { cellar, column, openWith } from './embed-make.js';
import { usePages } from './harness/pages.js';

describe('An embedded sheet', { timeout: 60_000 }, () => {
  const pages = usePages();

  test('shows its figures at once, and loads what works them out only when a reader tries something', async () => {
    const page = await openWith(pages, () => cellar(6));
    const scripts: string[] = [];
    page.on('request', (request) => scripts.push(request.url()));
    const left = await column(page, 3);
    expect(left).toHaveLength(6);
    expect(left[0]).toMatch(/^\d/);
    await page.waitForTimeout(300);
    expect(scripts.filter((url) => url.endsWith('.js'))).toEqual([]);
    await page
      .getByLabel(/^Put up, /)
      .first()
      .click();
    await page.keyboard.type('90');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await column(page, 3))[0]).not.toBe(left[0]);
    expect(scripts.some((url) => url.endsWith('.js'))).toBe(true);
    await page.screenshot({ path: '/tmp/work/embed/shot1.png', fullPage: true });
  });
});
