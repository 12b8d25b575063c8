import { html, nothing, type TemplateResult } from 'lit';
import {
  answerShown,
  figureInWords,
  MOST_TASK_ROWS,
  rowsOf,
  sheetOf,
  type TaskSheet,
} from '../../src/lessons/formula-task-rows.js';
import { formulaTaskWith, type LessonTask } from '../../src/lessons/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';

function taskSheet(live: LiveBook, { task: id, rows: only }: LessonTask): TaskSheet | null {
  const task = formulaTaskWith(id);
  const sheet = task ? sheetOf(live, task) : null;
  if (!task || sheet === null) return null;
  return { task, sheet, rows: rowsOf(live, task, only).slice(0, MOST_TASK_ROWS) };
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
  const there = tasks.flatMap((task) => {
    const at = taskSheet(live, task);
    return at && at.rows.length > 0 ? [view(at, task)] : [];
  });
  return there.length === 0 ? nothing : html`<h2>Write the formula</h2>${there}`;
}

/** Formulas to be written, with room for them. */
export const paperTasks = (live: LiveBook, tasks: readonly LessonTask[]) =>
  each(
    live,
    tasks,
    (at, { text }) => html`<div class="task">
      <p>${text ?? at.task.asks}</p>
      ${table(live, at, false)}
      <p class="blank-line">Formula for every row: = <i></i></p>
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
