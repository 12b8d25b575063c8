import { type Command, newId } from '../../book/index.js';
import { postBatch } from '../../planning/garden/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

/** The command that puts a batch on the Shelf as a lot, filled less failed, and notes the lot at the batch. */
export function postBatchCommand(live: BookReading, batch: string): Result<Command> {
  const [sheet, shelf] = [live.sheetOfKind('batches'), live.sheetOfKind('shelf')];
  const row = live.garden?.batches.reckoned.get(batch)?.row;
  if (!sheet || !shelf || !row) {
    return refuse('gone', say`That batch is not in the book.`, say`Choose a row of Batches.`, { row: batch });
  }
  const posted = postBatch(row);
  if (!posted.ok) return { ok: false, problem: { ...posted.problem, where: { sheet, row: batch } } };
  const lot = newId('r');
  const { put_up_on, ...cells } = posted.value;
  return ok({
    do: 'all',
    called: say`posting of a batch`,
    of: [
      {
        do: 'insert rows',
        sheet: shelf,
        before: null,
        rows: [{ id: lot, cells: { ...cells, ...(put_up_on && { put_up_on }) } }],
      },
      { do: 'set cells', sheet, cells: [{ row: batch, column: 'lot', typed: lot }] },
    ],
  });
}
