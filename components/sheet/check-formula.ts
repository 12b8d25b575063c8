import { type BookDoc, isCellError, type SheetDoc } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

/** Rows of each sheet that are enough to read a formula against. */
const ENOUGH_ROWS = 2;

/**
 * What is wrong with the way a column's formula is written, or with a name in it; '' when nothing is. It is
 * tried in a small copy of the book, so the book itself, its history and its storage know nothing of it.
 * What its values come to is each row's own affair.
 */
export async function formulaProblem(
  live: LiveBook,
  sheet: string,
  formula: string,
  licenceKey: string,
): Promise<string> {
  const { HyperFormulaEngine } = await import('../../src/engine/hyperformula-engine.js');
  const { asOf, basis } = live.household;
  const trial = openBook(smallCopy(live.toJSON()), {
    engine: new HyperFormulaEngine({ asOf, basis }, licenceKey),
    today: () => asOf,
  });
  try {
    if (trial.rowIds(sheet).length === 0) trial.insertRows(sheet, [{}]);
    const made = trial.addColumn(sheet, 'Trial of a formula', { formula });
    if (!made.ok) return `${made.problem.message} ${made.problem.mend}`;
    const value = trial.value(sheet, trial.rowIds(sheet)[0]!, made.column);
    const unreadable = isCellError(value) && (value.error === '#ERROR!' || value.error === '#NAME?');
    return unreadable ? value.message : '';
  } finally {
    trial.close();
  }
}

function smallCopy(book: BookDoc): BookDoc {
  const sheets: Record<string, SheetDoc> = {};
  for (const [id, sheet] of Object.entries(book.sheets)) {
    sheets[id] = { ...sheet, rows: Object.fromEntries(Object.entries(sheet.rows).slice(0, ENOUGH_ROWS)) };
  }
  return { ...book, sheets };
}
