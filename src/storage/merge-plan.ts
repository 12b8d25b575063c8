import type { Command } from '../book/commands.js';
import { differences } from '../book/differences.js';
import type { StoredEdit } from '../book/stored-edit.js';
import type { BookDoc, Change, Json } from '../book/types.js';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { type Conflict, isIndifferent } from './clashes.js';
import { type BookCopy, mergeBooks } from './merging.js';
import type { ParseBook } from './opening.js';
import { sameJson } from './plain.js';
import { BookReplica } from './replica.js';

/** How a copy merges into the open book; nothing is changed yet. */
export interface MergePlan {
  /** What comes in, apart from what is in conflict. */
  readonly edits: readonly Change[];
  /** Values that both set, each its own way: nothing is written there unless chosen. */
  readonly conflicts: readonly Conflict[];
  /** The other copy, whole. */
  readonly theirs: BookDoc;
  /** Whether both grew from one beginning that is known: then removals come in too, not only what was added. */
  readonly sharesPast: boolean;
  /** The other copy's state, to be merged with the edits. */
  readonly update?: Uint8Array;
}

/** Finds out how a copy merges into `replica`, and that a book comes of it. */
export function planMerge(replica: BookReplica, copy: BookCopy, parseBook: ParseBook): Result<MergePlan> {
  const mine = replica.toBook();
  const theirs = copy.state && BookReplica.fromBook(copy.doc, copy.state);
  const sharesPast = theirs?.sharesPastWith(replica) ?? false;
  if (!sharesPast && copy.doc.id !== mine.id && !haveInCommon(mine, copy.doc))
    return refuse(
      'other-book',
      say`“${copy.doc.title}” is another book: it has nothing in common with this one.`,
      say`Open it beside this one (“Open a copy…”) to look at both.`,
    );
  if (theirs && sharesPast) return planByState(replica, theirs, copy.doc, parseBook);
  // A copy under another id has another title only to be told from this one.
  const doc = copy.doc.id === mine.id ? copy.doc : { ...copy.doc, id: mine.id, title: mine.title };
  const { book, conflicts } = mergeBooks(mine, doc);
  return planned(
    mine,
    book,
    conflicts.filter(({ path }) => !isIndifferent(path)),
    copy.doc,
    parseBook,
    {},
  );
}

function planByState(
  replica: BookReplica,
  theirs: BookReplica,
  doc: BookDoc,
  parseBook: ParseBook,
): Result<MergePlan> {
  const update = theirs.encodeSince(replica.vector());
  const trial = BookReplica.fromState(replica.encode());
  if (!trial.ok) return trial;
  const merged = trial.value.merge(update, 'remote', theirs.vector());
  if (!merged.ok) return merged;
  const mine = replica.toBook();
  const conflicts = trial.value.conflicts();
  const beside = doc.id !== mine.id;
  const book = { ...trial.value.toBook(), id: mine.id, ...(beside && { title: mine.title }) };
  const counted = conflicts.filter(({ path }) => !beside || path[0] !== 'title');
  return planned(mine, book, counted, doc, parseBook, { update });
}

function planned(
  mine: BookDoc,
  merged: BookDoc,
  found: readonly Conflict[],
  theirs: BookDoc,
  parseBook: ParseBook,
  state: { readonly update?: Uint8Array },
): Result<MergePlan> {
  const parsed = parseBook(merged);
  if (!parsed.ok) return { ok: false, problem: parsed.problems[0]! };
  // A row that one removed and the other edited is one question, not one for each of its cells.
  const whole = found.filter(({ mine: a, theirs: b }) => a === undefined || b === undefined);
  const conflicts = found.filter(
    (each) => whole.includes(each) || !whole.some(({ path }) => isBelow(each.path, path)),
  );
  const edits = differences(mine, parsed.book).filter(
    ({ path }) => !conflicts.some((each) => samePath(each.path, path) || isBelow(path, each.path)),
  );
  return ok({ edits, conflicts, theirs, sharesPast: state.update !== undefined, ...state });
}

const samePath = (a: readonly string[], b: readonly string[]): boolean => sameJson([...a], [...b]);
const isBelow = (path: readonly string[], above: readonly string[]): boolean =>
  path.length > above.length && above.every((part, i) => path[i] === part);

/** How a conflict is decided: one of the two, or another value. */
export type Decision = 'mine' | 'theirs' | { readonly value: Json };

/** What counts while nobody has decided: mine, except where mine is gone: then theirs, so that nothing is lost. */
export const usualDecision = ({ mine }: Conflict): Decision => (mine === undefined ? 'theirs' : 'mine');

/** Two texts as one, where both are wanted; undefined where that makes no sense. */
export function bothOf({ mine, theirs }: Conflict): string | undefined {
  const isWords = (value: Json | undefined): value is string =>
    typeof value === 'string' && !value.startsWith('=') && !/^\d{4}-\d{2}-\d{2}$/.test(value);
  return isWords(mine) && isWords(theirs) ? `${mine}; ${theirs}` : undefined;
}

/** The edit that a decision comes to. */
export function decided({ path, mine, theirs }: Conflict, decision: Decision): StoredEdit {
  const to = decision === 'mine' ? mine : decision === 'theirs' ? theirs : decision.value;
  return { path, to };
}

/** Key by which decisions are kept: what the conflict is about. */
export const conflictKey = ({ path }: Conflict): string => JSON.stringify(path);

/** Merging as one command, which can be taken back: what comes in, and each conflict as decided (else as usual). */
export const mergeCommand = (plan: MergePlan, decisions: ReadonlyMap<string, Decision>): Command => ({
  do: 'take over',
  called: say`merging of a copy`,
  edits: [
    ...plan.edits.map(({ path, to }) => ({ path, to })),
    ...plan.conflicts.map((each) => decided(each, decisions.get(conflictKey(each)) ?? usualDecision(each))),
  ],
});

/** Whether two books with different ids are copies of one: rows that both have and that hold the same. */
function haveInCommon(a: BookDoc, b: BookDoc): boolean {
  let shared = 0;
  const counts = [a, b].map((doc) =>
    Object.values(doc.sheets).reduce((sum, { rows }) => sum + Object.keys(rows).length, 0),
  );
  for (const [sheet, { rows }] of Object.entries(a.sheets))
    for (const [id, row] of Object.entries(rows)) {
      const other = b.sheets[sheet]?.rows[id];
      if (!other) continue;
      const entries = Object.entries(row.cells);
      const same = entries.filter(([column, value]) => other.cells[column] === value).length;
      if (same > 0 && same * 2 >= entries.length) shared++;
    }
  return shared > 0 && shared * 4 >= Math.min(...counts);
}
