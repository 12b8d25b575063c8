/** The part of an embedded sheet that opens it as a grid; loaded when a reader asks for that. */
import type { BookDoc } from '../../src/book/index.js';
import { cautionTexts, type ShownTable, shownTable } from '../../src/live/embed/index.js';
import type { KnownFigure } from '../../src/live/known-figures.js';
import type { CroftBook } from '../book/croft-book.js';
import '../book/croft-book.js';
import type { FirstGrid } from '../grid/first/first-grid.js';
import type { GridCell } from '../grid/grid-view.js';
import { defineElements } from '../package/definitions.js';
import '../sheet/croft-sheet.js';
import type { GridPane } from '../sheet/grid-pane.js';
import { loadGrid } from '../sheet/load-grid.js';
import { sheetCalled } from '../sheet/sheet-called.js';
import { asShown } from './as-shown.js';
import { sheetIn } from './first-table.js';
import { writtenCells } from './written-cells.js';

export interface GridOptions {
  readonly book: BookDoc;
  readonly sheet: string;
  readonly gridLicenceKey: string;
  readonly engineLicenceKey: string;
  /** Height in pixels that the whole of it is to take. */
  readonly height: number;
  /** What the table shows in a cell; undefined where it has none. */
  shown(row: string, column: string): KnownFigure | undefined;
  /** Widths of the table's columns, in pixels, where a first grid shows just these; else the sheet shows its own. */
  readonly widths: ReadonlyMap<string, number> | null;
  /** Called when all is loaded, and the grid about to be drawn in the same turn: it is to come into sight now. */
  ready(): void;
  /** Called with what the book has become. */
  changed(book: BookDoc, table: ShownTable): void;
  /** Called with the food-safety words that bear on what the sheet shows. */
  caution(texts: readonly string[]): void;
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
  const found = sheetIn(options.book, options.sheet);
  const shown = found && options.widths ? asShown(options.book, found[0], options.widths) : null;
  const book = document.createElement('croft-book');
  book.gridLicenceKey = options.gridLicenceKey;
  book.engineLicenceKey = options.engineLicenceKey;
  book.book = shown?.book ?? options.book;
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
  options.caution(cautionTexts(live, found?.[0] ?? options.sheet));
  const written = writtenCells(live, options.book);
  live.on('change', ({ changes }) => {
    if (changes.length === 0) return;
    const { columns, open } = options;
    const now = live.toJSON();
    const table = shownTable(live, found?.[0] ?? options.sheet, { columns, open });
    options.caution(table.cautions);
    options.changed(shown?.back(now) ?? now, written?.table(table) ?? table);
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

/** Puts the keyboard into a cell of the grid; answers what writes into the one where it is then. */
export function typing(into: HTMLElement, cell: GridCell | null): (text: string) => void {
  const { view } = paneIn(into) ?? {};
  view?.focus(cell ?? undefined);
  return (text) => view?.type(text);
}

/** Brings the grid to where a first one was left: what was written there, how far it was scrolled, the selection. */
export function takeOver(into: HTMLElement, first: FirstGrid): void {
  const { live, sheet, view } = paneIn(into) ?? {};
  if (!live || !sheet || !view) return;
  for (const { row, column, text } of first.written) {
    const done =
      row === null ? live.insertRows(sheet, [{ [column]: text }]) : live.set(sheet, row, column, text);
    if (!done.ok) into.querySelector('croft-sheet')?.say(done.problem);
  }
  view.scroll = first.scroll;
  view.focus(first.selection ?? undefined);
}

const paneIn = (into: HTMLElement): GridPane | null | undefined =>
  into.querySelector('croft-sheet')?.shadowRoot?.querySelector('croft-grid-pane');
