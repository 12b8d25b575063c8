import type { BookDoc } from '../../src/book/types.js';
import type { ShownTable } from '../../src/live/embed/index.js';
import type { KnownFigure } from '../../src/live/known-figures.js';
import { make } from './draw-table.js';
import type { Frame } from './frame.js';

export interface GridOpening {
  readonly host: HTMLElement;
  /** What scrolls the table, whose place the grid takes. */
  readonly stand: HTMLElement;
  readonly frame: Frame;
  readonly open: readonly string[];
  readonly sheet: string;
  /** Open cell that the reader was in last, if any. */
  readonly cell: { readonly row: string; readonly column: string } | null;
  book(): Promise<BookDoc>;
  changed(book: BookDoc, table: ShownTable): void;
}

/**
 * Has the browser fetch the grid, what places it and the book under both at once, not one after the other; what
 * fails is tried again when it is needed.
 */
export function fetchGrid(): void {
  const nothing = (): undefined => undefined;
  void import('../../src/live/live-book.js').catch(nothing);
  void import('../grid/mount.js').catch(nothing);
  void import('./grid-part.js').catch(nothing);
}

/**
 * Opens the sheet as a grid in the place of its table, as high as what is in sight of it, so that nothing on
 * the page moves. What is typed meanwhile is not lost. Answers what closes it; null where it cannot open.
 */
export async function openAsGrid(opening: GridOpening): Promise<(() => void) | null> {
  const { host, stand, frame } = opening;
  let ahead = '';
  const gather = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.key.length !== 1) return;
    ahead += event.key;
    event.preventDefault();
    event.stopPropagation();
  };
  host.addEventListener('keydown', gather, true);
  const { top, bottom } = stand.getBoundingClientRect();
  const cell = opening.cell ?? firstInSight(frame);
  const into = make('div', '', { class: 'grid waiting' });
  stand.after(into);
  const close = (): void => {
    into.remove();
    stand.hidden = false;
  };
  try {
    fetchGrid();
    const book = await opening.book();
    const { openGridIn, typeInto } = await import('./grid-part.js');
    const done = await openGridIn(into, {
      book,
      sheet: opening.sheet,
      gridLicenceKey: host.getAttribute('grid-licence-key') ?? '',
      engineLicenceKey: host.getAttribute('engine-licence-key') ?? 'gpl-v3',
      height: Math.min(bottom, innerHeight) - Math.max(top, 0),
      columns: frame.columns,
      open: opening.open,
      shown: (row, column) => shownIn(frame.cell(row, column)),
      ready: () => {
        // As high as the table until the grid has its height: a page scrolled to it stays where it is.
        into.style.minHeight = `${stand.offsetHeight}px`;
        into.classList.remove('waiting');
        stand.hidden = true;
      },
      changed: opening.changed,
    });
    if (!done) {
      close();
      return null;
    }
    into.style.minHeight = '';
    const now = into.getBoundingClientRect().top;
    if (top < 0 && now < 0) scrollBy(0, now);
    await painted();
    typeInto(into, cell, ahead);
    return close;
  } catch (error) {
    console.error(error);
    close();
    return null;
  } finally {
    host.removeEventListener('keydown', gather, true);
  }
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
