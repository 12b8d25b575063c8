import { html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Command, Outcome } from '../../src/book/index.js';
import { newId } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { base } from '../look/base.js';
import { type FirstAnswer, FormulaTrial } from './check-formula.js';
import { type Advice, adviceOn } from './column-advice.js';
import { columnDialogStyles } from './column-dialog-styles.js';

/** What the dialog is for. */
export type ColumnTask =
  | { readonly task: 'add'; readonly before: string | null }
  | { readonly task: 'rename' | 'formula'; readonly column: string };

/** What the dialog did. */
export interface ColumnDone {
  readonly outcome: Outcome;
  /** Id of the column that was added; null where one was changed. */
  readonly added: string | null;
}

/** Rests between typing and trying a formula. */
const REST = 350;

/** Inside `<croft-sheet>`: asks for the title of a column, and for a formula that fills it. */
@customElement('croft-column-dialog')
export class ColumnDialog extends LitElement {
  static override styles = [base, columnDialogStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() engineLicenceKey = 'gpl-v3';
  @state() private task: ColumnTask = { task: 'add', before: null };
  @state() private wrong = '';
  @state() private wrongTitle = '';
  @state() private advice: Advice | null = null;
  @state() private first: readonly FirstAnswer[] = [];
  /** The formula whose advice was shown: keeping it after that is meant. */
  #advised = '';
  #trial: FormulaTrial | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  @query('dialog') private dialog!: HTMLDialogElement;
  @query('#title') private titleField!: HTMLInputElement;
  @query('#formula') private formulaField!: HTMLInputElement;

  /** Opens it; closes by its buttons, Escape, or once the column is made. */
  async ask(task: ColumnTask): Promise<void> {
    this.task = task;
    this.wrong = '';
    this.wrongTitle = '';
    this.advice = null;
    this.first = [];
    this.#advised = '';
    await this.updateComplete;
    const column = task.task === 'add' ? undefined : this.live.column(this.sheet, task.column);
    this.titleField.value = column?.title ?? '';
    if (this.formulaField) this.formulaField.value = column?.formula ?? '';
    this.dialog.showModal();
    (task.task === 'formula' ? this.formulaField : this.titleField).focus();
  }

  protected override render() {
    const { task } = this.task;
    const own = task === 'add' || this.live.column(this.sheet, this.#column)?.role === 'own';
    return html`<dialog aria-labelledby="heading" @close=${this.#closed}>
      <form @submit=${this.#submit}>
        <h2 id="heading">${task === 'add' ? 'A column of your own' : 'This column'}</h2>
        <div class="field">
          <label for="title">Title</label>
          <input
            id="title"
            maxlength="200"
            autocomplete="off"
            aria-describedby="wrong-title"
            aria-invalid=${this.wrongTitle !== ''}
            @input=${() => {
              this.wrongTitle = '';
            }}
          />
          <p id="wrong-title" class="problem small" role="alert">${this.wrongTitle}</p>
        </div>
        ${own ? this.#formulaPart() : nothing}
        <div class="row ends">
          <button class="button" type="button" @click=${() => this.dialog.close()}>Cancel</button>
          <button class="button first">${task === 'add' ? 'Add the column' : 'Keep'}</button>
        </div>
      </form>
    </dialog>`;
  }

  #formulaPart() {
    const columns = this.live.columns(this.sheet).filter(({ id, hidden }) => !hidden && id !== this.#column);
    return html`<div class="field">
        <label for="formula">Formula for every row <span class="quiet">(may stay blank)</span></label>
        <input
          id="formula"
          autocomplete="off"
          spellcheck="false"
          aria-describedby="formula-help wrong"
          aria-invalid=${this.wrong !== ''}
          placeholder="=…"
          @input=${this.#typing}
        />
        <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
        <div role="status" class="told small">${this.#told()}</div>
        <p id="formula-help" class="small quiet">
          Begins with <code>=</code> and uses columns by name; each row counts with its own values. What you
          type into a single cell goes before it. With no formula, the column is yours to write in.
        </p>
      </div>
      ${
        columns.length === 0
          ? nothing
          : html`<div class="field">
              <span class="small" id="names">Columns, to put into the formula</span>
              <div class="names" role="group" aria-labelledby="names">
                ${columns.map(
                  ({ name, title }) =>
                    html`<button class="button" type="button" @click=${() => this.#putIn(name)}>${title}</button>`,
                )}
              </div>
            </div>`
      }`;
  }

  get #formulaBefore(): string | undefined {
    return this.live.column(this.sheet, this.#column)?.formula;
  }

  get #column(): string {
    return this.task.task === 'add' ? '' : this.task.column;
  }

  #putIn(name: string): void {
    const field = this.formulaField;
    if (field.value === '') field.value = '=';
    const at = document.activeElement ? (field.selectionStart ?? field.value.length) : field.value.length;
    const where = Math.max(at, 1);
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
            <span>${advice.why}${advice.instead ? html` Did you mean <code>${advice.instead}</code>?` : nothing}</span>
            ${
              advice.instead
                ? html`<button class="button" type="button" @click=${this.#useInstead}>Use that</button>`
                : nothing
            }
          </p>`
        : nothing
    }${
      first.length === 0
        ? nothing
        : html`<dl class="answers" aria-label="First rows">
            ${first.map(({ row, answer }) => html`<div><dt>${row}</dt><dd class="figures">${answer}</dd></div>`)}
          </dl>`
    }`;
  }

  readonly #useInstead = (): void => {
    const { instead } = this.advice ?? {};
    if (!instead) return;
    this.formulaField.value = instead;
    this.formulaField.focus();
    this.#typing();
  };

  readonly #typing = (): void => {
    this.wrong = '';
    const formula = this.#formula();
    this.advice = formula === '' ? null : adviceOn(formula, this.live.columns(this.sheet));
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#preview(formula), REST);
  };

  async #preview(formula: string): Promise<void> {
    const tried = formula.length < 2 ? null : await this.#try(formula);
    if (this.dialog.open && formula === this.#formula()) this.first = tried?.first ?? [];
  }

  #try(formula: string) {
    this.#trial ??= new FormulaTrial(this.live, this.sheet, this.engineLicenceKey, this.#column);
    return this.#trial.try(formula);
  }

  #formula(): string {
    const typed = this.formulaField?.value.trim() ?? '';
    return typed === '' || typed.startsWith('=') ? typed : `=${typed}`;
  }

  readonly #closed = (): void => {
    clearTimeout(this.#timer);
    this.#trial?.close();
    this.#trial = null;
  };

  /** Another column of the sheet has that title. */
  #isTaken(title: string): boolean {
    const same = (other: string) => other.trim().toLowerCase() === title.toLowerCase();
    return (
      title !== '' &&
      this.live.columns(this.sheet).some(({ id, title: other }) => id !== this.#column && same(other))
    );
  }

  readonly #submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const title = this.titleField.value.trim();
    if (this.#isTaken(title)) {
      this.wrongTitle = `This sheet has a column called “${title}” already. Give this one another title.`;
      this.titleField.focus();
      return;
    }
    const formula = this.#formula();
    this.advice = formula === '' ? null : adviceOn(formula, this.live.columns(this.sheet));
    if (this.advice && this.#advised !== formula && formula !== this.#formulaBefore) {
      this.#advised = formula;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('.advice .button')?.focus();
      return;
    }
    const unreadable = formula === '' ? '' : (await this.#try(formula)).problem;
    if (unreadable !== '') {
      this.wrong = unreadable;
      this.formulaField.focus();
      return;
    }
    const command = this.#command(title, formula);
    const outcome = this.live.apply(command);
    if (!outcome.ok) {
      this.wrong = `${outcome.problem.message} ${outcome.problem.mend}`;
      return;
    }
    const added = command.do === 'add column' ? command.column : null;
    this.dialog.close();
    this.dispatchEvent(new CustomEvent<ColumnDone>('done', { detail: { outcome, added } }));
  };

  #command(title: string, formula: string): Command {
    const { sheet, task } = this;
    if (task.task === 'add') {
      const column = newId('c');
      return { do: 'add column', sheet, column, before: task.before, title, ...(formula && { formula }) };
    }
    const own = this.live.column(sheet, task.column)?.role === 'own';
    const as = { title: title || null, ...(own && { formula: formula || null }) };
    return { do: 'describe column', sheet, column: task.column, as };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-column-dialog': ColumnDialog;
  }
}
