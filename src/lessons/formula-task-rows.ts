import { type CellValue, toShown } from '../book/index.js';
import type { BookReading } from '../live/book-reading.js';
import type { LiveBook } from '../live/live-book.js';
import { shownDay, shownNumber, unitWord } from '../live/shown.js';
import { say, spoken } from '../words/index.js';
import type { FormulaTask } from './formula-tasks.js';

/** Columns and rows of a book that a task is asked about. */
export interface TaskSheet {
  readonly task: FormulaTask;
  readonly sheet: string;
  readonly rows: readonly string[];
}

/** More rows than these are no lesson any more. */
export const MOST_TASK_ROWS = 12;

/** The sheet of a task in a book; null where the book has none of its kind. */
export const sheetOf = (book: BookReading, task: FormulaTask): string | null =>
  book.sheets().find(({ kind }) => kind === task.kind)?.id ?? null;

/**
 * Rows whose figure is a number and that have a number in all that it is worked out from (a word where it is
 * counted in words): the others are about something else. `only`, where given, names rows by id.
 */
export function rowsOf(book: BookReading, task: FormulaTask, only?: readonly string[]): readonly string[] {
  const sheet = sheetOf(book, task);
  if (sheet === null) return [];
  const isThere = (value: CellValue): boolean =>
    typeof value === 'number' || (typeof value === 'string' && value !== '');
  return book
    .rowIds(sheet)
    .filter((row) => !only || only.includes(row))
    .filter(
      (row) =>
        typeof book.value(sheet, row, task.column) === 'number' &&
        task.from.every((column) => isThere(book.value(sheet, row, column))) &&
        isAsReckoned(book, task, sheet, row),
    );
}

function isAsReckoned(book: BookReading, task: FormulaTask, sheet: string, row: string): boolean {
  const from = task.from.map((column) => book.value(sheet, row, column));
  if (!task.reckon || !from.every((value) => typeof value === 'number')) return true;
  const decimals = book.column(sheet, task.column)?.decimals ?? 2;
  return agree(task.reckon(...from), book.value(sheet, row, task.column) as number, decimals);
}

/** Figures agree where they round to the same digits as the plan shows, or could. */
export function agree(yours: CellValue, plan: number, decimals: number): boolean {
  if (typeof yours !== 'number') return false;
  return Math.abs(yours - plan) <= 0.5 * 10 ** -decimals + 1e-9 * Math.max(1, Math.abs(plan));
}

/** A figure in words, with its unit. */
export function figureInWords(
  book: BookReading,
  sheet: string,
  row: string,
  column: string,
  value: CellValue,
): string {
  if (value === null || value === '') return say`nothing`;
  if (typeof value === 'object') return `${value.error} (${spoken(value.message)})`;
  if (typeof value === 'string') return /^\d{4}-\d{2}-\d{2}$/.test(value) ? shownDay(value) : spoken(value);
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  const word = unitWord(book.unit(sheet, row, column), value);
  return word ? `${shownNumber(value)} ${word}` : shownNumber(value);
}

/** The right answer as pupils would write it, with the columns' own names. */
export function answerShown(live: LiveBook, { sheet, task }: TaskSheet): string {
  return toShown(task.answer, sheet, live.inside.layout);
}

/** Steps that lead to the formula, one at a time: in words, then one row worked, then the formula. */
export function hintsFor(live: LiveBook, at: TaskSheet): readonly string[] {
  const { task, sheet, rows } = at;
  const working = rows[0] === undefined ? undefined : live.working(sheet, rows[0], task.column);
  const steps = working?.steps.map(({ text }) => text) ?? [];
  const first = steps[0] === undefined ? [] : [say`The first row: ${steps[0]}`];
  const rule = working?.rule ? [working.rule] : [];
  return [
    ...task.hints.map(spoken),
    ...rule,
    ...first,
    ...steps.slice(1),
    say`So every row has ${answerShown(live, at)}`,
  ];
}
