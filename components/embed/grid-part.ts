/** The part of an embedded sheet that opens it as a grid; loaded when a reader asks for that. */
import type { BookDoc } from '../../src/book/index.js';
import { type ShownTable, shownTable } from '../../src/live/embed/index.js';
import type { CroftBook } from '../book/croft-book.js';
import '../book/croft-book.js';
import '../sheet/croft-sheet.js';
import type { GridCell } from '../grid/grid-view.js';

export interface GridOptions {
  readonly book: BookDoc;
  readonly sheet: string;
  readonly gridLicenceKey: string;
  readonly engineLicenceKey: string;
  /** Where the selection goes. */
  readonly cell: GridCell | null;
  /** Height in pixels that the whole of it is to take. */
  readonly height: number;
  /** Called with what the book has become. */
  changed(book: BookDoc, table: ShownTable): void;
  /** The columns and open columns of the table that the sheet goes back to. */
  readonly columns: readonly string[];
  readonly open: readonly string[];
}

/** Least height of the grid itself, in pixels. */
const LEAST = 240;

/** Puts the grid into `into`, which is to be out of sight until this resolves; false where it cannot open. */
export async function openGridIn(into: HTMLElement, options: GridOptions): Promise<boolean> {
  const book = document.createElement('croft-book');
  book.gridLicenceKey = options.gridLicenceKey;
  book.engineLicenceKey = options.engineLicenceKey;
  book.book = options.book;
  const sheet = document.createElement('croft-sheet');
  sheet.sheet = options.sheet;
  sheet.bare = true;
  sheet.view = 'edit';
  // What is drawn until the grid stands is out of sight: the least of it.
  sheet.columns = options.columns.slice(0, 1);
  book.append(sheet);
  into.append(book);
  await opened(book);
  const { live } = book;
  if (!live) return false;
  const pane = await mounted(sheet);
  if (!pane) return false;
  const around = sheet.offsetHeight - pane.offsetHeight;
  sheet.style.setProperty('--croft-sheet-height', `${Math.max(LEAST, options.height - around)}px`);
  pane.view?.focus(options.cell ?? undefined);
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

type Sheet = HTMLElementTagNameMap['croft-sheet'];
type Pane = HTMLElementTagNameMap['croft-grid-pane'];

/** The pane once its grid stands; undefined where the sheet went back to its table. */
function mounted(sheet: Sheet): Promise<Pane | undefined> {
  return new Promise((done) => {
    const look = (): void => {
      const pane = sheet.shadowRoot?.querySelector('croft-grid-pane');
      if (pane?.view) done(pane);
      else if (sheet.view === 'read') done(undefined);
      else requestAnimationFrame(look);
    };
    look();
  });
}

/** Writes into the grid what was typed before it stood. */
export function typeInto(into: HTMLElement, text: string): void {
  const sheet = into.querySelector('croft-sheet');
  const view = sheet?.shadowRoot?.querySelector('croft-grid-pane')?.view;
  if (text !== '') view?.type(text);
}
