import type { BookDoc, CellValue } from '../../src/book/index.js';
import type { FormulaCheck, TaskChecked } from '../../src/lessons/formula-task.js';
import type { FormulaTask } from '../../src/lessons/formula-tasks.js';
import type { BookReading } from '../../src/live/book-reading.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { phrase } from '../../src/words/index.js';

export const NOT_LOADED: Problem = {
  code: 'engine-not-loaded',
  message: phrase('Formulas could not be loaded, so nothing can be checked.'),
  mend: phrase('Check the connection and try again.'),
};

/** What is asked of a check. */
export interface CheckAsked {
  /** The book, or a copy of it in which columns to be written are blank. */
  readonly live: BookReading;
  readonly task: FormulaTask;
  readonly only: readonly string[] | undefined;
  readonly seed: string;
  readonly licenceKey: string;
  /** Others to be written on the same copy. */
  readonly beside?: readonly FormulaTask[];
}

export interface CheckAnswer {
  readonly checked: TaskChecked;
  /** What the formula gives in each row. */
  readonly given: ReadonlyMap<string, CellValue>;
}

const rest = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Loads what works formulas out when somebody first asks, and checks on a copy of the book. */
export class TaskChecks {
  #check: Promise<FormulaCheck> | null = null;
  #of: BookReading | null = null;
  #isWhole = false;

  /** Problem: it could not be loaded. Null: the book changed meanwhile, so that it says nothing. */
  async check(formula: string, asked: CheckAsked): Promise<CheckAnswer | Problem | null> {
    return this.#with(asked, [formula], async (check) => {
      const checked = await check.check(formula, rest);
      return { checked, given: new Map(check.given) };
    });
  }

  /** What stands in cells, by row, each by itself; likewise. */
  async checkCells(
    typed: ReadonlyMap<string, string>,
    asked: CheckAsked,
  ): Promise<ReadonlyMap<string, TaskChecked> | Problem | null> {
    return this.#with(asked, [...typed.values()], (check) => check.checkCells(typed, rest));
  }

  /** The book changed, or nobody asks any more. */
  close(): void {
    void this.#check?.then((check) => check.close()).catch(() => {});
    this.#check = null;
  }

  async #with<T>(
    asked: CheckAsked,
    formulas: readonly string[],
    ask: (check: FormulaCheck) => Promise<T>,
  ): Promise<T | Problem | null> {
    try {
      const { readsOtherSheets } = await import('../../src/lessons/check-copy.js');
      const needsWhole = formulas.some((each) => readsOtherSheets(asked.live, asked.task, each));
      if (this.#of !== asked.live || (needsWhole && !this.#isWhole)) this.close();
      this.#of = asked.live;
      this.#check ??= this.#open(asked, needsWhole);
      const mine = this.#check;
      const answer = await ask(await mine);
      return mine === this.#check ? answer : null;
    } catch (error) {
      console.error(error);
      this.close();
      return NOT_LOADED;
    }
  }

  async #open(asked: CheckAsked, whole: boolean): Promise<FormulaCheck> {
    const { live, task, only, seed, licenceKey, beside = [] } = asked;
    const [{ HyperFormulaEngine }, { FormulaCheck: Check }, { openCheckCopy }] = await Promise.all([
      import('../../src/engine/hyperformula-engine.js'),
      import('../../src/lessons/formula-task.js'),
      import('../../src/lessons/check-copy.js'),
    ]);
    const { asOf, basis } = live.household;
    const open = (doc: BookDoc): LiveBook =>
      openBook(doc, { engine: new HyperFormulaEngine({ asOf, basis }, licenceKey), today: () => asOf });
    const { copy, isWhole } = openCheckCopy(live, task, open, { only, whole });
    this.#isWhole = isWhole;
    return new Check(copy, task, { ...(only && { only }), seed, beside });
  }
}
