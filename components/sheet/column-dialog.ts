import { html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { type Command, newId, type Outcome } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { base } from '../look/base.js';
import { openModal } from '../look/modal.js';
import { inWords } from '../look/problems.js';
import './formula-field.js';
import { say } from '../../src/words/index.js';
import { columnDialogStyles } from './column-dialog-styles.js';
import { type ColumnDraft, draftOf, lookOf, misfits, NEW_COLUMN } from './column-draft.js';
import { commonParts, typeParts } from './column-parts.js';
import type { FormulaField } from './formula-field.js';

/** What the dialog is for. */
export type ColumnTask =
  | { readonly task: 'add'; readonly before: string | null }
  | { readonly task: 'rename' | 'formula' | 'type' | 'note'; readonly column: string };

/** What the dialog did. */
export interface ColumnDone {
  readonly outcome: Outcome;
  /** Id of the column that was added; null where one was changed. */
  readonly added: string | null;
}

/** The field at which a refusal is said. */
const FIELD_OF: Readonly<Record<string, string>> = {
  'too-many-choices': 'choices',
  'bad-decimals': 'decimals',
  'note-too-long': 'note',
};

/** Inside `<croft-sheet>`: a column's title and what is said of it; of one of one's own also what it holds. */
@customElement('croft-column-dialog')
export class ColumnDialog extends LitElement {
  static override styles = [base, columnDialogStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() engineLicenceKey = 'gpl-v3';
  @state() private task: ColumnTask = { task: 'add', before: null };
  @state() private draft: ColumnDraft = NEW_COLUMN;
  @state() private wrong: { readonly field: string; readonly message: string } | null = null;
  @state() private misfit = '';
  @state() private shown = false;
  @query('dialog') private dialog!: HTMLDialogElement;
  @query('#title') private titleField!: HTMLInputElement;
  @query('croft-formula-field') private formulaField!: FormulaField | null;

  /** Opens it; closes by its buttons, Escape, or once the column is made. */
  async ask(task: ColumnTask): Promise<void> {
    this.task = task;
    this.wrong = null;
    this.misfit = '';
    this.shown = true;
    const column = this.#column === '' ? undefined : this.live.column(this.sheet, this.#column);
    this.draft = column ? draftOf(column) : NEW_COLUMN;
    await this.updateComplete;
    this.titleField.value = column?.title ?? '';
    await this.formulaField?.begin(column?.formula ?? '');
    openModal(this.dialog);
    const at = task.task === 'type' || task.task === 'note' ? `#${task.task}` : '#title';
    const field =
      task.task === 'formula' ? this.formulaField : this.renderRoot.querySelector<HTMLElement>(at);
    (field ?? this.titleField).focus();
  }

  protected override render() {
    if (!this.shown) return nothing;
    const { task } = this.task;
    return html`<dialog aria-labelledby="heading" @close=${this.#closed}>
      <form @submit=${this.#submit}>
        <h2 id="heading">${task === 'add' ? say`A column of your own` : say`This column`}</h2>
        <div class="field">
          <label for="title">${say`Title`}</label>
          <input
            id="title"
            maxlength="200"
            autocomplete="off"
            aria-describedby="wrong-title"
            aria-invalid=${this.wrong?.field === 'title'}
            @input=${() => this.#set({})}
          />
          <p id="wrong-title" class="problem small" role="alert">
            ${this.wrong?.field === 'title' ? this.wrong.message : ''}
          </p>
        </div>
        ${this.#own ? typeParts(this.draft, this.#set, this.wrong, this.misfit) : nothing}
        ${
          this.#own
            ? html`<croft-formula-field
                .live=${this.live}
                .sheet=${this.sheet}
                .column=${this.#column}
                .engineLicenceKey=${this.engineLicenceKey}
              ></croft-formula-field>`
            : nothing
        }
        ${commonParts(this.draft, this.#set, this.wrong)}
        <div class="ends">
          <p class="problem small" role="alert">${this.wrong?.field === '' ? this.wrong.message : ''}</p>
          <div class="row">
            <button class="button" type="button" @click=${() => this.dialog.close()}>${say`Cancel`}</button>
            <button class="button first">${task === 'add' ? say`Add the column` : say`Keep`}</button>
          </div>
        </div>
      </form>
    </dialog>`;
  }

  get #column(): string {
    return this.task.task === 'add' ? '' : this.task.column;
  }

  get #own(): boolean {
    return this.task.task === 'add' || this.live.column(this.sheet, this.#column)?.role === 'own';
  }

  readonly #set = (change: Partial<ColumnDraft>): void => {
    this.wrong = null;
    this.draft = { ...this.draft, ...change };
    this.misfit = this.#own ? misfits(this.live, this.sheet, this.#column, this.draft) : '';
  };

  readonly #closed = (): void => {
    this.formulaField?.end();
    this.shown = false;
  };

  /** Another column of the sheet has that title. */
  #isTaken(title: string): boolean {
    const same = (other: string) => other.trim().toLowerCase() === title.toLowerCase();
    return (
      title !== '' &&
      this.live.columns(this.sheet).some(({ id, title: other }) => id !== this.#column && same(other))
    );
  }

  #complain(field: string, message: string): void {
    this.wrong = { field, message };
    this.renderRoot.querySelector<HTMLElement>(field === '' ? '.first' : `#${field}`)?.focus();
  }

  readonly #submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const title = this.titleField.value.trim();
    if (this.#isTaken(title)) {
      this.#complain(
        'title',
        say`This sheet has a column called “${title}” already. Give this one another title.`,
      );
      return;
    }
    if (this.#own && this.draft.type === 'choice' && this.draft.choices.trim() === '') {
      this.#complain('choices', say`The list is empty. Write at least one choice.`);
      return;
    }
    if (this.formulaField && !(await this.formulaField.check())) return;
    const command = this.#command(title, this.formulaField?.formula ?? '');
    const outcome = this.live.apply(command);
    if (!outcome.ok) {
      this.#refused(outcome.problem);
      return;
    }
    const added = command.do === 'add column' ? command.column : null;
    this.dialog.close();
    this.dispatchEvent(new CustomEvent<ColumnDone>('done', { detail: { outcome, added } }));
  };

  #refused(problem: Problem): void {
    const { code } = problem;
    const words = inWords(problem);
    if (code.startsWith('formula') && this.formulaField) this.formulaField.complain(words);
    else this.#complain(FIELD_OF[code] ?? '', words);
  }

  #command(title: string, formula: string): Command {
    const { sheet, task } = this;
    const look = lookOf(this.draft, this.#own);
    if (task.task === 'add') {
      const column = newId('c');
      const as = Object.fromEntries(Object.entries(look).filter(([, value]) => value !== null));
      return { do: 'add column', sheet, column, before: task.before, title, ...(formula && { formula }), as };
    }
    const as = { title: title || null, ...look, ...(this.#own && { formula: formula || null }) };
    return { do: 'describe column', sheet, column: task.column, as };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-column-dialog': ColumnDialog;
  }
}
