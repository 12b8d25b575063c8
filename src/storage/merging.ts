import { differences } from '../book/differences.js';
import type { BookDoc, Change, Json } from '../book/types.js';
import { ok, type Result, refuse } from '../problem.js';
import type { ParseBook } from './opening.js';
import { isObject, keysOfBoth, own, put, sameJson } from './plain.js';
import { BookReplica } from './replica.js';

/** A book from a file, with the state that was saved beside it. */
export interface BookCopy {
  readonly doc: BookDoc;
  readonly state?: Uint8Array;
}

/** A value that both copies set, each its own way. */
export interface Conflict {
  readonly path: readonly string[];
  readonly mine: Json | undefined;
  readonly theirs: Json | undefined;
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

/** What came of merging a copy into the open book. */
export interface MergedCopy {
  readonly changes: readonly Change[];
  readonly conflicts: readonly Conflict[];
}

export interface MergePlan {
  readonly conflicts: readonly Conflict[];
  /** Does it; gives the changes to show. */
  merge(): Result<readonly Change[]>;
}

/** Finds out how a copy merges into `replica`, and that a book comes of it, before anything is changed. */
export function planMerge(replica: BookReplica, copy: BookCopy, parseBook: ParseBook): Result<MergePlan> {
  const mine = replica.toBook();
  if (copy.doc.id !== mine.id)
    return refuse(
      'other-book',
      `The file holds another book, "${copy.doc.title}".`,
      'Open it as a book of its own instead.',
    );
  const theirs = copy.state && BookReplica.fromBook(copy.doc, copy.state);
  if (theirs?.sharesPastWith(replica)) {
    const update = theirs.encodeSince(replica.vector());
    const trial = BookReplica.fromState(replica.encode(), update);
    if (!trial.ok) return trial;
    const parsed = parseBook(trial.value.toBook());
    if (!parsed.ok) return { ok: false, problem: parsed.problems[0]! };
    return ok({ conflicts: [], merge: () => replica.merge(update, 'local') });
  }
  const { book, changes, conflicts } = mergeBooks(mine, copy.doc);
  const parsed = parseBook(book);
  if (!parsed.ok) return { ok: false, problem: parsed.problems[0]! };
  return ok({
    conflicts,
    merge: () => {
      replica.apply(changes);
      return ok(changes);
    },
  });
}
