import type { Problem } from '../problem.js';

export type KeepState = 'opening' | 'saving' | 'saved' | 'could not save' | 'not kept';

/** How the book stands with storage, in words for whoever edits it. */
export interface KeepStatus {
  readonly state: KeepState;
  readonly message: string;
  /** What stands in the way, and what to do about it. */
  readonly problem?: Problem;
}

const WORDS: Readonly<Record<KeepState, string>> = {
  opening: 'Opening the book.',
  saving: 'Saving.',
  saved: 'Saved on this device.',
  'could not save': 'The last edits are not saved.',
  'not kept': 'This book is not kept on this device.',
};

export const keepStatus = (state: KeepState, problem?: Problem): KeepStatus => ({
  state,
  message: problem ? `${problem.message} ${problem.mend}` : WORDS[state],
  ...(problem && { problem }),
});
