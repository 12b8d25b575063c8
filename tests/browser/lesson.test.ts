import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeViolations } from './elements-axe.js';
import { place, said, saidByAll } from './elements-make.js';
import { type OpenOptions, usePages } from './harness/pages.js';
import { pagesIn } from './harness/pdf-pages.js';

const PAGE = 'tests/browser/harness/pages/elements.html';
const DEMO = 'demo/lessons.html';
const GARDEN = readFileSync('demo/data/school-garden.json', 'utf8');
const pages = usePages();

const open = async (path: string, options?: OpenOptions): Promise<Page> => {
  const page = await pages.open(path, options);
  page.setDefaultTimeout(20_000);
  return page;
};

const OWN = `<croft-lesson heading="At the tap"><ol>
  <li data-answer="8" data-unit="pints" data-hints="A quart is 2 pints.">How many pints are 4 quarts?</li>
  <li data-answer="17 2/3" data-unit="quarts">How many quarts are 53 pounds, at 3 pounds a quart?</li>
  <li data-answer="potatoes" data-choices="potatoes; carrots">Which are heavier by the bushel?</li>
</ol></croft-lesson>`;

const drawn = async (page: Page, attributes: string): Promise<void> => {
  await place(page, `<croft-book><croft-lesson ${attributes}></croft-lesson></croft-book>`, GARDEN);
  await page.locator('croft-lesson .question').first().waitFor();
};

const texts = (page: Page): Promise<string[]> => saidByAll(page.locator('croft-lesson .text'));
const status = (page: Page): Promise<string> => said(page.locator('croft-lesson [role=status]'));

describe('questions of a page’s own', () => {
  it('are answered by keyboard alone, with hints a step at a time, and said aloud', async () => {
    const page = await open(PAGE);
    await place(page, OWN);
    const first = page.getByLabel('Answer to question 1, in pints');
    await first.focus();
    await page.keyboard.type('7');
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page)).toMatch(/^Question 1: Not yet.* 0 of 3 right\.$/);
    expect(await first.getAttribute('aria-invalid')).toBe('true');
    // On to 'Check', then to the hint.
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page)).toBe('Question 1, step 1: A quart is 2 pints.');
    expect(await saidByAll(page.locator('croft-lesson .steps li'))).toEqual(['A quart is 2 pints.']);
    await page.keyboard.press('Enter');
    expect(await saidByAll(page.locator('croft-lesson .steps li'))).toEqual([
      'A quart is 2 pints.',
      'The answer is 8 pints.',
    ]);
    await first.fill('1 gallon');
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page)).toContain('1 of 3 right');
    // Left without Enter: checked all the same.
    await page.getByLabel('Answer to question 2, in quarts').fill('17⅔');
    await page.getByLabel('Answer to question 3').focus();
    await expect.poll(() => status(page)).toContain('2 of 3 right');
    await page.getByLabel('Answer to question 3').selectOption('potatoes');
    await page.getByRole('button', { name: 'Check question 3' }).click();
    await expect.poll(() => status(page)).toBe('Question 3: Right. 3 of 3 right.');
    expect(await page.locator('croft-lesson progress').getAttribute('value')).toBe('3');
  });

  it('never take text for markup, and say what is wrong with what was written', async () => {
    const page = await open(PAGE);
    await place(
      page,
      '<croft-lesson><ol><li data-answer="lots">&lt;img src=x onerror="document.title=1"&gt; How many?</li></ol></croft-lesson>',
    );
    await page.getByRole('alert').getByText('The answer “lots” cannot be checked.').waitFor();
    await place(page, '<croft-lesson lesson="https://elsewhere.example/lesson.json"></croft-lesson>');
    await page.getByText('another site').waitFor();
    expect(await page.title()).toBe('Elements');
  });

  it('want the unit written where the page says so', async () => {
    const page = await open(PAGE);
    await place(page, OWN.replace('heading', 'units="write" heading'));
    const first = page.getByLabel('Answer to question 1', { exact: true });
    await first.fill('8');
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page)).toContain('Write the unit behind it');
    await first.fill('8 pints');
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page)).toContain('1 of 3 right');
  });
});

describe('a sheet from the book', () => {
  it('comes again by its seed, and another is one button away', async () => {
    const page = await open(PAGE);
    await drawn(page, 'topics="units rates" level="2" seed="41" count="5"');
    const was = await texts(page);
    expect(was.length).toBe(5);
    await page.getByRole('button', { name: 'Another sheet' }).click();
    await expect.poll(() => texts(page)).not.toEqual(was);
    await page.getByLabel('Sheet', { exact: true }).fill('41');
    await page.keyboard.press('Enter');
    await expect.poll(() => texts(page)).toEqual(was);
    await page.getByLabel('Level').selectOption('3');
    await expect.poll(() => texts(page)).not.toEqual(was);
  });

  it('follows the book until somebody works at it; then it waits to be asked', async () => {
    const page = await open(PAGE);
    await drawn(page, 'topics="linear" level="1" seed="3" count="4"');
    const potatoes = (count: number) =>
      page.evaluate((n) => {
        const live = document.querySelector('croft-book')!.live!;
        const sheet = live.sheetOfKind('shelf')!;
        for (const row of live.rowIds(sheet)) live.set(sheet, row, 'count', n);
      }, count);
    const was = await texts(page);
    await potatoes(77);
    await expect.poll(() => texts(page)).not.toEqual(was);
    const now = await texts(page);
    await page.getByLabel(/^Answer to question 1/).fill('3');
    await potatoes(88);
    await page.getByText('The book has changed since this sheet was made.').waitFor();
    expect(await texts(page)).toEqual(now);
    await page.getByRole('button', { name: 'Make it anew' }).click();
    await expect.poll(() => texts(page)).not.toEqual(now);
  });

  it('shows a chart with the same numbers in a table behind it', async () => {
    const page = await open(PAGE);
    await drawn(page, 'topics="charts" level="2" seed="3" count="2"');
    const figure = page.locator('croft-lesson figure').first();
    await figure.getByRole('img', { name: /^Bar chart: / }).waitFor();
    await figure.getByText('The chart as a table').click();
    const rows = await figure.getByRole('row').count();
    expect(rows).toBe(await figure.locator('rect.bar').count());
    // Bars stand in proportion to the numbers of the table.
    const heights = await figure
      .locator('rect.bar')
      .evaluateAll((all) => all.map((bar) => Number(bar.getAttribute('height'))));
    const values = (await saidByAll(figure.locator('td'))).map((text) => Number.parseFloat(text));
    for (const [at, height] of heights.entries())
      expect(height / heights[0]!).toBeCloseTo(values[at]! / values[0]!, 5);
  });
});

describe('in the menu of a book', () => {
  it('worksheets are made from the book that is open, topic by topic', async () => {
    const page = await open(PAGE);
    await place(page, '<croft-book><croft-book-menu></croft-book-menu></croft-book>', GARDEN);
    await page.getByRole('button', { name: 'Book' }).click();
    await page.getByRole('menuitem', { name: 'Food math…' }).click();
    const dialog = page.getByRole('dialog', { name: 'Food math' });
    await dialog.locator('.question').first().waitFor();
    expect(await dialog.locator('.question').count()).toBe(6);
    await dialog.getByLabel('Changing units').uncheck();
    await dialog.getByText('Choose a topic.').waitFor();
    await dialog.getByLabel('Chance').check();
    await dialog.getByLabel('Questions', { exact: true }).fill('3');
    await page.keyboard.press('Tab');
    await dialog.getByRole('heading', { name: 'Chance', level: 2 }).waitFor();
    await expect.poll(() => dialog.locator('.question').count()).toBe(3);
    expect(await axeViolations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  });
});

describe('on paper', () => {
  it('the key begins a page of its own, and the page around is not printed', async () => {
    const page = await open(`${DEMO}#jars-and-lids`);
    await page.locator('croft-lesson .caution').first().waitFor();
    const sheets = pagesIn(await page.pdf({ format: 'Letter' }));
    expect(sheets).toBeGreaterThanOrEqual(2);
    expect(sheets).toBeLessThanOrEqual(3);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('croft-lesson .screen').isVisible()).toBe(false);
    expect(await page.getByRole('navigation').first().isVisible()).toBe(false);
    const key = page.locator('croft-lesson .paper .key');
    expect(await key.evaluate((each) => getComputedStyle(each).breakBefore)).toBe('page');
    expect(await said(page.locator('croft-lesson .paper .sheet'))).toContain('tested process');
    // The sheet does not give its answers away.
    expect(await said(page.locator('croft-lesson .paper .sheet'))).not.toContain('12.5');
    expect(await said(key)).toContain('12.5 %');
  });

  it('prints the sheet alone from its button', async () => {
    const page = await open(`${DEMO}#bed-and-row`);
    await page.locator('croft-lesson .question').first().waitFor();
    await page.evaluate(() => {
      const append = document.body.append.bind(document.body);
      document.body.append = (...nodes: (Node | string)[]) => {
        append(...nodes);
        for (const frame of nodes)
          if (frame instanceof HTMLIFrameElement)
            frame.contentWindow!.print = () => {
              document.body.dataset.printed = frame.contentDocument!.body.textContent ?? '';
            };
      };
    });
    await page.getByRole('button', { name: 'Print with key' }).click();
    const printed = await page.evaluate(() => document.body.dataset.printed ?? '');
    expect(printed).toContain('Name:');
    expect(printed).toContain('Answer key: Bed and row');
    expect(printed).toContain('4.MD.A.3');
    expect(printed).not.toContain('Twelve lessons');
  });
});

describe('the page of lessons', () => {
  it('lists twelve, opens each, and goes with the address', async () => {
    const page = await open(DEMO);
    const links = page.getByRole('navigation').nth(1).getByRole('list').first().getByRole('link');
    await expect.poll(() => links.count()).toBe(12);
    for (let at = 0; at < 12; at++) {
      const title = await links.nth(at).evaluate((each) =>
        [...each.childNodes]
          .filter(({ nodeName }) => nodeName === '#text')
          .map(({ textContent }) => textContent)
          .join('')
          .trim(),
      );
      await links.nth(at).click();
      await page.locator('croft-lesson').getByRole('heading', { name: title, level: 2 }).waitFor();
      expect(await page.locator('croft-lesson .question').count()).toBeGreaterThanOrEqual(5);
      expect(await links.nth(at).getAttribute('aria-current')).toBe('page');
    }
    // What was written stays with its lesson, apart from the others, and is there again after a reload.
    const first = page.getByLabel(/^Answer to question 1/);
    const go = async (at: number): Promise<void> => {
      await links.nth(at).click();
      await expect.poll(() => links.nth(at).getAttribute('aria-current')).toBe('page');
    };
    await go(2);
    await first.fill('3');
    await go(4);
    await expect.poll(() => first.inputValue()).toBe('');
    await go(2);
    await expect.poll(() => first.inputValue()).toBe('3');
    await page.reload();
    await expect.poll(() => first.inputValue()).toBe('3');
    await page.getByRole('button', { name: 'Blank it all' }).click();
    await expect.poll(() => first.inputValue()).toBe('');
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await expect.poll(() => first.inputValue()).toBe('3');
    await go(10);
    await go(11);
    await page.goBack();
    await page
      .locator('croft-lesson')
      .getByRole('heading', { name: 'Chance' })
      .or(page.getByRole('heading', { name: 'Frost and chance' }))
      .first()
      .waitFor();
  });

  it.each([
    { width: 360, colorScheme: 'light' },
    { width: 1280, colorScheme: 'dark' },
  ] as const)('is fit for all at $width pixels, $colorScheme', async ({ width, colorScheme }) => {
    const page = await open(`${DEMO}#bars-of-the-harvest`, { viewport: { width, height: 800 }, colorScheme });
    await page.locator('croft-lesson svg').first().waitFor();
    await page.getByLabel(/^Answer to question 1/).fill('9999');
    await page.getByRole('button', { name: 'Check question 1' }).click();
    await page.getByRole('button', { name: 'Hint for question 2' }).click();
    expect(await axeViolations(page)).toEqual([]);
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
