import type { ShownTable } from '../../src/live/embed/index.js';
import { adopted, drawTable, fillCell } from './draw-table.js';
import { Frame, TOTALS } from './frame.js';
import { say } from './said.js';
import { isPlain, type SourceHost } from './source-text.js';

/** A reader's own figures: in the page's own table, where that has a place for each of them, else in one drawn anew. */
export function keptTable(host: SourceHost, shown: ShownTable): DocumentFragment {
  const content = isPlain(host) ? adopted(host) : null;
  const table = content?.querySelector('table');
  return content && table && fillIn(new Frame(table), shown) ? content : drawTable(shown);
}

const isSame = (some: readonly string[], others: readonly string[]): boolean =>
  some.length === others.length && some.every((each, i) => each === others[i]);

function fillIn(frame: Frame, { columns, rows }: ShownTable): boolean {
  const ids = columns.map(({ id }) => id);
  const isPlaced =
    isSame(frame.columns, ids) &&
    isSame(
      frame.rows,
      rows.map(({ id }) => id),
    );
  if (!isPlaced) return false;
  for (const { id, cells } of rows)
    for (const [i, cell] of cells.entries()) {
      const into = frame.cell(id, ids[i] ?? '');
      if (into) fillCell(into, cell);
    }
  return true;
}

/** Says under totals that a page wrote, once a reader has numbers of their own, that they do not follow. */
export function markTotals(frame: Frame | null, tried: boolean): void {
  if (!frame) return;
  const { table } = frame;
  const isAmong = table.querySelector(TOTALS) !== null;
  const foot = table.tFoot ?? (isAmong && tried ? table.createTFoot() : null);
  if (!foot || (foot.rows.length === 0 && !isAmong)) return;
  const marked = foot.querySelector('.unmoved');
  if (!tried) marked?.remove();
  if (!tried || marked) return;
  const row = foot.insertRow();
  row.className = 'unmoved';
  const cell = row.insertCell();
  cell.colSpan = Math.max(1, frame.columns.length);
  cell.append(document.createElement('small'));
  cell.firstElementChild!.textContent = say`These totals are the page’s own: they do not follow what you try.`;
}
