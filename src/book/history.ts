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
