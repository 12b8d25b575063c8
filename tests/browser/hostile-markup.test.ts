import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { type BookDoc, KINDS, type SheetDoc, type SheetKind } from '../../src/book/index.js';
import { usePages } from './harness/pages.js';
import { weekBook } from './week-make.js';

vi.setConfig({ testTimeout: 240_000 });
const pages = usePages();

/** Markup in all the ways in which it could get out of where it stands. */
const MARKUP = [
  '<x-in></x-in><img src=x onerror="ran=1">',
  '"><x-in onclick="ran=1"></x-in>',
  "'><x-in></x-in><svg onload=ran=1>",
  '</script><script>ran=1</script><x-in>',
  '</style><x-in></x-in><style>*{display:none}</style>',
  'javascript:ran=1//<x-in>',
  '{{ran=1}}<x-in>',
];
let turn = 0;
const markup = (): string => MARKUP[turn++ % MARKUP.length]!;

/** The book with markup in every text of it that a person can write. */
function withMarkup(): BookDoc {
  const book = weekBook((live) => {
    live.apply({ do: 'add sheet', sheet: 'own', title: 'Own' });
    for (const column of ['text', 'choice', 'formula'])
      live.apply({ do: 'add column', sheet: 'own', column, before: null, title: column });
    live.insertRows(
      'own',
      MARKUP.map((text) => ({ text, choice: text, formula: `="${text.replaceAll('"', '""')}"&[text]` })),
    );
  });
  const sheets: Record<string, SheetDoc> = {};
  for (const [id, sheet] of Object.entries(book.sheets)) {
    const declared = KINDS[sheet.kind as SheetKind].columns;
    const columns: Record<string, SheetDoc['columns'][string]> = { ...sheet.columns };
    for (const { id: column } of declared)
      columns[column] = { ...columns[column], title: markup(), note: markup() };
    for (const column of Object.keys(sheet.columns))
      columns[column] = {
        ...columns[column],
        title: markup(),
        note: markup(),
        ...(column === 'choice' && { type: 'choice', choices: MARKUP }),
        measure: markup(),
        summary: markup(),
        marks: [{ when: 'contains', value: markup(), colour: markup() }],
      };
    const texts = declared.filter(
      ({ role, type }) => role === 'kept' && (type === 'text' || type === 'choice'),
    );
    const rows: Record<string, SheetDoc['rows'][string]> = { ...sheet.rows };
    // A row of nothing but markup beside those that the plan can read, each of which has some in its note.
    rows.hostile = {
      order: 'b00',
      cells: Object.fromEntries(texts.map(({ id: column }) => [column, markup()])),
    };
    for (const [row, doc] of Object.entries(sheet.rows))
      rows[row] = {
        ...doc,
        ...(sheet.kind !== 'own' && { cells: { ...doc.cells, note: markup() } }),
        ...Object.fromEntries(
          [...declared.map((each) => each.id), ...Object.keys(sheet.columns)].flatMap((column) => [
            [`note:${column}`, markup()],
            [`colour:${column}`, markup()],
          ]),
        ),
      };
    sheets[id] = { ...sheet, title: `${markup()} ${id}`, columns, rows };
  }
  return { ...book, id: 'hostile', title: MARKUP.join(' ').slice(0, 190), sheets };
}

/** Elements that only the markup could have made, in the page and in every shadow root; and whether it ran. */
const injected = (page: Page): Promise<{ ran: boolean; elements: string[] }> =>
  page.evaluate(() => {
    const elements: string[] = [];
    const look = (root: Document | ShadowRoot | DocumentFragment): void => {
      for (const element of root.querySelectorAll('*')) {
        const handler = [...element.attributes].find(({ name }) => name.startsWith('on'));
        const bad =
          element.localName === 'x-in' ||
          handler !== undefined ||
          (element.localName === 'img' && element.getAttribute('src') === 'x') ||
          (element.localName === 'script' && element.textContent!.trim().startsWith('ran=')) ||
          (element.localName === 'style' && element.textContent!.startsWith('*{')) ||
          element.getAttribute('href')?.startsWith('javascript:');
        if (bad) elements.push(element.outerHTML.slice(0, 200));
        if (element.shadowRoot) look(element.shadowRoot);
      }
    };
    look(document);
    return { ran: 'ran' in window || 'polluted' in {}, elements };
  });

const expectHarmless = async (page: Page, where: string): Promise<void> =>
  expect({ where, ...(await injected(page)) }).toEqual({ where, ran: false, elements: [] });

describe('a book with markup in every text', () => {
  it('is shown on the demo page as text: no script runs, no element comes of it, on any sheet or picture', async () => {
    const page = await pages.open('demo/index.html');
    page.setDefaultTimeout(30_000);
    await page.waitForFunction(() => document.querySelector('croft-book')?.live);
    const opened = await page.evaluate(
      (text) => document.querySelector('croft-book')!.openACopy(text),
      JSON.stringify(withMarkup()),
    );
    expect(opened).toEqual({ ok: true });
    await page.waitForFunction(() => document.querySelector('croft-book')?.live?.title.includes('<x-in>'));
    const tabs = page.getByRole('tab');
    const count = await tabs.count();
    expect(count).toBeGreaterThan(11);
    for (let i = 0; i < count; i++) {
      await tabs.nth(i).click();
      await page.locator('[role=tabpanel]:not([hidden])').first().waitFor();
      const grid = page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane');
      if ((await grid.count()) > 0)
        await page.locator('[role=tabpanel]:not([hidden]) croft-grid-pane:not(.waiting)').first().waitFor();
      // Pictures and working come a moment later than the sheet.
      await page.waitForTimeout(300);
      await expectHarmless(page, `tab ${i}`);
    }
    // It was there to be seen, as text.
    expect(await page.locator('h1').textContent()).toContain('<x-in></x-in>');
  });

  it('is shown as text in reading views, with problems, workings and lists', async () => {
    const page = await pages.open('tests/browser/harness/pages/week.html');
    page.setDefaultTimeout(30_000);
    const book = withMarkup();
    await page.evaluate(
      async ([json, sheets]) => {
        await customElements.whenDefined('croft-book');
        const home = document.createElement('div');
        home.innerHTML = `<croft-book>${(sheets as string[]).map((id) => `<croft-sheet sheet="${id}" view="read"></croft-sheet>`).join('')}<croft-lists week="2026-02-16"></croft-lists><croft-labels></croft-labels><croft-runway></croft-runway><croft-season></croft-season><croft-working></croft-working></croft-book>`;
        const script = document.createElement('script');
        script.type = 'application/json';
        script.textContent = json as string;
        home.querySelector('croft-book')!.append(script);
        document.querySelector('main')!.append(home);
      },
      [JSON.stringify(book).replaceAll('<', '\\u003c'), Object.keys(book.sheets)] as const,
    );
    await page.waitForFunction(() => document.querySelector('croft-book')?.live);
    await page.locator('croft-sheet table').first().waitFor();
    await expectHarmless(page, 'reading views');
    for (const more of await page.locator('croft-sheet details > summary').all())
      if (await more.isVisible()) await more.click();
    for (const sheet of await page.locator('croft-sheet').all()) {
      const cell = sheet.locator('td[data-column], th[data-column]').first();
      if ((await cell.count()) > 0) await cell.click({ force: true });
      await expectHarmless(page, `a cell of ${await sheet.getAttribute('sheet')}`);
    }
    // What looks for injected elements finds one.
    await page.evaluate(() => {
      document.querySelector('croft-sheet')!.shadowRoot!.append(document.createElement('x-in'));
    });
    expect((await injected(page)).elements).toEqual(['<x-in></x-in>']);
  });
});
