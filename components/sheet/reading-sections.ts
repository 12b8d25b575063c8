import { html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';
import type { RowGroup } from '../../src/live/groups.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { SummaryFigure } from '../../src/live/summary.js';
import { say } from '../../src/words/index.js';
import { SUMMARY_NAMES, summaryInWords, summaryWords } from './looks/summary-words.js';

/** Rows of the reading view that stand together: a group, or all of them. */
export interface Section {
  /** Null where rows stand in no groups. */
  readonly group: RowGroup | null;
  readonly key: string;
  readonly folded: boolean;
  /** Those to be shown now, none of a folded group. */
  readonly rows: readonly string[];
}

/** The rows in their groups, at most so many of them. */
export function sectionsOf(
  live: LiveBook,
  sheet: string,
  rows: readonly string[],
  most: number,
  folded: ReadonlySet<string>,
): readonly Section[] {
  const groups = live.groupsOf(sheet, rows);
  if (!groups) return [{ group: null, key: '', folded: false, rows: rows.slice(0, most) }];
  let left = most;
  return groups.flatMap((group): Section[] => {
    const key = group.label.toLowerCase();
    const isFolded = folded.has(key);
    if (left <= 0 && !isFolded) return [];
    const shown = isFolded ? [] : group.rows.slice(0, left);
    left -= shown.length;
    return [{ group, key, folded: isFolded, rows: shown }];
  });
}

const figureCell = (figure: SummaryFigure, column: ColumnView, some: boolean): TemplateResult => {
  const words = summaryInWords(figure, column, some);
  const value = figure.problem ? figure.problem.message : summaryWords(figure, column);
  return html`<span class="sum" title=${words}
    ><span aria-hidden="true"><span class="name">${SUMMARY_NAMES[figure.summary]}</span> <span class=${figure.problem ? 'why' : ''}>${value}</span></span
    ><span class="unseen">${words}</span></span
  >`;
};

const cellClass = (column: ColumnView): string => (column.type === 'number' ? 'number' : '');

/** The heading of a group: its name, how many rows it has, and what stands under its columns. */
export function groupHeading(
  live: LiveBook,
  sheet: string,
  columns: readonly ColumnView[],
  { group, folded }: Section,
  toggle: () => void,
): TemplateResult | typeof nothing {
  if (!group) return nothing;
  const figures = columns.map((column) => {
    const figure = live.summaryAt(sheet, column.id, group.rows);
    return figure && figure.value !== null ? figureCell(figure, column, false) : nothing;
  });
  return html`<tr class="group">
    ${columns.map((column, i) =>
      i === 0
        ? html`<th scope="rowgroup">
            <button type="button" aria-expanded=${String(!folded)} @click=${toggle}>
              <span class="turn" aria-hidden="true"></span>${group.label}
              <span class="count">${group.count === 1 ? say`1 row` : say`${group.count} rows`}</span>
            </button>
            ${figures[0]}
          </th>`
        : html`<td class=${cellClass(column)}>${figures[i]}</td>`,
    )}
  </tr>`;
}

/** What stands under the columns, over these rows; nothing where nothing is to stand there. */
export function tableFoot(
  live: LiveBook,
  sheet: string,
  columns: readonly ColumnView[],
  rows: readonly string[],
): TemplateResult | typeof nothing {
  if (!columns.some(({ summary }) => summary)) return nothing;
  const some = rows.length < live.rowIds(sheet).length;
  return html`<tfoot>
    <tr>
      ${columns.map((column, i) => {
        const figure = live.isPlanned ? live.summaryAt(sheet, column.id, rows) : undefined;
        const inside = figure ? figureCell(figure, column, some) : nothing;
        if (i > 0) return html`<td class=${cellClass(column)}>${inside}</td>`;
        return html`<th scope="row" class=${figure ? cellClass(column) : ''}>
          ${some ? html`<span class="name">${say`of the rows shown`}</span>` : figure ? nothing : html`<span class="unseen">${say`Under the columns`}</span>`}
          ${inside}
        </th>`;
      })}
    </tr>
  </tfoot>`;
}
