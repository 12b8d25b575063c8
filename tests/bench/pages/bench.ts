import Handsontable from 'handsontable/base';
import { registerCellType, TextCellType } from 'handsontable/cellTypes';
import coreStyles from 'handsontable/styles/handsontable.min.css?inline';
import themeStyles from 'handsontable/styles/ht-theme-main.min.css?inline';
import { mountGrid } from '../../../components/grid/mount.js';
import demo from '../../../demo/data/tamarack-bench.json?raw';
import { parseBook } from '../../../src/book/index.js';
import { HyperFormulaEngine } from '../../../src/engine/hyperformula-engine.js';
import { LiveBook } from '../../../src/live/live-book.js';
import { bigBook } from '../../support/big-book.js';

registerCellType(TextCellType);

const KEY = 'non-commercial-and-evaluation';
const stand = document.querySelector<HTMLElement>('#stand')!;
const root = stand.attachShadow({ mode: 'open' });
const sheets = [coreStyles, themeStyles].map((text) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(text);
  return sheet;
});

const texts: Record<string, string> = { demo, big: JSON.stringify(bigBook(5_000, 20_000)) };

function opened(text: string): LiveBook {
  const parsed = parseBook(text);
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  // As in a page: figures are worked out once the grid is seen.
  return new LiveBook(parsed.book, { later: true });
}

function place(): HTMLElement {
  root.replaceChildren();
  const into = document.createElement('div');
  into.style.cssText = 'position:absolute; inset:0';
  root.append(into);
  return into;
}

/** Resolves once what was asked for has been painted. */
const painted = (): Promise<void> =>
  new Promise((done) => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => done();
      port2.postMessage(null);
    });
  });

/** The same rows in a grid alone: the kept columns and nothing that is worked out. */
async function loadBare(which: string): Promise<number> {
  const started = performance.now();
  const { sheets: parts } = JSON.parse(texts[which]!) as {
    sheets: Record<string, { rows: Record<string, { cells: Record<string, unknown> }> }>;
  };
  const columns = ['food', 'way', 'container', 'count', 'put_up_on', 'place', 'note', 'still_counting'];
  const data = Object.values(parts.shelf!.rows).map(({ cells }) =>
    columns.map((column) => cells[column] ?? null),
  );
  root.adoptedStyleSheets = sheets;
  new Handsontable(place(), {
    data,
    licenseKey: KEY,
    colHeaders: columns,
    rowHeaders: true,
    width: '100%',
    height: '100%',
    themeName: 'ht-theme-main',
    injectCoreCss: false,
    colWidths: 110,
  } as Handsontable.GridSettings);
  await painted();
  return performance.now() - started;
}

let live: LiveBook;

async function loadOurs(which: string): Promise<{ grid: number; figures: number; formulas: number }> {
  const started = performance.now();
  live = opened(texts[which]!);
  const view = await mountGrid(place(), {
    live,
    sheet: 'shelf',
    licenceKey: KEY,
    colourScheme: 'light',
    label: 'Shelf',
    ensureEngine: async () => {},
    say: () => {},
    selected: () => {},
    ask: () => {},
  });
  await painted();
  const grid = performance.now() - started;
  live.workOut();
  await painted();
  const figures = performance.now() - started;
  view.focus({ row: live.rowIds('shelf')[0]!, column: 'count' });
  // The engine loads after the grid stands, as in the page.
  live.attachEngine(new HyperFormulaEngine({ asOf: live.household.asOf, basis: 'usual' }));
  return { grid, figures, formulas: performance.now() - started };
}

/** Times the next Enter: until everything that follows from it is worked out, and until it is painted. */
function timeEnter(): void {
  timing = new Promise((done) => {
    addEventListener(
      'keydown',
      () => {
        const started = performance.now();
        // A task of its own: all that the key set off in this turn has run by then.
        const { port1, port2 } = new MessageChannel();
        let settled = 0;
        port1.onmessage = () => {
          settled = performance.now() - started;
        };
        port2.postMessage(null);
        painted().then(() => done({ settled, painted: performance.now() - started }));
      },
      { capture: true, once: true },
    );
  });
}
let timing: Promise<{ settled: number; painted: number }>;

/** The same edits without a grid: what the book alone takes. */
function bookAlone(times: number): number[] {
  const rows = live.rowIds('shelf');
  return Array.from({ length: times }, (_, i) => {
    const started = performance.now();
    live.set('shelf', rows[i]!, 'count', 100 + i);
    return performance.now() - started;
  });
}

Object.assign(window, { bench: { loadBare, loadOurs, timeEnter, timing: () => timing, bookAlone } });
