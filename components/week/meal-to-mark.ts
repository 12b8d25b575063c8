import { css, html, nothing, type TemplateResult } from 'lit';
import type { MealCorrection } from '../../src/live/doings/mark-done.js';
import { mediumDay } from '../../src/planning/day-words.js';
import { measureName } from '../../src/planning/measure.js';
import { WAYS_KEPT } from '../../src/planning/types.js';
import type { MarkedMeal, MealDraw, MealPlan, WeekPlan } from '../../src/planning/week/index.js';
import { mealWords } from '../../src/planning/week/index.js';
import { amountWords, needWords } from '../../src/planning/week/words.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';
import { shownNumber } from '../sheet/shown.js';

type Lots = WeekPlan['after']['lots'];

export const markStyles = css`
  .meal {
    border-top: 1px solid var(--line);
    padding: 0.625rem 0;
    display: grid;
    gap: 0.25rem;
  }
  .meal h3 {
    font: 600 1rem/1.4 var(--font);
  }
  .draws {
    display: grid;
    gap: 0.125rem;
  }
  .short-of {
    display: flex;
    gap: 0.375rem;
    align-items: start;
    color: var(--problem);
  }
  .otherwise {
    display: grid;
    grid-template-columns: minmax(9rem, 2fr) repeat(2, minmax(5rem, 1fr)) auto;
    gap: 0.5rem 0.75rem;
    align-items: end;
    margin-top: 0.5rem;
  }
  .otherwise .check {
    display: inline-flex;
    gap: 0.4rem;
    align-items: center;
    min-height: 2.125rem;
  }
  @media (max-width: 36rem) {
    .otherwise {
      grid-template-columns: 1fr 1fr;
    }
    .otherwise > :first-child,
    .otherwise > :last-child {
      grid-column: 1 / -1;
    }
  }
`;

interface MealToMark {
  readonly plan: MealPlan;
  readonly lots: Lots;
  readonly dishes: readonly string[];
  /** Shares of the whole table. */
  readonly table: number;
  readonly marked: MarkedMeal | null;
  readonly problem: Problem | null;
  correct(change: Omit<MealCorrection, 'meal'>): void;
}

/** '1½ cups of tomatoes (canned), from the pint jar put up 1 September 2024, cellar'. */
function drawWords({ cells, allotted }: MealDraw, lots: Lots): string {
  const way = WAYS_KEPT.find((each) => each === cells.way) ?? null;
  const what = needWords(cells.amount, cells.container, cells.food, way);
  const from = Object.entries(allotted).map(([id, amount]) => {
    const lot = lots.find((each) => each.id === id);
    if (!lot) return '';
    const when = lot.putUpOn === null ? say`undated` : say`put up ${mediumDay(lot.putUpOn)}`;
    const many = amount < 1 ? say`a ${measureName(lot.container, 1)}` : amountWords(amount, lot.container);
    return [`${many} ${when}`, lot.place].filter(Boolean).join(', ');
  });
  const known = from.filter(Boolean);
  return known.length === 0 ? what : say`${what}, from ${known.join(say`; and `)}`;
}

/** One meal with the draws that marking it posts, and fields for what was otherwise. */
export function mealToMark(each: MealToMark): TemplateResult {
  const { plan, marked, lots, problem } = each;
  const { meal, dish, state } = plan;
  const when = meal.date === null ? spoken(meal.meal) : mealWords(meal.date, meal.meal);
  return html`<li class="meal" data-meal=${meal.id}>
    <h3>${when}: ${dish?.name ?? (meal.dishName || say`no dish`)}${state === 'skipped' ? say` (skipped)` : ''}</h3>
    ${problem ? html`<p class="problem small">${inWords(problem)}</p>` : nothing}
    ${
      state === 'skipped'
        ? html`<p class="small quiet">${say`It takes nothing from the shelf.`}</p>`
        : marked && marked.draws.length === 0 && marked.short.length === 0
          ? html`<p class="small quiet">${say`Takes nothing from the shelf.`}</p>`
          : html`<ul class="draws small">
              ${(marked?.draws ?? []).map((draw) => html`<li>${drawWords(draw, lots)}</li>`)}
            </ul>`
    }
    ${(marked?.short ?? []).map(
      (words) =>
        html`<p class="short-of small">${icons.care}<span>${say`Not on the shelf, so not posted: ${words}`}</span></p>`,
    )}
    <details class="small">
      <summary>${say`It went otherwise`}</summary>
      ${otherwise(each)}
    </details>
  </li>`;
}

const numberIn = (event: Event): number | null | undefined => {
  const field = event.target as HTMLInputElement;
  const text = field.value.trim().replace(',', '.');
  const read = text === '' ? null : Number(text);
  const good = read === null || (Number.isFinite(read) && read >= 0);
  field.setAttribute('aria-invalid', String(!good));
  return good ? read : undefined;
};

function otherwise({ plan: { meal }, dishes, table, correct }: MealToMark): TemplateResult {
  const { id } = meal;
  const names = dishes.includes(meal.dishName) || meal.dishName === '' ? dishes : [meal.dishName, ...dishes];
  const write = (what: 'times' | 'shares') => (event: Event) => {
    const read = numberIn(event);
    if (read !== undefined) correct({ [what]: read });
  };
  return html`<div class="otherwise">
    <div class="field">
      <label for="dish-${id}">${say`Dish that was cooked`}</label>
      <select
        id="dish-${id}"
        @change=${(event: Event) => correct({ dish: (event.target as HTMLSelectElement).value })}
      >
        ${meal.dishName === '' ? html`<option value="" selected></option>` : nothing}
        ${names.map((name) => html`<option .selected=${name === meal.dishName}>${name}</option>`)}
      </select>
    </div>
    <div class="field">
      <label for="times-${id}">${say`Amount ×`}</label>
      <input
        id="times-${id}"
        inputmode="decimal"
        autocomplete="off"
        placeholder="1"
        .value=${meal.times === null ? '' : shownNumber(meal.times)}
        @change=${write('times')}
      />
    </div>
    <div class="field">
      <label for="shares-${id}">${say`Shares`}</label>
      <input
        id="shares-${id}"
        inputmode="decimal"
        autocomplete="off"
        placeholder=${shownNumber(table)}
        .value=${meal.shares === null ? '' : shownNumber(meal.shares)}
        @change=${write('shares')}
      />
    </div>
    <label class="check">
      <input
        type="checkbox"
        .checked=${meal.skipped}
        @change=${(event: Event) => correct({ skipped: (event.target as HTMLInputElement).checked })}
      />${say`Not eaten: skip it`}
    </label>
  </div>`;
}
