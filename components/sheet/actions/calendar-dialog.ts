import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { toIsoDay } from '../../../src/planning/dates.js';
import type { DayNumber } from '../../../src/planning/types.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { icons } from '../../look/icons.js';
import { printCopy } from '../../look/print-copy.js';
import { dayInWords, shortDay } from '../../pictures/days.js';
import { ActionDialog } from './action-dialog.js';
import { type CalendarLine, type CalendarWeek, sowingWeeks } from './sowing-weeks.js';

const TASKS = [
  ['start', phrase('Start indoors or under cover')],
  ['sow', phrase('Sow or plant where it grows')],
  ['setOut', phrase('Set out')],
] as const;

/** What to start, sow and set out in each week of the season, from the dates of Beds, to read or to print. */
@customElement('croft-calendar-dialog')
export class CalendarDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      .weeks {
        display: grid;
        gap: 0.875rem;
      }
      .weeks > li {
        border-top: 1px solid var(--line);
        padding-top: 0.5rem;
      }
      .tasks {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(13rem, 1fr));
        gap: 0.25rem 1.25rem;
      }
      h4 {
        margin: 0.25rem 0 0;
        font-size: 0.8125rem;
        font-weight: 600;
        color: var(--quiet);
      }
      .line {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 0.4rem;
      }
      .day {
        white-space: nowrap;
      }
      .box {
        width: 0.8em;
        height: 0.8em;
        border: 1px solid var(--quiet);
        margin-top: 0.3em;
      }
      /* A box to tick by pencil: on a screen it would promise to be touched. */
      @media screen {
        .box {
          display: none;
        }
        .line {
          grid-template-columns: 1fr;
        }
      }
    `,
  ];

  protected override heading = phrase('Sowing calendar');

  protected override content(live: LiveBook): TemplateResult {
    const weeks = sowingWeeks(live);
    if (weeks.length === 0) {
      return html`<p>
          ${say`No planting of Beds has a day to start or to set out yet. Name crops in Beds, and write both frost dates among the household’s settings.`}
        </p>
        ${this.foot()}`;
    }
    return html`<p class="quiet small">
        ${say`Days count from the frost dates, which are chances and no promises: watch the weather before setting out.`}
      </p>
      <ol class="weeks" id="list">
        ${weeks.map((week) => weekView(week, live.household.asOf))}
      </ol>
      <div class="row ends">
        <button class="button" type="button" @click=${() => this.close()}>${say`Close`}</button>
        <button class="button first" type="button" @click=${() => this.#print(live)}>${icons.print}${say`Print`}</button>
      </div>`;
  }

  #print(live: LiveBook): void {
    const list = this.renderRoot.querySelector('#list');
    if (list) printCopy(say`Sowing calendar, ${live.title}`, list);
  }
}

const weekView = ({ monday, ...week }: CalendarWeek, asOf: DayNumber): TemplateResult => html`<li>
  <h3>${say`Week of`} <time datetime=${toIsoDay(monday)}>${dayInWords(monday)}</time></h3>
  <div class="tasks">
    ${TASKS.map(([task, words]) => {
      const lines = week[task];
      return lines.length === 0
        ? nothing
        : html`<div>
            <h4>${spoken(words)}</h4>
            <ul>
              ${lines.map((line) => lineView(line, asOf))}
            </ul>
          </div>`;
    })}
  </div>
</li>`;

const lineView = (
  { name, day, more }: CalendarLine,
  asOf: DayNumber,
): TemplateResult => html`<li class="line">
  <span class="box" aria-hidden="true"></span>
  <span>${name}${more ? html` <span class="quiet small">${more}</span>` : nothing}, <span class="day">${shortDay(day, asOf)}</span></span>
</li>`;

declare global {
  interface HTMLElementTagNameMap {
    'croft-calendar-dialog': CalendarDialog;
  }
}
