import type { CellValue } from '../book/index.js';
import type { LiveBook } from '../live/live-book.js';
import { say, spoken } from '../words/index.js';
import { readsColumn, titlesAsNames } from './formula-task-columns.js';
import { rowsOf, sheetOf, type TaskSheet } from './formula-task-rows.js';
import type { FormulaTask } from './formula-tasks.js';
import { FormulaTrial, VARIATIONS } from './formula-trial.js';
import { columnAsked } from './lesson-columns.js';

export { VARIATIONS };

/** What came of checking a formula. */
export type TaskChecked =
  | { readonly kind: 'blank' }
  /** It agrees in every row, and in all the other numbers that were tried. */
  | { readonly kind: 'right'; readonly message: string; readonly compared: number }
  /** It does not agree in a row that stands there; or only with other numbers. */
  | { readonly kind: 'wrong' | 'not always'; readonly message: string; readonly row: string }
  | { readonly kind: 'unreadable' | 'own answer' | 'no rows'; readonly message: string };

export interface CheckAbout {
  /** Ids of the rows that are asked about; those that suit it unless given. */
  readonly only?: readonly string[];
  /** The same one tries the same other numbers. */
  readonly seed?: string;
  /** Others that are to be written on the same copy: they count as written right, so that one is judged by itself. */
  readonly beside?: readonly FormulaTask[];
}

const BLANK: TaskChecked = { kind: 'blank' };

/** Checks pupils’ formulas for one planning column, on a copy of their book that has the formula engine. */
export class FormulaCheck {
  readonly #copy: LiveBook;
  readonly #task: FormulaTask;
  readonly #trial: FormulaTrial | null;
  readonly #only: readonly string[] | undefined;
  readonly #seed: string;
  #isClosed = false;
  #isAtWork = false;

  /** `copy` is changed by checking, and put back. */
  constructor(copy: LiveBook, task: FormulaTask, { only, seed = '1', beside = [] }: CheckAbout = {}) {
    this.#copy = copy;
    this.#task = task;
    const sheet = sheetOf(copy, task);
    this.#only = only;
    this.#seed = seed;
    this.#trial = sheet === null ? null : new FormulaTrial(copy, task, sheet);
    for (const each of beside) if (each !== task) this.#trial?.solve(columnAsked(each.column), each.answer);
  }

  /** Rows in which the figure is what the task is about; empty where the book has none. */
  get rows(): readonly string[] {
    const trial = this.#trial;
    if (trial === null) return [];
    return rowsOf(this.#copy, this.#task, this.#only).filter((row) => trial.isAsked(row));
  }

  get at(): TaskSheet | null {
    const trial = this.#trial;
    return trial === null ? null : { task: this.#task, sheet: trial.sheet, rows: this.rows };
  }

  /** What the formula gives in each row as the book stands: filled by the last check. */
  readonly given = new Map<string, CellValue>();

  /** Checks a formula as typed, with or without its `=`. `rest` is awaited now and then, so that a page stays alive. */
  async check(typed: string, rest: () => Promise<void> = async () => {}): Promise<TaskChecked> {
    this.given.clear();
    const trial = this.#trial;
    const text = typed.trim();
    if (text === '' || text === '=') return BLANK;
    const { rows } = this;
    if (trial === null || rows.length === 0) return { kind: 'no rows', message: spoken(this.#task.needs) };
    const formula = titlesAsNames(this.#copy, trial.sheet, text.startsWith('=') ? text : `=${text}`);
    const own = this.#ownAnswer(formula, trial.sheet);
    if (own) return own;
    const found = await this.#whole(trial, formula, rows, rest);
    return found ?? BLANK;
  }

  /**
   * Checks what stands in cells, each as typed, by itself. A row that is blank is left out of the answer; null:
   * the check was closed meanwhile.
   */
  async checkCells(
    typed: ReadonlyMap<string, string>,
    rest: () => Promise<void> = async () => {},
  ): Promise<ReadonlyMap<string, TaskChecked> | null> {
    const trial = this.#trial;
    const found = new Map<string, TaskChecked>();
    if (trial === null) return found;
    const formulas = new Map<string, string>();
    for (const row of this.rows) {
      const text = typed.get(row)?.trim() ?? '';
      if (text === '') continue;
      const formula = text.startsWith('=') ? titlesAsNames(this.#copy, trial.sheet, text) : null;
      const why = formula === null ? noFormula(text) : this.#ownAnswer(formula, trial.sheet);
      if (why) found.set(row, why);
      else formulas.set(row, formula!);
    }
    if (formulas.size === 0) return found;
    this.#isAtWork = true;
    try {
      const made = trial.begin(formulas);
      for (const row of formulas.keys()) {
        const message = made ?? trial.unreadable(row);
        if (message === null) continue;
        found.set(row, { kind: 'unreadable', message });
        formulas.delete(row);
      }
      return (await this.#each(trial, [...formulas.keys()], found, rest)) ? found : null;
    } finally {
      this.#ended(trial);
    }
  }

  /** Lets the copy go; a check that is under way ends with `blank`. */
  close(): void {
    this.#isClosed = true;
    if (!this.#isAtWork) this.#copy.close();
  }

  /** One formula in all rows: the first that differs ends it. Null: closed meanwhile. */
  async #whole(
    trial: FormulaTrial,
    formula: string,
    rows: readonly string[],
    rest: () => Promise<void>,
  ): Promise<TaskChecked | null> {
    this.#isAtWork = true;
    try {
      const message = trial.begin(formula) ?? trial.unreadable(rows[0]!);
      if (message !== null) return { kind: 'unreadable', message };
      for (const row of rows) this.given.set(row, trial.yours(row));
      let compared = rows.length;
      const wrong = rows.find((row) => !trial.agrees(row));
      if (wrong !== undefined)
        return { kind: 'wrong', row: wrong, message: trial.example(wrong, 'wrong', 'rows') };
      for await (const _ of trial.others(this.#seed, rows, rest)) {
        if (this.#isClosed) return null;
        const asked = rows.filter((row) => trial.isAsked(row));
        compared += asked.length;
        const row = asked.find((each) => !trial.agrees(each));
        if (row !== undefined)
          return { kind: 'not always', row, message: trial.example(row, 'not always', 'rows') };
      }
      if (this.#isClosed) return null;
      return { kind: 'right', compared, message: rightIn(rows.length, compared - rows.length) };
    } finally {
      this.#ended(trial);
    }
  }

  /** Each row by itself, until it differs; false where it was closed meanwhile. */
  async #each(
    trial: FormulaTrial,
    rows: readonly string[],
    found: Map<string, TaskChecked>,
    rest: () => Promise<void>,
  ): Promise<boolean> {
    const compared = new Map<string, number>();
    for (const row of rows) {
      if (trial.agrees(row)) compared.set(row, 1);
      else found.set(row, { kind: 'wrong', row, message: trial.example(row, 'wrong', 'row') });
    }
    if (compared.size > 0) {
      for await (const _ of trial.others(this.#seed, rows, rest)) {
        if (this.#isClosed) return false;
        for (const [row, times] of compared) {
          if (!trial.isAsked(row)) continue;
          compared.set(row, times + 1);
          if (trial.agrees(row)) continue;
          compared.delete(row);
          const message = trial.example(row, 'not always', 'row');
          found.set(row, { kind: 'not always', row, message });
        }
        if (compared.size === 0) break;
      }
    }
    for (const [row, times] of compared)
      found.set(row, { kind: 'right', compared: times, message: rightIn(1, times - 1) });
    return !this.#isClosed;
  }

  #ended(trial: FormulaTrial): void {
    trial.end();
    this.#isAtWork = false;
    if (this.#isClosed) this.#copy.close();
  }

  /** What asks the plan, or the column that is to be written itself, is no formula of one’s own. */
  #ownAnswer(formula: string, sheet: string): TaskChecked | null {
    const { column } = this.#task;
    const copy = this.#copy;
    const asked = columnAsked(column);
    const reads = [column, asked].some(
      (id) => copy.column(sheet, id) !== undefined && readsColumn(copy, formula, { sheet, column: id }),
    );
    const title = (copy.column(sheet, asked) ?? copy.column(sheet, column))?.title ?? '';
    return reads
      ? {
          kind: 'own answer',
          message: say`That reads “${title}” itself, which is what is asked. Work it out from the other columns.`,
        }
      : null;
  }
}

function noFormula(text: string): TaskChecked {
  const isNumber = /^[\d.,\s/]+$/.test(text);
  const message = isNumber
    ? say`That is one number. Write a formula, so that it also holds with other numbers: it begins with =.`
    : say`A formula begins with =.`;
  return { kind: 'unreadable', message };
}

/** Right in so many rows, and so many times with other numbers. */
export function rightIn(rows: number, others: number): string {
  if (others > 0)
    return rows === 1
      ? say`Right: in the row, and ${others} times with other numbers.`
      : say`Right: in all ${rows} rows, and ${others} times with other numbers.`;
  return rows === 1
    ? say`Right in the row. No other numbers could be tried.`
    : say`Right in all ${rows} rows. No other numbers could be tried.`;
}
