import { html, nothing, type TemplateResult } from 'lit';
import { toIsoDay } from '../../src/planning/dates.js';
import type { DayNumber } from '../../src/planning/types.js';
import { HERE } from '../../src/words/here.js';
import { say } from '../../src/words/index.js';
import { dayInWords } from '../pictures/days.js';
import type { SeasonRow, SeasonWeek, Span } from './season-model.js';
import { named, spokenBeginning } from './season-words.js';

const day = (value: DayNumber | null): TemplateResult | typeof nothing =>
  value === null ? nothing : html`<time datetime=${toIsoDay(value)}>${dayInWords(value)}</time>`;

const span = (value: Span | null): TemplateResult | typeof nothing =>
  value === null
    ? nothing
    : value.from === value.to
      ? html`${day(value.from)}`
      : html`${day(value.from)} – ${day(value.to)}`;

const frame = (
  caption: string,
  titles: readonly string[],
  rows: readonly TemplateResult[],
): TemplateResult => html`
  <div class="scroll" tabindex="0" role="region" aria-label=${caption}>
    <table>
      <caption>
        ${caption}
      </caption>
      <thead>
        <tr>
          ${titles.map((title) => html`<th scope="col">${title}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>
  </div>
`;

/** The days of every planting, in the picture's order. */
export const cropsTable = (rows: readonly SeasonRow[], show: (row: SeasonRow) => void): TemplateResult =>
  frame(
    say`Crop by crop`,
    [say`Crop`, say`How it begins`, say`On`, say`Set out`, say`Harvest`, say`Put up${HERE}`],
    rows.map(
      (row) => html`<tr data-row=${row.key}>
        <th scope="row">
          ${
            row.cell
              ? html`<button class="link" type="button" @click=${() => show(row)}>${named(row)}</button>`
              : named(row)
          }
        </th>
        <td>${row.begin === null ? nothing : spokenBeginning(row.what)}${row.done ? say`, done` : nothing}</td>
        <td class="figures">${day(row.begin)}</td>
        <td class="figures">${day(row.setOut)}</td>
        <td class="figures">${span(row.harvest)}</td>
        <td class="figures">${span(row.putUp)}</td>
      </tr>`,
    ),
  );

const crops = (rows: readonly SeasonRow[]): TemplateResult =>
  html`<td>${rows.map((row) => html`<span class="one">${named(row)}</span>`)}</td>`;

/** What begins in each week. */
export const weeksTable = (weeks: readonly SeasonWeek[]): TemplateResult =>
  frame(
    say`Week by week: what begins`,
    [
      say`Week of`,
      say`Start indoors or under cover`,
      say`Sow or plant`,
      say`Set out`,
      say`Harvest`,
      say`Put up${HERE}`,
    ],
    weeks.map(({ monday, begin, setOut, harvest, putUp }) => {
      const covered = ({ what }: SeasonRow): boolean =>
        what === 'start indoors' || what === 'sow under cover';
      return html`<tr>
        <th scope="row" class="figures">${day(monday)}</th>
        ${crops(begin.filter(covered))} ${crops(begin.filter((row) => !covered(row)))} ${crops(setOut)}
        ${crops(harvest)} ${crops(putUp)}
      </tr>`;
    }),
  );
