import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { KINDS } from '../../../src/book/index.js';
import { type YearToTurn, yearToTurn } from '../../../src/live/doings/turn-year.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import type { Lesson, TurnedYear } from '../../../src/planning/garden/index.js';
import type { Result } from '../../../src/problem.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { inWords } from '../../look/problems.js';
import { shownNumber } from '../shown.js';
import { ActionDialog } from './action-dialog.js';

/** What closing the season would teach and empty, before it is done; one step of undo brings everything back. */
@customElement('croft-year-dialog')
export class YearDialog extends ActionDialog {
  protected override heading = phrase('Turn the year');
  #found: Result<YearToTurn> | null = null;

  protected override content(live: LiveBook): TemplateResult {
    this.#found ??= yearToTurn(live);
    const found = this.#found;
    if (!found.ok) return html`<p class="problem" role="alert">${inWords(found.problem)}</p>${this.foot()}`;
    const { turned, command } = found.value;
    const run = (): void => {
      const done = live.apply(command);
      this.close(
        done.ok ? say`The season of ${turned.season} is closed. Undo brings everything back.` : done.problem,
      );
    };
    return html`<p>
        ${say`This closes the season of ${turned.season}: what it taught goes into Facts. The shelf and its draws are carried forward as they stand.`}
      </p>
      ${taught(inOrder(turned.learned))} ${left(turned)}
      ${emptied(turned)}
      ${this.foot({ label: say`Close the season of ${turned.season}`, run })}`;
  }
}

const figure = (n: number | null): string => (n === null ? say`not known` : shownNumber(n, 2));

const inOrder = (learned: readonly Lesson[]): Lesson[] =>
  [...learned].sort((a, b) => a.figure.localeCompare(b.figure, 'en'));

function taught(learned: readonly Lesson[]): TemplateResult {
  if (learned.length === 0) return html`<p>${say`It taught no yields and no pounds per container.`}</p>`;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${say`What the season taught`}>
    <table>
      <caption>
        ${say`What the season taught`}
      </caption>
      <thead>
        <tr>
          <th scope="col">${say`Figure`}</th>
          <th scope="col" class="number">${say`This season`}</th>
          <th scope="col" class="number">${say`Plans counted on`}</th>
          <th scope="col" class="number">${say`Plans will count on`}</th>
          <th scope="col" class="number">${say`Own seasons`}</th>
        </tr>
      </thead>
      <tbody>
        ${learned.map(
          ({ figure: name, unit, own, before, after, seasons }) => html`<tr>
            <th scope="row">
              ${name} ${name.includes(', pounds per ') ? nothing : html`<span class="quiet small">${spoken(unit)}</span>`}
            </th>
            <td class="number figures">${figure(own)}</td>
            <td class="number figures">${figure(before)}</td>
            <td class="number figures"><strong>${figure(after)}</strong></td>
            <td class="number figures">${seasons}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

const rowsOf = (n: number, title: string): string =>
  n === 1 ? say`1 row of ${title}` : say`${n} rows of ${title}`;

/** What is taken away, by sheet. */
function emptied({ edits }: TurnedYear): TemplateResult | typeof nothing {
  const gone = edits.flatMap((edit) =>
    edit.do === 'remove rows' ? [rowsOf(edit.rows.length, KINDS[edit.kind].title)] : [],
  );
  return gone.length === 0
    ? nothing
    : html`<p>${say`Emptied: ${gone.join(', ')}. Undo brings everything back in one step.`}</p>`;
}

const left = ({ notRecorded }: TurnedYear): TemplateResult | typeof nothing =>
  notRecorded.length === 0
    ? nothing
    : html`<div>
        <h3>${say`Not recorded`}</h3>
        <ul class="says">
          ${notRecorded.map((why) => html`<li class="problem">${why}</li>`)}
        </ul>
      </div>`;

declare global {
  interface HTMLElementTagNameMap {
    'croft-year-dialog': YearDialog;
  }
}
