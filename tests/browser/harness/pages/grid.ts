import type { GridHost, GridRequest, GridView } from '../../../../components/grid/grid-view.js';
import { mountGrid } from '../../../../components/grid/mount.js';
import { tokens } from '../../../../components/look/tokens.js';
import { blankBook, type Command } from '../../../../src/book/index.js';
import { HyperFormulaEngine } from '../../../../src/engine/hyperformula-engine.js';
import { type LiveBook, openBook } from '../../../../src/live/live-book.js';
import { parseDay } from '../../../../src/planning/parse-date.js';
import type { Problem } from '../../../../src/problem.js';

/** What tests see and do from outside. */
export interface GridPage {
  live: LiveBook;
  view: GridView;
  said: (Problem | string | null)[];
  asked: GridRequest[];
  selected: { row: string; column: string } | null;
  /** How often the grid told that rows are looked at in another way. */
  looks: number;
  start(options: StartOptions): Promise<void>;
  remount(): Promise<void>;
}

export interface StartOptions {
  readonly sheet?: string;
  readonly many?: number;
  readonly slowEngine?: boolean;
  /** Commands done to the book before the grid opens. */
  readonly first?: readonly object[];
}

declare global {
  interface Window {
    grid: GridPage;
  }
}

const query = new URLSearchParams(location.search);
const dark = query.get('scheme') === 'dark';
document.documentElement.style.colorScheme = dark ? 'dark' : 'light';
if (dark) document.body.style.background = '#101418';

const day = parseDay('2026-01-15');
const today = () => (day.ok ? day.value : 0);

const lots = [
  ['Tomatoes', 'canned', 'quart jar', 24, '2025-08-30', 'Top shelf'],
  ['Tomatoes', 'canned', 'quart jar', 12, '2024-09-02', 'Top shelf'],
  ['Green beans', 'canned', 'pint jar', 30, '2025-07-20', 'Middle shelf'],
  ['Peaches', 'canned', 'quart jar', 18, '2025-08-12', 'Middle shelf'],
  ['Corn', 'frozen', 'pint freezer bag', 40, '2025-08-01', 'Chest freezer'],
] as const;
const columns = ['food', 'way', 'container', 'count', 'put_up_on', 'place'];
const record = (values: readonly (string | number)[]) =>
  Object.fromEntries(values.map((value, i) => [columns[i]!, value]));

/** A small book that no test may count on beyond what it says here. */
function newBook(many: number): LiveBook {
  const live = openBook(blankBook('Test', 'bookfortests'), { today });
  live.apply({
    do: 'insert rows',
    sheet: 'shelf',
    before: null,
    rows: lots.map((lot, i) => ({ id: `lot${i + 1}`, cells: record(lot) })),
  });
  live.apply({
    do: 'insert rows',
    sheet: 'foods',
    before: null,
    rows: [
      { id: 'food1', cells: { food: 'Tomatoes', way: 'canned', own_use: 0.8, fresh_from: '08-10' } },
      { id: 'food2', cells: { food: 'Green beans', way: 'canned', own_use: 0.5 } },
      { id: 'food3', cells: { food: 'Peaches', way: 'canned' } },
    ],
  });
  live.apply({ do: 'add sheet', sheet: 'own1', title: 'Notes' });
  for (const [column, title] of [
    ['ca', 'Alpha'],
    ['cb', 'Beta'],
    ['cc', 'Gamma'],
  ] as const)
    live.apply({ do: 'add column', sheet: 'own1', column, before: null, title });
  live.apply({
    do: 'insert rows',
    sheet: 'own1',
    before: null,
    rows: [1, 2, 3, 4].map((n) => ({ id: `row${n}`, cells: { ca: n, cb: n * 10 } })),
  });
  if (many > 0) {
    live.apply({
      do: 'insert rows',
      sheet: 'shelf',
      before: null,
      rows: Array.from({ length: many }, (_, i) => ({
        id: `more${i}`,
        cells: record(lots[i % lots.length]!),
      })),
    });
  }
  return live;
}

const home = document.getElementById('home')!;
const root = home.attachShadow({ mode: 'open' });
root.adoptedStyleSheets = [tokens.styleSheet!];
const into = document.createElement('div');
into.style.height = '100%';
root.append(into);

const state: { loaded: Promise<void> | null } = { loaded: null };

/** A new book in a new grid. `slowEngine`: formulas stay pending for a while. */
async function start({
  sheet = 'shelf',
  many = 0,
  slowEngine = false,
  first = [],
}: StartOptions): Promise<void> {
  window.grid?.view.destroy();
  window.grid?.live.close();
  state.loaded = null;
  const live = newBook(many);
  for (const command of first) live.apply(command as Command);
  const page: Omit<GridPage, 'view'> & { view?: GridView } = {
    live,
    said: [],
    asked: [],
    selected: null,
    looks: 0,
    start,
    remount: async () => {
      page.view?.destroy();
      page.view = await mountGrid(into, host);
    },
  };
  const host: GridHost = {
    live,
    sheet,
    licenceKey: 'non-commercial-and-evaluation',
    colourScheme: dark ? 'dark' : 'light',
    label: 'Shelf',
    ensureEngine: () => {
      state.loaded ??= (async () => {
        if (slowEngine) await new Promise((done) => setTimeout(done, 400));
        live.attachEngine(new HyperFormulaEngine({ asOf: today(), basis: 'usual' }));
      })();
      return state.loaded;
    },
    say: (message) => page.said.push(message),
    selected: (cell) => {
      page.selected = cell;
    },
    lookChanged: () => {
      page.looks++;
    },
    ask: (what) => page.asked.push(what),
  };
  page.view = await mountGrid(into, host);
  window.grid = page as GridPage;
}

await start({
  ...(query.has('sheet') && { sheet: query.get('sheet')! }),
  many: Number(query.get('many') ?? 0),
});
