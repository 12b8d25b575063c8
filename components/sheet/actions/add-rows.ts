import { newId, type Typed } from '../../../src/book/index.js';
import type { Problem } from '../../../src/problem.js';
import type { ActionHost } from './action.js';

type Cells = Readonly<Record<string, Typed>>;

/** Writes new rows at the end of the sheet, as one step of undo, and tells how many, as `added` says it; `none` where there are none. */
export function addRows(
  { live, sheet, say: tell }: ActionHost,
  rows: readonly Cells[],
  added: (n: number) => string,
  none: Problem,
): void {
  const made = rows.map((cells) => ({ id: newId('r'), cells }));
  const done = made.length > 0 ? live.apply({ do: 'insert rows', sheet, before: null, rows: made }) : null;
  if (!done) tell(none);
  else if (!done.ok) tell(done.problem);
  else tell(added(made.length));
}
