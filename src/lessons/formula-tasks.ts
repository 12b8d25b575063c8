import type { Command, SheetKind, TypedCell } from '../book/index.js';
import type { BookReading } from '../live/book-reading.js';
import { phrase } from '../words/index.js';
import type { Random } from './random.js';
import type { Level } from './types.js';

/**
 * A planning column that pupils can write as a formula: its figure is a function of what stands in the row (or
 * in its column) and of nothing else.
 */
export interface FormulaTask {
  /** Kind of sheet and column, as in `foods/weeks_of_supply`. */
  readonly id: string;
  readonly kind: SheetKind;
  readonly column: string;
  readonly level: Level;
  /** What is asked, in a sentence; told by `spoken`, as are hints and needs. */
  readonly asks: string;
  /** Columns that the figure is worked out from, by id. */
  readonly from: readonly string[];
  /** How the sheet's working is thought of, a step at a time; before the steps of one row. */
  readonly hints: readonly string[];
  /** One right answer, with columns by id: `=[on_hand]/[use_per_week]`. Rows in which it does not hold are left out. */
  readonly answer: string;
  /**
   * The same from the columns of `from`, where it takes no more than these. Rows in which the plan says something
   * else (a lot past its best is not counted on) are not shown.
   */
  readonly reckon?: (...from: readonly number[]) => number;
  /** What a book needs for it. */
  readonly needs: string;
  /** Kinds of sheet from whose rows the figure mostly comes: a check need look at no others. */
  readonly feeds: readonly SheetKind[];
  /** Other numbers in what the rows' figures depend on. */
  readonly vary: (
    book: BookReading,
    sheet: string,
    rows: readonly string[],
    random: Random,
  ) => readonly Command[];
}

/** An amount as it stands in a household's book: mostly whole, sometimes in quarters, now and then nothing. */
function amount(random: Random, most: number): number {
  const draw = random.whole(1, 12);
  if (draw === 1) return 0;
  return draw <= 4 ? random.whole(1, most * 4) / 4 : random.whole(1, most);
}

const cells = (sheet: string | undefined, list: readonly TypedCell[]): readonly Command[] =>
  sheet === undefined || list.length === 0 ? [] : [{ do: 'set cells', sheet, cells: list }];

/** New amounts in columns of the rows themselves. */
const inRows =
  (columns: Readonly<Record<string, number>>): FormulaTask['vary'] =>
  (_book, sheet, rows, random) =>
    cells(
      sheet,
      rows.flatMap((row) =>
        Object.entries(columns).map(([column, most]) => ({ row, column, typed: amount(random, most) })),
      ),
    );

const isSame = (
  book: BookReading,
  a: readonly [string, string],
  b: readonly [string, string],
  columns: readonly string[],
) => columns.every((column) => book.value(...a, column) === book.value(...b, column));

/** The stock of each food: its lots hold another count, the first of them; and another own use. */
const stockAndUse: FormulaTask['vary'] = (book, sheet, rows, random) => {
  const shelf = book.sheetOfKind('shelf');
  const lots = shelf === undefined ? [] : book.rowIds(shelf);
  const counts = rows.flatMap((row) => {
    const lot = lots.find((each) => isSame(book, [sheet, row], [shelf!, each], ['food', 'way']));
    return lot === undefined ? [] : [{ row: lot, column: 'count', typed: amount(random, 60) }];
  });
  return [...cells(shelf, counts), ...inRows({ own_use: 6 })(book, sheet, rows, random)];
};

export const FORMULA_TASKS: readonly FormulaTask[] = [
  {
    id: 'beds/short_or_over',
    kind: 'beds',
    column: 'short_or_over',
    level: 1,
    asks: phrase('How many pounds too few (below 0) or too many will each planting bring?'),
    from: ['pounds_wanted', 'expected_pounds'],
    hints: [phrase('Begin with what is expected. Which number is compared with it?')],
    answer: '=[expected_pounds]-[pounds_wanted]',
    reckon: (wanted = 0, expected = 0) => expected - wanted,
    needs: phrase('Write crops and plants planned in Beds, and what is eaten of them in Foods.'),
    feeds: ['household', 'shelf', 'draws', 'foods', 'beds', 'harvest', 'facts'],
    vary: inRows({ plants: 200, own_yield: 5 }),
  },
  {
    id: 'beds/expected_pounds',
    kind: 'beds',
    column: 'expected_pounds',
    level: 1,
    asks: phrase('How many pounds will the plants planned bring?'),
    from: ['plants', 'yield'],
    hints: [phrase('One plant gives so many pounds. How many do all of them give?')],
    answer: '=[plants]*[yield]',
    reckon: (plants = 0, each = 0) => plants * each,
    needs: phrase('Write crops and plants planned in Beds.'),
    feeds: ['household', 'beds', 'harvest', 'facts'],
    vary: inRows({ plants: 200, own_yield: 5 }),
  },
  {
    id: 'foods/weeks_of_supply',
    kind: 'foods',
    column: 'weeks_of_supply',
    level: 2,
    asks: phrase('How many weeks will what is on hand last?'),
    from: ['on_hand', 'use_per_week'],
    hints: [phrase('How many times can a week’s use be taken from what is there?')],
    answer: '=[on_hand]/[use_per_week]',
    reckon: (onHand = 0, use = 0) => onHand / use,
    needs: phrase('Write lots on the Shelf, and own use a week in Foods.'),
    feeds: ['household', 'shelf', 'draws', 'foods', 'beds', 'harvest', 'facts'],
    vary: stockAndUse,
  },
  {
    id: 'household/part_of_table',
    kind: 'household',
    column: 'part_of_table',
    level: 2,
    asks: phrase('What percent of all shares is each share?'),
    from: ['share'],
    hints: [
      phrase('The whole is all shares together. SUM adds up a column.'),
      phrase('Part ÷ whole, and 100 times that is percent.'),
    ],
    answer: '=[share]/SUM([share])*100',
    needs: phrase('Write people and their shares in Household.'),
    feeds: ['household'],
    vary: inRows({ share: 12 }),
  },
  {
    id: 'harvest/per_plant_so_far',
    kind: 'harvest',
    column: 'per_plant_so_far',
    level: 2,
    asks: phrase('How many pounds has one plant given so far?'),
    from: ['plants', 'pounds_so_far'],
    hints: [phrase('Pounds for each plant: which number is shared out over which?')],
    answer: '=[pounds_so_far]/[plants]',
    reckon: (plants = 0, pounds = 0) => pounds / plants,
    needs: phrase('Write in Harvest what came in, and from how many plants.'),
    feeds: ['household', 'beds', 'harvest'],
    vary: inRows({ plants: 120, amount: 60 }),
  },
  {
    id: 'shelf/holds',
    kind: 'shelf',
    column: 'holds',
    level: 3,
    asks: phrase('How many quarts (or pounds) do the containers that are left hold?'),
    from: ['container', 'left'],
    hints: [phrase('CONTAINER_HOLDS(Container) tells how much one of them holds.')],
    answer: '=[left]*CONTAINER_HOLDS([container])',
    needs: phrase('Write lots with their containers on the Shelf.'),
    feeds: ['household', 'shelf', 'draws'],
    vary: inRows({ count: 60 }),
  },
  {
    id: 'supplies/short',
    kind: 'supplies',
    column: 'short',
    level: 3,
    asks: phrase('How much is wanted and not there? Never below 0.'),
    from: ['on_hand', 'wanted'],
    hints: [
      phrase('What is wanted, less what is there.'),
      phrase('Where more is there than wanted, nothing is short: MAX gives the larger of two numbers.'),
    ],
    answer: '=MAX(0,[wanted]-[on_hand])',
    reckon: (onHand = 0, wanted = 0) => Math.max(0, wanted - onHand),
    needs: phrase('Write supplies, and batches that will take them.'),
    feeds: ['household', 'supplies', 'batches', 'foods', 'shelf', 'draws', 'beds'],
    vary: inRows({ on_hand: 120 }),
  },
];

export const formulaTaskWith = (id: string): FormulaTask | undefined =>
  FORMULA_TASKS.find((task) => task.id === id);

/** Tasks by their ids, with commas or blanks between; undefined where one is none, or they are of several kinds. */
export function tasksNamed(ids: string): readonly FormulaTask[] | undefined {
  const tasks = ids.split(/[\s,]+/).flatMap((id) => (id === '' ? [] : [formulaTaskWith(id)]));
  const known = tasks.filter((task) => task !== undefined);
  const isWhole = known.length > 0 && known.length === tasks.length;
  return isWhole && known.every(({ kind }) => kind === known[0]!.kind) ? [...new Set(known)] : undefined;
}
