import type { BookDoc } from '../../src/book/types.js';
import type { ShownTable } from '../../src/live/embed/index.js';
import type { KnownFigure } from '../../src/live/known-figures.js';
import type { FirstGrid } from '../grid/first/first-grid.js';
import type { FirstTable } from '../grid/first/first-table.js';
import { make } from './draw-table.js';
import { firstTable, sheetIn } from './first-table.js';
import type { Frame } from './frame.js';
import { KeysAhead } from './keys-ahead.js';

export interface GridOpening {
  readonly host: HTMLElement;
  /** What scrolls the table, whose place the grid takes. */
  readonly stand: HTMLElement;
  readonly frame: Frame;
  readonly open: readonly string[];
  readonly sheet: string;
  /** Open cell that the reader was in last, if any. */
  readonly cell: { readonly row: string; readonly column: string } | null;
  /** Ends the opening: something else is shown in the table's place, or the element is off the page. */
  readonly signal: AbortSignal;
  book(): Promise<BookDoc>;
  changed(book: BookDoc, table: ShownTable): void;
  /** Called with the food-safety words that bear on what the sheet shows. */
  caution(texts: readonly string[]): void;
  /** Called where no whole grid came, with what was written into the first one. */
  lost(written: readonly string[]): void;
}

const nothing = (): undefined => undefined;

/** Has the browser fetch what a grid is first drawn with; what fails is tried again when it is needed. */
export function fetchGrid(): void {
  void import('../grid/first/first-grid.js').catch(nothing);
}

/** The rest at once, not one part after the other: the book, the whole grid, and what places it. */
function fetchRest(): void {
  void import('../../src/live/live-book.js').catch(nothing);
  void import('../grid/mount.js').catch(nothing);
  void import('./grid-part.js').catch(nothing);
}

/** The most of the screen that a grid takes: there is always page beside it by which to scroll on. */
const MOST_OF_SCREEN = 0.85;
/** Heights in pixels: of a row, for a mouse and for a finger, of a grid's head and foot, and of the tools under it. */
const [ROW, FINGER_ROW, HEAD, TOOLS] = [32, 46, 112, 100];
const LEAST = 240;

const isTouched = (): boolean => matchMedia('(pointer: coarse)').matches;

/** Height in pixels of a grid and its tools: as high as its rows, yet one that a person can see all of. */
function heightOf(rows: number, zoom: number): number {
  // A frame that is as high as all it holds is no screen.
  const most = (Math.min(innerHeight, screen.height || innerHeight) * MOST_OF_SCREEN) / zoom;
  return Math.max(LEAST + TOOLS, Math.min(most, HEAD + rows * (isTouched() ? FINGER_ROW : ROW) + TOOLS));
}

/** The least share of the height that a grid would have, for it to be content with what is in sight of its table. */
const CONTENT_WITH = 0.7;

/**
 * A table that begins in the window and goes on below it gives the grid all that is in sight of it: then nothing
 * moves, and there is page above by which to scroll on. A finger needs more of that.
 */
function heightFor(stand: HTMLElement, rows: number): number {
  // A page may enlarge a part of itself: pixels there are more than pixels of the window.
  const zoom = stand.currentCSSZoom || 1;
  const { top, bottom } = stand.getBoundingClientRect();
  const [wanted, inSight] = [heightOf(rows, zoom), (innerHeight - top) / zoom];
  const isEnough = top > 0 && bottom >= innerHeight && inSight >= wanted * CONTENT_WITH;
  return isEnough && !isTouched() ? inSight : wanted;
}

/**
 * Opens the sheet as a grid in the place of its table, scrolled so that all of it is in sight. A first grid shows
 * what the table shows; the whole one takes its place once it is there. What is typed meanwhile is not lost. Answers
 * what closes it; null where it cannot open.
 */
export async function openAsGrid(opening: GridOpening): Promise<(() => void) | null> {
  const { host, stand, frame, signal } = opening;
  // What is waited for may never come once the element is off the page.
  const ended = new Promise<never>((_done, fail) => signal.addEventListener('abort', fail));
  ended.catch(nothing);
  const orEnd = <T>(wait: Promise<T>): Promise<T> => Promise.race([ended, wait]);
  // Before anything that takes time: it is on its way meanwhile.
  const loading = import('../grid/first/first-grid.js');
  loading.catch(nothing);
  const keys = new KeysAhead(host);
  const height = heightFor(stand, frame.rows.length);
  const cell = opening.cell ?? firstInSight(frame);
  const into = make('div', '', { class: 'grid' });
  const whole = make('div', '', { class: 'grid waiting' });
  into.append(whole);
  stand.after(into);
  let first: FirstGrid | null = null;
  const close = (): void => {
    first?.destroy();
    if (stand.isConnected) into.remove();
    else into.replaceWith(stand);
  };
  const giveUp = (): null => {
    first?.settle();
    const written = first?.written ?? [];
    close();
    if (written.length > 0)
      opening.lost(written.map(({ column, text }) => `${frame.title(column)}: ${text}`));
    return null;
  };
  const inPlace = (high: number): void => {
    // A page scrolled to the table stays where it is.
    into.style.minHeight = `${high}px`;
    // Not only hidden: browsers look at all that stands beside a grid when its styles come.
    stand.remove();
  };
  const scrolled = (): void => {
    const { top, bottom } = into.getBoundingClientRect();
    const by = top < 0 ? top : Math.max(0, Math.min(top, bottom - innerHeight));
    scrollBy({ top: by, behavior: 'instant' });
  };
  try {
    const book = await orEnd(opening.book());
    const table = tableAtFirst(frame, book, opening.sheet);
    if (table) {
      const { FirstGrid } = await orEnd(loading);
      inPlace(height);
      into.style.height = `${height}px`;
      first = new FirstGrid(frameOf(into), table, host.getAttribute('grid-licence-key') ?? '');
      scrolled();
      await orEnd(painted());
      first.focus(cell);
      const grid = first;
      keys.replay((text) => grid.type(text));
    }
    fetchRest();
    const { openGridIn, takeOver, typing } = await orEnd(import('./grid-part.js'));
    const grid = openGridIn(whole, {
      book,
      sheet: opening.sheet,
      gridLicenceKey: host.getAttribute('grid-licence-key') ?? '',
      engineLicenceKey: host.getAttribute('engine-licence-key') ?? 'gpl-v3',
      height,
      widths: first?.widths ?? null,
      columns: frame.columns,
      open: opening.open,
      shown: (row, column) => shownIn(frame.cell(row, column)),
      ready: () => {
        if (first) return;
        inPlace(stand.offsetHeight);
        whole.classList.remove('waiting');
      },
      changed: opening.changed,
      caution: opening.caution,
    });
    if (!(await orEnd(grid))) return giveUp();
    if (first) {
      await orEnd(first.rest());
      whole.classList.remove('waiting');
      into.style.height = '';
      takeOver(whole, first);
      first.destroy();
      into.querySelector('.first')?.remove();
    }
    into.style.minHeight = '';
    if (first) return close;
    scrolled();
    await orEnd(painted());
    const type = typing(whole, cell);
    keys.replay(type);
    return close;
  } catch (error) {
    if (!signal.aborted) console.error(error);
    return giveUp();
  } finally {
    keys.stop();
  }
}

function tableAtFirst(frame: Frame, book: BookDoc, called: string): FirstTable | undefined {
  try {
    const found = sheetIn(book, called);
    return found && firstTable(frame, found[1]);
  } catch {
    // It is no book, which those say who read it.
    return undefined;
  }
}

/** The frame that the whole grid will have, for the first one. */
function frameOf(into: HTMLElement): HTMLElement {
  const frame = make('div', '', { class: 'first' });
  frame.style.boxSizing = 'border-box';
  frame.style.height = '100%';
  frame.style.border = '1px solid var(--line)';
  frame.style.borderTop = '4px solid var(--accent)';
  frame.style.borderRadius = 'var(--radius)';
  frame.style.overflow = 'hidden';
  into.append(frame);
  return frame;
}

/** Resolves when the page has been painted as it now is; a page out of sight is not. */
const painted = (): Promise<void> =>
  new Promise((done) => {
    const soon = (): void => void setTimeout(done);
    if (document.visibilityState === 'hidden') soon();
    else requestAnimationFrame(soon);
  });

/** What a cell of the table shows, as it was put there. */
function shownIn(cell: HTMLElement | undefined): KnownFigure | undefined {
  if (!cell || cell.querySelector('input')) return undefined;
  const iso = cell.querySelector('time')?.dateTime;
  const [unit, range] = ['span', 'small'].map((name) => cell.querySelector(name)?.textContent ?? '');
  const text = (cell.querySelector('time') ?? cell.firstChild)?.textContent?.trim() ?? '';
  return { text, ...(iso && { iso }), ...(unit && { unit }), ...(range && { range }) };
}

function firstInSight(frame: Frame): { row: string; column: string } | null {
  const row = frame.rows.find((id) => {
    const cell = frame.cell(id, frame.columns[0] ?? '');
    return cell !== undefined && cell.getBoundingClientRect().bottom > 4;
  });
  const column = frame.columns[0];
  return row !== undefined && column !== undefined ? { row, column } : null;
}
