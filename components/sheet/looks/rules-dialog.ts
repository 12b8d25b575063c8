import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { COLOURS, type Colour, type Condition, MAX_MARKINGS } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { colourStyles } from '../../look/colours.js';
import { icons } from '../../look/icons.js';
import { inWords } from '../../look/problems.js';
import { ActionDialog } from '../actions/action-dialog.js';
import { takenByEach } from './rule-count.js';
import {
  CONDITION_WORDS,
  conditionsFor,
  draftOfRule,
  type RuleDraft,
  ruleOf,
  valuesOf,
} from './rule-draft.js';
import { rulesStyles } from './rules-styles.js';

/** Rules by which the cells of a column take a colour: the first that holds counts. */
@customElement('croft-rules-dialog')
export class RulesDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, colourStyles, rulesStyles];

  @property() sheet = '';
  @property() column = '';
  @state() private rules: readonly RuleDraft[] | null = null;
  @state() private wrong: { readonly rule: number; readonly message: string } | null = null;
  protected override heading = phrase('Colour rules');

  protected override content(live: LiveBook): TemplateResult {
    const column = live.column(this.sheet, this.column);
    if (!column) return this.foot();
    this.rules ??=
      column.markings.length > 0
        ? column.markings.map((rule) => draftOfRule(rule, column.declaration))
        : [this.#fresh(column)];
    const { rules } = this;
    const counts = takenByEach(
      live,
      this.sheet,
      column,
      rules.map((rule) => ruleOf(rule, column.type, column.declaration)),
    );
    return html`<p class="quiet small">
        ${say`A cell of “${column.title}” takes the colour of the first rule that holds for it. A colour put on a cell by hand goes before them.`}
      </p>
      <ol class="rules">
        ${rules.map((rule, i) => this.#rule(rule, i, column, counts[i] ?? null))}
      </ol>
      <p class="problem small" role="alert">${this.wrong?.rule === -1 ? this.wrong.message : ''}</p>
      ${
        rules.length >= MAX_MARKINGS
          ? nothing
          : html`<button class="button add" type="button" @click=${() => this.#add(column)}>
              ${icons.addRow}${say`Add a rule`}
            </button>`
      }
      <div class="row ends">
        <button class="button" type="button" @click=${() => this.close()}>${say`Cancel`}</button>
        <button class="button first" type="button" @click=${() => this.#keep(live, column)}>${say`Keep the rules`}</button>
      </div>`;
  }

  #rule(rule: RuleDraft, i: number, column: ColumnView, count: number | null): TemplateResult {
    const values = valuesOf(rule.when);
    const wrong = this.wrong?.rule === i ? this.wrong.message : '';
    const words = column.type === 'number' && column.measure ? ` (${spoken(column.measure)})` : '';
    const last = (this.rules?.length ?? 0) - 1;
    const day = rule.when === 'before' || rule.when === 'after';
    return html`<li class="rule" aria-label=${say`Rule ${i + 1}`}>
      <select
        aria-label=${say`Rule ${i + 1}: when the cell`}
        @change=${(event: Event) => this.#set(i, { when: (event.target as HTMLSelectElement).value as Condition })}
      >
        ${conditionsFor(column.type, rule.when).map(
          (when) =>
            html`<option value=${when} .selected=${when === rule.when}>${spoken(CONDITION_WORDS[when])}</option>`,
        )}
      </select>
      ${values >= 1 ? this.#value(i, rule, 'value', `${values === 2 ? say`Rule ${i + 1}: from` : say`Rule ${i + 1}: value`}${words}`, column) : nothing}
      ${values === 2 ? html`<span class="and">${say`and`}</span>${this.#value(i, rule, 'to', `${say`Rule ${i + 1}: to`}${words}`, column)}` : nothing}
      <span class="swatch tint tint-inline tint-${rule.colour}" aria-hidden="true"></span>
      <select
        class="colour"
        aria-label=${say`Rule ${i + 1}: colour`}
        @change=${(event: Event) => this.#set(i, { colour: (event.target as HTMLSelectElement).value as Colour })}
      >
        ${COLOURS.map((colour) => html`<option value=${colour} .selected=${colour === rule.colour}>${spoken(colour)}</option>`)}
      </select>
      <span class="move">
        <button class="button plain" type="button" aria-label=${say`Rule ${i + 1}: earlier`} title=${say`Earlier`} ?disabled=${i === 0} @click=${() => this.#move(i, -1)}>↑</button>
        <button class="button plain" type="button" aria-label=${say`Rule ${i + 1}: later`} title=${say`Later`} ?disabled=${i === last} @click=${() => this.#move(i, 1)}>↓</button>
        <button class="button plain" type="button" aria-label=${say`Rule ${i + 1}: remove`} title=${say`Remove`} @click=${() => this.#remove(i)}>${icons.close}</button>
      </span>
      <p class="takes small quiet" role="status">
        ${count === null ? (day ? say`Write a day, or “today”.` : say`Write a value.`) : count === 1 ? say`Takes 1 cell now.` : say`Takes ${count} cells now.`}
      </p>
      <p class="problem small" role="alert">${wrong}</p>
    </li>`;
  }

  #value(
    i: number,
    rule: RuleDraft,
    field: 'value' | 'to',
    label: string,
    column: ColumnView,
  ): TemplateResult {
    const day = column.type === 'date' && rule.when !== 'within days';
    return html`<input
      class="value"
      aria-label=${label}
      autocomplete="off"
      inputmode=${column.type === 'number' ? 'decimal' : 'text'}
      placeholder=${day ? say`today, or 2026-08-31` : ''}
      aria-invalid=${this.wrong?.rule === i}
      .value=${rule[field]}
      @input=${(event: Event) => this.#set(i, { [field]: (event.target as HTMLInputElement).value })}
    />`;
  }

  #fresh({ type }: ColumnView): RuleDraft {
    const used = new Set((this.rules ?? []).map(({ colour }) => colour));
    const colour = COLOURS.find((each) => !used.has(each)) ?? COLOURS[0];
    const when: Condition = type === 'number' ? 'below' : type === 'date' ? 'before' : 'is';
    return { when, colour, value: '', to: '' };
  }

  #set(i: number, change: Partial<RuleDraft>): void {
    this.wrong = null;
    this.rules = this.rules!.map((rule, at) => (at === i ? { ...rule, ...change } : rule));
  }

  #add(column: ColumnView): void {
    this.rules = [...this.rules!, this.#fresh(column)];
    const at = this.rules.length;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`.rule:nth-child(${at}) select`)?.focus(),
    );
  }

  #remove(i: number): void {
    this.wrong = null;
    this.rules = this.rules!.filter((_, at) => at !== i);
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.add')?.focus());
  }

  #move(i: number, by: -1 | 1): void {
    const rules = [...this.rules!];
    const [rule] = rules.splice(i, 1);
    rules.splice(i + by, 0, rule!);
    this.rules = rules;
    void this.updateComplete.then(() => {
      const buttons = `.rule:nth-child(${i + by + 1}) .move button`;
      const [up, down] = this.renderRoot.querySelectorAll<HTMLButtonElement>(buttons);
      const same = by < 0 ? up : down;
      (same?.disabled ? (by < 0 ? down : up) : same)?.focus();
    });
  }

  #keep(live: LiveBook, column: ColumnView): void {
    const rules = this.rules!.map((rule) => ruleOf(rule, column.type, column.declaration));
    const missing = rules.indexOf(null);
    if (missing >= 0) {
      this.wrong = { rule: missing, message: say`Write what to compare with, or remove the rule.` };
      this.renderRoot.querySelector<HTMLElement>(`.rule:nth-child(${missing + 1}) input`)?.focus();
      return;
    }
    const marks = rules.filter((rule) => rule !== null);
    const as = { marks: marks.length > 0 ? marks : null };
    const done = live.apply({ do: 'describe column', sheet: this.sheet, column: this.column, as });
    if (done.ok) this.close(marks.length === 0 ? say`No colour rules.` : null);
    else this.wrong = { rule: -1, message: inWords(done.problem) };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-rules-dialog': RulesDialog;
  }
}
