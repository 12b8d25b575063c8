import type { Problem } from '../../src/problem.js';
import type { KeepStatus } from '../../src/storage/status.js';

/** What has happened to the stored book: said until a person has read it, whatever is saved meanwhile. */
const HAPPENED = new Set(['storage-cleared', 'book-partly-read', 'book-recovered', 'book-unreadable']);

/** What the person must be told about keeping the book. */
export class Notices {
  #happened: readonly Problem[] = [];
  #standing: Problem | undefined;
  /** What stands in the way and was read; the line under the sheet goes on saying it. */
  #read: string | undefined;

  get all(): readonly Problem[] {
    return this.#standing && this.#standing.code !== this.#read
      ? [this.#standing, ...this.#happened]
      : this.#happened;
  }

  hear({ state, problem }: KeepStatus): void {
    if (problem && HAPPENED.has(problem.code)) {
      if (!this.#happened.some(({ code }) => code === problem.code))
        this.#happened = [...this.#happened, problem];
      this.#standing = undefined;
    } else if (problem) this.#standing = problem;
    // While it is tried again nothing is known to be better yet.
    else if (state !== 'saving') {
      this.#standing = undefined;
      this.#read = undefined;
    }
  }

  dismiss(problem: Problem): void {
    if (problem === this.#standing) this.#read = problem.code;
    this.#happened = this.#happened.filter((each) => each !== problem);
  }

  forget(): void {
    this.#happened = [];
    this.#standing = undefined;
    this.#read = undefined;
  }
}
