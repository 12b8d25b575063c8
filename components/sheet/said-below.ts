import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';
import type { GridCell } from '../grid/grid-view.js';
import { inWords, isNote } from '../look/problems.js';

/** What is said under a sheet: what was refused, done or noted, or what there is to say of the selected cell. */
export class SaidBelow {
  #said: Problem | string | null = null;
  #isOfCell = false;

  get said(): Problem | string | null {
    return this.#said;
  }

  say(message: Problem | string | null): void {
    this.#said = message;
    this.#isOfCell = false;
  }

  /**
   * Says what is wrong at a cell, or noted there, where everybody finds it; what was said of the last one goes.
   * Answers whether something else is said now.
   */
  sayOf(live: LiveBook, sheet: string, cell: GridCell): boolean {
    // Figures that are still to come may bring a problem with them.
    const waits = !live.isPlanned;
    const problem = waits ? null : (live.problem(sheet, cell.row, cell.column) ?? null);
    const note = live.noteOf(sheet, cell.row, cell.column);
    const said = problem && isNote(problem) ? inWords(problem) : problem;
    const noted = note === undefined ? null : say`Note: ${note}`;
    const isOther = said !== null || noted !== null || this.#isOfCell;
    if (isOther) this.#said = noted && said ? `${inWords(said)} ${noted}` : (said ?? noted);
    this.#isOfCell = waits || said !== null || noted !== null;
    return isOther;
  }

  /**
   * After a change of the book: what is said of the selected cell is what is so now; what else was said was said before
   * it, and goes. Answers whether something else is said now.
   */
  heed(changes: boolean, anew: () => boolean): boolean {
    if (this.#isOfCell) return anew();
    if (this.#said === null || !changes) return false;
    this.#said = null;
    return true;
  }
}
