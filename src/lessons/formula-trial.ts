import { type CellValue, isCellError, toShown } from '../book/index.js';
import type { LiveBook } from '../live/live-book.js';
import type { Problem } from '../problem.js';
import { say, spoken } from '../words/index.js';
import { agree, figureInWords } from './formula-task-rows.js';
import type { FormulaTask } from './formula-tasks.js';
import { seeded } from './random.js';

/** Sets of other numbers that are tried. */
export const VARIATIONS = 12;
const PUPIL = 'pupil-answer';
const MODEL = 'right-answer';

const problemSaid = ({ message, mend }: Problem): string => `${spoken(message)} ${spoken(mend)}`.trim();

/** What a pupil wrote: a formula for every row, or one for each of some rows. All as typed. */
export type Written = string | ReadonlyMap<string, string>;

/** A copy of a book in which pupils’ formulas stand beside the plan’s figures, and numbers can be tried. */
export class FormulaTrial {
  readonly #decimals: number;

  /** `copy` is changed by trying, and put back. */
  constructor(
    readonly copy: LiveBook,
    readonly task: FormulaTask,
    readonly sheet: string,
  ) {
    this.#decimals = copy.column(sheet, task.column)?.decimals ?? 2;
    this.#add(MODEL, say`Formula of the plan`, toShown(task.answer, sheet, copy.inside.layout));
  }

  /** Fills a column with a right formula, given with columns by id. */
  solve(column: string, answer: string): void {
    const { copy, sheet } = this;
    const cells = copy.rowIds(sheet).map((row) => ({ row, column, typed: null }));
    const formula = toShown(answer, sheet, copy.inside.layout);
    copy.apply({
      do: 'all',
      of: [
        { do: 'set cells', sheet, cells },
        { do: 'describe column', sheet, column, as: { formula } },
      ],
    });
  }

  /** Puts in what was written; answers what is wrong with it, or null. */
  begin(written: Written): string | null {
    const { copy, sheet } = this;
    if (typeof written === 'string') return this.#add(PUPIL, say`Your formula`, written);
    this.#add(PUPIL, say`Your formula`);
    const cells = [...written].map(([row, typed]) => ({ row, column: PUPIL, typed }));
    const done = copy.apply({ do: 'set cells', sheet, cells });
    return done.ok ? null : problemSaid(done.problem);
  }

  end(): void {
    this.copy.removeColumns(this.sheet, [PUPIL]);
  }

  /** What was written gives this in a row. */
  yours(row: string): CellValue {
    return this.copy.value(this.sheet, row, PUPIL);
  }

  /** Why what was written cannot be worked out at all; null where it can. */
  unreadable(row: string): string | null {
    const value = this.yours(row);
    const isUnread =
      value !== null && isCellError(value) && (value.error === '#NAME?' || value.error === '#ERROR!');
    return isUnread ? spoken(value.message) : null;
  }

  /** With other numbers the plan may say a word, as where nothing is used: not what is asked. */
  isAsked(row: string): boolean {
    const plan = this.copy.value(this.sheet, row, this.task.column);
    return typeof plan === 'number' && agree(this.copy.value(this.sheet, row, MODEL), plan, this.#decimals);
  }

  /** True where it gives what the plan does; only of rows that are asked about. */
  agrees(row: string): boolean {
    const plan = this.copy.value(this.sheet, row, this.task.column) as number;
    return agree(this.yours(row), plan, this.#decimals);
  }

  /** A row in which it differs, with its numbers. */
  example(row: string, kind: 'wrong' | 'not always', of: 'row' | 'rows'): string {
    const { copy, sheet, task } = this;
    const said = (id: string): string => figureInWords(copy, sheet, row, id, copy.value(sheet, row, id));
    const given = task.from
      .map((id) => `${copy.column(sheet, id)?.title ?? id} ${said(id)}`)
      .reduce((before, last) => say`${before} and ${last}`);
    const yours = figureInWords(copy, sheet, row, PUPIL, this.yours(row));
    const plan = said(task.column);
    if (kind === 'wrong') return say`Not yet: with ${given} yours gives ${yours}, the plan ${plan}.`;
    return of === 'rows'
      ? say`Right for these rows, but not always: with ${given} yours gives ${yours}, the plan ${plan}.`
      : say`Right for this row as it stands, but not always: with ${given} yours gives ${yours}, the plan ${plan}.`;
  }

  /** Goes through other numbers, each put in before it is given; all of them are taken back at the end. */
  async *others(seed: string, rows: readonly string[], rest: () => Promise<void>): AsyncGenerator<void> {
    const { copy, task, sheet } = this;
    const random = seeded(`${seed}|${task.id}`);
    let steps = 0;
    try {
      for (let nth = 0; nth < VARIATIONS; nth++) {
        await rest();
        const done = copy.apply({ do: 'all', of: task.vary(copy, sheet, rows, random) });
        if (!done.ok) continue;
        if (done.changes.length > 0) steps++;
        yield;
      }
    } finally {
      // One step back costs one plan of the book; each by itself would cost as many again as the trying.
      if (steps > 1) copy.joinSteps(steps, 'other numbers');
      if (steps > 0) copy.undo();
    }
  }

  /** Adds a column, with a formula for every row; answers what is wrong with it, or null. */
  #add(column: string, title: string, formula?: string): string | null {
    const done = this.copy.apply({
      do: 'add column',
      sheet: this.sheet,
      column,
      before: null,
      title,
      ...(formula !== undefined && { formula }),
    });
    return done.ok ? null : problemSaid(done.problem);
  }
}
