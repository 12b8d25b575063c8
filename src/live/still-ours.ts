import { type BookState, type Change, sameJson } from '../book/index.js';
import type { Problem } from '../problem.js';

/**
 * Makes the changes of a step, but only those that find what the step left there. Where another copy has
 * written since, its value stays, and a note says how often.
 */
export function makeStillOurs(
  state: BookState,
  step: readonly Change[],
  label: string,
  make: (change: Change) => void,
): { readonly changes: readonly Change[]; readonly notes: readonly Problem[] } {
  const changes: Change[] = [];
  let left = 0;
  let where: Problem['where'];
  for (const each of step) {
    const now = state.at(each.path);
    if (sameJson(now, each.was)) {
      // At once: what follows may lie below it.
      make(each);
      changes.push(each);
    } else if (!sameJson(now, each.to)) {
      left++;
      where ??= placeOf(each.path);
    }
  }
  if (!where) return { changes, notes: [] };
  return {
    changes,
    notes: [
      {
        code: 'changed-elsewhere',
        message: `${left === 1 ? 'One part' : `${left} parts`} of “${label}” ${left === 1 ? 'was' : 'were'} left as ${left === 1 ? 'it is' : 'they are'}: another copy of the book has changed ${left === 1 ? 'it' : 'them'} since.`,
        mend: 'Change it by hand if it should be otherwise.',
        where,
      },
    ],
  };
}

const placeOf = ([head, sheet, part, row, field, column]: readonly string[]): NonNullable<
  Problem['where']
> =>
  head !== 'sheets'
    ? {}
    : {
        sheet: sheet!,
        ...(part === 'rows' && row !== undefined && { row }),
        ...(field === 'cells' && column !== undefined && { column }),
      };
