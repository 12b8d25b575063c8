import { html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Command } from '../../src/book/index.js';
import type { FormulaLine } from '../../src/live/doings/formula-lines.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { FormulaShift } from '../../src/live/shift-formula.js';
import { phrase, say } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import { FormulaTrial } from '../sheet/check-formula.js';
import { tellDone } from './done.js';
import { lineStyles } from './formulas-styles.js';

/** Inside `<croft-formulas>`: writes another formula for a line. Says `close` when it is done with. */
@customElement('croft-formula-edit')
export class FormulaEdit extends LitElement {
  static override styles = [base, lineStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property({ attribute: false }) line!: FormulaLine;
  /** Of the formula engine. */
  @property() licenceKey = 'gpl-v3';
  @state() private wrong = '';
  @query('input') private field!: HTMLInputElement;
  #busy = false;

  protected override firstUpdated(): void {
    this.field.value = this.line.shown;
    this.field.focus();
    this.field.setSelectionRange(this.field.value.length, this.field.value.length);
  }

  protected override render() {
    const { rows, whole } = this.line;
    const label = whole
      ? say`Formula for the whole column`
      : rows.length > 1
        ? say`Formula for its ${rows.length} cells`
        : say`Formula`;
    return html`<form @submit=${this.#submit} @keydown=${this.#keys}>
      <label for="formula">${label}</label>
      <input
        id="formula"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        maxlength="20000"
        aria-describedby="wrong"
        aria-invalid=${this.wrong !== ''}
        @input=${() => {
          this.wrong = '';
        }}
      />
      <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
      <div class="row">
        <button class="button first">${say`Keep`}</button>
        <button class="button" type="button" @click=${this.#close}>${say`Cancel`}</button>
      </div>
    </form>`;
  }

  readonly #keys = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    // Else the dialog around it would close.
    event.preventDefault();
    event.stopPropagation();
    this.#close();
  };

  readonly #close = (): void => {
    this.dispatchEvent(new CustomEvent('close'));
  };

  readonly #submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (this.#busy) return;
    const typed = this.field.value.trim();
    const formula = typed === '' || typed.startsWith('=') ? typed : `=${typed}`;
    if (formula === this.line.shown) {
      this.#close();
      return;
    }
    this.#busy = true;
    const problem = formula.length < 2 ? '' : await this.#problemOf(formula);
    this.#busy = false;
    if (problem !== '') {
      this.wrong = problem;
      this.field.focus();
      return;
    }
    const outcome = this.live.apply(this.#command(formula));
    if (!outcome.ok) {
      this.wrong = inWords(outcome.problem);
      return;
    }
    tellDone(this, outcome, formula === '' ? say`The formula is taken away.` : say`The formula is changed.`);
    this.#close();
  };

  async #problemOf(formula: string): Promise<string> {
    const { sheet, column, whole } = this.line;
    const trial = new FormulaTrial(this.live, sheet, this.licenceKey, whole ? column : '');
    try {
      return (await trial.try(formula)).problem;
    } finally {
      trial.close();
    }
  }

  /** A run of formulas is filled down anew from its first. */
  #command(formula: string): Command {
    const { sheet, column, rows, whole } = this.line;
    if (whole) return { do: 'describe column', sheet, column, as: { formula: formula || null } };
    const shift = new FormulaShift(this.live, sheet);
    const cells = rows.map((row, i) => ({
      row,
      column,
      typed: formula === '' ? null : shift.to(formula, i, 0),
    }));
    return { do: 'all', of: [{ do: 'set cells', sheet, cells }], called: phrase('change of a formula') };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-formula-edit': FormulaEdit;
  }
}
