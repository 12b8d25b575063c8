import type { BookState, Change, Command } from '../book/index.js';
import type { Allotment } from '../planning/types.js';
import type { PlanBook } from './plan-book.js';

/** Kept columns of Draws on which the allotment hangs. */
const BEARING = new Set(['date', 'food', 'way', 'amount', 'container', 'lot', 'corrects']);

const same = (a: Allotment, b: Allotment): boolean =>
  Object.keys(a).length === Object.keys(b).length &&
  Object.entries(a).every(([lot, amount]) => b[lot] === amount);

/** Kept columns that say where a draw came from: written anew, what was stored no longer holds. */
const ORIGIN = new Set(['food', 'way', 'container', 'lot', 'corrects']);

/** Whether what is stored as allotted to a draw belongs to the cells that it has now. */
export type AllottedAsStored = (row: string) => boolean;

/** Of a command: draws that came from another state of the book, with what was allotted to them there. */
export function allottedAsStored(command: Command, written: readonly Change[]): AllottedAsStored {
  if (command.do !== 'take over') return () => false;
  if (command.whole) return () => true;
  const came = new Set<string>();
  for (const { path } of written)
    if (path[2] === 'rows' && (path.length === 4 || path[4] === 'allotted')) came.add(path[3]!);
  return (row) => came.has(row);
}

/** Changes that forget the stored allotment of draws whose food, measure or lot was written anew. */
export function forgotten(
  state: BookState,
  plan: PlanBook,
  written: readonly Change[],
  stays: AllottedAsStored,
): Change[] {
  const sheet = plan.rows.sheet('draws')?.id;
  const changes: Change[] = [];
  for (const { path } of written) {
    const [head, sheetId, part, row, field, column] = path;
    if (
      head !== 'sheets' ||
      sheetId !== sheet ||
      part !== 'rows' ||
      field !== 'cells' ||
      !ORIGIN.has(column!) ||
      stays(row!)
    )
      continue;
    const was = state.at(['sheets', sheetId!, 'rows', row!, 'allotted']);
    if (was !== undefined && !changes.some((each) => each.path[3] === row)) {
      changes.push({ path: ['sheets', sheetId!, 'rows', row!, 'allotted'], to: undefined, was });
    }
  }
  return changes;
}

/**
 * Posts the draws that a command wrote: what was allotted to which lot is stored with the draw, so that
 * later draws and lots do not move it. A draw written anew is allotted anew.
 */
export function postings(
  state: BookState,
  plan: PlanBook,
  written: readonly Change[],
  stays: AllottedAsStored,
): Change[] {
  const sheet = plan.rows.sheet('draws');
  if (!sheet) return [];
  const drawn = new Set<string>();
  for (const { path, to } of written) {
    const [head, sheetId, part, row, field, column] = path;
    if (head !== 'sheets' || sheetId !== sheet.id || part !== 'rows' || stays(row!)) continue;
    if (field === undefined ? to !== undefined : field === 'cells' && BEARING.has(column!)) drawn.add(row!);
  }
  const changes: Change[] = [];
  for (const id of drawn) {
    const row = state.sheets.get(sheet.id)?.rows.get(id);
    if (!row) continue;
    const found = plan.lines.lineOf('draws', id)?.plan.allotments.get(id);
    const allotted = found && Object.keys(found).length > 0 ? found : undefined;
    const was = row.allotted;
    if (allotted === was || (allotted && was && same(allotted, was))) continue;
    changes.push({ path: ['sheets', sheet.id, 'rows', id, 'allotted'], to: allotted, was });
  }
  return changes;
}
