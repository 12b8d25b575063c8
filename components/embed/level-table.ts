import { isAcross } from './frame.js';

/** No table that a person reads has cells that span more columns. */
const WIDEST = 50;

/**
 * Brings a table that was written by hand into the form in which each row has a cell for each column, under a head:
 * where it looks no other way for that.
 */
export function levelTable(table: HTMLTableElement): void {
  takeHead(table);
  // Words on lines of their own are words apart, in a cell's text too.
  for (const each of table.querySelectorAll(':is(th, td) :is(br, p, div, li)')) each.before(' ');
  for (const section of [table.tHead, ...table.tBodies, table.tFoot])
    if (section?.querySelector('[rowspan], [colspan]')) fillSpans(section);
}

/** Without a head, a first row of nothing but headers is one. */
function takeHead(table: HTMLTableElement): void {
  if (table.tHead && table.tHead.rows.length > 0) return;
  const first = table.tBodies[0]?.rows[0];
  if (!first || first.cells.length === 0) return;
  if ([...first.cells].every(({ localName }) => localName === 'th')) table.createTHead().append(first);
}

/** Where a cell spans, one that does not show stands in each place that it takes besides its own. */
function fillSpans(section: HTMLTableSectionElement): void {
  const rows = [...section.rows];
  const due = rows.map(() => new Map<number, HTMLElement>());
  for (const [y, row] of rows.entries()) {
    if (isAcross(row)) continue;
    let x = 0;
    const standIns = (before: HTMLElement | null): void => {
      for (let each = due[y]?.get(x); each; each = due[y]?.get(++x)) row.insertBefore(each, before);
    };
    for (const cell of [...row.cells]) {
      standIns(cell);
      const across = Math.min(cell.colSpan, WIDEST);
      // 0 is as far as the section goes.
      const down = Math.min(cell.rowSpan || rows.length, rows.length - y);
      for (let dx = across - 1; dx > 0; dx--) cell.after(standIn(cell, false));
      for (let dy = 1; dy < down; dy++)
        for (let dx = 0; dx < across; dx++) due[y + dy]?.set(x + dx, standIn(cell, dx === 0));
      x += across;
    }
    standIns(null);
  }
}

/** It says the same, unless that is an amount, which would count twice. */
function standIn(cell: HTMLElement, says: boolean): HTMLElement {
  const isAmount = /^\W*\d/.test(cell.textContent ?? '') && !cell.querySelector('time');
  const made = cell.cloneNode(says && !isAmount) as HTMLElement;
  made.hidden = true;
  for (const name of ['rowspan', 'colspan']) made.removeAttribute(name);
  if (!says) for (const name of ['data-open', 'data-formula', 'data-column']) made.removeAttribute(name);
  return made;
}
