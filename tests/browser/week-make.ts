import type { Page } from 'playwright-core';
import { type BookDoc, blankBook, type Typed } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { place } from './elements-make.js';
import type { OpenOptions, Pages } from './harness/pages.js';

export const PAGE = 'tests/browser/harness/pages/week.html';

type Row = readonly [id: string, cells: { readonly [column: string]: Typed }];

const lot = (
  id: string,
  food: string,
  way: string,
  container: string,
  count: number,
  put_up_on: string,
  place: string,
): Row => [id, { food, way, container, count, put_up_on, place }];

const SHELF: readonly Row[] = [
  lot('l-tom-24', 'Tomatoes', 'canned', 'pint jar', 3, '2024-09-01', 'Cellar, top shelf'),
  lot('l-tom-25', 'Tomatoes', 'canned', 'quart jar', 20, '2025-09-01', 'Cellar, top shelf'),
  lot('l-bean', 'Green beans', 'canned', 'pint jar', 12, '2025-08-10', 'Cellar, low shelf'),
  lot('l-pea', 'Peas', 'frozen', 'pint freezer bag', 30, '2025-07-01', 'Chest freezer'),
  lot('l-carrot', 'Carrots', 'cellared', 'pound', 40, '2025-10-12', 'Root cellar'),
  lot('l-drybean', 'Black beans', 'dry goods', 'pound', 9, '2025-10-30', 'Pantry'),
  lot('l-sage', 'Sage', 'dried', 'half-pint jar', 2, '2025-06-20', 'Pantry'),
];

const FOODS: readonly Row[] = [
  ['f1', { food: 'Tomatoes', way: 'canned', counted_in: 'quart jar', own_use: 1, next_supply: '2026-08-20' }],
  [
    'f2',
    { food: 'Peas', way: 'frozen', counted_in: 'pint freezer bag', own_use: 1, next_supply: '2026-07-01' },
  ],
];

const DISHES: readonly Row[] = [
  ['e1', { dish: 'Stew', serves: 2, food: 'tomatoes', amount: 2, measure: 'cup' }],
  ['e2', { dish: 'Stew', food: 'carrots', amount: 1, measure: 'pound' }],
  ['e3', { dish: 'Stew', food: 'onions', amount: 2, measure: 'each', from: 'bought' }],
  [
    'e4',
    { dish: 'Chili', serves: 2, food: 'black beans', amount: 0.75, measure: 'pound', prep: 'soak overnight' },
  ],
  ['e5', { dish: 'Chili', food: 'tomatoes', way: 'canned', amount: 1, measure: 'quart jar' }],
  [
    'e6',
    {
      dish: 'Pease pudding',
      serves: 2,
      food: 'peas',
      amount: 2,
      measure: 'pint freezer bag',
      prep: 'thaw 1 day',
    },
  ],
  ['e7', { dish: 'Beans and egg sauce', serves: 2, food: 'green beans', amount: 1, measure: 'pint jar' }],
  ['e8', { dish: 'Beans and egg sauce', food: 'mayonnaise', from: 'dish' }],
  [
    'e9',
    { dish: 'Mayonnaise', serves: 2, food: 'eggs', amount: 1, measure: 'each', from: 'bought', note: 'raw' },
  ],
  ['e10', { dish: 'Saffron rice', serves: 2, food: 'saffron', amount: 1, measure: 'teaspoon' }],
];

/** Planned from Monday 16 February 2026. */
const WEEK: readonly Row[] = [
  ['m1', { date: '2026-02-16', meal: 'supper', dish: 'Stew' }],
  ['m2', { date: '2026-02-17', meal: 'supper', dish: 'Chili' }],
  ['m3', { date: '2026-02-18', meal: 'supper', dish: 'Pease pudding' }],
  ['m4', { date: '2026-02-19', meal: 'supper', dish: 'Beans and egg sauce' }],
  ['m5', { date: '2026-02-20', meal: 'supper', dish: 'Saffron rice' }],
  ['m6', { date: '2026-02-21', meal: 'supper' }],
];

const PEOPLE: readonly Row[] = [
  ['p1', { name: 'Ada', share: 1 }],
  ['p2', { name: 'Ben', share: 1 }],
];

/** A household of two on Sunday 15 February 2026, with a week of suppers planned. */
export function weekBook(more: (live: ReturnType<typeof openBook>) => void = () => {}): BookDoc {
  const live = openBook(blankBook('Week book', 'weekbook'));
  live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-15' });
  const sheets = { household: PEOPLE, foods: FOODS, shelf: SHELF, dishes: DISHES, week: WEEK };
  for (const [sheet, rows] of Object.entries(sheets)) {
    const made = live.apply({
      do: 'insert rows',
      sheet,
      before: null,
      rows: rows.map(([id, cells]) => ({ id, cells })),
    });
    if (!made.ok) throw new Error(made.problem.message);
  }
  more(live);
  const book = live.toJSON();
  live.close();
  return book;
}

/** The page of the tests before with the week's book on it and these elements inside; one of its own for any option. */
export async function openWeek(
  pages: Pages,
  inside: string,
  { book = weekBook(), ...options }: OpenOptions & { readonly book?: BookDoc } = {},
): Promise<Page> {
  const ofItsOwn = Object.keys(options).length > 0;
  const page = await (ofItsOwn ? pages.open(PAGE, options) : pages.emptied(PAGE));
  page.setDefaultTimeout(30_000);
  await place(
    page,
    `<croft-book grid-licence-key="non-commercial-and-evaluation">${inside}</croft-book>`,
    book,
  );
  await page.waitForFunction(() => document.querySelector('croft-book')?.live);
  return page;
}

/** What is left of a lot, in its own containers. */
export const left = (page: Page, id: string): Promise<unknown> =>
  page.evaluate((row) => document.querySelector('croft-book')!.live!.value('shelf', row, 'left'), id);

export const drawsOf = (page: Page): Promise<number> =>
  page.evaluate(() => document.querySelector('croft-book')!.live!.rowIds('draws').length);

/** Chooses a row of the grid by its line, from 1, as a person does: where it is seen, whatever lies over it. */
export async function chooseRow(page: Page, line: number): Promise<void> {
  const cell = page
    .locator('.ht_master tbody tr')
    .nth(line - 1)
    .locator('td')
    .first();
  await cell.scrollIntoViewIfNeeded();
  const box = (await cell.boundingBox())!;
  await page.mouse.click(box.x + 12, box.y + box.height / 2);
}
