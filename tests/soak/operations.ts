import { startingBook } from '../support/random-book.js';
import { failing } from './happenings.js';
import type { Count } from './table.js';

export interface Figures extends Count {
  readonly sequences: number;
  readonly seconds: number;
  /** Sequences that went wrong, each shortened as far as it goes. */
  readonly failures: readonly string[];
}

export interface Options {
  /** At least so many. */
  readonly operations: number;
  readonly seed: number;
  /** Called after every few sequences. */
  readonly said?: (figures: Figures) => void;
  /** Called with each failure when it is found. */
  readonly failed?: (failure: string) => void;
  /** Ends after so many failures. */
  readonly mostFailures?: number;
}

/** Sequences between two seeds: few, so that a failure is found again quickly by its own seed. */
const AT_ONCE = 10;
/** Happenings in the longest sequence. */
const LONGEST = 80;

function books(): string[] {
  const small = startingBook();
  const text = JSON.stringify(small.toJSON());
  small.close();
  const empty = JSON.parse(text) as { sheets: Record<string, { rows: object }> };
  for (const sheet of Object.values(empty.sheets)) sheet.rows = {};
  // What most happens to is a book with something in it.
  return [text, text, text, JSON.stringify(empty)];
}

/** Random happenings to small books, each followed by every check. */
export function soakOperations({ operations, seed, said, failed, mostFailures = 1 }: Options): Figures {
  const count: Count = { operations: 0, cells: 0 };
  const failures: string[] = [];
  const from = performance.now();
  const start = books();
  const figures = (rounds: number): Figures => ({
    ...count,
    sequences: rounds * AT_ONCE,
    seconds: Math.round((performance.now() - from) / 1000),
    failures,
  });
  let rounds = 0;
  while (count.operations < operations && failures.length < mostFailures) {
    const before = { ...count };
    const failure = failing({ seed: seed + rounds, runs: AT_ONCE, most: LONGEST, books: start, count });
    rounds++;
    if (failure !== undefined) {
      failures.push(failure);
      failed?.(failure);
      // What was done to shorten it does not count.
      Object.assign(count, before);
    }
    said?.(figures(rounds));
  }
  return figures(rounds);
}
