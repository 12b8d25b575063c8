import { html, nothing, type TemplateResult } from 'lit';
import type { CellValue } from '../../src/book/index.js';
import type { TaskChecked } from '../../src/lessons/formula-task.js';
import { figureInWords, type TaskSheet } from '../../src/lessons/formula-task-rows.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';
import { say } from '../../src/words/index.js';

/** How a task stands: what the pupil's formula gives, and what came of it. */
export interface TaskStands {
  readonly given: ReadonlyMap<string, CellValue>;
  readonly checked: TaskChecked | null;
}

/** The row that a counterexample is about, where it is one that stands there. */
const wrongRow = (checked: TaskChecked | null): string | null =>
  checked?.kind === 'wrong' ? checked.row : null;

/** The rows of a sheet, with the planning column blank until a formula fills it. */
export function taskTable(
  live: LiveBook,
  at: TaskSheet,
  { given, checked }: TaskStands,
  caption: string,
): TemplateResult {
  const { sheet, rows, task } = at;
  const title = (column: string): string => live.column(sheet, column)?.title ?? column;
  const wrong = wrongRow(checked);
  return html`<div class="task-scroll" role="region" aria-label=${caption} tabindex="0">
    <table class="task" part="table">
      <caption class="unseen">
        ${caption}
      </caption>
      <thead>
        <tr>
          <th scope="col">${title(live.columns(sheet)[0]?.id ?? '')}</th>
          ${task.from.map((column) => html`<th scope="col" class="number">${title(column)}</th>`)}
          <th scope="col" class="number asked">${title(task.column)}</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map((row) => {
          const has = given.has(row);
          const yours = has ? figureInWords(live, sheet, row, task.column, given.get(row) ?? null) : '';
          const mark =
            !has || checked === null ? '' : row === wrong ? 'wrong' : checked.kind === 'right' ? 'right' : '';
          return html`<tr class=${mark}>
            <th scope="row">${rowName(live, sheet, row)}</th>
            ${task.from.map(
              (column) =>
                html`<td class="number">${figureInWords(live, sheet, row, column, live.value(sheet, row, column))}</td>`,
            )}
            <td class="number asked">
              ${has ? yours : html`<span class="unseen">${say`blank`}</span>`}${
                mark === ''
                  ? nothing
                  : html`<span class="mark" aria-hidden="true">${mark === 'right' ? ' ✓' : ' ✗'}</span>`
              }${mark === 'wrong' ? html`<span class="unseen">${say`, not as in the plan`}</span>` : nothing}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}
