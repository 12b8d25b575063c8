import { differences } from '../book/differences.js';
import type { BookDoc, Change, Json } from '../book/types.js';
import type { Conflict } from './clashes.js';
import { isObject, keysOfBoth, own, put, sameJson } from './plain.js';
import { BookReplica } from './replica.js';

/** A book from a file, with the state that was saved beside it. */
export interface BookCopy {
  readonly doc: BookDoc;
  readonly state?: Uint8Array;
}

export interface MergedBooks {
  readonly book: BookDoc;
  /** What makes the merged book of mine. */
  readonly changes: readonly Change[];
  /** Mine was kept, except where mine was blank. */
  readonly conflicts: readonly Conflict[];
}

/**
 * Merges two copies of a book by row and cell. `base` is an earlier version of both; without it, the base is
 * what both agree on: whatever only one of them has is then taken as added, never as removed by the other.
 */
export function mergeBooks(mine: BookDoc, theirs: BookDoc, base?: BookDoc): MergedBooks {
  const shared = common(mine as Json, theirs as Json) as unknown as BookDoc;
  const start = BookReplica.fromBook(base ?? shared);
  if (base) {
    // A row that both have and the base has not is one row, whoever brought it over.
    const added = differences(base, shared).filter(({ was }) => was === undefined);
    start.apply(added);
  }
  const from = start.toBook();
  const mineByPath = new Map(differences(from, mine).map((change) => [JSON.stringify(change.path), change]));
  const conflicts: Conflict[] = [];
  const taken = differences(from, theirs).filter(({ path, to }) => {
    const own = mineByPath.get(JSON.stringify(path));
    if (!own || sameJson(own.to, to)) return true;
    conflicts.push({ path, mine: own.to, theirs: to });
    if (own.to !== undefined) return false;
    mineByPath.delete(JSON.stringify(path));
    return true;
  });
  const merged = BookReplica.fromBook(from);
  const other = BookReplica.fromBook(from);
  merged.apply([...mineByPath.values()]);
  other.apply(taken);
  merged.merge(other.encode());
  const book = merged.toBook();
  return { book, changes: differences(mine, book), conflicts };
}

const LISTS = new Set(['settings', 'sheets', 'columns', 'rows', 'cells']);

/** What both agree on. Below a list of things by id every item that both have is looked into. */
function common(a: Json, b: Json, inList = false): Json {
  const shared: Record<string, Json> = {};
  if (!isObject(a) || !isObject(b)) return shared;
  for (const key of keysOfBoth(a, b)) {
    const [left, right] = [own(a, key), own(b, key)];
    if (left === undefined || right === undefined) continue;
    const lookInto = isObject(left) && isObject(right) && (inList || LISTS.has(key));
    if (lookInto) put(shared, key, common(left, right, !inList));
    else if (sameJson(left, right)) put(shared, key, left);
  }
  return shared;
}
