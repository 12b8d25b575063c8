/** The part of an embedded sheet that opens it as a grid; loaded when a reader asks for that. */
import type { BookDoc } from '../../src/book/index.js';
import { type ShownTable, shownTable } from '../../src/live/embed/index.js';
import type { KnownFigure } from '../../src/live/known-figures.js';
import type { CroftBook } from '../book/croft-book.js';
import '../book/croft-book.js';
import type { GridCell } from '../grid/grid-view.js';
import { defineElements } from '../package/definitions.js';
import '../sheet/croft-sheet.js';
import type { GridPane } from '../sheet/grid-pane.js';
import { loadGrid } from '../sheet/load-grid.js';
import { sheetCalled } from '../sheet/sheet-called.js';

export interface GridOptions {
  readonly book: BookDoc;
  readonly sheet: string;
  readonly gridLicenceKey: string;
  readonly engineLicenceKey: string;
  /** Height in pixels that the whole of it is to take. */
  readonly height: number;
  /** What the table shows in a cell; undefined where it has none. */
  shown(row: string, column: string): KnownFigure | undefined;
  /** Called when all is loaded, and the grid about to be drawn in the same turn: it is to come into sight now. */
  ready(): void;
  /** Called with what the book has become. */
  changed(book: BookDoc, table: ShownTable): void;
  /** The columns and open columns of the table that the sheet goes back to. */
  readonly columns: readonly string[];
  readonly open: readonly string[];
}

defineElements();

/**
 * Puts the grid into `into` before its figures are worked out, with those that the table shows; false where it
 * cannot open.
 */
export async function openGridIn(into: HTMLElement, options: GridOptions): Promise<boolean> {
  await loadGrid();
  options.ready();
  const book = document.createElement('croft-book');
  book.gridLicenceKey = options.gridLicenceKey;
  book.engineLicenceKey = options.engineLicenceKey;
  book.book = options.book;
  let id: string | undefined;
  book.known = (of, row, column) => {
    id ??= book.live ? sheetCalled(book.live, options.sheet)?.id : undefined;
    return of === id ? options.shown(row, column) : undefined;
  };
  const sheet = document.createElement('croft-sheet');
  sheet.sheet = options.sheet;
  sheet.bare = true;
  sheet.view = 'edit';
  sheet.standIn = options.height;
  book.append(sheet);
  into.append(book);
  await opened(book);
  const { live } = book;
  if (!live) return false;
  await sheet.updateComplete;
  const pane = sheet.shadowRoot?.querySelector('croft-grid-pane');
  if (!pane) return false;
  if (!(await mounted(pane))) return false;
  live.on('change', ({ changes }) => {
    if (changes.length === 0) return;
    const { columns, open } = options;
    options.changed(live.toJSON(), shownTable(live, options.sheet, { columns, open }));
  });
  return true;
}

const opened = (book: CroftBook): Promise<void> =>
  new Promise((done) => {
    if (book.live || book.problems.length > 0) return done();
    for (const name of ['croft-ready', 'croft-problem'])
      book.addEventListener(name, () => done(), { once: true });
  });

/** Whether the grid stands; false where the sheet went back to its table. */
function mounted(pane: GridPane): Promise<boolean> {
  return new Promise((done) => {
    if (pane.view) return done(true);
    pane.addEventListener('mounted', () => done(true), { once: true });
    pane.addEventListener('failed', () => done(false), { once: true });
  });
}

/** Puts the keyboard into a cell of the grid, with what was typed before. */
export function typeInto(into: HTMLElement, cell: GridCell | null, text: string): void {
  const sheet = into.querySelector('croft-sheet');
  const view = sheet?.shadowRoot?.querySelector('croft-grid-pane')?.view;
  view?.focus(cell ?? undefined);
  if (text !== '') view?.type(text);
}
