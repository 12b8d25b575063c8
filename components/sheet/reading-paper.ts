/** How a sheet with many texts goes onto paper: the texts under each row, over the whole width. */
import { html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';
import { cellContent } from './reading-row.js';
import type { ShownRow } from './shown-rows.js';

/** So many columns of texts stand beside each other on paper; more would each be a word wide. */
const MOST_BESIDE = 2;

/** The columns whose cells stand under their row on paper: worked-out texts, where a sheet has many. */
export function underRows(columns: readonly ColumnView[]): ReadonlySet<string> {
  const texts = columns.filter(({ role, type }) => role === 'planning' && type === 'text');
  return new Set(texts.length > MOST_BESIDE ? texts.map(({ id }) => id) : []);
}

/** What of a row stands under it, each text after its column's title; nothing where all are blank. */
export function lineUnder(
  row: ShownRow,
  columns: readonly ColumnView[],
  under: ReadonlySet<string>,
): TemplateResult | typeof nothing {
  const texts = columns.flatMap(({ id, title }, i) => {
    const cell = row.cells[i]!;
    return under.has(id) && cell.kind !== 'blank' ? [{ title, cell }] : [];
  });
  if (texts.length === 0) return nothing;
  return html`<tr class="under">
    <td colspan=${columns.length - under.size}>
      ${texts.map(({ title, cell }) => html`<span class="text"><b>${title}:</b> ${cellContent(cell)}</span> `)}
    </td>
  </tr>`;
}
