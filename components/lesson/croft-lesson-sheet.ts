import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellValue } from '../../src/book/index.js';
import { cautions } from '../../src/facts/index.js';
import type { TaskChecked } from '../../src/lessons/formula-task.js';
import {
  hintsFor,
  MOST_TASK_ROWS,
  rowsOf,
  sheetOf,
  type TaskSheet,
} from '../../src/lessons/formula-task-rows.js';
import { FORMULA_TASKS, formulaTaskWith } from '../../src/lessons/formula-tasks.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import { withoutBook } from '../pictures/no-book.js';
import { TaskChecks } from './task-state.js';
import { taskStyles } from './task-styles.js';
import { taskTable } from './task-table.js';

const NONE: ReadonlyMap<string, CellValue> = new Map();

/**
 * Rows of a sheet with one planning column blank: pupils write the formula for it. Right or wrong is found by
 * working out theirs and the plan's figure over these rows and many other numbers, on a copy of the book.
 *
 * @element croft-lesson-sheet
 * @attr task - Sheet kind and planning column: `foods/weeks_of_supply`, `beds/expected_pounds`,
 *   `beds/short_or_over`, `household/part_of_table`, `harvest/per_plant_so_far`, `shelf/holds`, `supplies/short`.
 * @attr rows - Ids of the rows to show, with commas between; those that suit it unless given.
 * @attr hints - Hints of your own before the working, parted by semicolons.
 * @attr seed - Any number or word: the same one tries the same other numbers.
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr heading - A heading of your own; the question of the task unless given.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @csspart table - The table with the blank column.
 * @fires croft-lesson-checked - A formula was checked: `detail` is `{ task, kind, right }`.
 */
@customElement('croft-lesson-sheet')
export class CroftLessonSheet extends LitElement {
  static override styles = [base, taskStyles];

  @property() task = '';
  @property() rows = '';
  @property() hints = '';
  /** The same as a list, for a lesson's own. */
  @property({ attribute: false }) ownHints: readonly string[] = [];
  @property() seed = '1';
  @property() heading = '';
  @property({ reflect: true }) theme: string | null = null;
  @state() private checked: TaskChecked | null = null;
  @state() private given: ReadonlyMap<string, CellValue> = NONE;
  @state() private steps = 0;
  @state() private busy = false;
  @state() private failed = '';
  @state() private said = '';
  @query('#formula') private field!: HTMLInputElement | null;
  readonly #book = new BookController(this, ({ changes }) => {
    if (changes.length > 0) this.#forget();
  });
  readonly #checks = new TaskChecks();
  #shown: LiveBook | null = null;

  /** True once the formula was found right. */
  get isRight(): boolean {
    return this.checked?.kind === 'right';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#checks.close();
  }

  protected override willUpdate(changed: PropertyValues<CroftLessonSheet>): void {
    const { live } = this.#book;
    if (live === this.#shown && !changed.has('task') && !changed.has('rows')) return;
    this.#shown = live;
    this.#forget();
    this.steps = 0;
  }

  protected override render() {
    const { live, book } = this.#book;
    const task = formulaTaskWith(this.task);
    if (!task)
      return html`<p class="problem" role="alert">
        There is no task “${this.task.slice(0, 60)}”. Write one of: ${FORMULA_TASKS.map(({ id }) => id).join(', ')}.
      </p>`;
    if (!live) return withoutBook(book);
    const at = this.#at(live);
    if (!at || at.rows.length === 0)
      return html`<p class="quiet">This book has no rows for “${task.asks}” ${task.needs}</p>`;
    return this.#whole(live, at);
  }

  #whole(live: LiveBook, at: TaskSheet): TemplateResult {
    const { task, sheet } = at;
    const title = live.column(sheet, task.column)?.title ?? '';
    const { checked } = this;
    const tone = checked?.kind === 'right' ? 'right' : checked && checked.kind !== 'blank' ? 'wrong' : '';
    const message = this.failed || (checked && checked.kind !== 'blank' ? checked.message : '');
    return html`<div class="task-whole">
      <p class="text" id="asks">${this.heading || task.asks}</p>
      ${taskTable(live, at, { given: this.given, checked }, `${title}: a formula for every row`)}
      <div class="write">
        <div class="field">
          <label for="formula">Formula for every row of “${title}”</label>
          <input
            id="formula"
            type="text"
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            maxlength="400"
            placeholder="=…"
            aria-describedby="asks feedback"
            aria-invalid=${tone === 'wrong' ? 'true' : nothing}
            @input=${this.#typing}
            @keydown=${(event: KeyboardEvent) => {
              if (event.key === 'Enter') void this.check();
            }}
          />
        </div>
        <button class="button first" type="button" aria-disabled=${String(this.busy)} @click=${() => void this.check()}>
          Check
        </button>
        ${this.#hintButton(live, at)}
      </div>
      <div class="names small" role="group" aria-label="Columns, to put into the formula">
        <span class="quiet">Columns:</span>
        ${task.from.map((id) => {
          const column = live.column(sheet, id);
          return column
            ? html`<button class="button" type="button" @click=${() => this.#putIn(column.name)}>${column.title}</button>`
            : nothing;
        })}
      </div>
      <p class="feedback ${tone}" id="feedback">${this.busy ? 'Trying it with many numbers…' : message}</p>
      ${
        this.steps === 0
          ? nothing
          : html`<ol class="steps" aria-label="Hints">
              ${this.#hints(live, at)
                .slice(0, this.steps)
                .map((step) => html`<li>${step}</li>`)}
            </ol>`
      }
      ${
        at.rows.some((row) => live.value(sheet, row, 'way') === 'canned')
          ? html`<p class="caution small">
              <strong>With care:</strong> ${cautions('canned').map(({ text }) => `${text} `)}
            </p>`
          : nothing
      }
      <p class="unseen" role="status">${this.said}</p>
    </div>`;
  }

  #hintButton(live: LiveBook, at: TaskSheet): TemplateResult | typeof nothing {
    const left = this.#hints(live, at).length - this.steps;
    if (left === 0) return html`<span></span>`;
    const label = this.steps === 0 ? 'Hint' : left === 1 ? 'The formula' : 'Next hint';
    return html`<button
      class="button"
      type="button"
      @click=${() => {
        this.steps++;
        this.said = this.#hints(live, at)[this.steps - 1] ?? '';
      }}
    >
      ${label}
    </button>`;
  }

  /** Checks the formula that is written; resolves when it is known. */
  async check(): Promise<void> {
    const { live, book } = this.#book;
    const task = formulaTaskWith(this.task);
    const formula = this.field?.value ?? '';
    if (!live || !book || !task || this.busy || formula.trim() === '') return;
    this.busy = true;
    this.failed = '';
    const answer = await this.#checks.check(formula, {
      live,
      task,
      only: this.#at(live)?.rows,
      seed: this.seed,
      licenceKey: book.engineLicenceKey,
    });
    this.busy = false;
    if (live !== this.#book.live || this.field?.value !== formula) return;
    if (answer === null) return this.check();
    if ('code' in answer) {
      this.failed = inWords(answer);
      this.said = this.failed;
      return;
    }
    this.checked = answer.checked;
    this.given = answer.given;
    this.said = answer.checked.kind === 'blank' ? '' : answer.checked.message;
    const { kind } = answer.checked;
    this.dispatchEvent(
      new CustomEvent('croft-lesson-checked', {
        bubbles: true,
        composed: true,
        detail: { task: task.id, kind, right: kind === 'right' },
      }),
    );
  }

  #hints(live: LiveBook, at: TaskSheet): readonly string[] {
    const own = this.hints
      .split(';')
      .map((hint) => hint.trim())
      .filter(Boolean);
    return [...own, ...this.ownHints, ...hintsFor(live, at)];
  }

  #at(live: LiveBook): TaskSheet | null {
    const task = formulaTaskWith(this.task);
    const sheet = task ? sheetOf(live, task) : null;
    if (!task || sheet === null) return null;
    const only = this.rows
      .split(',')
      .map((row) => row.trim())
      .filter(Boolean);
    const rows = rowsOf(live, task, only.length > 0 ? only : undefined).slice(0, MOST_TASK_ROWS);
    return { task, sheet, rows };
  }

  #putIn(name: string): void {
    const { field } = this;
    if (!field) return;
    if (field.value.trim() === '') field.value = '=';
    const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
    const at = field.value.length === 1 ? 1 : from;
    field.setRangeText(name, at, Math.max(at, to), 'end');
    field.focus();
    this.#typing();
  }

  /** What was said of the formula before is said no more. */
  readonly #typing = (): void => {
    this.checked = null;
    this.given = NONE;
    this.failed = '';
  };

  /** The book changed: what was checked against it counts no more. */
  #forget(): void {
    this.#checks.close();
    this.checked = null;
    this.given = NONE;
    this.failed = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson-sheet': CroftLessonSheet;
  }
}
