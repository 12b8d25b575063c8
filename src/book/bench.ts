import { type Problem, refuse } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import type { TakesOneValue } from './formula/one-value.js';
import type { BookState } from './state.js';
import type { StateLayout } from './state-layout.js';
import type { Change } from './types.js';

/** What a command comes to, and what it left out with the reason. */
export interface Performed {
  readonly changes: readonly Change[];
  readonly notes: readonly Problem[];
}

/** What each kind of command is given to work with. */
export interface Workbench {
  readonly state: BookState;
  readonly layout: StateLayout;
  /** Which arguments of functions take one value; those of the standard unless given. */
  readonly takesOne?: TakesOneValue;
}

/** A change of what stands at `path`, or nothing where it stands there already. */
export function change(state: BookState, path: readonly string[], to: Change['to']): Change[] {
  const was = state.at(path);
  const same = was === to || (typeof to === 'object' && JSON.stringify(was) === JSON.stringify(to));
  return same ? [] : [{ path, to, was }];
}

/** Changes that take these back. */
export const inverse = (changes: readonly Change[]): Change[] =>
  [...changes].reverse().map(({ path, to, was }) => ({ path, to: was, was: to }));

const GONE = {
  sheet: phrase('That sheet is not in the book any more.'),
  row: phrase('That row is not in the book any more.'),
  column: phrase('That column is not in the book any more.'),
};

/** The refusal when a sheet, row or column that a command names is not there. */
export const gone = (what: keyof typeof GONE, where: Problem['where']): ReturnType<typeof refuse> =>
  refuse(
    'gone',
    spoken(GONE[what]),
    say`It may have been removed in another tab; look at the sheet again.`,
    where,
  );
