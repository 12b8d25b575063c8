import type { TaskChecked } from '../../src/lessons/formula-task.js';
import { rowsOf, sheetOf } from '../../src/lessons/formula-task-rows.js';
import type { FormulaTask } from '../../src/lessons/formula-tasks.js';
import type { LessonBook } from '../../src/lessons/lesson-book.js';
import { columnAsked } from '../../src/lessons/lesson-columns.js';
import type { Entries } from '../../src/lessons/lesson-doc.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import type { CellMark, GridCell } from '../grid/grid-view.js';
import { NOT_LOADED, TaskChecks } from './task-state.js';

export interface GridWorkAsked {
  readonly live: LiveBook;
  /** All of one kind of sheet. */
  readonly tasks: readonly FormulaTask[];
  readonly only: readonly string[] | undefined;
  readonly seed: string;
  readonly licenceKey: string;
  /** What was written before. */
  readonly entries: Entries;
  /** What is written, or what came of checking it, is another. */
  readonly tell: (checked: FormulaTask | null) => void;
}

/** More rows than these are no lesson any more, and take long to try. */
const MOST_ROWS = 40;

const ELSE: TaskChecked = {
  kind: 'no rows',
  message: phrase('In this row the plan reckons otherwise, so nothing is asked.'),
};

const allRight = (rows: number, others: number): string =>
  rows === 1
    ? say`Right: in the row, and ${others} times with other numbers.`
    : say`Right: in all ${rows} rows, and ${others} times with other numbers.`;

/** How one task stands. */
export interface Standing {
  readonly rows: number;
  readonly written: number;
  readonly right: number;
  /** The first row that is not right, in the order of the sheet. */
  readonly wrong: { readonly row: string; readonly message: string } | null;
  /** Where all are right: what was tried. */
  readonly message: string;
}

/** A grid that pupils write into: a copy of the book, what stands in its columns, and what came of checking it. */
export class GridWork {
  readonly #checks = new Map<FormulaTask, TaskChecks>();
  readonly #found = new Map<
    FormulaTask,
    Map<string, { readonly typed: string; readonly checked: TaskChecked }>
  >();
  readonly #stale = new Set<FormulaTask>();
  #entries: Entries;
  #isBusy = false;
  #isClosed = false;
  #failed: Problem | null = null;

  private constructor(
    readonly asked: GridWorkAsked,
    readonly sheet: string,
    readonly rows: Readonly<Record<string, readonly string[]>>,
    readonly copy: LessonBook,
  ) {
    this.#entries = copy.entries;
    copy.on('change', ({ sheets, origin }) => {
      // Columns that stand otherwise are called otherwise by their letters.
      if (sheets.has(sheet)) for (const checks of this.#checks.values()) checks.close();
      if (origin !== 'engine') this.#look();
    });
    this.#look();
  }

  /** Opens the copy, with the formula engine. Null: the book has no such rows. */
  static async open(asked: GridWorkAsked): Promise<GridWork | Problem | null> {
    const { live, tasks, only, licenceKey, entries } = asked;
    const sheet = tasks[0] ? sheetOf(live, tasks[0]) : null;
    if (sheet === null) return null;
    const rows = Object.fromEntries(
      tasks.map((task) => [task.column, rowsOf(live, task, only).slice(0, MOST_ROWS)]),
    );
    try {
      const [{ HyperFormulaEngine }, { lessonDoc }, { LessonBook: Book }] = await Promise.all([
        import('../../src/engine/hyperformula-engine.js'),
        import('../../src/lessons/lesson-doc.js'),
        import('../../src/lessons/lesson-book.js'),
      ]);
      const { asOf, basis } = live.household;
      const engine = new HyperFormulaEngine({ asOf, basis }, licenceKey);
      const doc = lessonDoc(live, { tasks, sheet, entries });
      const copy = new Book(doc, { tasks, sheet, rows }, { engine, today: () => asOf });
      return new GridWork(asked, sheet, rows, copy);
    } catch (error) {
      console.error(error);
      return NOT_LOADED;
    }
  }

  /** What is written: by planning column and row. */
  get entries(): Entries {
    return this.#entries;
  }

  get isBusy(): boolean {
    return this.#isBusy;
  }

  /** Why nothing can be checked. */
  get failed(): Problem | null {
    return this.#failed;
  }

  close(): void {
    this.#isClosed = true;
    for (const checks of this.#checks.values()) checks.close();
    this.copy.close();
  }

  standing(task: FormulaTask): Standing {
    const rows = (this.rows[task.column] ?? []).filter(
      (row) => this.#checkedAt(task, row)?.kind !== 'no rows',
    );
    const typed = this.entries[task.column] ?? {};
    const checked = rows.flatMap((row) => this.#checkedAt(task, row) ?? []);
    const right = checked.filter(({ kind }) => kind === 'right');
    const wrongRow = rows.find((row) => {
      const there = this.#checkedAt(task, row);
      return there !== undefined && there.kind !== 'right';
    });
    const wrong = wrongRow === undefined ? undefined : this.#checkedAt(task, wrongRow);
    const others = right.reduce((sum, each) => sum + (each.kind === 'right' ? each.compared - 1 : 0), 0);
    return {
      rows: rows.length,
      written: Object.keys(typed).length,
      right: right.length,
      wrong: wrong && 'message' in wrong ? { row: wrongRow!, message: spoken(wrong.message) } : null,
      message: right.length === rows.length && rows.length > 0 ? allRight(rows.length, others) : '',
    };
  }

  /** The column of the copy to write into. */
  columnOf({ column }: FormulaTask): string {
    return columnAsked(column);
  }

  /** What is said of a cell in the grid. */
  markOf({ row, column }: GridCell): CellMark | null {
    const task = this.copy.taskOf(column);
    if (!task) return null;
    if (!this.copy.isAsked(row, column))
      return {
        tone: 'asked',
        sign: '–',
        words: say`Nothing is asked in this row: its figure comes otherwise.`,
      };
    const checked = this.#checkedAt(task, row);
    if (checked?.kind === 'right')
      return { tone: 'right', sign: say`✓ right`, words: spoken(checked.message) };
    if (checked?.kind === 'no rows') return { tone: 'asked', sign: '–', words: spoken(checked.message) };
    if (checked && 'message' in checked)
      return { tone: 'wrong', sign: say`✗ not yet`, words: spoken(checked.message) };
    const isWritten = this.entries[task.column]?.[row] !== undefined;
    return isWritten
      ? { tone: 'asked', sign: '…', words: say`It is being tried with many numbers.` }
      : { tone: 'asked', sign: '', words: say`To be written: a formula.` };
  }

  /** What came of checking what stands there now. */
  #checkedAt(task: FormulaTask, row: string): TaskChecked | undefined {
    const found = this.#found.get(task)?.get(row);
    return found && found.typed === this.entries[task.column]?.[row] ? found.checked : undefined;
  }

  /** Something was written: what is not checked yet is, a moment later. */
  #look(): void {
    this.#entries = this.copy.entries;
    for (const task of this.asked.tasks) {
      const cells = this.entries[task.column] ?? {};
      if (Object.keys(cells).some((row) => this.#checkedAt(task, row) === undefined)) this.#stale.add(task);
    }
    this.asked.tell(null);
    if (this.#stale.size > 0 && !this.#isBusy) void this.#work();
  }

  async #work(): Promise<void> {
    const { live, licenceKey, seed, only, tasks } = this.asked;
    this.#isBusy = true;
    for (const task of this.#stale) {
      this.#stale.delete(task);
      const typed = new Map(Object.entries(this.entries[task.column] ?? {}));
      const checks = this.#checks.get(task) ?? new TaskChecks();
      this.#checks.set(task, checks);
      const about = { live: this.copy, task, only, seed, licenceKey, beside: tasks };
      const found = await checks.checkCells(typed, about);
      if (this.#isClosed || live === null) return;
      if (found === null) {
        this.#stale.add(task);
        continue;
      }
      this.#failed = 'code' in found ? found : null;
      if ('code' in found) continue;
      this.#found.set(
        task,
        new Map([...typed].map(([row, each]) => [row, { typed: each, checked: found.get(row) ?? ELSE }])),
      );
      // Meanwhile something else may have been written.
      this.asked.tell(task);
    }
    this.#isBusy = false;
    this.asked.tell(null);
  }
}
