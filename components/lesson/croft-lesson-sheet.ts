import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellValue } from '../../src/book/index.js';
import type { TaskChecked } from '../../src/lessons/formula-task.js';
import {
  hintsFor,
  MOST_TASK_ROWS,
  rowsOf,
  sheetOf,
  type TaskSheet,
} from '../../src/lessons/formula-task-rows.js';
import { FORMULA_TASKS, type FormulaTask, tasksNamed } from '../../src/lessons/formula-tasks.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say, spoken, spokenTag } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';
import { withoutBook } from '../pictures/no-book.js';
import type { CroftLessonGrid } from './croft-lesson-grid.js';
import { KeptWork } from './kept-work.js';
import { TaskChecks } from './task-state.js';
import { taskStyles } from './task-styles.js';
import { taskTable } from './task-table.js';
import { taskCautions, writeView } from './write-view.js';

const NONE: ReadonlyMap<string, CellValue> = new Map();

const listed = (text: string, by: RegExp): string[] =>
  text
    .split(by)
    .map((each) => each.trim())
    .filter(Boolean);

/**
 * Rows of a sheet with planning columns blank: pupils write the formula for them, in a table or in the grid itself.
 * Right or wrong is found by working out theirs and the plan's figure over these rows and many other numbers, on a
 * copy of the book.
 *
 * @element croft-lesson-sheet
 * @attr task - Sheet kind and planning column: `foods/weeks_of_supply`, `beds/expected_pounds`,
 *   `beds/short_or_over`, `household/part_of_table`, `harvest/per_plant_so_far`, `shelf/holds`, `supplies/short`.
 *   Several of one kind, with commas between, are written in the grid.
 * @attr view - `table` (usual), or `grid`: the grid of the sheet, where the page gives a licence key for it.
 * @attr rows - Ids of the rows to ask about, with commas between; those that suit it unless given.
 * @attr hints - Hints of your own before the working, parted by semicolons.
 * @attr seed - Any number or word: the same one tries the same other numbers.
 * @attr keep-as - A name under which what is written is kept in this browser, apart from the book; else it lasts as
 *   long as the page.
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr heading - A heading of your own; the question of the task unless given.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-lesson-checked - A formula was checked: `detail` is `{ task, kind, right }`.
 */
@customElement('croft-lesson-sheet')
export class CroftLessonSheet extends LitElement {
  static override styles = [base, taskStyles];

  @property() task = '';
  @property({ reflect: true, useDefault: true }) view: 'table' | 'grid' = 'table';
  @property() rows = '';
  @property() hints = '';
  /** The same as a list, for a lesson's own. */
  @property({ attribute: false }) ownHints: readonly string[] = [];
  @property() seed = '1';
  @property({ attribute: 'keep-as' }) keepAs = '';
  /** Where a lesson around it keeps what is written. */
  @property({ attribute: false }) kept: KeptWork | null = null;
  @property() heading = '';
  @property({ reflect: true }) theme: string | null = null;
  @state() private checked: TaskChecked | null = null;
  @state() private given: ReadonlyMap<string, CellValue> = NONE;
  @state() private written = '';
  @state() private steps = 0;
  @state() private busy = false;
  @state() private failed = '';
  @state() private said = '';
  @query('#formula') private field!: HTMLInputElement | null;
  @query('croft-lesson-grid') private grid!: CroftLessonGrid | null;
  readonly #book = new BookController(this, ({ changes }) => {
    if (changes.length === 0) return;
    this.#forget();
    this.grid?.reopen();
  });
  readonly #checks = new TaskChecks();
  #shown: LiveBook | null = null;
  #tasks: readonly FormulaTask[] = [];
  #only: readonly string[] | undefined;
  #isTurned = false;
  #language = spokenTag();

  /** True once every formula was found right. */
  get isRight(): boolean {
    return this.grid ? this.grid.isRight : this.checked?.kind === 'right';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#checks.close();
  }

  protected override willUpdate(changed: PropertyValues<CroftLessonSheet>): void {
    const { live } = this.#book;
    if (changed.has('task')) this.#tasks = tasksNamed(this.task) ?? [];
    if (this.#language !== spokenTag()) {
      // What came of checking was said in the language before, and columns are called otherwise.
      this.#language = spokenTag();
      this.#forget();
      this.grid?.reopen();
    }
    if (changed.has('rows')) this.#only = this.rows === '' ? undefined : listed(this.rows, /,/);
    if (
      live === this.#shown &&
      !['task', 'rows', 'kept', 'keepAs'].some((each) => changed.has(each as keyof CroftLessonSheet))
    )
      return;
    this.#shown = live;
    if (live && this.keepAs !== '') this.kept = new KeptWork(live.id, this.keepAs);
    this.#forget();
    this.steps = 0;
    this.written = this.#keptFormula;
  }

  get #keptFormula(): string {
    const { every, cells } = this.kept?.work.formulas[this.#tasks[0]?.id ?? ''] ?? {};
    return every ?? Object.values(cells ?? {})[0] ?? '';
  }

  protected override render() {
    const { live, book } = this.#book;
    const [task, ...more] = this.#tasks;
    if (!task)
      return html`<p class="problem" role="alert">
        ${say`There is no task “${this.task.slice(0, 60)}”. Write one of: ${FORMULA_TASKS.map(({ id }) => id).join(', ')}. Several must be of one kind of sheet.`}
      </p>`;
    if (!live) return withoutBook(book);
    const at = this.#at(live, task);
    if (!at || at.rows.length === 0)
      return html`<p class="quiet">${say`This book has no rows for “${spoken(task.asks)}”`} ${spoken(task.needs)}</p>`;
    const hasKey = (book?.gridLicenceKey ?? '') !== '';
    if (more.length > 0 && !hasKey)
      return html`<p class="problem" role="alert">
        ${say`Several columns are written in the grid, for which this page gives no licence key. Whoever keeps the page writes it as grid-licence-key on croft-book, or names one task.`}
      </p>`;
    const isGrid = hasKey && (this.view === 'grid' || more.length > 0);
    return html`<div class="task-whole">
      ${isGrid ? this.#inGrid(live, at) : this.#inTable(live, at)}
      ${
        hasKey && more.length === 0
          ? html`<p>
              <button class="button" type="button" @click=${this.#turn}>
                ${isGrid ? say`Write it beside a table` : html`${icons.grid}${say`Write it in the grid`}`}
              </button>
            </p>`
          : nothing
      }
      ${taskCautions(live, at)}
      <p class="unseen" role="status">${this.said}</p>
    </div>`;
  }

  #inGrid(live: LiveBook, at: TaskSheet): TemplateResult {
    void import('./croft-lesson-grid.js');
    const { book } = this.#book;
    return html`<croft-lesson-grid
      .live=${live}
      .tasks=${this.#tasks}
      .only=${this.#only}
      .hints=${(task: FormulaTask) => this.#hints(live, { ...at, task })}
      .heading=${this.heading || (this.#tasks.length === 1 ? spoken(at.task.asks) : '')}
      .seed=${this.seed}
      .keys=${{ grid: book?.gridLicenceKey ?? '', engine: book?.engineLicenceKey ?? '' }}
      .kept=${this.kept}
      .focusFirst=${this.#isTurned}
    ></croft-lesson-grid>`;
  }

  #inTable(live: LiveBook, at: TaskSheet): TemplateResult {
    const title = live.column(at.sheet, at.task.column)?.title ?? '';
    const { checked } = this;
    const tone = checked?.kind === 'right' ? 'right' : checked && checked.kind !== 'blank' ? 'wrong' : '';
    const hints = this.#hints(live, at);
    return html`<p class="text" id="asks">${this.heading || spoken(at.task.asks)}</p>
      ${taskTable(live, at, { given: this.given, checked }, say`${title}: a formula for every row`)}
      ${writeView(live, at, {
        title,
        written: this.written,
        tone,
        message: this.failed || (checked && checked.kind !== 'blank' ? checked.message : ''),
        isBusy: this.busy,
        hints,
        steps: this.steps,
        onType: this.#type,
        onCheck: () => void this.check(),
        onHint: () => {
          this.said = hints[this.steps++] ?? '';
        },
        onColumn: (name) => this.#putIn(name),
      })}`;
  }

  /** Shows what is kept now, where a lesson around it has changed that. */
  takeUp(): void {
    this.written = this.#keptFormula;
    this.#clear();
    this.grid?.reopen();
  }

  /** Checks the formula that is written beside the table; resolves when it is known. */
  async check(): Promise<void> {
    const { live, book } = this.#book;
    const [task] = this.#tasks;
    const formula = this.written;
    if (!live || !book || !task || this.busy || formula.trim() === '') return;
    this.busy = true;
    this.failed = '';
    const answer = await this.#checks.check(formula, {
      live,
      task,
      only: this.#at(live, task)?.rows,
      seed: this.seed,
      licenceKey: book.engineLicenceKey,
    });
    this.busy = false;
    if (live !== this.#book.live || this.written !== formula) return;
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
    const own = this.#tasks.length === 1 ? [...listed(this.hints, /;/), ...this.ownHints] : [];
    return [...own, ...hintsFor(live, at)];
  }

  #at(live: LiveBook, task: FormulaTask): TaskSheet | null {
    const sheet = sheetOf(live, task);
    return sheet === null
      ? null
      : { task, sheet, rows: rowsOf(live, task, this.#only).slice(0, MOST_TASK_ROWS) };
  }

  #putIn(name: string): void {
    const { field } = this;
    if (!field) return;
    if (field.value.trim() === '') field.value = '=';
    const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
    const at = field.value.length === 1 ? 1 : from;
    field.setRangeText(name, at, Math.max(at, to), 'end');
    field.focus();
    this.#type(field.value);
  }

  /** What was said of the formula before is said no more. */
  readonly #type = (formula: string): void => {
    this.written = formula;
    const [task] = this.#tasks;
    if (task) this.kept?.writeFormulas(task.id, { every: formula });
    this.#clear();
  };

  /** From the table to the grid, or back; what was written comes along. */
  readonly #turn = (): void => {
    this.kept ??= new KeptWork(this.#book.live?.id ?? '', '');
    this.#isTurned = true;
    this.view = this.view === 'grid' ? 'table' : 'grid';
    this.written = this.#keptFormula;
    this.#clear();
  };

  /** The book changed: what was checked against it counts no more. */
  #forget(): void {
    this.#checks.close();
    this.#clear();
  }

  #clear(): void {
    this.checked = null;
    this.given = NONE;
    this.failed = '';
  }
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson-sheet': CroftLessonSheet;
  }
}
