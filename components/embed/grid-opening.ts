import type { BookDoc } from '../../src/book/types.js';
import type { ShownTable } from '../../src/live/embed/index.js';
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

/** Has the browser fetch the grid beside what places it, not after it; what fails is tried again when it is needed. */
export function fetchGrid(): void {
  const nothing = (): undefined => undefined;
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
    const { openGridIn, typeInto } = await import('./grid-part.js');
    const done = await openGridIn(into, {
      book: await opening.book(),
      sheet: opening.sheet,
      gridLicenceKey: host.getAttribute('grid-licence-key') ?? '',
      engineLicenceKey: host.getAttribute('engine-licence-key') ?? 'gpl-v3',
      cell,
      height: Math.min(bottom, innerHeight) - Math.max(top, 0),
      columns: frame.columns,
      open: opening.open,
      changed: opening.changed,
    });
    if (!done) {
      close();
      return null;
    }
    stand.hidden = true;
    into.classList.remove('waiting');
    const now = into.getBoundingClientRect().top;
    if (top < 0 && now < 0) scrollBy(0, now);
    typeInto(into, ahead);
    return close;
  } catch (error) {
    console.error(error);
    close();
    return null;
  } finally {
    host.removeEventListener('keydown', gather, true);
  }
}

function firstInSight(frame: Frame): { row: string; column: string } | null {
  const row = frame.rows.find((id) => {
    const cell = frame.cell(id, frame.columns[0] ?? '');
    return cell !== undefined && cell.getBoundingClientRect().bottom > 4;
  });
  const column = frame.columns[0];
  return row !== undefined && column !== undefined ? { row, column } : null;
}
