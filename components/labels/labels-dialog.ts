import { css, html, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { addMonths } from '../../src/planning/dates.js';
import { mediumDay } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import { amountWords } from '../../src/planning/week/words.js';
import { fillsTelephone } from '../look/dialog-styles.js';
import { icons } from '../look/icons.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { foodNames } from '../week/food-names.js';
import { dayField } from '../week/week-of.js';
import './croft-labels.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { LABEL_SIZES } from './label-sheets.js';

interface LotLine {
  readonly id: string;
  readonly food: string;
  readonly way: string;
  readonly what: string;
  readonly putUpOn: DayNumber | null;
  readonly place: string;
}

/** Which lots to print labels for: the chosen one, or the new ones; how large, and one for what. */
@customElement('croft-labels-dialog')
export class LabelsDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(60rem, calc(100vw - 1.5rem));
      }
      .fields {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.25rem;
        align-items: end;
      }
      .fields .field {
        min-width: 10rem;
      }
      .lots {
        max-height: 14rem;
        overflow: auto;
        border: 1px solid var(--line);
        border-radius: var(--radius);
        background: var(--raised);
        padding: 0 0.75rem;
      }
      .lots label {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 0.625rem;
        align-items: center;
        min-height: 2.5rem;
        padding: 0.25rem 0;
        font-weight: 400;
        font-size: 0.9375rem;
        border-bottom: 1px solid var(--line);
      }
      .view {
        max-height: 22rem;
        overflow: auto;
        padding: 0.5rem;
        background: var(--plan);
        border-radius: var(--radius);
      }
      /* Two buttons side by side; whatever has words to choose from, over the whole width. */
      @media (max-width: 36rem) {
        .fields {
          display: grid;
          grid-template-columns: 1fr 1fr;
          gap: 0.75rem;
        }
        .fields .field {
          grid-column: 1 / -1;
        }
        .fields .button {
          justify-content: center;
          white-space: normal;
        }
        .lots label {
          min-height: 2.75rem;
        }
      }
      /* The labels alone, to be cut apart. */
      @media print {
        .stack > :not(.view) {
          display: none;
        }
        .view {
          max-height: none;
          overflow: visible;
          padding: 0;
          background: none;
        }
      }
    `,
    fillsTelephone,
  ];

  @property({ attribute: false }) row: string | null = null;
  @state() private since: DayNumber | null = null;
  @state() private chosen: ReadonlySet<string> | null = null;
  @state() private each: 'container' | 'lot' = 'container';
  @state() private size = 'usual';

  protected override heading = phrase('Labels');

  protected override willUpdate(_changed: PropertyValues): void {
    if (this.since !== null || !this.live) return;
    this.since = newSince(this.live);
    const lots = lotLines(this.live);
    const one = lots.find(({ id }) => id === this.row);
    this.chosen = one ? new Set([one.id]) : this.#newOnes(lots, this.since);
  }

  #newOnes(lots: readonly LotLine[], since: DayNumber): ReadonlySet<string> {
    return new Set(lots.filter(({ putUpOn }) => putUpOn !== null && putUpOn >= since).map(({ id }) => id));
  }

  protected override content(live: LiveBook): TemplateResult {
    const all = lotLines(live);
    // The one that was chosen on the sheet comes first, where it is seen.
    const lots = [...all.filter(({ id }) => id === this.row), ...all.filter(({ id }) => id !== this.row)];
    const chosen = this.chosen ?? new Set();
    const ids = lots.filter(({ id }) => chosen.has(id)).map(({ id }) => id);
    return html`
      <div class="fields">
        ${dayField('since', say`New since`, this.since!, (day) => {
          this.since = day;
          this.chosen = this.#newOnes(lots, day);
        })}
        <button
          class="button"
          type="button"
          @click=${() => {
            this.chosen = this.#newOnes(lots, this.since!);
          }}
        >
          ${say`Choose all new lots`}
        </button>
        <button
          class="button"
          type="button"
          @click=${() => {
            this.chosen = new Set();
          }}
        >
          ${say`Choose none`}
        </button>
        <div class="field">
          <label for="each">${say`One for`}</label>
          <select id="each" @change=${(event: Event) => {
            this.each = (event.target as HTMLSelectElement).value as 'container' | 'lot';
          }}>
            <option value="container">${say`every jar or bag`}</option>
            <option value="lot">${say`each lot`}</option>
          </select>
        </div>
        <div class="field">
          <label for="size">${say`Size`}</label>
          <select id="size" @change=${(event: Event) => {
            this.size = (event.target as HTMLSelectElement).value;
          }}>
            ${LABEL_SIZES.map(({ id, words }) => html`<option value=${id} .selected=${id === this.size}>${spoken(words)}</option>`)}
          </select>
        </div>
      </div>
      <ul class="lots" aria-label=${say`Lots`}>
        ${lots.map((lot) => this.#lot(lot, chosen.has(lot.id)))}
      </ul>
      <div class="view" tabindex="0" role="region" aria-label=${say`How they will look`}>
        <croft-labels .lots=${ids} .each=${this.each} .size=${this.size}></croft-labels>
      </div>
      <p class="quiet small">
        ${say`Best quality by a date is not safe until that date.`} ${say`Print at 100 %, and cut along the lines.`}
      </p>
      <div class="row ends">
        <button class="button" type="button" @click=${() => this.close()}>${say`Close`}</button>
        <button class="button first" type="button" ?disabled=${ids.length === 0} @click=${this.#print}>
          ${icons.print}${say`Print`}
        </button>
      </div>
    `;
  }

  #lot({ id, food, way, what, putUpOn, place }: LotLine, chosen: boolean): TemplateResult {
    const more = [spoken(way), what, putUpOn === null ? say`undated` : mediumDay(putUpOn), place].filter(
      Boolean,
    );
    return html`<li>
      <label>
        <input
          type="checkbox"
          .checked=${chosen}
          @change=${(event: Event) => {
            const next = new Set(this.chosen);
            if ((event.target as HTMLInputElement).checked) next.add(id);
            else next.delete(id);
            this.chosen = next;
          }}
        />
        <span>${food} <span class="quiet small">${more.join(', ')}</span></span>
      </label>
    </li>`;
  }

  readonly #print = (): void => void this.renderRoot.querySelector('croft-labels')?.print();
}

/** Lots with something left, the newest first. */
function lotLines(live: LiveBook): LotLine[] {
  const nameOf = foodNames(live);
  const lots = live.foodLines.flatMap(({ input, plan }) =>
    input.lots.flatMap((lot): LotLine[] => {
      const left = plan.lots.get(lot.id)?.figures.left;
      if (typeof left !== 'number' || left <= 0 || lot.container === null) return [];
      const { id, putUpOn, place, container } = lot;
      return [
        { id, food: nameOf(input.food), way: input.way, what: amountWords(left, container), putUpOn, place },
      ];
    }),
  );
  return lots.sort((a, b) => (b.putUpOn ?? 0) - (a.putUpOn ?? 0) || a.food.localeCompare(b.food));
}

/** A fortnight before the last putting up, or a month before today: what is likely still without a label. */
function newSince(live: LiveBook): DayNumber {
  const { asOf } = live.household;
  const days = live.foodLines.flatMap(({ input }) => input.lots.flatMap(({ putUpOn }) => putUpOn ?? []));
  const last = Math.max(...days.filter((day) => day <= asOf), Number.NEGATIVE_INFINITY);
  return Number.isFinite(last) ? last - 14 : (addMonths(asOf, -1) ?? asOf);
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-labels-dialog': LabelsDialog;
  }
}
