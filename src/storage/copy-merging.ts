import { differences } from '../book/differences.js';
import type { BookDoc, Change } from '../book/types.js';
import { ok, type Result } from '../problem.js';
import type { Conflict } from './clashes.js';
import { type MergePlan, planMerge, usualDecision } from './merge-plan.js';
import type { BookCopy } from './merging.js';
import type { ParseBook } from './opening.js';
import type { BookReplica } from './replica.js';

/** What came of merging a copy into the open book. */
export interface MergedCopy {
  readonly changes: readonly Change[];
  readonly conflicts: readonly Conflict[];
}

/** Brings copies that were edited elsewhere into the open book. */
export class CopyMerging {
  readonly #replica: BookReplica;
  readonly #parseBook: ParseBook;
  /** Another copy's state, to be merged just before the edits that come of it. */
  #waiting: Uint8Array | undefined;

  constructor(replica: BookReplica, parseBook: ParseBook) {
    this.#replica = replica;
    this.#parseBook = parseBook;
  }

  /** How a copy would merge, row by row and cell by cell; changes nothing. */
  plan(copy: BookCopy): Result<MergePlan> {
    return planMerge(this.#replica, copy, this.#parseBook);
  }

  /**
   * Merges the other copy's state together with what `work` edits; `work` answers whether the edits were made.
   * `shown` is the book as it then stands: what is kept afterwards is what is shown.
   */
  during(plan: MergePlan, work: () => boolean, shown: () => BookDoc | undefined): boolean {
    this.#waiting = plan.update;
    try {
      const done = work();
      if (!done) return false;
      this.mergeWaiting();
      const book = shown();
      if (book) this.#replica.apply(differences(this.#replica.toBook(), book));
      return true;
    } finally {
      this.#waiting = undefined;
    }
  }

  /** Called before an edit of this page is applied: the state that it rests on must be there first. */
  mergeWaiting(): void {
    const update = this.#waiting;
    this.#waiting = undefined;
    if (!update) return;
    this.#replica.merge(update, 'local');
    // Asked about when the merge was planned.
    this.#replica.conflicts();
  }

  /** Merges a copy as another copy's edits; of what both changed, this one's stands unless removing it is usual. */
  take(copy: BookCopy): Result<MergedCopy> {
    const plan = this.plan(copy);
    if (!plan.ok) return plan;
    const { edits, conflicts } = plan.value;
    const removed = conflicts.filter((each) => usualDecision(each) === 'theirs');
    const changes = [...edits, ...removed.map(({ path, mine, theirs }) => ({ path, to: theirs, was: mine }))];
    this.#waiting = plan.value.update;
    this.mergeWaiting();
    this.#replica.apply([
      ...changes,
      ...conflicts
        .filter((each) => !removed.includes(each))
        .map(({ path, mine }) => ({ path, to: mine, was: mine })),
    ]);
    return ok({ changes, conflicts });
  }
}
