import { html, LitElement, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { FormulaLine } from '../../src/live/doings/formula-lines.js';
import { type Candidate, type MendOffer, mendReferences } from '../../src/live/doings/mend-references.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { tellDone } from './done.js';
import { lineStyles } from './formulas-styles.js';

/** Inside `<croft-formulas>`: chooses something in the place of what a formula misses. */
@customElement('croft-mend-choice')
export class MendChoice extends LitElement {
  static override styles = [base, lineStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property({ attribute: false }) line!: FormulaLine;
  @property({ attribute: false }) offer!: MendOffer;
  @query('select') private field!: HTMLSelectElement;

  protected override render() {
    const { words, likely, all, formulas } = this.offer;
    if (all.length === 0) return nothing;
    const others = all.filter(({ id }) => !likely.some((each) => each.id === id));
    const alone = formulas <= 1;
    return html`<div class="mend">
      <label for="by">${say`In place of ${words}`}</label>
      <div class="row">
        <select id="by">
          ${likely.length === 0 ? html`<option value="">${say`Choose…`}</option>` : nothing}
          ${
            likely.length === 0
              ? options(others)
              : html`<optgroup label=${say`Likely`}>${options(likely)}</optgroup>
                  <optgroup label=${say`Others`}>${options(others)}</optgroup>`
          }
        </select>
        <button class="button" type="button" @click=${() => this.#put(this.line)}>
          ${alone ? say`Put it there` : say`Put it here only`}
        </button>
        ${
          alone
            ? nothing
            : html`<button class="button first" type="button" @click=${() => this.#put(null)}>
                ${say`Put it in all ${formulas} formulas`}
              </button>`
        }
      </div>
    </div>`;
  }

  #put(line: FormulaLine | null): void {
    const { live, offer } = this;
    const chosen = offer.all.find(({ id }) => id === this.field.value);
    if (!chosen) {
      this.field.focus();
      return;
    }
    const outcome = live.apply(mendReferences(live, offer, chosen.id, line));
    tellDone(this, outcome, say`“${chosen.label}” stands in place of ${offer.words}.`);
  }
}

const options = (of: readonly Candidate[]) =>
  of.map(({ id, label }) => html`<option value=${id}>${label}</option>`);

declare global {
  interface HTMLElementTagNameMap {
    'croft-mend-choice': MendChoice;
  }
}
