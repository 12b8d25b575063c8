import { html, nothing, type TemplateResult } from 'lit';
import { dayOf } from '../../src/live/week-stage.js';
import { mediumDay } from '../../src/planning/day-words.js';
import { measureName } from '../../src/planning/measure.js';
import type { CountChange, NotSeen, ToCount } from '../../src/planning/week/index.js';
import { amountWords } from '../../src/planning/week/words.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { selectWhole } from '../look/select-whole.js';
import { countTyped, type Entry } from './counting.js';

interface CountLine {
  readonly lot: ToCount;
  readonly name: string;
  readonly entry: Entry;
  readonly change: CountChange | null;
  readonly problem: Problem | null;
  /** Since when nobody has seen the food, where that is long. */
  readonly months: number | null;
  write(change: Partial<Entry>): void;
}

/** One lot: what it is, what should be there, and a field for what is. */
export function countLine({ lot, name, entry, change, problem, months, write }: CountLine): TemplateResult {
  const { lot: id, container, putUpOn, left, bestBy } = lot;
  const way = spoken(lot.way);
  const best = bestBy === null ? null : dayOf(bestBy);
  const what = `${name}, ${way}, ${spoken(measureName(container, 2))}`;
  const when = putUpOn === null ? say`undated` : say`put up ${mediumDay(putUpOn)}`;
  const written = entry.typed.trim() !== '';
  return html`<li class="line">
    <div class="what">
      <strong>${name}</strong>
      <span class="small quiet"
        >${way}, ${when}${best === null ? '' : say`, best quality by ${mediumDay(best)}`}${
          months === null ? '' : say`. Not seen for ${months} months.`
        }</span
      >
    </div>
    <div class="how-many">
      <button
        class="button as-written"
        type="button"
        tabindex="-1"
        title=${say`As written: ${amountWords(left, container)}`}
        aria-label=${say`${amountWords(left, container)} of ${name} (${way}), as written`}
        @click=${() => write({ typed: plainNumber(left) })}
      >
        ${amountWords(left, container)}
      </button>
      <div class="stepper">
        ${step(-1, name, way, entry, left, write)}
        <input
        class="amount"
        data-lot=${id}
        inputmode="decimal"
        enterkeyhint="next"
        autocomplete="off"
        aria-label=${say`${what}, ${when}: counted`}
        aria-describedby="how ${id}-is"
        aria-invalid=${problem !== null}
        .value=${entry.typed}
        @focus=${(event: Event) => selectWhole(event.target as HTMLInputElement)}
        @input=${(event: Event) => write({ typed: (event.target as HTMLInputElement).value })}
      />
        ${step(1, name, way, entry, left, write)}
      </div>
    </div>
    <div class="is small" id="${id}-is" aria-live="polite">
      ${
        problem
          ? html`<span class="problem">${inWords(problem)}</span>`
          : change
            ? html`<span class="differs">${change.words}.</span>
                ${change.now < change.was ? notEaten(entry, write) : nothing}`
            : written
              ? html`<span class="quiet">${say`as written`}</span>`
              : nothing
      }
    </div>
  </li>`;
}

/**
 * One more or one fewer by a tap, from what was counted, else from what is written. The keyboard types the number
 * instead, and Tab goes from field to field.
 */
const step = (
  by: 1 | -1,
  name: string,
  way: string,
  { typed }: Entry,
  left: number,
  write: CountLine['write'],
): TemplateResult => {
  const from = countTyped(typed) ?? left;
  return html`<button
    class="button step"
    type="button"
    tabindex="-1"
    aria-label=${by > 0 ? say`One more of ${name} (${way})` : say`One fewer of ${name} (${way})`}
    ?disabled=${Number.isNaN(from) || from + by < 0}
    @click=${() => write({ typed: plainNumber(from + by) })}
  >
    <span aria-hidden="true">${by > 0 ? '+' : '−'}</span>
  </button>`;
};

const notEaten = (
  { notEaten: on }: Entry,
  write: CountLine['write'],
): TemplateResult => html`<label class="check">
  <input
    type="checkbox"
    .checked=${on}
    @change=${(event: Event) => write({ notEaten: (event.target as HTMLInputElement).checked })}
  />${say`not eaten (miscounted, spoiled, given away)`}
</label>`;

/** A number as one would type it. */
const plainNumber = (n: number): string => String(Math.round(n * 1e6) / 1e6);

interface Unseen {
  nameOf(food: string): string;
  placeOf(lot: string): string;
  goTo(lot: string): void;
}

/** Foods that nobody drew from, put up or counted for months: is it still there? */
export function unseenView(
  unseen: readonly NotSeen[],
  { nameOf, placeOf, goTo }: Unseen,
): TemplateResult | typeof nothing {
  if (unseen.length === 0) return nothing;
  return html`<details class="unseen-foods small">
    <summary>${unseen.length === 1 ? say`1 food was not seen for months: still there?` : say`${unseen.length} foods were not seen for months: still there?`}</summary>
    <ul>
      ${unseen.map(
        ({ food, way, months, lots }) => html`<li>
          <button class="link" type="button" @click=${() => goTo(lots[0]!)}>${nameOf(food)} (${spoken(way)})</button>${say`, ${months} months: ${[...new Set(lots.map(placeOf))].filter(Boolean).join('; ') || say`no place written`}`}
        </li>`,
      )}
    </ul>
  </details>`;
}
