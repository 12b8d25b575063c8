import { type BookState, type Change, type Json, type RowDoc, sameJson } from '../book/index.js';
import { columnOfField, holdsIn, withoutColumns } from '../book/row-columns.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';

export interface StillOurs {
  readonly changes: readonly Change[];
  /** Rows, as `SHEET/ROW`, of which something was left as another copy has it. */
  readonly parted: ReadonlySet<string>;
  readonly notes: readonly Problem[];
}

/**
 * Makes the changes of a step, but only those that find what the step left there. Where another copy has
 * written since, its value stays, and nothing is written into a row or column that it removed; a note says
 * how often.
 */
export function makeStillOurs(
  state: BookState,
  step: readonly Change[],
  label: string,
  make: (change: Change) => void,
): StillOurs {
  const changes: Change[] = [];
  const parted = new Set<string>();
  let left = 0;
  let where: Problem['where'];
  const comes = columnsThatCome(step);
  for (const each of step) {
    const now = state.at(each.path);
    const ours = sameJson(now, each.was);
    const possible = ours && !holdsOthers(state, each) ? withPlace(state, each, comes) : undefined;
    if (possible) {
      // At once: what follows may lie below it.
      make(possible);
      changes.push(possible);
    }
    if (possible !== each && (ours || !sameJson(now, each.to))) {
      left++;
      where ??= placeOf(each.path);
      if (each.path[2] === 'rows') parted.add(`${each.path[1]}/${each.path[3]}`);
    }
  }
  if (!where) return { changes, parted, notes: [] };
  return {
    changes,
    parted,
    notes: [
      {
        code: 'changed-elsewhere',
        message:
          left === 1
            ? say`One part of “${label}” was left as it is: another copy of the book has changed it since.`
            : say`${left} parts of “${label}” were left as they are: another copy of the book has changed them since.`,
        mend: say`Change it by hand if it should be otherwise.`,
        where,
      },
    ],
  };
}

/** Columns that a step brings back, which need not stand before what is in them. */
const columnsThatCome = (step: readonly Change[]): ReadonlySet<string> =>
  new Set(
    step.flatMap(({ path, to }) =>
      path.length === 4 && path[2] === 'columns' && to !== undefined ? [`${path[1]}/${path[3]}`] : [],
    ),
  );

/** A change as far as there is a place for it; undefined where there is none. */
function withPlace(state: BookState, change: Change, comes: ReadonlySet<string>): Change | undefined {
  const { path, to, was } = change;
  const [head, id, part, item, field, cell] = path;
  if (head !== 'sheets' || part === undefined || to === undefined) return change;
  const sheet = state.sheets.get(id!);
  if (!sheet) return undefined;
  const hasColumn = (column: string) => sheet.columnOrder.has(column) || comes.has(`${id}/${column}`);
  if (part === 'columns') return field === undefined || hasColumn(item!) ? change : undefined;
  if (part !== 'rows') return change;
  if (field === undefined) {
    const whole = to as unknown as RowDoc;
    const row = withoutColumns(whole, (column) => !hasColumn(column));
    return row === whole ? change : { path, to: row as Json, was };
  }
  if (!sheet.rows.has(item!)) return undefined;
  const column = field === 'cells' ? cell! : columnOfField(field);
  return column === undefined || hasColumn(column) ? change : undefined;
}

/** Whether a column that is to go holds something: what was its own went before it. */
function holdsOthers(state: BookState, { path: [head, sheet, part, id, field], to }: Change): boolean {
  if (head !== 'sheets' || part !== 'columns' || field !== undefined || to !== undefined) return false;
  const at = state.sheets.get(sheet!);
  return at?.columns.get(id!)?.own === true && [...at.rows.values()].some((row) => holdsIn(row, id!));
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
