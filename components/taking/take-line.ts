import { html, nothing, type TemplateResult } from 'lit';
import { cautionsFor } from '../../src/facts/index.js';
import { AUTHORITY } from '../../src/live/cautions-of.js';
import type { TakeLine } from '../../src/live/doings/take-from-shelf.js';
import { measureName } from '../../src/planning/measure.js';
import { WAYS_KEPT } from '../../src/planning/types.js';
import { amountWords } from '../../src/planning/week/words.js';
import { say, spoken } from '../../src/words/index.js';
import { selectWhole } from '../look/select-whole.js';

/** A line of the list: what it is, what is left, and, where it is chosen, how much of it is taken. */
export interface TakeLineState {
  readonly line: TakeLine;
  readonly chosen: boolean;
  readonly typed: string;
  readonly measure: string | null;
  /** Ids of the measures in which it may be taken. */
  readonly measures: readonly string[];
  choose(): void;
  write(typed: string): void;
  stepBy(by: 1 | -1): void;
  measured(id: string): void;
  take(): void;
}

/** What is left, in words; nothing where that cannot be reckoned. */
export const leftWords = ({ left, counted }: TakeLine): string =>
  left === null || counted === null ? '' : say`${amountWords(left, counted)} left`;

export function takeLine(state: TakeLineState, at: number): TemplateResult {
  const { line, chosen } = state;
  return html`<li>
    <button class="line" type="button" data-line=${at} aria-expanded=${chosen} @click=${state.choose}>
      <span><strong>${line.food}</strong> <span class="small quiet">${spoken(line.way)}</span></span>
      <span class="left small quiet">${leftWords(line)}</span>
    </button>
    ${chosen ? html`${howMuch(state)}${careOf(line)}` : nothing}
  </li>`;
}

/** Cautions that matter as something is opened, in the order in which they are said. */
const ON_OPENING: readonly string[] = ['seal-check', 'doubt', 'raw-egg'];

function careOf({ food, way }: TakeLine): TemplateResult | typeof nothing {
  const cautions = cautionsFor(food, WAYS_KEPT.find((each) => each === way) ?? null);
  const said = ON_OPENING.flatMap((wanted) => cautions.filter(({ id }) => id === wanted));
  if (said.length === 0) return nothing;
  return html`<div class="care small" role="note" aria-label=${say`Food safety`}>
    ${said.map(({ text }) => html`<p>${spoken(text)}</p>`)}
    <p>${spoken(AUTHORITY)}</p>
  </div>`;
}

function howMuch(state: TakeLineState): TemplateResult {
  const { line, typed, measure, measures } = state;
  const what = `${line.food}, ${spoken(line.way)}`;
  return html`<form
    class="how-much"
    @submit=${(event: Event) => {
      event.preventDefault();
      state.take();
    }}
  >
    <button class="button step" type="button" aria-label=${say`One less of ${what}`} @click=${() => state.stepBy(-1)}>−</button>
    <input
      id="amount"
      class="amount"
      inputmode="decimal"
      enterkeyhint="done"
      autocomplete="off"
      aria-label=${say`How much of ${what}`}
      aria-describedby="said"
      .value=${typed}
      @focus=${(event: Event) => selectWhole(event.target as HTMLInputElement)}
      @input=${(event: Event) => state.write((event.target as HTMLInputElement).value)}
    />
    <button class="button step" type="button" aria-label=${say`One more of ${what}`} @click=${() => state.stepBy(1)}>+</button>
    <select
      aria-label=${say`Measure`}
      @change=${(event: Event) => state.measured((event.target as HTMLSelectElement).value)}
    >
      ${measures.map((id) => html`<option value=${id} .selected=${id === measure}>${measureName(id, 2)}</option>`)}
    </select>
    <button class="button first">${say`Take`}</button>
  </form>`;
}
