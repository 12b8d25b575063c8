import type { Locator, Page } from 'playwright-core';
import { type BookDoc, blankBook, type SheetKind, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';

type Cells = { readonly [column: string]: Typed };

/** A book made for a test: as of 2026-02-01, with these rows. */
export function bookWith(
  rows: { readonly [kind in Exclude<SheetKind, 'own'>]?: readonly Cells[] },
  more: (live: ReturnType<typeof openBook>) => void = () => {},
): BookDoc {
  const live = openBook(blankBook('Test book', 'testbook'));
  live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-01' });
  for (const [sheet, cells] of Object.entries(rows)) live.insertRows(sheet, cells);
  more(live);
  const book = live.toJSON();
  live.close();
  return book;
}

/** 20 quarts of tomatoes, 2 a week by the household's own word: 10 weeks. */
export const tomatoes = (more: Parameters<typeof bookWith>[1] = () => {}): BookDoc =>
  bookWith(
    {
      foods: [{ food: 'Tomatoes', way: 'canned', counted_in: 'quart jar', own_use: 2 }],
      shelf: [
        {
          food: 'Tomatoes',
          way: 'canned',
          container: 'quart jar',
          count: 20,
          put_up_on: '2025-09-01',
          place: 'Top shelf',
        },
      ],
    },
    more,
  );

/** Puts elements on the page, with a book inside the first `<croft-book>`. */
export async function place(page: Page, markup: string, book?: unknown): Promise<void> {
  await page.evaluate(
    async ([html, json]) => {
      await customElements.whenDefined('croft-book');
      const home = document.createElement('div');
      home.innerHTML = html;
      const script = document.createElement('script');
      script.type = 'application/json';
      script.textContent = json;
      if (json !== '') home.querySelector('croft-book')?.append(script);
      document.querySelector('main')?.append(home);
    },
    [markup, book === undefined ? '' : typeof book === 'string' ? book : JSON.stringify(book)] as const,
  );
}

const plain = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** The words of an element, with single spaces. */
export const said = async (of: Locator): Promise<string> => plain(await of.textContent());

export const saidByAll = async (of: Locator): Promise<string[]> => (await of.allTextContents()).map(plain);
