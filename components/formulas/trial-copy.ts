import type { Command } from '../../src/book/index.js';
import { type ChangedFigures, changedFigures } from '../../src/live/doings/dependents.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

/** A book with more rows is not copied whole for the sake of a look ahead. */
const MOST_COPIED = 6000;

/** Planning figures that a command would change, found on a copy of the book; null where the book is too large for that. */
export async function figuresChangedBy(
  live: LiveBook,
  command: Command,
  licenceKey: string,
): Promise<readonly ChangedFigures[] | null> {
  const rows = live.sheets().reduce((sum, { id }) => sum + live.rowIds(id).length, 0);
  if (rows > MOST_COPIED || live.needsEngine) return null;
  const { HyperFormulaEngine } = await import('../../src/engine/hyperformula-engine.js');
  const { asOf, basis } = live.household;
  const engine = new HyperFormulaEngine({ asOf, basis }, licenceKey);
  const copy = openBook(live.toJSON(), { engine, today: () => asOf });
  try {
    return copy.apply(command).ok ? changedFigures(live, copy) : [];
  } finally {
    copy.close();
  }
}
