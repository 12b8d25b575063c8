import type { Locator, Page } from 'playwright-core';
import type { BookDoc, Typed } from '../../src/book/index.js';
import { bookWith, place } from './elements-make.js';

export const PAGE = 'tests/browser/harness/pages/elements.html';

type Rows = Parameters<typeof bookWith>[0];

/** A garden in short: frost on 24 May and 18 September, 2,300 ft, and no more ground than given. */
export const gardenBook = (rows: Rows, groundFeet: number | null = null): BookDoc =>
  bookWith(rows, (live) => {
    const settings: Record<string, Typed> = {
      last_frost: '05-24',
      first_frost: '09-18',
      altitude_ft: 2300,
      shelf_room: 100,
      freezer_room: 5,
      ground_row_feet: groundFeet,
    };
    for (const [setting, typed] of Object.entries(settings))
      live.apply({ do: 'set setting', setting, typed });
  });

/** Tomatoes: 104 quarts a year wanted, none left, at 3 lb a quart by the household's own word. */
export const tomatoFoods = [
  {
    food: 'Tomatoes',
    way: 'canned',
    counted_in: 'quart jar',
    comes_from: 'ground',
    crops: 'tomato 3',
    own_use: 2,
    fresh_from: '08-12',
    fresh_to: '09-17',
  },
] as const;

/** One sheet to edit; answers when its grid, or its empty state, is there. */
export async function edit(page: Page, sheet: string, book: BookDoc): Promise<Locator> {
  await place(
    page,
    `<croft-book grid-licence-key="non-commercial-and-evaluation"><croft-sheet sheet="${sheet}" view="edit"></croft-sheet></croft-book>`,
    book,
  );
  const shown = page.locator('croft-sheet');
  await shown.locator('croft-grid-pane:not(.waiting), .empty').first().waitFor();
  return shown;
}

/** Values of one column, in the order of its sheet. */
export const valuesOf = (page: Page, sheet: string, column: string): Promise<unknown[]> =>
  page.evaluate(
    ([kind, id]) => {
      const live = document.querySelector('croft-book')!.live!;
      const at = live.sheetOfKind(kind as 'beds')!;
      return live.rowIds(at).map((row) => live.value(at, row, id!));
    },
    [sheet, column] as const,
  );

/** Chooses a cell of the grid as a person does: by its words. */
export const choose = (page: Page, words: string | RegExp): Promise<void> =>
  page.locator('croft-grid-pane td', { hasText: words }).first().click();

export const undo = (page: Page): Promise<void> => page.getByRole('button', { name: 'Undo' }).click();
