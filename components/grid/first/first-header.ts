import type { FirstColumn } from './first-table.js';

/** Width from which a header has room for the column's unit. */
const ROOM_FOR_UNIT = 104;

const el = (className: string, text: string): HTMLElement => {
  const element = document.createElement('span');
  element.className = className;
  element.textContent = text;
  return element;
};

/** Writes a column's header as the whole grid will, as far as it is known. */
export function paintFirstHeader(th: HTMLElement, column: FirstColumn, width: number): void {
  const label = th.querySelector<HTMLElement>('.colHeader');
  if (!label) return;
  th.classList.toggle('croft-planning', column.planning);
  th.classList.toggle('croft-figures', column.type === 'number');
  const above = el('croft-above', '');
  if (column.planning) above.append(el('croft-mark', ''));
  if (column.unit && width >= ROOM_FOR_UNIT) above.append(el('croft-unit', column.unit));
  label.replaceChildren(above, el('croft-title', column.title));
}
