import { html, type TemplateResult } from 'lit';
import { toIsoDay } from '../../src/planning/dates.js';
import { say, spoken } from '../../src/words/index.js';
import { dayInWords } from '../pictures/days.js';
import type { RoomModel } from './room-model.js';
import { roomAmount, STOREYS, unitOfStorey } from './room-words.js';

/** The figures that the picture draws: a row for each week, both storeys side by side. */
export function roomTable({ storeys }: RoomModel): TemplateResult {
  const caption = say`Room over the coming year, week by week`;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${caption}>
    <table>
      <caption class="unseen">
        ${caption}
      </caption>
      <thead>
        <tr>
          <th scope="col">${say`Week of`}</th>
          ${storeys.map(
            ({ storey, room }) => html`<th scope="col">
                ${spoken(STOREYS[storey].title)}, ${unitOfStorey(storey)}
                ${room === null ? '' : html`<span class="quiet">${say`(room for ${roomAmount(storey, room)})`}</span>`}
              </th>
              <th scope="col">${say`Still free`}</th>`,
          )}
        </tr>
      </thead>
      <tbody>
        ${storeys[0]?.weeks.map(({ from }, i) => {
          const cells = storeys.map(({ storey, room, weeks }) => {
            const { taken = 0, over = false } = weeks[i] ?? {};
            return html`<td class="figures">${roomAmount(storey, taken)}</td>
              <td class="figures ${over ? 'too-many' : ''}">
                ${room === null ? '' : roomAmount(storey, room - taken)}
              </td>`;
          });
          return html`<tr>
            <th scope="row" class="figures"><time datetime=${toIsoDay(from)}>${dayInWords(from)}</time></th>
            ${cells}
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}
