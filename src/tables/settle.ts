import type { NewRow, Typed } from '../book/commands.js';
import { newId } from '../book/ids.js';
import { numberFormat, say } from '../words/index.js';
import { readFormulas } from './formula-in.js';
import { MOST_LISTED } from './limits.js';
import type { ColumnPlan, ImportPlan } from './plan.js';
import { readCell } from './read-cell.js';
import { ANEW, type Anew } from './read-number.js';
import { isBlank, isSourceFormula, type RowProblem, rowProblem, type SourceTable } from './types.js';

/** Ready to be brought in: rows as the book takes them, and all that was found on the way. */
export interface SettledImport {
  readonly rows: readonly NewRow[];
  /** Lines of the file on which the rows begin. */
  readonly lines: readonly number[];
  /** Formulas, written once all rows stand: they may refer to one another. */
  readonly formulas: readonly { readonly row: string; readonly column: string; readonly typed: string }[];
  readonly problems: readonly RowProblem[];
  /** Problems beyond those listed. */
  readonly more: number;
  /** Cells of text that look like formulas and come in as text. */
  readonly likeFormulas: number;
  readonly cells: number;
  /** Ids of the columns filled, by their place in the file; those of new columns are new. */
  readonly columnIds: ReadonlyMap<number, string>;
  /** Other things worth saying. */
  readonly notes: readonly string[];
}

const taken = (plan: ImportPlan): ColumnPlan[] =>
  plan.columns.filter(({ target }) => target.to !== 'leave out');

/** Reads every row by the plan. Yields how far it is, for `inSlices`. */
export function* settleImport(table: SourceTable, plan: ImportPlan): Generator<number, SettledImport, void> {
  const columns = taken(plan);
  const columnIds = new Map(
    columns.map(({ index, target }) => [index, target.to === 'column' ? target.column : newId('c')] as const),
  );
  const body = plan.header ? table.rows.slice(1) : table.rows;
  const found = new Findings(table.problems);
  const expected = plan.columns.length;
  const rows: NewRow[] = [];
  const rowIds = new Map<number, string>();
  const shownAnew = new Map<Anew, number>();
  let likeFormulas = 0;
  let cellCount = 0;
  // Rows of a file are as long as its first one; a worksheet is a rectangle anyway.
  const usual = table.rows[0]?.cells.length ?? 0;
  for (const [at, { line, cells }] of body.entries()) {
    if (at % 500 === 0) yield body.length === 0 ? 1 : at / body.length;
    if (cells.every(isBlank)) continue;
    if (cells.length !== usual && usual > 0) found.add(unevenRow(line, cells.length, usual, expected));
    const read: Record<string, Typed> = {};
    for (const { index, heading, reading } of columns) {
      const cell = cells[index];
      if (isBlank(cell)) continue;
      const { typed, problem, likeFormula, anew } = readCell(cell, reading);
      if (typed === null) continue;
      if (anew) shownAnew.set(anew, (shownAnew.get(anew) ?? 0) + 1);
      cellCount++;
      if (likeFormula) likeFormulas++;
      if (problem) found.add(rowProblem(line, heading, problem.code, problem.message, problem.mend));
      read[columnIds.get(index)!] = typed;
    }
    const id = newId('r');
    rowIds.set(line, id);
    rows.push({ id, cells: read });
  }
  const hasFormulas = body.some(({ cells }) =>
    cells.some((cell) => cell !== undefined && isSourceFormula(cell)),
  );
  const { formulas, refused } = hasFormulas
    ? readFormulas(body, columns, columnIds, rowIds, table.name)
    : { formulas: [], refused: [] };
  for (const each of refused) found.add(each);
  return {
    rows,
    lines: [...rowIds.keys()],
    formulas,
    problems: found.listed,
    more: found.more,
    likeFormulas,
    cells: cellCount,
    columnIds,
    notes: [...table.notes, ...ANEW.flatMap((how) => noteOf(how, shownAnew.get(how) ?? 0))],
  };
}

const NOTES: { readonly [A in Anew]: (count: number) => string } = {
  fraction: (count) =>
    count === 1
      ? say`1 cell is written as a fraction; it comes in as the number, as 0.5 for 1/2.`
      : say`${grouped(count)} cells are written as a fraction; they come in as the number, as 0.5 for 1/2.`,
  percentage: (count) =>
    count === 1
      ? say`1 cell is written in per cent; it comes in as the number, as 0.12 for 12 %.`
      : say`${grouped(count)} cells are written in per cent; they come in as the number, as 0.12 for 12 %.`,
  'leading zero': (count) =>
    count === 1
      ? say`1 cell is written with zeros before the number; it comes in without them.`
      : say`${grouped(count)} cells are written with zeros before the number; they come in without them.`,
  rounded: (count) =>
    count === 1
      ? say`1 cell is written with more digits than a number holds; it comes in rounded to 17 of them.`
      : say`${grouped(count)} cells are written with more digits than a number holds; they come in rounded to 17 of them.`,
  'short year': (count) =>
    count === 1
      ? say`1 cell is written with a year of two digits: 68 is read as 2068, 69 as 1969.`
      : say`${grouped(count)} cells are written with a year of two digits: 68 is read as 2068, 69 as 1969.`,
};

const grouped = (n: number): string => numberFormat().format(n);

const noteOf = (how: Anew, count: number): string[] => (count === 0 ? [] : [NOTES[how](count)]);

class Findings {
  readonly listed: RowProblem[];
  more = 0;

  constructor(first: readonly RowProblem[]) {
    this.listed = first.slice(0, MOST_LISTED);
    this.more = first.length - this.listed.length;
  }

  add(problem: RowProblem): void {
    if (this.listed.length < MOST_LISTED) this.listed.push(problem);
    else this.more++;
  }
}

const unevenRow = (line: number, has: number, usual: number, width: number): RowProblem =>
  has > usual
    ? rowProblem(
        line,
        null,
        'too-many-fields',
        say`This row has ${has} fields where the first has ${usual}.`,
        width > usual
          ? say`A separator may stand inside a text without quotes; the fields past the last title are columns of their own here.`
          : say`A separator may stand inside a text without quotes.`,
      )
    : rowProblem(
        line,
        null,
        'too-few-fields',
        has === 1
          ? say`This row has 1 field where the first has ${usual}; the rest stay blank.`
          : say`This row has ${has} fields where the first has ${usual}; the rest stay blank.`,
        say`Look whether a field was left out in the middle: then the others stand one column off.`,
      );
