import { html, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { weekInMind } from '../../src/live/week-in-mind.js';
import { dayOf } from '../../src/live/week-stage.js';
import { isDay, toIsoDay } from '../../src/planning/dates.js';
import { mediumDay } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import { mondayOf } from '../../src/planning/week/index.js';
import { say } from '../../src/words/index.js';

/** The day of a row of Week; null where it has none. */
export function dayOfMeal(live: LiveBook, row: string | null): DayNumber | null {
  const sheet = live.sheetOfKind('week');
  if (!sheet || row === null) return null;
  const date = live.value(sheet, row, 'date');
  return typeof date === 'string' ? dayOf(date) : null;
}

/** Monday of the week that a row of Week stands in; where there is none, or it has gone by, the one in mind. */
export function weekOfRow(live: LiveBook, row: string | null): DayNumber {
  const day = dayOfMeal(live, row);
  return day === null || mondayOf(day) + 6 < live.household.asOf ? weekInMind(live) : mondayOf(day);
}

/** The names of meals that this household uses: those that come with every day, then its own. */
export function mealNames(live: LiveBook, usual: readonly string[]): string[] {
  const own = live.typedRows('week').map(({ meal }) => meal);
  return [...new Set([...usual, ...own.filter(Boolean)])];
}

export const weekWords = (monday: DayNumber): string => say`Week of ${mediumDay(monday)}`;

/** Goes from week to week. */
export const weekPicker = (monday: DayNumber, go: (monday: DayNumber) => void): TemplateResult => html`
  <div class="row" role="group" aria-label=${say`Which week`}>
    <button class="button" type="button" aria-label=${say`Week before`} @click=${() => isDay(monday - 7) && go(monday - 7)}>
      <span class="turns" aria-hidden="true">←</span>
    </button>
    <strong aria-live="polite">${weekWords(monday)}</strong>
    <button class="button" type="button" aria-label=${say`Week after`} @click=${() => isDay(monday + 13) && go(monday + 7)}>
      <span class="turns" aria-hidden="true">→</span>
    </button>
  </div>
`;

/** A day field; what cannot be read as a day is left to the caller as null. */
export const dayField = (
  id: string,
  label: string,
  day: DayNumber,
  set: (day: DayNumber) => void,
): TemplateResult => html`<div class="field">
  <label for=${id}>${label}</label>
  <input
    id=${id}
    type="date"
    .value=${toIsoDay(day)}
    @change=${(event: Event) => {
      const read = dayOf((event.target as HTMLInputElement).value);
      if (read !== null) set(read);
    }}
  />
</div>`;
