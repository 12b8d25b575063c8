import { html, nothing, type TemplateResult } from 'lit';
import { type ComingIn, comingIn, placeInWords } from '../../src/live/doings/describe-merge.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { MergePlan } from '../../src/storage/index.js';
import { say } from '../../src/words/index.js';
import { type ConflictHost, conflictView } from './conflict-view.js';

/** What merging a copy would do: what comes in, and what both changed, to be decided. */
export function planView(
  live: LiveBook,
  { conflicts, edits, theirs, sharesPast }: MergePlan,
  deciding: Pick<ConflictHost, 'both' | 'decision' | 'choose'>,
): TemplateResult {
  const coming = comingIn(live, edits, theirs);
  return html`
    <p>
      <strong>${theirs.title}</strong>${
        sharesPast
          ? say`, saved for merging.`
          : say`, a plain copy: what only one of the two has is taken as added, never as removed.`
      }
    </p>
    ${
      coming.length === 0
        ? html`<p>${conflicts.length === 0 ? say`Nothing in it is new to this book.` : say`Nothing else in it is new to this book.`}</p>`
        : comingInTable(coming)
    }
    ${
      conflicts.length === 0
        ? nothing
        : html`<h3>${conflicts.length === 1 ? say`Both changed one thing` : say`Both changed ${conflicts.length} things`}</h3>
            <p class="small quiet">
              ${say`Choose what is to stand. What you leave open stays as it is here (a row that only you removed comes back), and stays on the list to decide later.`}
            </p>
            <div class="conflicts">
              ${conflicts.map((conflict, i) =>
                conflictView(conflict, i, {
                  ...deciding,
                  where: (each) => placeInWords(live, each.path, theirs),
                  column: (sheet, id) => live.column(sheet, id),
                }),
              )}
            </div>`
    }
  `;
}

const comingInTable = (coming: readonly ComingIn[]): TemplateResult => html`<div class="scroll">
  <table>
    <caption>${say`What comes in`}</caption>
    <thead>
      <tr>
        <th scope="col">${say`Sheet`}</th>
        <th scope="col" class="number">${say`Rows added`}</th>
        <th scope="col" class="number">${say`Rows removed`}</th>
        <th scope="col" class="number">${say`Cells changed`}</th>
        <th scope="col" class="number">${say`Other`}</th>
      </tr>
    </thead>
    <tbody>
      ${coming.map(
        (each) => html`<tr>
          <th scope="row">${each.title}</th>
          ${[each.rowsAdded, each.rowsRemoved, each.cells, each.other].map(
            (n) => html`<td class="number figures">${n === 0 ? '' : n}</td>`,
          )}
        </tr>`,
      )}
    </tbody>
  </table>
</div>`;
