import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { type FirstAnswer, FormulaTrial } from './check-formula.js';
import { type Advice, adviceOn } from './column-advice.js';
import { formulaFieldStyles } from './column-dialog-styles.js';

/** Rests between typing and trying a formula. */
const REST = 350;

/** Inside the column dialog: a formula that fills a column, tried as it is typed. */
@customElement('croft-formula-field')
export class FormulaField extends LitElement {
  static override styles = [
    base,
    formulaFieldStyles,
    css`
      :host {
        display: grid;
        gap: 1rem;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  /** Id of the column; '' of a new one. */
  @property() column = '';
  @property() engineLicenceKey = 'gpl-v3';
  @state() private wrong = '';
  @state() private advice: Advice | null = null;
  @state() private first: readonly FirstAnswer[] = [];
  /** The reference of functions, while it is open. */
  @state() private reference: TemplateResult | typeof nothing = nothing;
  /** The formula whose advice was shown: keeping it after that is meant. */
  #advised = '';
  #before = '';
  #trial: FormulaTrial | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  @query('#formula') private field!: HTMLInputElement;

  /** Begins with this formula. */
  async begin(formula: string): Promise<void> {
    this.wrong = '';
    this.advice = null;
    this.first = [];
    this.#advised = '';
    this.#before = formula;
    await this.updateComplete;
    this.field.value = formula;
  }

  /** To be called when the dialog closes. */
  end(): void {
    clearTimeout(this.#timer);
    this.#trial?.close();
    this.#trial = null;
  }

  override focus(): void {
    this.field.focus();
  }

  /** What was typed, with the sign that a formula begins with; '' where nothing was. */
  get formula(): string {
    const typed = this.field?.value.trim() ?? '';
    return typed === '' || typed.startsWith('=') ? typed : `=${typed}`;
  }

  /** Says at the field what is wrong. */
  complain(wrong: string): void {
    this.wrong = wrong;
    this.field.focus();
  }

  /** True where the formula can be kept; else it says why at the field. */
  async check(): Promise<boolean> {
    const { formula } = this;
    this.advice = formula === '' ? null : adviceOn(formula, this.live.columns(this.sheet));
    if (this.advice && this.#advised !== formula && formula !== this.#before) {
      this.#advised = formula;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('.advice .button')?.focus();
      return false;
    }
    const unreadable = formula === '' ? '' : (await this.#try(formula)).problem;
    if (unreadable !== '') this.complain(unreadable);
    return unreadable === '';
  }

  protected override render() {
    const columns = this.live.columns(this.sheet).filter(({ id, hidden }) => !hidden && id !== this.column);
    return html`<div class="field">
        <label for="formula">${say`Formula for every row`} <span class="quiet">${say`(may stay blank)`}</span></label>
        <input
          id="formula"
          autocomplete="off"
          spellcheck="false"
          aria-describedby="formula-help wrong"
          aria-invalid=${this.wrong !== ''}
          placeholder="=…"
          @input=${this.#typing}
          @keydown=${this.#pressed}
        />
        <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
        <div role="status" class="told small">${this.#told()}</div>
        <p id="formula-help" class="small quiet">
          ${say`Begins with`} <code>=</code> ${say`and uses columns by name; each row counts with its own values. What you type into a single cell goes before it. With no formula, the column is yours to write in.`}
        </p>
        <p class="small"><button class="link" type="button" @click=${this.#functions}>${say`All functions, with examples…`}</button></p>
      </div>
      ${
        columns.length === 0
          ? nothing
          : html`<div class="field">
              <span class="small" id="names">${say`Columns, to put into the formula`}</span>
              <div class="names" role="group" aria-labelledby="names">
                ${columns.map(
                  ({ name, title }) =>
                    html`<button class="button" type="button" @click=${() => this.#putIn(name)}>${title}</button>`,
                )}
              </div>
            </div>`
      }${this.reference}`;
  }

  readonly #functions = async (): Promise<void> => {
    await import('../functions/functions-dialog.js');
    const done = (event: Event): void => {
      event.stopPropagation();
      this.reference = nothing;
      this.focus();
    };
    this.reference = html`<croft-functions-dialog @croft-dialog-done=${done}></croft-functions-dialog>`;
  };

  /** The form is outside this element's own tree: Enter reaches it only so. */
  readonly #pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.isComposing) return;
    event.preventDefault();
    this.closest('form')?.requestSubmit();
  };

  #putIn(name: string): void {
    const { field } = this;
    if (field.value === '') field.value = '=';
    const where = Math.max(field.selectionStart ?? field.value.length, 1);
    field.setRangeText(name, where, Math.max(field.selectionEnd ?? where, where), 'end');
    field.focus();
    this.#typing();
  }

  /** Advice on the formula, and what it gives in the first rows. */
  #told() {
    const { advice, first } = this;
    return html`${
      advice
        ? html`<p class="advice">
            <span>${advice.why}${advice.instead ? html` ${say`Did you mean`} <code>${advice.instead}</code>?` : nothing}</span>
            ${
              advice.instead
                ? html`<button class="button" type="button" @click=${this.#useInstead}>${say`Use that`}</button>`
                : nothing
            }
          </p>`
        : nothing
    }${
      first.length === 0
        ? nothing
        : html`<dl class="answers" aria-label=${say`First rows`}>
            ${first.map(({ row, answer }) => html`<div><dt>${row}</dt><dd class="figures">${answer}</dd></div>`)}
          </dl>`
    }`;
  }

  readonly #useInstead = (): void => {
    const { instead } = this.advice ?? {};
    if (!instead) return;
    this.field.value = instead;
    this.field.focus();
    this.#typing();
  };

  readonly #typing = (): void => {
    this.wrong = '';
    const { formula } = this;
    this.advice = formula === '' ? null : adviceOn(formula, this.live.columns(this.sheet));
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#preview(formula), REST);
  };

  async #preview(formula: string): Promise<void> {
    const tried = formula.length < 2 ? null : await this.#try(formula);
    if (this.isConnected && formula === this.formula) this.first = tried?.first ?? [];
  }

  #try(formula: string) {
    this.#trial ??= new FormulaTrial(this.live, this.sheet, this.engineLicenceKey, this.column);
    return this.#trial.try(formula);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-formula-field': FormulaField;
  }
}
