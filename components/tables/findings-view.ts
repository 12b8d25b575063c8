import { html, nothing, type TemplateResult } from 'lit';
import type { Typed } from '../../src/book/index.js';
import { fromIsoDay } from '../../src/planning/dates.js';
import type { SettledImport } from '../../src/tables/settle.js';
import type { ReadType, RowProblem } from '../../src/tables/types.js';
import { shownDay, shownNumber } from '../sheet/shown.js';
import type { ImportRun } from './import-run.js';
import type { Busy } from './source-run.js';

/** Rows shown before they are brought in. */
const ROWS = 8;

export const many = (n: number, one: string, more = `${one}s`): string =>
  `${n.toLocaleString('en')} ${n === 1 ? one : more}`;

/** How far a longer piece of work is, and a way to stop it. */
export function progressView({ what, share }: Busy, stop: () => void): TemplateResult {
  const label = what === 'reading' ? 'Reading the table' : 'Bringing the rows in';
  return html`<div class="stack-small">
    <label for="progress">${label}: ${Math.round(share * 100)} %</label>
    <progress id="progress" max="1" .value=${share}></progress>
    <div class="row">
      <button class="button stop" type="button" @click=${stop}>
        ${what === 'reading' ? 'Stop' : 'Stop, and change nothing'}
      </button>
    </div>
  </div>`;
}

/** The first rows as they would stand in the book. */
export function firstRows(run: ImportRun, settled: SettledImport): TemplateResult {
  const columns = (run.plan?.columns ?? []).filter(({ target }) => target.to !== 'leave out');
  const wrong = new Set(settled.problems.map(({ line, heading }) => `${line}/${heading}`));
  if (columns.length === 0)
    return html`<p class="problem">Every column is left out: choose where at least one of them goes.</p>`;
  return html`<div class="scroll" tabindex="0" role="region" aria-label="The first rows, as they would come in">
    <table>
      <caption>
        The first rows, as they would come in
      </caption>
      <thead>
        <tr>
          <th scope="col" class="line">Line</th>
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
  if (typeof typed === 'boolean') return typed ? 'yes' : 'no';
  return (typed.startsWith("'") ? typed.slice(1) : typed).slice(0, 120);
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
      <li>${many(settled.rows.length, 'row')} with ${many(settled.cells, 'filled cell')} would come in.</li>
      ${leftOut.length > 0 ? html`<li>Left out: ${leftOut.map((each) => `“${each}”`).join(', ')}.</li>` : nothing}
      ${
        likeFormulas > 0
          ? html`<li>
              ${many(likeFormulas, 'cell')} ${likeFormulas === 1 ? 'begins' : 'begin'} with “=”.
              ${likeFormulas === 1 ? 'It comes in as text, and is' : 'They come in as text, and are'} not worked out.
            </li>`
          : nothing
      }
      ${formulas.length > 0 ? html`<li>${many(formulas.length, 'formula')} go on being worked out.</li>` : nothing}
      ${notes.map((note) => html`<li>${note}</li>`)}
    </ul>
    ${
      total === 0
        ? html`<p>Every cell can be read as its column asks.</p>`
        : html`<details open>
            <summary>${many(total, 'thing')} to look at; what cannot be read stays as it is written</summary>
            ${problemTable(problems.slice(0, listed))}
            ${
              total > Math.min(listed, problems.length)
                ? html`<p class="row">
                    <span class="quiet small">${many(total - Math.min(listed, problems.length), 'more', 'more')}</span>
                    ${
                      problems.length > listed
                        ? html`<button class="link" type="button" @click=${more}>Show more</button>`
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
  aria-label="What to look at"
>
  <table>
    <thead>
      <tr>
        <th scope="col" class="line">Line</th>
        <th scope="col">Column</th>
        <th scope="col">What is wrong, and how to mend it</th>
      </tr>
    </thead>
    <tbody>
      ${problems.map(
        ({ line, heading, message, mend }) => html`<tr>
          <td class="line figures">${line ?? ''}</td>
          <td>${heading ?? ''}</td>
          <td class="wrap">${message} <span class="quiet">${mend}</span></td>
        </tr>`,
      )}
    </tbody>
  </table>
</div>`;
