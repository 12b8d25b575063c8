import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type Command, type NamedKind, newId } from '../../src/book/index.js';
import { copySheet } from '../../src/live/doings/copy-sheet.js';
import { sheetFromKind } from '../../src/live/doings/sheet-from-kind.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { takeable } from '../../src/live/taken-kinds.js';
import { ok, type Problem, type Result } from '../../src/problem.js';
import { messages, phrase, say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog, type DialogDone } from '../sheet/actions/action-dialog.js';
import { figuresChoice } from './figures-choice.js';
import { freeTitle } from './sheet-titles.js';
import { sheetsStyles } from './sheets-styles.js';
import { onEnter } from './title-keys.js';

const BEGINNINGS = {
  blank: [phrase('Blank'), phrase('No columns yet: you add your own.')],
  like: [
    phrase('Like a sheet of the book'),
    phrase('Its columns to fill in, and figures of the plan beside the names.'),
  ],
  copy: [phrase('A copy of a sheet'), phrase('With its rows, formulas, colours and notes.')],
  table: [phrase('A table you have'), phrase('From a file, or pasted.')],
} as const;
type Beginning = keyof typeof BEGINNINGS;

/** Asks how a new sheet begins, and makes it. It says `croft-show` with the new sheet before it closes. */
@customElement('croft-new-sheet-dialog')
export class NewSheetDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, sheetsStyles];

  protected override heading = phrase('A sheet of your own');
  /** The sheet to copy, where a copy is what was asked for. */
  @property() copyOf = '';
  @state() private beginning: Beginning = 'blank';
  @state() private titled: string | null = null;
  @state() private kind: NamedKind = 'foods';
  @state() private planning: ReadonlySet<string> = new Set();
  @state() private copied = '';
  @state() private wrong: Problem | null = null;
  /** The dialog for tables took over. */
  @state() private table: TemplateResult | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.copyOf === '') return;
    this.copied = this.copyOf;
    this.beginning = 'copy';
  }

  protected override updated(): void {
    if (!this.table) super.updated();
  }

  protected override render() {
    return this.table ? html`<div @croft-dialog-done=${this.#handOn}>${this.table}</div>` : super.render();
  }

  protected override content(live: LiveBook): TemplateResult {
    const { beginning } = this;
    return html`
      <fieldset class="ways">
        <legend>${say`How it begins`}</legend>
        ${(Object.keys(BEGINNINGS) as Beginning[]).map((each) => this.#beginning(each))}
      </fieldset>
      ${beginning === 'copy' ? this.#copy(live) : nothing}
      ${beginning === 'table' ? nothing : this.#title(live)} ${beginning === 'like' ? this.#like() : nothing}
      <p class="problem small" role="alert">${this.wrong ? inWords(this.wrong) : ''}</p>
      ${this.foot(
        beginning === 'table'
          ? { label: say`Choose the table`, run: () => void this.#bringIn() }
          : {
              label: beginning === 'copy' ? say`Make the copy` : say`Add the sheet`,
              run: () => this.#make(live),
            },
      )}
    `;
  }

  #beginning(each: Beginning): TemplateResult {
    const [label, help] = BEGINNINGS[each];
    return html`<label class="choice">
      <input
        type="radio"
        name="beginning"
        .checked=${each === this.beginning}
        @change=${() => {
          this.beginning = each;
          this.wrong = null;
        }}
      />
      <span><strong>${spoken(label)}</strong> <span class="help quiet small">${spoken(help)}</span></span>
    </label>`;
  }

  #title(live: LiveBook): TemplateResult {
    return html`<div class="field">
      <label for="title">${say`Title`}</label>
      <input
        id="title"
        maxlength="60"
        autocomplete="off"
        .value=${this.titled ?? this.#usualTitle(live)}
        aria-invalid=${this.wrong !== null && /title/.test(this.wrong.code)}
        @input=${(event: Event) => {
          this.titled = (event.target as HTMLInputElement).value;
          this.wrong = null;
        }}
        @keydown=${(event: KeyboardEvent) => onEnter(event, () => this.#make(live))}
      />
    </div>`;
  }

  #usualTitle(live: LiveBook): string {
    const title = takeable().find((each) => each.kind === this.kind)?.title ?? '';
    const kind = messages() === null ? title.toLowerCase() : title;
    const from = live.sheets().find(({ id }) => id === this.#sheetToCopy(live))?.title ?? '';
    const wanted = { blank: say`New sheet`, like: say`My ${kind}`, copy: say`${from}, copy`, table: '' };
    return freeTitle(live, wanted[this.beginning]);
  }

  #like(): TemplateResult {
    const kinds = takeable();
    const { columns, named } = kinds.find(({ kind }) => kind === this.kind)!;
    return html`<div class="field">
        <label for="kind">${say`Like`}</label>
        <select
          id="kind"
          @change=${(event: Event) => {
            this.kind = (event.target as HTMLSelectElement).value as NamedKind;
            this.planning = new Set();
          }}
        >
          ${kinds.map(({ kind, title }) => html`<option value=${kind} .selected=${kind === this.kind}>${spoken(title)}</option>`)}
        </select>
        <p class="quiet small">${say`Its first column says ${named}.`}</p>
      </div>
      ${figuresChoice(say`Figures to show beside the names`, columns, this.planning, (chosen) => {
        this.planning = chosen;
      })}`;
  }

  #sheetToCopy(live: LiveBook): string {
    return this.copied || (live.sheets()[0]?.id ?? '');
  }

  #copy(live: LiveBook): TemplateResult {
    const chosen = this.#sheetToCopy(live);
    const sheets = live.sheets();
    const isOwn = sheets.find(({ id }) => id === chosen)?.kind === 'own';
    return html`<div class="field">
      <label for="copied">${say`Sheet`}</label>
      <select
        id="copied"
        @change=${(event: Event) => {
          this.copied = (event.target as HTMLSelectElement).value;
        }}
      >
        ${sheets.map(({ id, title }) => html`<option value=${id} .selected=${id === chosen}>${title}</option>`)}
      </select>
      <p class="quiet small">
        ${
          isOwn
            ? say`Formulas that point into the sheet will point into the copy.`
            : say`What is entered in the copy is yours: the plan goes on from the sheet itself. Figures go on following it by the names of rows; where rows have no name, they stay as they are today, and their titles say so.`
        }
      </p>
    </div>`;
  }

  #command(live: LiveBook): Result<Command> {
    const title = (this.titled ?? this.#usualTitle(live)).trim();
    if (this.beginning === 'copy') return copySheet(live, this.#sheetToCopy(live), title);
    if (this.beginning === 'like')
      return ok(sheetFromKind(live, { kind: this.kind, title, planning: [...this.planning] }));
    return ok({ do: 'add sheet', sheet: newId('s'), title });
  }

  #make(live: LiveBook): void {
    const before = new Set(live.sheets().map(({ id }) => id));
    const command = this.#command(live);
    const done = command.ok ? live.apply(command.value) : command;
    if (!done.ok) {
      this.wrong = done.problem;
      this.renderRoot.querySelector<HTMLElement>('#title')?.focus();
      return;
    }
    const made = live.sheets().find(({ id }) => !before.has(id));
    this.close(made ? say`“${made.title}” is there. Undo takes it back.` : null);
    if (made) this.#show(made.id);
  }

  #show(sheet: string): void {
    const detail = { sheet, row: '', column: '' };
    this.dispatchEvent(new CustomEvent('croft-show', { detail, bubbles: true, composed: true }));
  }

  async #bringIn(): Promise<void> {
    await import('../tables/bring-in-dialog.js');
    this.table = html`<croft-bring-in-dialog></croft-bring-in-dialog>`;
  }

  readonly #handOn = (event: CustomEvent<DialogDone>): void => {
    event.stopPropagation();
    this.dispatchEvent(new CustomEvent('croft-dialog-done', { detail: event.detail, bubbles: true }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-new-sheet-dialog': NewSheetDialog;
  }
}
