import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { openKeep } from './keep.js';
import { storageProblem } from './keep-problems.js';
import type { BookCopy } from './merging.js';
import type { ParseBook } from './opening.js';
import { BookReplica } from './replica.js';

/** A book kept in this browser, read as a copy to be merged; nothing of it is changed. */
export async function readKeptCopy(
  database: string | undefined,
  id: string,
  parseBook: ParseBook,
): Promise<Result<BookCopy>> {
  const keep = await openKeep(database);
  if (!keep.ok) return keep;
  try {
    const loaded = await keep.value.load(id);
    if (!loaded)
      return refuse(
        'book-not-here',
        say`That book is not kept in this browser any more.`,
        say`Choose another.`,
      );
    const replica = BookReplica.fromState(...loaded.updates);
    if (!replica.ok) return replica;
    const parsed = parseBook(replica.value.toBook());
    return parsed.ok
      ? ok({ doc: parsed.book, state: replica.value.encode() })
      : { ok: false, problem: parsed.problems[0]! };
  } catch (error) {
    return { ok: false, problem: storageProblem(error) };
  } finally {
    await keep.value.close();
  }
}
