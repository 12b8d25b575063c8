import { baseRenderer } from 'handsontable/renderers/baseRenderer';
import type { ColumnView } from '../../../src/live/columns.js';
import { type ShownCell, shownCell } from '../../sheet/shown.js';
import type { SheetBinding } from './binding.js';
import type { Hot } from './registry.js';
import { wholeText } from './whole-text.js';

const OURS = ['croft-planning', 'croft-own', 'croft-number', 'croft-problem', 'croft-error', 'croft-pending'];

/** Longer text may be cut off at the cell's edge; its title then shows it whole. */
const ROOM = 24;

type Renderer =
  Parameters<typeof baseRenderer> extends [infer H, ...infer Rest] ? (hot: H, ...rest: Rest) => void : never;

/** Paints every cell, from the book. Text goes in as text, never as HTML. */
export function cellRenderer(binding: SheetBinding): Renderer {
  return (hot, td, row, col, prop, value, meta) => {
    baseRenderer(hot, td, row, col, prop, value, meta);
    td.classList.remove(...OURS);
    for (const name of ['title', 'aria-invalid', 'aria-description']) td.removeAttribute(name);
    const column = binding.columns[col];
    const line = binding.lines[hot.toPhysicalRow(row)];
    if (column?.role === 'planning') td.classList.add('croft-planning');
    if (column?.role === 'own') td.classList.add('croft-own');
    if (!column || !line || line.id === null) td.textContent = '';
    else paint(td, binding, column, line.id);
  };
}

function paint(td: HTMLTableCellElement, binding: SheetBinding, column: ColumnView, row: string): void {
  const { live, sheet } = binding;
  const shown = shownCell(live, sheet, row, column, live.needsEngine);
  if (shown.kind === 'number') td.classList.add('croft-number');
  if (shown.kind === 'pending') {
    td.classList.add('croft-pending');
    td.setAttribute('aria-description', 'being worked out');
  }
  if (column.type === 'tick' && (shown.kind === 'tick' || shown.kind === 'blank')) paintTick(td, shown);
  else {
    const text = wholeText(shown);
    td.textContent = text;
    if (text.length > ROOM) td.title = text;
  }
  if (!shown.problem) return;
  const { message, mend } = shown.problem;
  const words = [message, mend].filter(Boolean).join(' ');
  td.classList.add(shown.kind === 'error' ? 'croft-error' : 'croft-problem');
  td.title = words;
  td.setAttribute('aria-invalid', 'true');
  td.setAttribute('aria-description', words);
}

function paintTick(td: HTMLTableCellElement, { text }: ShownCell): void {
  const box = document.createElement('span');
  box.className = text === 'yes' ? 'croft-box croft-on' : 'croft-box';
  const words = document.createElement('span');
  words.className = 'croft-unseen';
  words.textContent = text === 'yes' ? 'yes' : 'no';
  td.replaceChildren(box, words);
}

/** Writes a line's header: its number in the book, as formulas call it; the blank line has a sign of its own. */
export function paintLineHeader(
  hot: Hot,
  binding: SheetBinding,
  row: number,
  th: HTMLTableCellElement,
): void {
  const label = th.querySelector('.rowHeader');
  if (!label) return;
  const index = hot.toPhysicalRow(row);
  const isBlank = binding.lines[index]?.id === null;
  label.textContent = isBlank ? '+' : String(index + 1);
  if (isBlank) th.setAttribute('aria-label', 'new row');
  else th.removeAttribute('aria-label');
}
