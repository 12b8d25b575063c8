import { type Command, newId } from '../../book/index.js';
import { type Counted, countShelf } from '../../planning/week/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

/** What counting the shelf would change, and the one command that posts the differences. */
export function shelfToCount(
  live: BookReading,
  counted: ReadonlyMap<string, number>,
): Result<{ counted: Counted; command: Command | null }> {
  const draws = live.sheetOfKind('draws');
  if (!draws) return refuse('no-draws', say`The book has no Draws.`, say`Open it with this version first.`);
  const found = countShelf(live.foodLines, counted, live.household.asOf, newId('r'));
  const rows = found.draws.map(({ id, cells }) => ({ id, cells: { ...cells } }));
  return ok({
    counted: found,
    command: rows.length > 0 ? { do: 'insert rows', sheet: draws, before: null, rows } : null,
  });
}
