import { html, nothing, type TemplateResult } from 'lit';
import {
  answerShown,
  figureInWords,
  MOST_TASK_ROWS,
  rowsOf,
  sheetOf,
  type TaskSheet,
} from '../../src/lessons/formula-task-rows.js';
import { type LessonTask, tasksNamed } from '../../src/lessons/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';
import { say, spoken } from '../../src/words/index.js';

function taskSheets(live: LiveBook, { task: ids, rows: only }: LessonTask): readonly TaskSheet[] {
  return (tasksNamed(ids) ?? []).flatMap((task) => {
    const sheet = sheetOf(live, task);
    const rows = sheet === null ? [] : rowsOf(live, task, only).slice(0, MOST_TASK_ROWS);
    return sheet === null || rows.length === 0 ? [] : [{ task, sheet, rows }];
  });
}

const told = (live: LiveBook, sheet: string, row: string, column: string): string =>
  figureInWords(live, sheet, row, column, live.value(sheet, row, column));

/** The rows on paper, with the planning column blank or, for the key, as the plan has it. */
function table(live: LiveBook, { task, sheet, rows }: TaskSheet, isKey: boolean): TemplateResult {
  const title = (column: string): string => live.column(sheet, column)?.title ?? column;
  return html`<table>
    <thead>
      <tr>
        <th>${title(live.columns(sheet)[0]?.id ?? '')}</th>
        ${task.from.map((column) => html`<th>${title(column)}</th>`)}
        <th>${title(task.column)}</th>
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`<tr>
          <td>${rowName(live, sheet, row)}</td>
          ${task.from.map((column) => html`<td>${told(live, sheet, row, column)}</td>`)}
          <td>${isKey ? told(live, sheet, row, task.column) : nothing}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

function each(
  live: LiveBook,
  tasks: readonly LessonTask[],
  view: (at: TaskSheet, task: LessonTask) => TemplateResult,
): TemplateResult | typeof nothing {
  const there = tasks.flatMap((task) => taskSheets(live, task).map((at) => view(at, task)));
  return there.length === 0 ? nothing : html`<h2>${say`Write the formula`}</h2>${there}`;
}

const isSeveral = (ids: string): boolean => (tasksNamed(ids) ?? []).length > 1;

/** Formulas to be written, with room for them. */
export const paperTasks = (live: LiveBook, tasks: readonly LessonTask[]) =>
  each(
    live,
    tasks,
    (at, { text, task: ids }) => html`<div class="task">
      ${text ? html`<p>${text}</p>` : nothing}
      ${isSeveral(ids) || !text ? html`<p>${spoken(at.task.asks)}</p>` : nothing}
      ${table(live, at, false)}
      <p class="blank-line">${say`Formula for every row:`} = <i></i></p>
    </div>`,
  );

/** One right formula for each, and its figures. */
export const paperTaskKeys = (live: LiveBook, tasks: readonly LessonTask[]) =>
  each(
    live,
    tasks,
    (at) => html`<div class="task">
      <p><strong>${answerShown(live, at)}</strong></p>
      ${table(live, at, true)}
    </div>`,
  );
