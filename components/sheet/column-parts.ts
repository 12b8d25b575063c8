import { html, nothing, type TemplateResult } from 'lit';
import { OWN_TYPES, type OwnType, SUMMARIES, type Summary } from '../../src/book/index.js';
import { called } from '../../src/live/choices.js';
import { CONTAINERS, containerWithId, UNITS } from '../../src/units/index.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import type { ColumnDraft } from './column-draft.js';

export const TYPE_WORDS: Readonly<Record<OwnType, string>> = {
  any: phrase('Anything'),
  text: phrase('Text'),
  number: phrase('A number'),
  date: phrase('A date'),
  tick: phrase('A tick: yes or no'),
  choice: phrase('One of a list'),
};

const TYPE_HELP: Readonly<Record<OwnType, string>> = {
  any: phrase('Numbers, dates and text are told apart as they are typed.'),
  text: phrase('Everything stays just as it is typed; 007 keeps its zeros.'),
  number: phrase('What is no number is kept as it was typed, and marked.'),
  date: phrase('Dates can be typed as they are spoken, or chosen from a calendar.'),
  tick: phrase('Space or a click sets a tick and takes it away.'),
  choice: phrase('A list opens in each cell. What is not in it is kept, and marked.'),
};

export const SUMMARY_WORDS: Readonly<Record<Summary, string>> = {
  sum: phrase('Sum'),
  mean: phrase('Mean'),
  count: phrase('Count of filled cells'),
  least: phrase('Least or earliest'),
  most: phrase('Most or latest'),
};

type Change = (change: Partial<ColumnDraft>) => void;
type Wrong = { readonly field: string; readonly message: string } | null;

const option = (value: string, label: string, chosen: string): TemplateResult =>
  html`<option value=${value} .selected=${value === chosen}>${spoken(label)}</option>`;

const DIMENSIONS: Readonly<Record<string, string>> = {
  weight: phrase('Weight'),
  volume: phrase('Volume'),
  length: phrase('Length'),
  area: phrase('Area'),
};

/** Units and containers by name, in groups. */
function measures(chosen: string): TemplateResult {
  const containers = new Set(CONTAINERS.map(({ id }) => id));
  const others = UNITS.filter(({ id, dimension }) => !containers.has(id) && !(dimension in DIMENSIONS));
  return html`${option('', phrase('none'), chosen)}
    <optgroup label=${say`Containers`}>${called([...containers], chosen).map(({ value: id }) => option(id, containerWithId(id)?.plural ?? id, chosen))}</optgroup>
    ${Object.entries(DIMENSIONS).map(
      ([dimension, label]) => html`<optgroup label=${spoken(label)}>
        ${UNITS.filter((unit) => unit.dimension === dimension && !containers.has(unit.id)).map(
          ({ id, plural }) => option(id, plural, chosen),
        )}
      </optgroup>`,
    )}
    ${
      others.length === 0
        ? nothing
        : html`<optgroup label=${say`Others`}>${others.map(({ id, plural }) => option(id, plural, chosen))}</optgroup>`
    }`;
}

const value = (event: Event): string => (event.target as HTMLInputElement).value;

const wrongAt = (field: string, wrong: Wrong): TemplateResult =>
  html`<p id="wrong-${field}" class="problem small" role="alert">${wrong?.field === field ? wrong.message : ''}</p>`;

/** Fields of a column of one's own: what it holds, and only what belongs to that. */
export function typeParts(draft: ColumnDraft, set: Change, wrong: Wrong, misfit: string): TemplateResult {
  return html`<div class="field">
      <label for="type">${say`What it holds`}</label>
      <select id="type" aria-describedby="type-help" @change=${(event: Event) => set({ type: value(event) as OwnType })}>
        ${OWN_TYPES.map((type) => option(type, TYPE_WORDS[type], draft.type))}
      </select>
      <p id="type-help" class="small quiet">${spoken(TYPE_HELP[draft.type])}</p>
      <p class="small advice" role="status">${misfit}</p>
    </div>
    ${draft.type === 'number' ? numberParts(draft, set, wrong) : nothing}
    ${draft.type === 'choice' ? choicePart(draft, set, wrong) : nothing}`;
}

const numberParts = (draft: ColumnDraft, set: Change, wrong: Wrong): TemplateResult => html`<div class="pair">
  <div class="field">
    <label for="measure">${say`Measured in`}</label>
    <select id="measure" @change=${(event: Event) => set({ measure: value(event) })}>
      ${measures(draft.measure)}
    </select>
    ${wrongAt('measure', wrong)}
  </div>
  <div class="field">
    <label for="decimals">${say`Digits after the point`}</label>
    <select id="decimals" @change=${(event: Event) => set({ decimals: value(event) })}>
      ${option('', phrase('as many as there are'), draft.decimals)}
      ${['0', '1', '2', '3', '4', '5', '6'].map((digits) => option(digits, digits, draft.decimals))}
    </select>
    ${wrongAt('decimals', wrong)}
  </div>
</div>`;

const choicePart = (draft: ColumnDraft, set: Change, wrong: Wrong): TemplateResult => html`<div class="field">
  <label for="choices">${say`The list, one a line`}</label>
  <textarea
    id="choices"
    rows="4"
    aria-describedby="wrong-choices"
    aria-invalid=${wrong?.field === 'choices'}
    .value=${draft.choices}
    @input=${(event: Event) => set({ choices: value(event) })}
  ></textarea>
  ${wrongAt('choices', wrong)}
</div>`;

/** Fields that every column has: a note on it, and what stands under it. */
export const commonParts = (
  draft: ColumnDraft,
  set: Change,
  wrong: Wrong,
): TemplateResult => html`<div class="field">
    <label for="note">${say`Note on the column`} <span class="quiet">${say`(may stay blank)`}</span></label>
    <textarea
      id="note"
      rows="2"
      aria-describedby="wrong-note"
      aria-invalid=${wrong?.field === 'note'}
      .value=${draft.note}
      @input=${(event: Event) => set({ note: value(event) })}
    ></textarea>
    ${wrongAt('note', wrong)}
  </div>
  <div class="field">
    <label for="summary">${say`Under the column`}</label>
    <select id="summary" @change=${(event: Event) => set({ summary: value(event) as Summary | '' })}>
      ${option('', phrase('nothing'), draft.summary)}
      ${SUMMARIES.map((summary) => option(summary, SUMMARY_WORDS[summary], draft.summary))}
    </select>
  </div>`;
