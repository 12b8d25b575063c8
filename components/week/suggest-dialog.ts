import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Command } from '../../src/book/index.js';
import { dishesToSuggest, openMealsCommand } from '../../src/live/doings/plan-meals.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { DayNumber } from '../../src/planning/types.js';
import { type Meal, mealWords, type Suggestions } from '../../src/planning/week/index.js';
import type { Problem } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { weekOfRow, weekPicker } from './week-of.js';

const SOON = 2000;
const LONGER = 15_000;

type Found =
  | { readonly is: 'looking' }
  | { readonly is: 'refused'; readonly problem: Problem | string }
  | {
      readonly is: 'found';
      readonly suggestions: Suggestions;
      readonly command: (meals: ReadonlySet<string>) => Command;
    };

/** Dishes for the open meals of a week, each with why; those ticked are written, as one step of undo. */
@customElement('croft-suggest-dialog')
export class SuggestDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.5rem;
        align-items: end;
        justify-content: space-between;
      }
      select {
        width: auto;
      }
      progress {
        width: 100%;
        accent-color: var(--accent);
      }
      .takes label {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 0.625rem;
        padding: 0.5rem 0;
        min-height: 2.75rem;
        font-weight: 400;
        font-size: 0.9375rem;
        border-top: 1px solid var(--line);
        cursor: pointer;
      }
      .takes input {
        margin-top: 0.2rem;
      }
      .takes span {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) row: string | null = null;
  @state() private monday: DayNumber | null = null;
  @state() private repeats = 2;
  @state() private found: Found = { is: 'looking' };
  @state() private left: ReadonlySet<string> = new Set();
  /** Stands for the search that was asked for last. */
  #asked: object = {};

  protected override heading = phrase('Suggest dishes');

  protected override firstUpdated(changed: PropertyValues): void {
    super.firstUpdated(changed);
    if (!this.live) return;
    this.monday = weekOfRow(this.live, this.row);
    void this.#look();
  }

  async #look(milliseconds = SOON): Promise<void> {
    const { live, monday, repeats } = this;
    if (!live || monday === null) return;
    const mine = {};
    this.#asked = mine;
    this.found = { is: 'looking' };
    this.left = new Set();
    // The solver holds the page: what is going on must stand there first.
    await new Promise((done) => setTimeout(done, 30));
    const result = await dishesToSuggest(live, { from: monday, to: monday + 6, repeats, milliseconds }).catch(
      (error: unknown) => {
        console.error(error);
        return null;
      },
    );
    if (mine !== this.#asked) return;
    if (!result)
      this.found = {
        is: 'refused',
        problem: say`What looks for dishes could not be loaded. Check the connection and try again.`,
      };
    else if (!result.ok) this.found = { is: 'refused', problem: result.problem };
    else this.found = { is: 'found', ...result.value };
  }

  protected override content(live: LiveBook): TemplateResult {
    return html`<div class="asked">
        ${
          this.monday === null
            ? nothing
            : weekPicker(this.monday, (monday) => {
                this.monday = monday;
                void this.#look();
              })
        }
        <div class="row">
          <label for="repeats">${say`The same dish at most`}</label>
          <select
            id="repeats"
            @change=${(event: Event) => {
              this.repeats = Number((event.target as HTMLSelectElement).value);
              void this.#look();
            }}
          >
            ${[1, 2, 3, 4, 7].map(
              (n) =>
                html`<option value=${n} .selected=${n === this.repeats}>${n === 1 ? say`once` : say`${n} times`}</option>`,
            )}
          </select>
        </div>
      </div>
      ${this.#result(live)}`;
  }

  #result(live: LiveBook): TemplateResult {
    const { found } = this;
    if (found.is === 'looking') {
      return html`<p role="status">${say`Weighing dishes against what stands on the shelf…`}</p>
        <progress aria-label=${say`Looking for dishes`}></progress>${this.foot()}`;
    }
    if (found.is === 'refused')
      return html`<p class="problem" role="alert">${inWords(found.problem)}</p>${this.foot()}`;
    const { suggestions, none, best, said } = found.suggestions;
    if (suggestions.length === 0 && none.length === 0) return this.#nothingOpen(live);
    const taken = suggestions.filter(({ meal }) => !this.left.has(meal));
    const run = (): void => {
      const done = live.apply(found.command(new Set(taken.map(({ meal }) => meal))));
      const n = taken.length;
      this.close(
        done.ok
          ? n === 1
            ? say`1 dish written. Undo takes them out again.`
            : say`${n} dishes written. Undo takes them out again.`
          : done.problem,
      );
    };
    const label = taken.length === 1 ? say`Write 1 dish` : say`Write ${taken.length} dishes`;
    return html`<p role="status">${said}</p>
      ${
        best
          ? nothing
          : html`<p class="small">
              ${say`There may be better ones: the time was over before all had been weighed.`}
              <button class="link" type="button" @click=${() => this.#look(LONGER)}>${say`Look longer`}</button>
            </p>`
      }
      ${this.#takes(live, found.suggestions)} ${this.#notes(live, found.suggestions)}
      ${taken.length > 0 ? this.foot({ label, run }) : this.foot()}`;
  }

  #takes(live: LiveBook, { suggestions }: Suggestions): TemplateResult {
    const meals = new Map(live.typedRows('week').map((meal) => [meal.id, meal]));
    return html`<ul class="takes">
      ${suggestions.map(({ meal, dishName, why }) => {
        return html`<li>
          <label>
            <input
              type="checkbox"
              .checked=${!this.left.has(meal)}
              @change=${(event: Event) => this.#take(meal, (event.target as HTMLInputElement).checked)}
            />
            <span>
              <strong>${nameOf(meals.get(meal))}: ${dishName}</strong>
              <span class="small quiet">${why}</span>
            </span>
          </label>
        </li>`;
      })}
    </ul>`;
  }

  #take(meal: string, wanted: boolean): void {
    const left = new Set(this.left);
    if (wanted) left.delete(meal);
    else left.add(meal);
    this.left = left;
  }

  #notes(live: LiveBook, { none, leftOut }: Suggestions): TemplateResult | typeof nothing {
    if (none.length === 0 && leftOut.length === 0) return nothing;
    const meals = new Map(live.typedRows('week').map((meal) => [meal.id, meal]));
    const reasons = new Map<string, string[]>();
    for (const { meal, why } of none)
      reasons.set(why, [...(reasons.get(why) ?? []), nameOf(meals.get(meal))]);
    return html`<details class="small">
      <summary>${say`What was left out, and why`}</summary>
      <ul class="says">
        ${[...reasons].map(([why, names]) => html`<li><strong>${names.join(', ')}</strong>: ${why}</li>`)}
        ${leftOut.map(({ dish, why }) => html`<li><strong>${dish}</strong>: ${why}</li>`)}
      </ul>
    </details>`;
  }

  /** A suggestion is for a meal that stands on the sheet without a dish: shows how to come by some. */
  #nothingOpen(live: LiveBook): TemplateResult {
    const monday = this.monday!;
    const from = Math.max(monday, live.household.asOf);
    if (from > monday + 6) {
      return html`<p role="status">${say`This week has gone by. Dishes are suggested for the days that come.`}</p>${this.foot()}`;
    }
    const run = (): void => {
      const opened = openMealsCommand(live, from, monday + 6, ['supper']);
      const done = opened.ok ? live.apply(opened.value) : opened;
      if (done.ok) void this.#look();
      else this.found = { is: 'refused', problem: done.problem };
    };
    return html`<p role="status">
        ${say`No meal of this week is open. Dishes are suggested for rows of the Week sheet with a date and a meal, and with no dish yet.`}
      </p>
      ${this.foot({ label: say`Open a row for each supper`, run })}`;
  }
}

const nameOf = (meal: Meal | undefined): string =>
  meal?.date == null ? spoken(meal?.meal ?? '') : mealWords(meal.date, meal.meal);

declare global {
  interface HTMLElementTagNameMap {
    'croft-suggest-dialog': SuggestDialog;
  }
}
