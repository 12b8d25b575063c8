import { newId, type Typed } from '../../../src/book/index.js';
import type { Problem } from '../../../src/problem.js';
import type { ActionHost } from './action.js';

type Cells = Readonly<Record<string, Typed>>;

/** Writes new rows at the end of the sheet, as one step of undo, and says how many; `none` where there are none. */
export function addRows(
  { live, sheet, say }: ActionHost,
  rows: readonly Cells[],
  row: string,
  none: Problem,
): void {
  const made = rows.map((cells) => ({ id: newId('r'), cells }));
  const done = made.length > 0 ? live.apply({ do: 'insert rows', sheet, before: null, rows: made }) : null;
  if (!done) say(none);
  else if (!done.ok) say(done.problem);
  else say(`${made.length} ${made.length === 1 ? row : `${row}s`} added. Undo takes them back.`);
}
