import { type CellValue, isCellError, toShown } from '../book/index.js';
import type { LiveBook } from '../live/live-book.js';
import { readsColumn, titlesAsNames } from './formula-task-columns.js';
import { agree, figureInWords, rowsOf, sheetOf, type TaskSheet } from './formula-task-rows.js';
import type { FormulaTask } from './formula-tasks.js';
import { seeded } from './random.js';

/** What came of checking a formula. */
export type TaskChecked =
  | { readonly kind: 'blank' }
  /** It agrees in every row, and in all the other numbers that were tried. */
  | { readonly kind: 'right'; readonly message: string; readonly compared: number }
  /** It does not agree in a row that stands there; or only with other numbers. */
  | { readonly kind: 'wrong' | 'not always'; readonly message: string; readonly row: string }
  | { readonly kind: 'unreadable' | 'own answer' | 'no rows'; readonly message: string };

/** Sets of other numbers that are tried. */
export const VARIATIONS = 12;
const PUPIL = 'pupil-answer';
const MODEL = 'right-answer';

/** Checks pupils’ formulas for one planning column, on a copy of their book that has the formula engine. */
export class FormulaCheck {
  readonly #copy: LiveBook;
  readonly #task: FormulaTask;
  readonly #sheet: string | null;
  readonly #only: readonly string[] | undefined;
  readonly #seed: string;
  #isClosed = false;
  #isAtWork = false;

  /** `copy` is changed by checking, and put back. `only` names the rows that are asked about. */
  constructor(
    copy: LiveBook,
    task: FormulaTask,
    { only, seed = '1' }: { only?: readonly string[]; seed?: string } = {},
  ) {
    this.#copy = copy;
    this.#task = task;
    this.#sheet = sheetOf(copy, task);
    this.#only = only;
    this.#seed = seed;
    if (this.#sheet !== null) this.#column(this.#sheet, MODEL, task.answer, true);
  }

  /** Rows in which the figure is what the task is about; empty where the book has none. */
  get rows(): readonly string[] {
    const sheet = this.#sheet;
    if (sheet === null) return [];
    return rowsOf(this.#copy, this.#task, this.#only).filter((row) => this.#isAsked(sheet, row));
  }

  get at(): TaskSheet | null {
    return this.#sheet === null ? null : { task: this.#task, sheet: this.#sheet, rows: this.rows };
  }

  /** What the formula gives in each row as the book stands: filled by the last check. */
  readonly given = new Map<string, CellValue>();

  /** Checks a formula as typed, with or without its `=`. `rest` is awaited now and then, so that a page stays alive. */
  async check(typed: string, rest: () => Promise<void> = async () => {}): Promise<TaskChecked> {
    this.given.clear();
    const sheet = this.#sheet;
    const text = typed.trim();
    if (text === '' || text === '=') return { kind: 'blank' };
    const rows = this.rows;
    if (sheet === null || rows.length === 0) return { kind: 'no rows', message: this.#task.needs };
    const copy = this.#copy;
    const formula = titlesAsNames(copy, sheet, text.startsWith('=') ? text : `=${text}`);
    const title = copy.column(sheet, this.#task.column)?.title ?? '';
    if (readsColumn(copy, formula, { sheet, column: this.#task.column }))
      return {
        kind: 'own answer',
        message: `That reads “${title}” itself, which is what is asked. Work it out from the other columns.`,
      };
    const made = this.#column(sheet, PUPIL, formula, false);
    if (made !== null) return { kind: 'unreadable', message: made };
    this.#isAtWork = true;
    try {
      const first = copy.value(sheet, rows[0]!, PUPIL);
      if (first !== null && isCellError(first) && (first.error === '#NAME?' || first.error === '#ERROR!'))
        return { kind: 'unreadable', message: first.message };
      for (const row of rows) this.given.set(row, copy.value(sheet, row, PUPIL));
      const here = this.#against(sheet, rows);
      if (here.wrong !== null)
        return { kind: 'wrong', row: here.wrong, message: this.#example(sheet, here.wrong, 'wrong') };
      return await this.#elsewhere(sheet, rows, here.compared, rest);
    } finally {
      copy.removeColumns(sheet, [PUPIL]);
      this.#isAtWork = false;
      if (this.#isClosed) copy.close();
    }
  }

  /** Lets the copy go; a check that is under way ends with `blank`. */
  close(): void {
    this.#isClosed = true;
    if (!this.#isAtWork) this.#copy.close();
  }

  /** The same with other numbers, put back afterwards. */
  async #elsewhere(
    sheet: string,
    rows: readonly string[],
    here: number,
    rest: () => Promise<void>,
  ): Promise<TaskChecked> {
    const copy = this.#copy;
    const random = seeded(`${this.#seed}|${this.#task.id}`);
    let compared = here;
    for (let nth = 0; nth < VARIATIONS; nth++) {
      await rest();
      if (this.#isClosed) return { kind: 'blank' };
      const of = this.#task.vary(copy, sheet, rows, random);
      const done = copy.apply({ do: 'all', of });
      if (!done.ok) continue;
      const found = this.#against(sheet, rows);
      compared += found.compared;
      const message = found.wrong === null ? '' : this.#example(sheet, found.wrong, 'not always');
      if (done.changes.length > 0) copy.undo();
      if (found.wrong !== null) return { kind: 'not always', row: found.wrong, message };
    }
    const others = compared - here;
    const where = rows.length === 1 ? 'in the row' : `in all ${rows.length} rows`;
    const message =
      others > 0
        ? `Right: ${where}, and ${others} times with other numbers.`
        : `Right ${where}. No other numbers could be tried.`;
    return { kind: 'right', compared, message };
  }

  /** The first row in which the formula and the plan differ. */
  #against(
    sheet: string,
    rows: readonly string[],
  ): { readonly wrong: string | null; readonly compared: number } {
    const copy = this.#copy;
    const decimals = copy.column(sheet, this.#task.column)?.decimals ?? 2;
    let compared = 0;
    for (const row of rows) {
      // With other numbers the plan may say a word, as where nothing is used: not what is asked.
      if (!this.#isAsked(sheet, row)) continue;
      compared++;
      const plan = copy.value(sheet, row, this.#task.column) as number;
      if (!agree(copy.value(sheet, row, PUPIL), plan, decimals)) return { wrong: row, compared };
    }
    return { wrong: null, compared };
  }

  #isAsked(sheet: string, row: string): boolean {
    const plan = this.#copy.value(sheet, row, this.#task.column);
    const decimals = this.#copy.column(sheet, this.#task.column)?.decimals ?? 2;
    return typeof plan === 'number' && agree(this.#copy.value(sheet, row, MODEL), plan, decimals);
  }

  #example(sheet: string, row: string, kind: 'wrong' | 'not always'): string {
    const copy = this.#copy;
    const { from, column } = this.#task;
    const said = (id: string): string => figureInWords(copy, sheet, row, id, copy.value(sheet, row, id));
    const given = from.map((id) => `${copy.column(sheet, id)?.title ?? id} ${said(id)}`).join(' and ');
    const yours = figureInWords(copy, sheet, row, PUPIL, copy.value(sheet, row, PUPIL));
    const how = `with ${given} yours gives ${yours}, the plan ${said(column)}.`;
    return kind === 'wrong' ? `Not yet: ${how}` : `Right for these rows, but not always: ${how}`;
  }

  /** Adds a column with a formula; answers what is wrong with it, or null. */
  #column(sheet: string, id: string, formula: string, isStored: boolean): string | null {
    const title = id === PUPIL ? 'Your formula' : 'Formula of the plan';
    const shown = isStored ? shownStored(this.#copy, sheet, formula) : formula;
    const done = this.#copy.apply({
      do: 'add column',
      sheet,
      column: id,
      before: null,
      title,
      formula: shown,
    });
    return done.ok ? null : `${done.problem.message} ${done.problem.mend}`.trim();
  }
}

const shownStored = (copy: LiveBook, sheet: string, stored: string): string =>
  toShown(stored, sheet, copy.inside.layout);
