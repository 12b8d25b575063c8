import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { MEALS, mondayOf } from '../../src/planning/week/index.js';
import { HERE } from '../../src/words/here.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { inAdvance, type PlanChoices, planCommand, TASKS } from './plan-forms.js';
import { dayField, dayOfMeal, mealNames, weekOfRow, weekPicker } from './week-of.js';

/** Plans a week without writing each row: opens meals, copies, repeats, and says who is at the table. */
@customElement('croft-plan-dialog')
export class PlanDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      .tasks {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
        gap: 0.5rem;
      }
      .tasks label {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        min-height: 2.75rem;
        padding: 0.25rem 0.75rem;
        border: 1px solid var(--line);
        border-radius: var(--radius);
        background: var(--raised);
        font-size: 0.9375rem;
        cursor: pointer;
      }
      .tasks label:has(:checked) {
        border-color: var(--accent);
        color: var(--accent);
      }
      .fields {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.25rem;
        align-items: end;
      }
      .fields .field {
        min-width: 9rem;
      }
      .fields .field.number {
        min-width: 6rem;
        width: 7rem;
      }
      .check {
        display: inline-flex;
        gap: 0.4rem;
        align-items: center;
        min-height: 2.25rem;
        font-weight: 400;
        font-size: 0.9375rem;
      }
      legend {
        font-weight: 600;
        font-size: 0.8125rem;
        padding: 0;
      }
      fieldset.row {
        gap: 0.125rem 1.125rem;
      }
    `,
  ];

  @property({ attribute: false }) row: string | null = null;
  @state() private choices: PlanChoices | null = null;

  protected override heading = phrase('Plan the week');

  protected override willUpdate(_changed: PropertyValues): void {
    if (this.choices || !this.live) return;
    const monday = weekOfRow(this.live, this.row);
    const day = dayOfMeal(this.live, this.row) ?? Math.max(monday, this.live.household.asOf);
    this.choices = {
      task: 'open',
      monday,
      meals: ['supper'],
      looseWeekends: false,
      keepShares: false,
      patternFrom: monday,
      weeks: 2,
      times: 2,
      from: day,
      to: day,
      change: 1,
    };
  }

  #change(change: Partial<PlanChoices>): void {
    if (this.choices) this.choices = { ...this.choices, ...change };
  }

  protected override content(live: LiveBook): TemplateResult {
    const choices = this.choices!;
    const command = planCommand(live, choices);
    const run = (): void => {
      if (!command.ok) return;
      const done = live.apply(command.value);
      this.close(done.ok ? say`Planned. Undo takes it back.` : done.problem);
    };
    return html`<fieldset class="tasks">
        <legend class="unseen">${say`What to do`}</legend>
        ${TASKS.map(
          ([task, words]) => html`<label>
            <input
              type="radio"
              name="task"
              value=${task}
              .checked=${choices.task === task}
              @change=${() => this.#change({ task })}
            />${spoken(words)}
          </label>`,
        )}
      </fieldset>
      ${choices.task === 'table' ? nothing : weekPicker(choices.monday, (monday) => this.#change({ monday }))}
      ${this.#fields(live, choices)}
      <p role="status" class=${command.ok ? '' : 'problem'}>
        ${command.ok ? inAdvance(live, command.value) : inWords(command.problem)}
      </p>
      ${command.ok ? this.foot({ label: say`Write it`, run }) : this.foot()}`;
  }

  #fields(live: LiveBook, choices: PlanChoices): TemplateResult {
    switch (choices.task) {
      case 'open':
        return this.#meals(live, choices);
      case 'copy':
        return html`<p class="small quiet">
            ${say`The meals of the week before come again, a week later. Those that stand there already are left alone.`}
          </p>
          ${this.#copying(choices)}`;
      case 'rotate':
        return html`<p class="small quiet">
            ${say`The weeks from the first on are repeated, one round after another, from the week above on.`}
          </p>
          <div class="fields">
            ${dayField('pattern', say`First week to repeat (any day of it)`, choices.patternFrom, (day) =>
              this.#change({ patternFrom: mondayOf(day) }),
            )}
            ${this.#number('weeks', say`How many weeks`, choices.weeks, 1, 26)}
            ${this.#number('times', say`How many rounds`, choices.times, 1, 60)}
          </div>
          ${this.#copying(choices)}`;
      case 'table':
        return html`<div class="fields">
            ${dayField('from', say`From${HERE}`, choices.from, (from) =>
              this.#change({ from, to: Math.max(from, choices.to) }),
            )}
            ${dayField('to', say`To, included`, choices.to, (to) => this.#change({ to }))} ${this.#who(choices)}
          </div>
          ${this.#meals(live, choices)}`;
    }
  }

  #who({ change }: PlanChoices): TemplateResult {
    const kind = change === 'all away' ? 'all' : change < 0 ? 'fewer' : 'more';
    const n = change === 'all away' ? 1 : Math.abs(change);
    const set = (to: string, shares: number) =>
      this.#change({ change: to === 'all' ? 'all away' : to === 'fewer' ? -shares : shares });
    return html`<div class="field">
        <label for="who">${say`Who`}</label>
        <select id="who" @change=${(event: Event) => set((event.target as HTMLSelectElement).value, n)}>
          <option value="more" .selected=${kind === 'more'}>${say`guests come`}</option>
          <option value="fewer" .selected=${kind === 'fewer'}>${say`some are away`}</option>
          <option value="all" .selected=${kind === 'all'}>${say`everyone is away`}</option>
        </select>
      </div>
      ${
        kind === 'all'
          ? nothing
          : html`<div class="field number">
              <label for="shares">${say`Shares`}</label>
              <input
                id="shares"
                type="number"
                inputmode="decimal"
                min="0"
                step="any"
                .value=${String(n)}
                @change=${(event: Event) => {
                  const read = (event.target as HTMLInputElement).valueAsNumber;
                  if (Number.isFinite(read) && read >= 0) set(kind, read);
                }}
              />
            </div>`
      }`;
  }

  #number(
    what: 'weeks' | 'times',
    label: string,
    value: number,
    least: number,
    most: number,
  ): TemplateResult {
    return html`<div class="field number">
      <label for=${what}>${label}</label>
      <input
        id=${what}
        type="number"
        inputmode="numeric"
        min=${least}
        max=${most}
        .value=${String(value)}
        @change=${(event: Event) => {
          const read = (event.target as HTMLInputElement).valueAsNumber;
          if (Number.isFinite(read))
            this.#change({ [what]: Math.min(most, Math.max(least, Math.floor(read))) });
        }}
      />
    </div>`;
  }

  #meals(live: LiveBook, choices: PlanChoices): TemplateResult {
    return html`<fieldset class="row">
      <legend>${say`Meals`}</legend>
      ${mealNames(live, MEALS).map(
        (meal) => html`<label class="check">
          <input
            type="checkbox"
            .checked=${choices.meals.includes(meal)}
            @change=${(event: Event) => {
              const wanted = (event.target as HTMLInputElement).checked;
              const others = choices.meals.filter((each) => each !== meal);
              this.#change({ meals: wanted ? [...others, meal] : others });
            }}
          />${spoken(meal)}
        </label>`,
      )}
    </fieldset>`;
  }

  #copying({ looseWeekends, keepShares }: PlanChoices): TemplateResult {
    const check = (what: 'looseWeekends' | 'keepShares', on: boolean, words: string) =>
      html`<label class="check">
        <input
          type="checkbox"
          .checked=${on}
          @change=${(event: Event) => this.#change({ [what]: (event.target as HTMLInputElement).checked })}
        />${words}
      </label>`;
    return html`<div class="row">
      ${check('looseWeekends', looseWeekends, say`Leave Saturdays and Sundays without a dish`)}
      ${check('keepShares', keepShares, say`Guests and days away too`)}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-plan-dialog': PlanDialog;
  }
}
