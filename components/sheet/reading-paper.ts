/** How a sheet with many texts goes onto paper: the texts under each row, over the whole width. */
import { html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';
import { cellContent } from './reading-row.js';
import type { ShownRow } from './shown-rows.js';

/** So many columns of worked-out texts stand beside each other on paper; more would each be a word wide. */
const MOST_BESIDE = 2;

/** Beside so many columns there is room for long texts too. */
const FEW_COLUMNS = 6;

/** Characters: one text of more makes its whole column a long one. */
const LONG = 32;

/**
 * The columns whose cells stand under their row on paper: worked-out texts, where a sheet has many, and those that
 * hold a long text among many columns. Never the first, which names the row, nor what has a figure under it.
 */
export function underRows(columns: readonly ColumnView[], rows: readonly ShownRow[]): ReadonlySet<string> {
  const texts = columns.filter(({ type, summary }, i) => type === 'text' && i > 0 && !summary);
  const planned = texts.filter(({ role }) => role === 'planning');
  const isLong = ({ id }: ColumnView): boolean => {
    const at = columns.findIndex((column) => column.id === id);
    return rows.some(({ cells }) => cells[at]!.text.length > LONG);
  };
  const under = columns.length > FEW_COLUMNS ? texts.filter(isLong) : [];
  if (planned.length > MOST_BESIDE) under.push(...planned);
  return new Set(under.map(({ id }) => id));
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
