import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FormulaTask } from '../../src/lessons/formula-tasks.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import type { GridCell, GridRequest } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';
import { GRID_NOT_LOADED } from '../sheet/status-line.js';
import '../sheet/grid-pane.js';
import type { GridPane, GridStart, PaneHost } from '../sheet/grid-pane.js';
import { gridTaskView, standingInWords } from './grid-task-view.js';
import { GridWork } from './grid-work.js';
import type { KeptWork } from './kept-work.js';
import { taskStyles } from './task-styles.js';

/** Licences of the page for what opens here. */
export interface GridKeys {
  readonly grid: string;
  readonly engine: string;
}

/**
 * Inside `<croft-lesson-sheet>`: the grid of a sheet, on a copy of the book, with planning columns blank for pupils
 * to write into. What is written is checked cell by cell.
 */
@customElement('croft-lesson-grid')
export class CroftLessonGrid extends LitElement {
  static override styles = [base, taskStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property({ attribute: false }) tasks: readonly FormulaTask[] = [];
  @property({ attribute: false }) only: readonly string[] | undefined;
  @property({ attribute: false }) hints: (task: FormulaTask) => readonly string[] = () => [];
  @property({ attribute: false }) heading = '';
  @property() seed = '1';
  @property({ attribute: false }) keys: GridKeys = { grid: '', engine: '' };
  @property({ attribute: false }) kept: KeptWork | null = null;
  /** Takes the keyboard once it is open. */
  @property({ type: Boolean, attribute: false }) focusFirst = false;
  @state() private work: GridWork | null = null;
  @state() private failed: Problem | null = null;
  @state() private noRows = false;
  @state() private note: Problem | string | null = null;
  @state() private said = '';
  @state() private steps: Readonly<Record<string, number>> = {};
  @state() private cell: GridCell | null = null;
  @query('croft-grid-pane') private pane!: GridPane | null;
  #opening: object = {};
  #start: GridStart = { cell: null, text: null, focus: false };

  /** Columns whose every row is right. */
  get isRight(): boolean {
    const { work } = this;
    return work !== null && this.tasks.every((task) => work.standing(task).message !== '');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated && !this.work) void this.#open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Moved within the page is not removed.
    queueMicrotask(() => {
      if (!this.isConnected) this.#close();
    });
  }

  /** The book is another, or has changed: what was written is put into a new copy of it. */
  reopen(): void {
    void this.#open();
  }

  protected override willUpdate(changed: PropertyValues<CroftLessonGrid>): void {
    if (changed.has('live') || changed.has('tasks') || changed.has('only')) void this.#open();
  }

  #close(): void {
    this.#opening = {};
    this.work?.close();
    this.work = null;
  }

  async #open(): Promise<void> {
    this.#close();
    const mine = {};
    this.#opening = mine;
    const { live, tasks, only, seed, keys, kept } = this;
    const entries = Object.fromEntries(
      tasks.map(({ id, column }) => [column, kept?.work.formulas[id]?.cells ?? {}]),
    );
    const tell = (task: FormulaTask | null): void => this.#told(task);
    const work = await GridWork.open({ live, tasks, only, seed, licenceKey: keys.engine, entries, tell });
    if (mine !== this.#opening) {
      if (work instanceof GridWork) work.close();
      return;
    }
    this.failed = work !== null && !(work instanceof GridWork) ? work : null;
    this.noRows = work === null;
    if (!(work instanceof GridWork)) return;
    const [task] = tasks;
    const row = task && work.rows[task.column]?.[0];
    const cell = task && row ? { row, column: work.columnOf(task) } : null;
    this.#start = { cell, text: null, focus: this.focusFirst };
    this.work = work;
    // Written beside the table before: its first cell fills the column.
    const every =
      task && Object.keys(work.entries[task.column] ?? {}).length === 0
        ? kept?.work.formulas[task.id]?.every
        : '';
    if (cell && every?.trim())
      work.copy.set(work.sheet, cell.row, cell.column, every.trim().replace(/^=?/, '='));
  }

  /** What is written is another, or, with a task, was checked. */
  #told(task: FormulaTask | null): void {
    const { work } = this;
    this.requestUpdate();
    if (!work) return;
    this.pane?.view?.remark();
    for (const { id, column } of this.tasks) {
      const cells = work.entries[column] ?? {};
      if (Object.keys(cells).length > 0 || this.kept?.work.formulas[id])
        this.kept?.writeFormulas(id, { cells });
    }
    if (!task) return;
    const standing = work.standing(task);
    this.said = `${this.#title(work, task)}. ${standingInWords(work, standing)}`;
    const kind = standing.message !== '' ? 'right' : standing.wrong ? 'wrong' : 'not all';
    this.dispatchEvent(
      new CustomEvent('croft-lesson-checked', {
        bubbles: true,
        composed: true,
        detail: { task: task.id, kind, right: kind === 'right' },
      }),
    );
  }

  #title(work: GridWork, task: FormulaTask): string {
    return work.copy.column(work.sheet, work.columnOf(task))?.title ?? task.column;
  }

  protected override render() {
    const { work, failed } = this;
    if (failed) return html`<p class="problem" role="alert">${inWords(failed)}</p>`;
    if (this.noRows) return html`<p class="quiet">${spoken(this.tasks[0]?.needs ?? '')}</p>`;
    if (!work) return html`<p class="quiet" aria-busy="true">${say`Opening the grid…`}</p>`;
    const { copy, sheet } = work;
    const title = copy.sheets().find(({ id }) => id === sheet)?.title ?? '';
    return html`<div class="task-whole">
      ${this.heading ? html`<p class="text">${this.heading}</p>` : nothing}
      <p class="quiet small">
        ${say`Write into the marked column, beginning with =. The first formula fills its column. This is a copy: the book itself stays as it is.`}
      </p>
      <div class="tools" role="group" aria-label=${say`What was written`}>
        <button class="button" type="button" ?disabled=${copy.undoLabel === undefined} @click=${() => this.#replay('undo')}>
          ${icons.undo}${say`Undo`}
        </button>
        <button class="button" type="button" ?disabled=${copy.redoLabel === undefined} @click=${() => this.#replay('redo')}>
          ${icons.redo}${say`Do again`}
        </button>
        <button class="button" type="button" ?disabled=${!this.#isWritten(work)} @click=${() => this.#clear(work)}>
          ${say`Blank it all`}
        </button>
      </div>
      <croft-grid-pane
        .live=${copy}
        .sheet=${sheet}
        .label=${say`${title}, to be written into`}
        .rows=${copy.rowIds(sheet).length}
        .host=${this.#host}
        .start=${this.#start}
        @failed=${this.#gridFailed}
        @mounted=${this.#mounted}
      ></croft-grid-pane>
      <p class="feedback ${this.#toneAt(work)}" id="cell">${this.#atCell(work)}</p>
      ${this.tasks.map((task) => this.#task(work, task))}
      <p class="unseen" role="status">${this.said}</p>
    </div>`;
  }

  /** What is said of the cell that the selection is on, or why something was not done. */
  #atCell(work: GridWork): string {
    if (this.note !== null) return typeof this.note === 'string' ? this.note : inWords(this.note);
    if (work.failed) return inWords(work.failed);
    const mark = this.cell && work.markOf(this.cell);
    if (!this.cell || !mark || mark.tone === 'right') return '';
    // What is said of the column below need not be said twice.
    const task = work.copy.taskOf(this.cell.column);
    const { written, wrong } = task ? work.standing(task) : { written: 0, wrong: null };
    if (wrong?.row === this.cell.row || (written === 0 && work.copy.isAsked(this.cell.row, this.cell.column)))
      return '';
    return `${rowName(work.copy, work.sheet, this.cell.row)}: ${mark.words}`;
  }

  #toneAt(work: GridWork): string {
    if (this.note !== null || !this.cell) return '';
    return work.markOf(this.cell)?.tone === 'wrong' ? 'wrong' : '';
  }

  #task(work: GridWork, task: FormulaTask): TemplateResult {
    const title = this.#title(work, task);
    const hints = this.hints(task);
    const isAlone = this.tasks.length === 1 && this.heading !== '';
    return gridTaskView({
      title,
      asks: isAlone ? '' : `${title}: ${spoken(task.asks)}`,
      standing: work.standing(task),
      words: standingInWords(work, work.standing(task)),
      hints,
      steps: this.steps[task.id] ?? 0,
      onHint: (step) => {
        this.steps = { ...this.steps, [task.id]: step };
        this.said = hints[step - 1] ?? '';
      },
    });
  }

  #isWritten(work: GridWork): boolean {
    return Object.values(work.entries).some((cells) => Object.keys(cells).length > 0);
  }

  #clear({ copy, sheet, entries }: GridWork): void {
    const cells = this.tasks.flatMap((task) =>
      Object.keys(entries[task.column] ?? {}).map((row) => ({
        row,
        column: this.work!.columnOf(task),
        typed: null,
      })),
    );
    copy.apply({ do: 'set cells', sheet, cells });
    this.said = say`Blank again. Undo brings it back.`;
  }

  #replay(which: 'undo' | 'redo'): void {
    const { copy } = this.work ?? {};
    if (!copy) return;
    const label = which === 'undo' ? copy.undoLabel : copy.redoLabel;
    if (which === 'undo' ? copy.undo() : copy.redo())
      this.said = which === 'undo' ? say`Undone: ${label}.` : say`Done again: ${label}.`;
  }

  readonly #gridFailed = (): void => {
    this.failed = GRID_NOT_LOADED;
  };

  readonly #mounted = (): void => {
    const { cell } = this.#start;
    if (cell && !this.focusFirst) this.pane?.view?.show(cell);
  };

  readonly #host: PaneHost = {
    licenceKey: () => this.keys.grid,
    ensureEngine: () => Promise.resolve(),
    say: (message) => {
      this.note = message;
      if (message !== null) this.said = typeof message === 'string' ? message : inWords(message);
    },
    selected: (cell) => {
      this.cell = cell;
      this.note = null;
    },
    lookChanged: () => this.requestUpdate(),
    ask: (what: GridRequest) => {
      this.#host.say(
        what.ask === 'working'
          ? say`In a lesson the hints under the grid tell how it is worked out.`
          : say`In a lesson this is left as it is.`,
      );
    },
    markOf: (cell) => this.work?.markOf(cell) ?? null,
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson-grid': CroftLessonGrid;
  }
}
