import { html, nothing, type TemplateResult } from 'lit';
import { toIsoDay } from '../../src/planning/dates.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { shownDay, shownNumber, unitWord } from '../sheet/shown.js';
import type { ApartRow, RunwayRow } from './runway-model.js';
import { verdict } from './runway-words.js';

const COLUMNS = [
  phrase('Food'),
  phrase('Way kept'),
  phrase('On hand'),
  phrase('Weeks of supply'),
  phrase('Runs out on'),
  phrase('Next harvest or supply'),
  phrase('Left then'),
  phrase('Short or over'),
  phrase('To put up or buy'),
] as const;

const number = (value: number | null, decimals = 1): string =>
  value === null ? '' : shownNumber(value, decimals);

const day = (value: number | null): TemplateResult | typeof nothing => {
  if (value === null) return nothing;
  const iso = toIsoDay(value);
  return html`<time datetime=${iso}>${shownDay(iso)}</time>`;
};

const figures = (...values: readonly unknown[]): TemplateResult[] =>
  values.map((value) => html`<td class="figures">${value}</td>`);

const isBar = (row: RunwayRow | ApartRow): row is RunwayRow => 'standing' in row;

/** The figures that the picture draws, row by row in the same order. */
export const runwayTable = (
  rows: readonly (RunwayRow | ApartRow)[],
  caption: string,
  show: (row: RunwayRow | ApartRow) => void,
): TemplateResult => html`
  <div class="scroll" tabindex="0" role="region" aria-label=${caption}>
    <table>
      <caption class="unseen">
        ${caption}
      </caption>
      <thead>
        <tr>
          ${COLUMNS.map((title) => html`<th scope="col">${spoken(title)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) => html`<tr data-row=${row.id}>
            <th scope="row">
              <button class="link" type="button" @click=${() => show(row)}>${row.food}</button>
            </th>
            <td>${spoken(row.way)}</td>
            ${figures(
              row.onHand === null
                ? ''
                : `${number(row.onHand)} ${row.unit === 'each' ? '' : unitWord(row.unit, row.onHand)}`.trim(),
              isBar(row) ? weeks(row) : spoken(row.reason),
              isBar(row) ? (row.end === null ? say`more than ten years` : day(row.end)) : nothing,
              day(row.nextHarvest),
              number(row.left),
              isBar(row) ? verdict(row) : '',
              number(row.toPutUp, 0),
            )}
          </tr>`,
        )}
      </tbody>
    </table>
  </div>
`;

const weeks = ({ weeks: usual, weeksLow: low, weeksHigh: high }: RunwayRow): TemplateResult =>
  html`${number(usual)}${
    low !== null && high !== null && low !== high
      ? html` <span class="quiet">(${number(low)}–${number(high)})</span>`
      : nothing
  }`;
