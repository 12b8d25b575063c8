import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  correctedWeek,
  type MealCorrection,
  type MealsToMark,
  mealsToMark,
} from '../../src/live/doings/mark-done.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { shortDay } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import type { MealPlan, WhichMeals } from '../../src/planning/week/index.js';
import { mealWords, mondayOf } from '../../src/planning/week/index.js';
import type { Result } from '../../src/problem.js';
import { phrase, say } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { markStyles, mealToMark } from './meal-to-mark.js';
import { dayOfMeal, weekWords } from './week-of.js';

type Scope = 'meal' | 'day' | 'week';

/**
 * Marks the chosen meal, its day or its week done. Shows the draws that it will post and what is short, and takes
 * corrections of what was not as planned; one step of undo takes all of it back.
 */
@customElement('croft-mark-done-dialog')
export class MarkDoneDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    markStyles,
    css`
      .meals {
        display: grid;
      }
      fieldset.row {
        gap: 0.25rem 1.25rem;
      }
      legend {
        font-weight: 600;
        padding: 0;
      }
      .choice {
        display: inline-flex;
        gap: 0.4rem;
        align-items: center;
        min-height: 2.25rem;
        font-weight: 400;
        font-size: 0.9375rem;
      }
    `,
  ];

  /** Row of the meal that was chosen on the sheet. */
  @property({ attribute: false }) row: string | null = null;
  @state() private scope: Scope | null = null;
  @state() private corrections: ReadonlyMap<string, MealCorrection> = new Map();

  protected override heading = phrase('Mark done');

  protected override content(live: LiveBook): TemplateResult {
    const day = dayOfMeal(live, this.row) ?? live.household.asOf;
    const scope = this.scope ?? (this.row === null ? 'day' : 'meal');
    const which = whichOf(scope, this.row, day);
    const plans = this.#plans(live, which);
    const found = mealsToMark(live, which, this.#corrections(plans));
    const posted = live.weekPlans?.week.posted ?? new Set();
    const markable = plans.filter(
      ({ meal, state }) => !posted.has(meal.id) && (state !== 'open' || this.corrections.has(meal.id)),
    );
    return html`
      ${this.#scopes(live, scope, day)}
      ${
        markable.length === 0
          ? html`<p role="status">${found.ok ? found.value.marked.said : nothingWords(plans, found)}</p>`
          : html`<ul class="meals">
              ${markable.map((plan) => this.#meal(live, plan, found))}
            </ul>`
      }
      ${markable.length > 0 ? this.#others(plans, markable) : nothing} ${this.#foot(live, found)}
    `;
  }

  #plans(live: LiveBook, which: WhichMeals): readonly MealPlan[] {
    const { weekPlans } = live;
    if (!weekPlans) return [];
    const week = correctedWeek(live, weekPlans, [...this.corrections.values()]);
    return week.meals.filter(({ meal }) =>
      'meals' in which
        ? which.meals.includes(meal.id)
        : meal.date !== null && meal.date >= which.from && meal.date <= which.to,
    );
  }

  /** Only those of meals in sight are written. */
  #corrections(plans: readonly MealPlan[]): MealCorrection[] {
    return plans.flatMap(({ meal }) => this.corrections.get(meal.id) ?? []);
  }

  #scopes(live: LiveBook, scope: Scope, day: DayNumber): TemplateResult {
    const meal = live.typedRows('week').find(({ id }) => id === this.row);
    const choices: readonly (readonly [Scope, string])[] = [
      ...(meal
        ? ([['meal', meal.date === null ? say`This meal` : mealWords(meal.date, meal.meal)]] as const)
        : []),
      ['day', say`All of ${shortDay(day)}`],
      ['week', weekWords(mondayOf(day))],
    ];
    return html`<fieldset class="row">
      <legend>${say`Which meals?`}</legend>
      ${choices.map(
        ([value, words]) => html`<label class="choice">
          <input
            type="radio"
            name="scope"
            value=${value}
            .checked=${value === scope}
            @change=${() => {
              this.scope = value;
            }}
          />${words}
        </label>`,
      )}
    </fieldset>`;
  }

  #meal(live: LiveBook, plan: MealPlan, found: Result<MealsToMark>): TemplateResult {
    const marked = found.ok ? found.value.marked : null;
    const { id } = plan.meal;
    return mealToMark({
      plan,
      lots: live.weekPlans!.week.after.lots,
      dishes: [...live.weekPlans!.week.book.dishes.values()].map(({ name }) => name),
      table: live.household.shares,
      marked: marked?.meals.find(({ meal }) => meal === id) ?? null,
      problem: marked?.left.find(({ meal }) => meal === id)?.problem ?? null,
      correct: (change) => {
        const all = new Map(this.corrections);
        all.set(id, { ...all.get(id), ...change, meal: id });
        this.corrections = all;
      },
    });
  }

  #others(plans: readonly MealPlan[], markable: readonly MealPlan[]): TemplateResult | typeof nothing {
    const done = plans.filter((plan) => plan.state === 'done' && !markable.includes(plan)).length;
    const open = plans.filter((plan) => plan.state === 'open' && !markable.includes(plan)).length;
    const words = [
      done > 0
        ? done === 1
          ? say`1 meal is marked done already and posted once: nothing is posted again.`
          : say`${done} meals are marked done already and posted once: nothing is posted again.`
        : '',
      open === 1
        ? say`1 meal has no dish and stays as it is.`
        : open > 0
          ? say`${open} meals have no dish and stay as they are.`
          : '',
    ].filter(Boolean);
    return words.length === 0 ? nothing : html`<p class="quiet small">${words.join(' ')}</p>`;
  }

  #foot(live: LiveBook, found: Result<MealsToMark>): TemplateResult {
    if (!found.ok) return this.foot();
    const { marked, command } = found.value;
    const [meals, draws] = [marked.tick.length, marked.draws.length];
    const label =
      draws > 0
        ? draws === 1
          ? say`Mark done and post 1 draw`
          : say`Mark done and post ${draws} draws`
        : meals > 0
          ? say`Mark done`
          : say`Write it so`;
    const run = (): void => {
      const done = live.apply(command);
      this.close(done.ok ? say`${marked.said} Undo takes it back.` : done.problem);
    };
    return this.foot({ label, run });
  }
}

function whichOf(scope: Scope, row: string | null, day: DayNumber): WhichMeals {
  if (scope === 'meal' && row !== null) return { meals: [row] };
  const from = scope === 'week' ? mondayOf(day) : day;
  return { from, to: scope === 'week' ? from + 6 : day };
}

/** Why there is nothing to mark, as plainly as can be said. */
function nothingWords(plans: readonly MealPlan[], found: Result<MealsToMark>): string {
  if (plans.length === 0) return say`There are no meals here. Write them on the Week sheet first.`;
  if (plans.every(({ state }) => state === 'done')) {
    return plans.length === 1
      ? say`This meal is marked done already, and its draws stand in the ledger: nothing is posted again.`
      : say`These meals are marked done already, and their draws stand in the ledger: nothing is posted again.`;
  }
  return found.ok ? '' : inWords(found.problem);
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-mark-done-dialog': MarkDoneDialog;
  }
}
