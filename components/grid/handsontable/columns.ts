import { columnLetters } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { say } from '../../../src/words/index.js';
import { unitOfColumn, unitWord } from '../../sheet/shown.js';
import type { SheetBinding } from './binding.js';
import { CellEditor } from './cell-editor.js';
import type { CellPainter } from './renderer.js';
import type { Views } from './views.js';

/** The most of the grid's width that frozen columns may take; on a phone they would hide the rest. */
const MOST_FROZEN = 0.6;

/** Which choice of filter conditions a column gets. */
const FILTER_TYPE: Record<ColumnView['type'], string> = {
  number: 'numeric',
  date: 'date',
  'month-day': 'text',
  text: 'text',
  choice: 'text',
  tick: 'text',
  any: 'text',
};

/** Visible columns as the grid library wants them described. */
export function columnSettings(binding: SheetBinding, painter: CellPainter) {
  const renderer = painter.renderer as never;
  return binding.columns.map(({ id, role, type }) => ({
    data: binding.accessor(id) as never,
    readOnly: role === 'planning',
    type: FILTER_TYPE[type],
    // The type brings ways of its own to paint, edit and check.
    renderer,
    editor: CellEditor as never,
    validator: undefined as never,
  }));
}

/** Narrower than this, the first column gives room to the others. */
const NARROW_GRID = 480;

/**
 * How many leading columns stand still: those that the person pinned, else the first, which names the row. On
 * a narrow grid the first is narrowed for it.
 */
export function frozenColumns({ columns, widths }: SheetBinding, width: number): number {
  const fits = (count: number): boolean =>
    columns.slice(0, count).reduce((sum, column) => sum + widths.of(column), 0) <= width * MOST_FROZEN;
  widths.narrowed = width > 0 && width < NARROW_GRID ? columns[0]?.id : undefined;
  const free = columns.findIndex(({ pinned }) => !pinned);
  const pinned = free < 0 ? columns.length : free;
  if (pinned > 0 && (width === 0 || fits(pinned))) return pinned;
  return columns.length > 1 && width > 0 && fits(1) ? 1 : 0;
}

/** Width from which a header has room for the column's unit. */
const ROOM_FOR_UNIT = 104;

const el = (tag: string, className: string, text: string): HTMLElement => {
  const element = document.createElement(tag);
  element.className = className;
  element.textContent = text;
  return element;
};

const mark = (className: string, words: string): HTMLElement => {
  const element = el('span', className, '');
  element.setAttribute('role', 'img');
  element.setAttribute('aria-label', words);
  return element;
};

/**
 * Writes a column's header: its letter for formulas, its title, its unit, and marks of a planning column and
 * of rows sorted or filtered by it.
 */
export function paintHeader(
  binding: SheetBinding,
  index: number,
  th: HTMLTableCellElement,
  views: Pick<Views, 'look' | 'isFiltered'> | undefined,
): void {
  const column = binding.columns[index];
  const label = th.querySelector<HTMLElement>('.colHeader');
  if (!column || !label) return;
  const planning = column.role === 'planning';
  th.classList.toggle('croft-planning', planning);
  th.classList.toggle('croft-figures', column.type === 'number');
  const unit = unitWord(unitOfColumn(column), 2);
  const noted = column.note ? say` Note: ${column.note}` : '';
  th.title = `${column.help}${unit ? say` In ${unit}.` : ''}${planning ? say` Worked out from the book.` : ''}${noted}`;
  const letter = el('span', 'croft-letter', columnLetters(binding.letterIndex(column.id)));
  const title = el('span', 'croft-title', column.title);
  const above = el('span', 'croft-above', '');
  above.append(letter);
  if (planning) above.append(mark('croft-mark', say`worked out`));
  const sort = views?.look.sort;
  if (sort?.column === column.id)
    above.append(
      sort.ascending
        ? mark('croft-sorted croft-up', say`sorted, smallest or earliest first`)
        : mark('croft-sorted', say`sorted, largest or latest first`),
    );
  if (views?.isFiltered(column.id)) above.append(mark('croft-filtered', say`filtered`));
  if (column.note) above.append(mark('croft-column-note', say`note: ${column.note}`));
  if (unit && binding.widths.of(column) >= ROOM_FOR_UNIT) above.append(el('span', 'croft-unit', unit));
  label.replaceChildren(above, title);
}
