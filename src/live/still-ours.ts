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
    if (sameJson(now, each.was) && !holdsOthers(state, each)) {
      // At once: what follows may lie below it.
      make(each);
      changes.push(each);
    } else if (sameJson(now, each.was) || !sameJson(now, each.to)) {
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

/** Whether a column that is to go holds something: what was its own went before it. */
function holdsOthers(state: BookState, { path: [head, sheet, part, id, field], to }: Change): boolean {
  if (head !== 'sheets' || part !== 'columns' || field !== undefined || to !== undefined) return false;
  for (const row of state.sheets.get(sheet!)?.rows.values() ?? [])
    if (Object.hasOwn(row.cells, id!)) return state.sheets.get(sheet!)?.columns.get(id!)?.own === true;
  return false;
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
