import type { Conflict } from './clashes.js';
import { sameJson } from './plain.js';

/**
 * What two copies set each its own way, until a person has decided it or let it go. Held for as long as the
 * page is open.
 */
export class ConflictList {
  #open: readonly Conflict[] = [];
  readonly #listeners = new Set<() => void>();

  get open(): readonly Conflict[] {
    return this.#open;
  }

  /** Adds those that are not in it yet. */
  add(conflicts: readonly Conflict[]): void {
    const fresh = conflicts.filter((each) => !this.#open.some((other) => same(each, other)));
    if (fresh.length === 0) return;
    this.#open = [...this.#open, ...fresh];
    this.#tell();
  }

  /** Decided, or let go. */
  close(conflict: Conflict): void {
    const left = this.#open.filter((each) => !same(each, conflict));
    if (left.length === this.#open.length) return;
    this.#open = left;
    this.#tell();
  }

  /** Calls back when it changed; returns what ends that. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

const same = (a: Conflict, b: Conflict): boolean =>
  sameJson([...a.path], [...b.path]) && sameJson(a.mine, b.mine) && sameJson(a.theirs, b.theirs);
