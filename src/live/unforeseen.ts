import { excerpt, type Problem } from '../problem.js';
import { say } from '../words/index.js';

/** The refusal of a command during which something broke off that nobody foresaw. */
export const figuresLeft = (label: string, error: unknown): Problem => ({
  code: 'unforeseen',
  message: say`The ${label} could not be worked through, so it was taken back; the book is as it was (${excerpt(error instanceof Error ? error.message : String(error), 120)}).`,
  mend: say`Try it another way. Save a copy and tell whoever keeps this page, with what you were doing.`,
});

/** Said when figures cannot be worked out at all any more. */
export const BROKE_DOWN: Problem = {
  code: 'figures-not-worked-out',
  get message() {
    return say`The planning figures could not be worked out after this change, so they may be old.`;
  },
  get mend() {
    return say`Everything entered is there. Undo the last change, or save a copy and load the page again.`;
  },
};
