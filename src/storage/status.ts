import type { Problem } from '../problem.js';
import { phrase, spoken } from '../words/index.js';

export type KeepState = 'opening' | 'saving' | 'saved' | 'could not save' | 'not kept';

/** How the book stands with storage, in words for whoever edits it. */
export interface KeepStatus {
  readonly state: KeepState;
  /** In the language that is spoken when it is read. */
  readonly message: string;
  /** What stands in the way, and what to do about it. */
  readonly problem?: Problem;
}

const WORDS: Readonly<Record<KeepState, string>> = {
  opening: phrase('Opening the book.'),
  saving: phrase('Saving.'),
  saved: phrase('Saved on this device.'),
  'could not save': phrase('The last edits are not saved.'),
  'not kept': phrase('This book is not kept on this device.'),
};

export const keepStatus = (state: KeepState, problem?: Problem): KeepStatus => ({
  state,
  get message() {
    return problem ? `${problem.message} ${problem.mend}` : spoken(WORDS[state]);
  },
  ...(problem && { problem }),
});
