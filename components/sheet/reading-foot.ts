import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import type { GridCell } from '../grid/grid-view.js';
import { isNote } from '../look/problems.js';
import type { FoundNote, FoundProblem } from './shown-rows.js';

/** More notes than these stay folded until asked for. */
const FEW_NOTES = 12;
const MOST_LISTED = 100;

export interface ReadingFoot {
  readonly live: LiveBook;
  readonly sheet: string;
  readonly problems: readonly FoundProblem[];
  readonly notes: readonly FoundNote[];
  /** How many rows are not shown yet. */
  readonly waiting: number;
  readonly found: number;
  showAll(): void;
  lookAt(cell: GridCell): void;
}

/** What stands below the table: rows that wait, cells to look at, and the person's own notes. */
export function readingFoot(foot: ReadingFoot): TemplateResult | typeof nothing {
  const problems = foot.problems.filter(({ problem }) => !isNote(problem));
  const told = foot.problems.filter(({ problem }) => isNote(problem));
  if (foot.problems.length + foot.notes.length === 0 && foot.waiting === 0) return nothing;
  const list = (all: readonly FoundProblem[], title: string) =>
    listed(
      foot,
      title,
      all.map(({ row, column, problem }) => ({ row, column, words: `${problem.message} ${problem.mend}` })),
      false,
    );
  const { length } = foot.notes;
  return html`<div class="foot small">
      ${
        foot.waiting > 0
          ? html`<button class="button" type="button" @click=${foot.showAll}>
              ${say`Show all ${foot.found} rows`}
            </button>`
          : nothing
      }
      ${list(problems, problems.length === 1 ? say`One cell to look at` : say`${problems.length} cells to look at`)}
      ${list(told, told.length === 1 ? say`One note` : say`${told.length} notes`)}
    </div>
    <div class="own-notes small">
      ${listed(foot, length === 1 ? say`One note of the household’s` : say`${length} notes of the household’s`, foot.notes, length <= FEW_NOTES)}
    </div>`;
}

function listed(
  { live, sheet, lookAt }: ReadingFoot,
  title: string,
  all: readonly FoundNote[],
  open: boolean,
): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const at = new Map(live.rowIds(sheet).map((row, i) => [row, i + 1]));
  return html`<details ?open=${open}>
    <summary>${title}</summary>
    <ul>
      ${all.slice(0, MOST_LISTED).map(({ row, column, words }) =>
        row === null
          ? html`<li><span class="whose">${column.title}</span>: ${words}</li>`
          : html`<li>
              <button type="button" @click=${() => lookAt({ row, column: column.id })}>
                ${say`${column.title}, row ${at.get(row)}`}</button
              >: ${words}
            </li>`,
      )}
    </ul>
  </details>`;
}
