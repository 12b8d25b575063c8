import type { CellValue } from '../../src/book/index.js';
import type { FormulaCheck, TaskChecked } from '../../src/lessons/formula-task.js';
import type { FormulaTask } from '../../src/lessons/formula-tasks.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { openBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';

const NOT_LOADED: Problem = {
  code: 'engine-not-loaded',
  message: 'Formulas could not be loaded, so nothing can be checked.',
  mend: 'Check the connection and try again.',
};

/** What is asked of a check. */
export interface CheckAsked {
  readonly live: LiveBook;
  readonly task: FormulaTask;
  readonly only: readonly string[] | undefined;
  readonly seed: string;
  readonly licenceKey: string;
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
  #of: LiveBook | null = null;

  /** Problem: it could not be loaded. Null: the book changed meanwhile, so that it says nothing. */
  async check(formula: string, asked: CheckAsked): Promise<CheckAnswer | Problem | null> {
    try {
      if (this.#of !== asked.live) this.close();
      this.#of = asked.live;
      this.#check ??= this.#open(asked);
      const mine = this.#check;
      const check = await mine;
      const checked = await check.check(formula, rest);
      if (mine !== this.#check) return null;
      return { checked, given: new Map(check.given) };
    } catch (error) {
      console.error(error);
      this.close();
      return NOT_LOADED;
    }
  }

  /** The book changed, or nobody asks any more. */
  close(): void {
    void this.#check?.then((check) => check.close()).catch(() => {});
    this.#check = null;
  }

  async #open({ live, task, only, seed, licenceKey }: CheckAsked): Promise<FormulaCheck> {
    const [{ HyperFormulaEngine }, { FormulaCheck: Check }] = await Promise.all([
      import('../../src/engine/hyperformula-engine.js'),
      import('../../src/lessons/formula-task.js'),
    ]);
    const { asOf, basis } = live.household;
    const engine = new HyperFormulaEngine({ asOf, basis }, licenceKey);
    const copy = openBook(live.toJSON(), { engine, today: () => asOf });
    return new Check(copy, task, { ...(only && { only }), seed });
  }
}
