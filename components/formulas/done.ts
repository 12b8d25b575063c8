import type { Outcome } from '../../src/book/index.js';
import { inWords } from '../look/problems.js';

/** Something was changed in the list, or could not be: to be said above it. */
export type FormulaDone = CustomEvent<{ readonly said: string; readonly done: boolean }>;

/** Says what came of a command; the list shows it with a way to take it back. */
export function tellDone(from: HTMLElement, outcome: Outcome, words: string): void {
  const said = outcome.ok ? words : inWords(outcome.problem);
  const detail = { said, done: outcome.ok };
  from.dispatchEvent(new CustomEvent('formula-done', { detail, bubbles: true, composed: true }));
}
