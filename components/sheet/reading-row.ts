import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import type { ColumnView } from '../../src/live/columns.js';
import { say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { isNote, markWords } from '../look/problems.js';
import { type ShownCell, unitOfColumn, unitWord } from './shown.js';
import type { ShownRow } from './shown-rows.js';

const [NARROWEST, WIDEST] = [5, 8];

/** A column's header: its title, its unit unless the title says it, and what it means on hovering. */
export function headerCell(column: ColumnView, isLong = false): TemplateResult {
  const { role, type, title, help, width, note } = column;
  const word = unitWord(unitOfColumn(column), 2);
  const said = title.toLowerCase().includes(word.toLowerCase());
  // The grid's width in rem, less what its own borders and markers take.
  const least = Math.round(Math.min(WIDEST, Math.max(NARROWEST, (width ?? 96) / 20)));
  return html`<th
    scope="col"
    class="${role} wide-${isLong ? 24 : least} ${type === 'number' ? 'number' : ''}"
    title=${note ? say`${help} Note: ${note}` : help}
  ><span class="title">${title}${word && !said ? html` <span class="unit">${word}</span>` : nothing}</span>${note ? noteMark(note) : nothing}</th>`;
}

/** That a note of the household's stands here, and for screen readers what it says. */
const noteMark = (note: string): TemplateResult =>
  html`<span class="own-note" title=${note}><span aria-hidden="true">${say`note`}</span><span class="unseen">${say`, note: ${note}`}</span></span>`;

/** What stands in a cell, with its unit, its range and what is to be said of it. */
export const cellContent = (cell: ShownCell): TemplateResult =>
  html`${
    cell.kind === 'date' && cell.iso !== undefined
      ? html`<time datetime=${cell.iso}>${cell.text}</time>`
      : cell.kind === 'tick' && cell.text === say`yes`
        ? html`${icons.check}<span class="unseen">${say`yes`}</span>`
        : cell.text
  }${cell.unit ? html` <span class="after">${cell.unit}</span>` : nothing}${
    cell.range
      ? html`<span class="range"><span class="unseen">${say`, range`} </span>${cell.range}</span>`
      : nothing
  }${cell.problem ? html`<span class=${isNote(cell.problem) ? 'noted' : 'look-at'} title=${spoken(cell.problem.message)}>${markWords(cell.problem)}</span>` : nothing}${
    cell.colour ? html`<span class="unseen">${say`, marked ${cell.colour}`}</span>` : nothing
  }${cell.note ? noteMark(cell.note) : nothing}`;

/**
 * One row of the reading view. Of all cells one takes the Tab key (`tab`), the arrow keys go on from there; a
 * planning figure is a button, which shows its working. Columns `without` stand elsewhere.
 */
export function readingRow(
  row: ShownRow,
  columns: readonly ColumnView[],
  tab: string | undefined,
  chosen: string | undefined,
  long: ReadonlySet<string> = new Set(),
  without: ReadonlySet<string> = new Set(),
): TemplateResult {
  return html`<tr>
    ${columns.map((column, i) => {
      if (without.has(column.id)) return nothing;
      const cell = row.cells[i]!;
      const figure = column.role === 'planning' && cell.kind !== 'blank';
      const index = column.id === tab ? '0' : '-1';
      const classes = classMap({
        [column.role]: true,
        number: cell.kind === 'number',
        date: cell.kind === 'date',
        error: cell.kind === 'error',
        quiet: cell.weight === 'quiet',
        strong: cell.weight === 'strong',
        tint: cell.colour !== undefined,
        [`tint-${cell.colour ?? 'none'}`]: cell.colour !== undefined,
        'wide-24': long.has(column.id),
        chosen: column.id === chosen,
      });
      const inside = figure
        ? html`<button class="figure" type="button" tabindex=${index} aria-describedby="how">
            ${cellContent(cell)}
          </button>`
        : cellContent(cell);
      const own = figure ? nothing : index;
      // What has no name heads no row.
      return i === 0 && cell.kind !== 'blank'
        ? html`<th scope="row" class=${classes} data-row=${row.id} data-column=${column.id} tabindex=${own}>${inside}</th>`
        : html`<td class=${classes} data-row=${row.id} data-column=${column.id} tabindex=${own}>${inside}</td>`;
    })}
  </tr>`;
}
