import { html, nothing, type TemplateResult } from 'lit';
import type { Typed } from '../../src/book/index.js';
import { fromIsoDay } from '../../src/planning/dates.js';
import type { SettledImport } from '../../src/tables/settle.js';
import type { ReadType, RowProblem } from '../../src/tables/types.js';
import { numberFormat, quoted, say, spoken } from '../../src/words/index.js';
import { shownDay, shownNumber } from '../sheet/shown.js';
import type { ImportRun } from './import-run.js';
import type { Busy } from './source-run.js';

/** Rows shown before they are brought in. */
const ROWS = 8;

/** A count as people write it. */
export const inFigures = (n: number): string => numberFormat().format(n);

/** How far a longer piece of work is, and a way to stop it. */
export function progressView({ what, share }: Busy, stop: () => void): TemplateResult {
  const done = Math.round(share * 100);
  const label = what === 'reading' ? say`Reading the table: ${done} %` : say`Bringing the rows in: ${done} %`;
  return html`<div class="stack-small">
    <label for="progress">${label}</label>
    <progress id="progress" max="1" .value=${share}></progress>
    <div class="row">
      <button class="button stop" type="button" @click=${stop}>
        ${what === 'reading' ? say`Stop` : say`Stop, and change nothing`}
      </button>
    </div>
  </div>`;
}

/** The first rows as they would stand in the book. */
export function firstRows(run: ImportRun, settled: SettledImport): TemplateResult {
  const columns = (run.plan?.columns ?? []).filter(({ target }) => target.to !== 'leave out');
  const wrong = new Set(settled.problems.map(({ line, heading }) => `${line}/${heading}`));
  if (columns.length === 0)
    return html`<p class="problem">${say`Every column is left out: choose where at least one of them goes.`}</p>`;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${say`The first rows, as they would come in`}>
    <table>
      <caption>
        ${say`The first rows, as they would come in`}
      </caption>
      <thead>
        <tr>
          <th scope="col" class="line">${say`Line`}</th>
          ${columns.map(({ heading }) => html`<th scope="col">${heading}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${settled.rows.slice(0, ROWS).map((row, at) => {
          const line = settled.lines[at];
          return html`<tr>
            <th scope="row" class="line figures">${line}</th>
            ${columns.map(({ index, heading, reading }) => {
              const typed = row.cells?.[settled.columnIds.get(index)!] ?? null;
              return html`<td class="${typeof typed === 'number' ? 'number figures' : ''} ${wrong.has(`${line}/${heading}`) ? 'wrong' : ''}">
                ${shown(typed, reading.type)}
              </td>`;
            })}
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}

function shown(typed: Typed, type: ReadType): string {
  if (typed === null) return '';
  if (type === 'date' && typeof typed === 'string' && fromIsoDay(typed).ok) return shownDay(typed);
  if (typeof typed === 'number') return shownNumber(typed, 6);
  if (typeof typed === 'boolean') return typed ? say`yes` : say`no`;
  return (typed.startsWith("'") ? typed.slice(1) : typed).slice(0, 120);
}

function comingIn({ rows, cells }: SettledImport): string {
  const [some, filled] = [inFigures(rows.length), inFigures(cells)];
  if (cells === 1)
    return rows.length === 1
      ? say`1 row with 1 filled cell would come in.`
      : say`${some} rows with 1 filled cell would come in.`;
  return rows.length === 1
    ? say`1 row with ${filled} filled cells would come in.`
    : say`${some} rows with ${filled} filled cells would come in.`;
}

/** What was found on the way: how much comes in, what did not fit, and what is only worth knowing. */
export function findingsView(
  settled: SettledImport,
  leftOut: readonly string[],
  listed: number,
  more: () => void,
): TemplateResult {
  const { problems, likeFormulas, notes, formulas } = settled;
  const total = problems.length + settled.more;
  return html`<div class="stack-small">
    <ul class="list small">
      <li>${comingIn(settled)}</li>
      ${leftOut.length > 0 ? html`<li>${say`Left out: ${leftOut.map(quoted).join(', ')}.`}</li>` : nothing}
      ${
        likeFormulas > 0
          ? html`<li>
              ${
                likeFormulas === 1
                  ? say`1 cell begins with “=”. It comes in as text, and is not worked out.`
                  : say`${inFigures(likeFormulas)} cells begin with “=”. They come in as text, and are not worked out.`
              }
            </li>`
          : nothing
      }
      ${formulas.length > 0 ? html`<li>${formulas.length === 1 ? say`1 formula goes on being worked out.` : say`${inFigures(formulas.length)} formulas go on being worked out.`}</li>` : nothing}
      ${notes.map((note) => html`<li>${spoken(note)}</li>`)}
    </ul>
    ${
      total === 0
        ? html`<p>${say`Every cell can be read as its column asks.`}</p>`
        : html`<details open>
            <summary>${total === 1 ? say`1 thing to look at; what cannot be read stays as it is written` : say`${inFigures(total)} things to look at; what cannot be read stays as it is written`}</summary>
            ${problemTable(problems.slice(0, listed))}
            ${
              total > Math.min(listed, problems.length)
                ? html`<p class="row">
                    <span class="quiet small">${say`${inFigures(total - Math.min(listed, problems.length))} more`}</span>
                    ${
                      problems.length > listed
                        ? html`<button class="link" type="button" @click=${more}>${say`Show more`}</button>`
                        : nothing
                    }
                  </p>`
                : nothing
            }
          </details>`
    }
  </div>`;
}

const problemTable = (problems: readonly RowProblem[]): TemplateResult => html`<div
  class="scroll"
  tabindex="0"
  role="region"
  aria-label=${say`What to look at`}
>
  <table>
    <thead>
      <tr>
        <th scope="col" class="line">${say`Line`}</th>
        <th scope="col">${say`Column`}</th>
        <th scope="col">${say`What is wrong, and how to mend it`}</th>
      </tr>
    </thead>
    <tbody>
      ${problems.map(
        ({ line, heading, message, mend }) => html`<tr>
          <td class="line figures">${line ?? ''}</td>
          <td>${heading ?? ''}</td>
          <td class="wrap">${spoken(message)} <span class="quiet">${spoken(mend)}</span></td>
        </tr>`,
      )}
    </tbody>
  </table>
</div>`;
