import fc from 'fast-check';
import { anyEdit } from './any-edit.js';
import { type Count, type Happening, Table } from './table.js';

const tab = fc.nat({ max: 1 });
const plain = <const H extends Happening['happens']>(...all: readonly H[]) =>
  fc.record({ happens: fc.constantFrom(...all), tab });

const weighted: readonly (readonly [weight: number, fc.Arbitrary<Happening>])[] = [
  [50, fc.record({ happens: fc.constant('edit' as const), tab, edit: anyEdit })],
  [5, plain('undo')],
  [3, plain('redo')],
  [2, plain('undo and redo')],
  [1, plain('reload')],
  [1, plain('close tab')],
  [
    2,
    fc.record({
      happens: fc.constant('look' as const),
      tab,
      sheet: fc.nat({ max: 60 }),
      column: fc.nat({ max: 60 }),
    }),
  ],
  [2, fc.constant<Happening>({ happens: 'open tab' })],
  [1, fc.constant<Happening>({ happens: 'take a copy' })],
  [
    5,
    fc.record({
      happens: fc.constant('deliver' as const),
      tab,
      which: fc.array(fc.nat({ max: 9 }), { minLength: 1, maxLength: 4 }),
    }),
  ],
  [
    1,
    fc.record({
      happens: fc.constant('bring back' as const),
      tab,
      sheet: fc.option(fc.nat({ max: 60 }), { nil: null }),
    }),
  ],
  [4, fc.record({ happens: fc.constant('edit the copy' as const), edit: anyEdit })],
  [1, fc.record({ happens: fc.constant('merge the copy' as const), tab, based: fc.boolean() })],
];

/** Happenings in turn, for a book of any size. */
export const sampled = (seed: number, count: number): Happening[] =>
  fc.sample(fc.oneof(...weighted.map(([weight, arbitrary]) => ({ weight, arbitrary }))), {
    seed,
    numRuns: count,
  });

type Model = Record<string, never>;

/** A happening as the property-testing library takes it; as text it is what `replay` takes. */
class HappeningCommand implements fc.Command<Model, Table> {
  constructor(readonly happening: Happening) {}
  check(): boolean {
    return true;
  }
  run(_model: Model, table: Table): void {
    table.happen(this.happening);
  }
  toString(): string {
    return JSON.stringify(this.happening);
  }
}

const commands = (most: number) =>
  fc.commands(
    weighted.flatMap(([weight, arbitrary]) =>
      // The library draws from a list evenly, so what is to come more often stands there more often.
      Array.from({ length: weight }, () => arbitrary.map((happening) => new HappeningCommand(happening))),
    ),
    { maxCommands: most, size: 'max' },
  );

/** Lets things happen in turn to a book that is opened from `text`. Throws at the first thing that is wrong. */
export function replay(text: string, happenings: readonly Happening[]): void {
  const table = new Table(text, { operations: 0, cells: 0 });
  try {
    for (const happening of happenings) table.happen(happening);
    table.settle();
  } finally {
    table.close();
  }
}

export interface Sequences {
  readonly seed: number;
  /** How many sequences. */
  readonly runs: number;
  /** Longest sequence. */
  readonly most: number;
  /** JSON texts of the books to begin with. */
  readonly books: readonly string[];
  readonly count: Count;
}

/** Random sequences; answers undefined, or a report on the shortest one found that goes wrong. */
export function failing({ seed, runs, most, books, count }: Sequences): string | undefined {
  const result = fc.check(
    fc.property(fc.nat({ max: books.length - 1 }), commands(most), (book, happenings) => {
      const table = new Table(books[book]!, count);
      try {
        fc.modelRun(() => ({ model: {}, real: table }), happenings);
        table.settle();
      } finally {
        table.close();
      }
    }),
    { seed, numRuns: runs },
  );
  if (!result.failed) return undefined;
  const [book, happenings] = result.counterexample!;
  const list = String(happenings)
    .replace(/\/\*replayPath.*$/s, '')
    .trim();
  return `seed ${seed}, book ${book}:\n[${list}]\n${result.errorInstance instanceof Error ? result.errorInstance.message : String(result.errorInstance)}`;
}
