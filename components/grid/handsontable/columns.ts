import { columnLetters } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { SheetBinding } from './binding.js';
import { CellEditor } from './cell-editor.js';
import type { CellPainter } from './renderer.js';

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

/** How many leading columns stand still: those that are pinned, where the grid is wide enough. */
export function frozenColumns({ columns, widths }: SheetBinding, width: number): number {
  const free = columns.findIndex(({ pinned }) => !pinned);
  const count = free < 0 ? columns.length : free;
  const taken = columns.slice(0, count).reduce((sum, column) => sum + widths.of(column), 0);
  return width > 0 && taken > width * MOST_FROZEN ? 0 : count;
}

/** Width from which a header has room for the column's unit. */
const ROOM_FOR_UNIT = 104;

const el = (tag: string, className: string, text: string): HTMLElement => {
  const element = document.createElement(tag);
  element.className = className;
  element.textContent = text;
  return element;
};

/** Writes a column's header: its letter for formulas, its title, its unit, and the mark of a planning column. */
export function paintHeader(binding: SheetBinding, index: number, th: HTMLTableCellElement): void {
  const column = binding.columns[index];
  const label = th.querySelector<HTMLElement>('.colHeader');
  if (!column || !label) return;
  const planning = column.role === 'planning';
  th.classList.toggle('croft-planning', planning);
  th.classList.toggle('croft-figures', column.type === 'number');
  const unit = column.unit ? ` In ${column.unit}.` : '';
  th.title = `${column.help}${unit}${planning ? ' Worked out from the book.' : ''}`;
  const letter = el('span', 'croft-letter', columnLetters(binding.letterIndex(column.id)));
  const title = el('span', 'croft-title', column.title);
  const above = el('span', 'croft-above', '');
  above.append(letter);
  if (planning) {
    const mark = el('span', 'croft-mark', '');
    mark.setAttribute('role', 'img');
    mark.setAttribute('aria-label', 'worked out');
    above.append(mark);
  }
  if (column.unit && binding.widths.of(column) >= ROOM_FOR_UNIT)
    above.append(el('span', 'croft-unit', column.unit));
  label.replaceChildren(above, title);
}
