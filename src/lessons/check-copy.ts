import { type BookDoc, type CellValue, type Json, sameJson, toStored, usesOf } from '../book/index.js';
import type { BookReading } from '../live/book-reading.js';
import type { LiveBook } from '../live/live-book.js';
import { rowsOf, sheetOf } from './formula-task-rows.js';
import type { FormulaTask } from './formula-tasks.js';

/** A copy to check formulas on. */
export interface CheckCopy {
  readonly copy: LiveBook;
  /** False where sheets stand without their rows: formulas that read those would see nothing there. */
  readonly isWhole: boolean;
}

/**
 * Opens a copy of a book in which only sheets have rows that the figure comes from: in a large book a check takes
 * a tenth of the time. Where that changes a number in the rows asked about, the copy is whole.
 */
export function openCheckCopy(
  book: BookReading,
  task: FormulaTask,
  open: (doc: BookDoc) => LiveBook,
  { only, whole = false }: { readonly only?: readonly string[] | undefined; readonly whole?: boolean } = {},
): CheckCopy {
  const doc = book.toJSON();
  if (whole) return { copy: open(doc), isWhole: true };
  const sheets = Object.fromEntries(
    Object.entries(doc.sheets).map(([id, sheet]) => [
      id,
      task.feeds.includes(sheet.kind) ? sheet : { ...sheet, rows: {} },
    ]),
  );
  const copy = open({ ...doc, sheets });
  if (isAlike(book, copy, task, only)) return { copy, isWhole: false };
  copy.close();
  return { copy: open(doc), isWhole: true };
}

/** True where the rows asked about show the same in both. */
function isAlike(book: BookReading, copy: BookReading, task: FormulaTask, only?: readonly string[]): boolean {
  const sheet = sheetOf(book, task);
  if (sheet === null) return false;
  const said = (of: BookReading, row: string): Json =>
    [...task.from, task.column].map((column): CellValue => of.value(sheet, row, column)) as unknown as Json;
  return rowsOf(book, task, only).every((row) => sameJson(said(book, row), said(copy, row)));
}

/** True where a formula, as typed, reads sheets from which the figure does not come. */
export function readsOtherSheets(book: BookReading, task: FormulaTask, formula: string): boolean {
  const sheet = sheetOf(book, task);
  if (sheet === null || (!formula.includes('!') && !formula.includes('.'))) return false;
  const kinds = new Map(book.sheets().map(({ id, kind }) => [id, kind]));
  return usesOf(toStored(formula, sheet, book.inside.layout), sheet).some(
    (use) => use.sheet !== sheet && !task.feeds.some((kind) => kind === kinds.get(use.sheet)),
  );
}
