import { inverse } from './bench.js';
import type { Change } from './types.js';

interface Step {
  readonly label: string;
  readonly changes: readonly Change[];
}

const MOST_STEPS = 500;

/** What was done, and what was undone: one history for the whole book. */
export class History {
  #done: Step[] = [];
  #undone: Step[] = [];

  /** What 'undo' would take back, in words. */
  get undoLabel(): string | undefined {
    return this.#done.at(-1)?.label;
  }

  get redoLabel(): string | undefined {
    return this.#undone.at(-1)?.label;
  }

  add(label: string, changes: readonly Change[]): void {
    if (changes.length === 0) return;
    this.#done.push({ label, changes });
    if (this.#done.length > MOST_STEPS) this.#done.shift();
    this.#undone = [];
  }

  /** Makes one step of the last `count`: work done in parts is taken back as one. */
  join(count: number, label: string): void {
    if (count < 1 || count > this.#done.length) return;
    const parts = this.#done.splice(-count);
    this.#done.push({ label, changes: parts.flatMap(({ changes }) => changes) });
  }

  /** What was undone cannot be done again: for work that was broken off and taken back. */
  forgetUndone(): void {
    this.#undone = [];
  }

  /** Changes that take back the last step, or undefined. */
  undo(): readonly Change[] | undefined {
    const step = this.#done.pop();
    if (!step) return undefined;
    this.#undone.push(step);
    return inverse(step.changes);
  }

  redo(): readonly Change[] | undefined {
    const step = this.#undone.pop();
    if (!step) return undefined;
    this.#done.push(step);
    return step.changes;
  }
}
