import { html, nothing, type TemplateResult } from 'lit';
import type { Raw } from '../../src/book/index.js';
import type { Varied } from '../../src/live/what-if.js';
import { beginning, dayOf, dayWritten, finest } from '../../src/live/what-if-range.js';
import type { Asked } from '../../src/live/what-if-text.js';
import type { DayNumber } from '../../src/planning/types.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';
import { shownDay, shownMonthDay, shownNumber, unitWord } from '../sheet/shown.js';

export interface ControlState {
  readonly asked: Asked;
  readonly at: number;
  /** What is tried; undefined: as in the book. */
  readonly tried: Raw | null | undefined;
  readonly problem: Problem | undefined;
  readonly asOf: DayNumber;
  /** It can be taken away again. */
  readonly removable: boolean;
}

export interface ControlEvents {
  /** Undefined: as the book has it. */
  readonly vary: (varied: Varied, value: Raw | null | undefined) => void;
  readonly remove: (varied: Varied) => void;
}

/** A value in words, with its unit. */
export function valueInWords({ unit }: Pick<Varied, 'unit'>, value: Raw | null): string {
  if (value === null || value === '') return say`blank`;
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  if (typeof value === 'number') {
    const word = unitWord(unit, value);
    return word ? `${shownNumber(value)} ${word}` : shownNumber(value);
  }
  if (/^\d{2}-\d{2}$/.test(value)) return shownMonthDay(value);
  return /^\d{4}-\d{2}-\d{2}$/.test(value) ? shownDay(value) : spoken(value);
}

const presentInWords = (varied: Varied): string => {
  const { present, instead } = varied;
  if (present !== null) return valueInWords(varied, present);
  return instead === null ? say`blank` : say`blank; counted on: ${valueInWords(varied, instead)}`;
};

function amount({ asked, at, tried }: ControlState, { vary }: ControlEvents): TemplateResult {
  const { varied, range } = asked;
  const now = tried === undefined ? varied.present : tried;
  const slid = typeof now === 'number' ? now : beginning(varied);
  const words = valueInWords(varied, now);
  const unit = unitWord(varied.unit, typeof now === 'number' ? now : 2);
  return html`<input
      class="slider"
      type="range"
      aria-label=${spoken(varied.label)}
      aria-valuetext=${now === null ? say`${words}, at ${valueInWords(varied, slid)}` : words}
      aria-describedby="was${at}"
      min=${range.min}
      max=${range.max}
      step=${range.step}
      .value=${String(typeof slid === 'number' ? slid : range.min)}
      @input=${(event: Event) => vary(varied, (event.target as HTMLInputElement).valueAsNumber)}
    />
    <input
      class="box"
      type="number"
      inputmode="decimal"
      aria-label=${say`${varied.label}, written`}
      aria-valuetext=${words}
      aria-describedby="was${at} p${at}"
      min=${varied.min ?? nothing}
      max=${varied.max ?? nothing}
      step=${finest(varied) < 1 ? 'any' : 1}
      placeholder=${typeof varied.instead === 'number' ? shownNumber(varied.instead) : ''}
      .value=${now === null ? '' : String(now)}
      @input=${(event: Event) => {
        const { value, valueAsNumber, validity } = event.target as HTMLInputElement;
        if (validity.badInput || (value !== '' && Number.isNaN(valueAsNumber))) return;
        vary(varied, value === '' ? (varied.present === null ? undefined : null) : valueAsNumber);
      }}
    />${unit ? html`<span class="unit quiet small" aria-hidden="true">${unit}</span>` : nothing}`;
}

function day({ asked, at, tried, asOf }: ControlState, { vary }: ControlEvents): TemplateResult {
  const { varied, range } = asked;
  const now = tried === undefined ? varied.present : tried;
  const slid = dayOf(now, asOf) ?? dayOf(varied.instead, asOf) ?? asOf;
  const written = dayOf(now, asOf);
  return html`<input
      class="slider"
      type="range"
      aria-label=${spoken(varied.label)}
      aria-valuetext=${now === null ? say`blank, at ${valueInWords(varied, dayWritten(varied, slid))}` : valueInWords(varied, now)}
      aria-describedby="was${at}"
      min=${range.min}
      max=${range.max}
      step=${range.step}
      .value=${String(slid)}
      @input=${(event: Event) =>
        vary(varied, dayWritten(varied, (event.target as HTMLInputElement).valueAsNumber))}
    />
    <input
      class="date"
      type="date"
      aria-label=${say`${varied.label}, written`}
      aria-describedby="was${at} p${at}"
      .value=${written === null ? '' : dayWritten({ type: 'date' }, written)}
      @change=${(event: Event) => {
        const { value } = event.target as HTMLInputElement;
        const picked = dayOf(value, asOf);
        vary(varied, picked === null ? undefined : dayWritten(varied, picked));
      }}
    />`;
}

function choice({ asked, at, tried }: ControlState, { vary }: ControlEvents): TemplateResult {
  const { varied } = asked;
  const now = (tried === undefined ? varied.present : tried) ?? varied.instead ?? '';
  return html`<select
    aria-label=${spoken(varied.label)}
    aria-describedby="was${at} p${at}"
    @change=${(event: Event) => vary(varied, (event.target as HTMLSelectElement).value)}
  >
    ${varied.options.includes(String(now)) ? nothing : html`<option value="" selected></option>`}
    ${varied.options.map((option) => html`<option value=${option} .selected=${option === now}>${spoken(option)}</option>`)}
  </select>`;
}

function tick({ asked, at, tried }: ControlState, { vary }: ControlEvents): TemplateResult {
  const { varied } = asked;
  const now = (tried === undefined ? varied.present : tried) === true;
  return html`<input
    type="checkbox"
    aria-label=${spoken(varied.label)}
    aria-describedby="was${at} p${at}"
    .checked=${now}
    @change=${(event: Event) => vary(varied, (event.target as HTMLInputElement).checked)}
  />`;
}

/** A value to vary: what it is called, a slider and a box, what the book has, and a way back to that. */
export function controlView(state: ControlState, events: ControlEvents): TemplateResult {
  const { asked, at, tried, problem, removable } = state;
  const { varied } = asked;
  const { type } = varied;
  const [label, help] = [spoken(varied.label), spoken(varied.help)];
  const input = type === 'number' ? amount : type === 'choice' ? choice : type === 'tick' ? tick : day;
  return html`<li class="control ${tried === undefined ? '' : 'tried'}">
    <div class="name" title=${help}>
      <span class="label">${label}</span>
      ${
        removable
          ? html`<button
              class="button plain away"
              type="button"
              aria-label=${say`Leave out ${label}`}
              title=${say`Leave this out`}
              @click=${() => events.remove(varied)}
            >
              ${icons.close}
            </button>`
          : nothing
      }
    </div>
    <div class="inputs ${type}">${input(state, events)}</div>
    <p class="was small quiet">
      <span id="was${at}">${say`In the book: ${presentInWords(varied)}`}</span>
      ${
        tried === undefined
          ? nothing
          : html`<button
              class="link"
              type="button"
              aria-label=${say`Back to that: ${label}`}
              @click=${() => events.vary(varied, undefined)}
            >
              ${say`Back to that`}
            </button>`
      }
    </p>
    <p class="problem small" id="p${at}">${problem ? inWords(problem) : ''}</p>
  </li>`;
}
