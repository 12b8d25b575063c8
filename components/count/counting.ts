import { type Command, newId, readNumber } from '../../src/book/index.js';
import { shelfToCount } from '../../src/live/doings/count-shelf.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { toIsoDay } from '../../src/planning/dates.js';
import {
  type Counted,
  type NotSeen,
  notSeen,
  type PlaceToCount,
  placesToCount,
} from '../../src/planning/week/index.js';
import { ok, type Result } from '../../src/problem.js';
import { say } from '../../src/words/index.js';

/** What was typed for a lot, and whether the difference was not eaten. */
export interface Entry {
  readonly typed: string;
  readonly notEaten: boolean;
}

export type Entries = ReadonlyMap<string, Entry>;

/** What is to be counted, and the foods that nobody has seen for months. */
export interface ToBeCounted {
  readonly places: readonly PlaceToCount[];
  readonly unseen: readonly NotSeen[];
}

export const toBeCounted = (live: LiveBook): ToBeCounted => ({
  places: placesToCount(live.foodLines),
  unseen: notSeen(live.foodLines, live.household.asOf),
});

/** As typed: a number, NaN where it is none, null where nothing is written. */
export function countTyped(typed: string): number | null {
  // A number pad has a comma or a point, whichever its country writes; a thousand jars are in no cellar.
  const text = typed.trim().replace(/^(\d*),(\d{1,2})$/, '$1.$2');
  return text === '' ? null : (readNumber(text) ?? Number.NaN);
}

/** The numbers of the lots that were counted. */
export function countedOf(entries: Entries): ReadonlyMap<string, number> {
  const counted = new Map<string, number>();
  for (const [lot, { typed }] of entries) {
    const n = countTyped(typed);
    if (n !== null) counted.set(lot, n);
  }
  return counted;
}

export interface Posting {
  readonly counted: Counted;
  /** Null where there is nothing to write. */
  readonly command: Command | null;
}

/**
 * What the counting posts, as one command. A food that was asked for since nobody had seen it, and stands there
 * as written, gets a count of no difference: now it was seen.
 */
export function postingOf(live: LiveBook, entries: Entries, unseen: readonly NotSeen[]): Result<Posting> {
  const numbers = countedOf(entries);
  const found = shelfToCount(live, numbers);
  if (!found.ok) return found;
  const { counted, command } = found.value;
  const sheet = live.sheetOfKind('draws')!;
  const differences = command?.do === 'insert rows' ? command.rows : [];
  const rows = differences.map(({ id, cells = {} }) =>
    entries.get(String(cells.lot))?.notEaten ? { id, cells: { ...cells, not_use: true } } : { id, cells },
  );
  const changed = new Set(counted.changes.map(({ lot }) => lot));
  const date = toIsoDay(live.household.asOf);
  const seen = unseen.flatMap(({ food, way, lots }) => {
    const lot = lots.find((id) => numbers.has(id));
    if (lot === undefined || lots.some((id) => changed.has(id)) || counted.problems[lot]) return [];
    const cells = { date, food, way, amount: 0, purpose: 'count', lot, note: 'counted: as written' };
    return [{ id: newId('r'), cells }];
  });
  const all = [...rows, ...seen];
  const post: Command = { do: 'insert rows', sheet, before: null, rows: all };
  return ok({
    counted,
    command: all.length === 0 ? null : { do: 'all', called: say`counting`, of: [post] },
  });
}
