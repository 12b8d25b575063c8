import { phrase } from '../words/index.js';

/** What came of an answer. Only `right` counts as done. */
export interface Checked {
  readonly kind: 'right' | 'unit missing' | 'wrong unit' | 'not as asked' | 'unreadable' | 'wrong' | 'blank';
  /** In words, for the child, told by `spoken`; does not give the answer away. */
  readonly message: string;
}

export interface CheckOptions {
  /** True where the unit is to be written, too; else it stands beside the blank. */
  readonly writeUnits?: boolean;
}

export const RIGHT: Checked = { kind: 'right', message: phrase('Right.') };
export const WRONG: Checked = {
  kind: 'wrong',
  message: phrase('Not yet. Look at the numbers again, or take a hint.'),
};
