import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Command } from '../../src/book/index.js';
import { newId } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { base } from '../look/base.js';
import { formulaProblem } from './check-formula.js';

/** What the dialog is for. */
export type ColumnTask =
  | { readonly task: 'add'; readonly before: string | null }
  | { readonly task: 'rename' | 'formula'; readonly column: string };

/** Inside `<croft-sheet>`: asks for the title of a column, and for a formula that fills it. */
@customElement('croft-column-dialog')
export class ColumnDialog extends LitElement {
  static override styles = [
    base,
    css`
      code {
        font-family: ui-monospace, 'Cascadia Mono', Menlo, 'DejaVu Sans Mono', monospace;
        font-size: 0.8125rem;
      }
      .names {
        display: flex;
        flex-wrap: wrap;
        gap: 0.25rem;
        max-height: 7rem;
        overflow: auto;
      }
      .names .button {
        min-height: 1.75rem;
        padding: 0 0.5rem;
        font-size: 0.8125rem;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() engineLicenceKey = 'gpl-v3';
  @state() private task: ColumnTask = { task: 'add', before: null };
  @state() private wrong = '';
  @query('dialog') private dialog!: HTMLDialogElement;
  @query('#title') private titleField!: HTMLInputElement;
  @query('#formula') private formulaField!: HTMLInputElement;

  /** Opens it; closes by its buttons, Escape, or once the column is made. */
  async ask(task: ColumnTask): Promise<void> {
    this.task = task;
    this.wrong = '';
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
    return html`<dialog aria-labelledby="heading">
      <form @submit=${this.#submit}>
        <h2 id="heading">${task === 'add' ? 'A column of your own' : 'This column'}</h2>
        <div class="field">
          <label for="title">Title</label>
          <input id="title" maxlength="200" autocomplete="off" />
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
          @input=${() => {
            this.wrong = '';
          }}
        />
        <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
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
  }

  readonly #submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const typed = this.formulaField?.value.trim() ?? '';
    const formula = typed === '' || typed.startsWith('=') ? typed : `=${typed}`;
    const unreadable =
      formula === '' ? '' : await formulaProblem(this.live, this.sheet, formula, this.engineLicenceKey);
    if (unreadable !== '') {
      this.wrong = unreadable;
      this.formulaField.focus();
      return;
    }
    const outcome = this.live.apply(this.#command(this.titleField.value.trim(), formula));
    if (!outcome.ok) {
      this.wrong = `${outcome.problem.message} ${outcome.problem.mend}`;
      return;
    }
    this.dialog.close();
    this.dispatchEvent(new CustomEvent('done', { detail: outcome }));
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
