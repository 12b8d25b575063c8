import { type Problem, refuse } from '../problem.js';
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

/** The refusal when a sheet, row or column that a command names is not there. */
export const gone = (what: string, where: Problem['where']): ReturnType<typeof refuse> =>
  refuse(
    'gone',
    `That ${what} is not in the book any more.`,
    'It may have been removed in another tab; look at the sheet again.',
    where,
  );
