import { type BookDoc, isCellError, type SheetDoc } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { say, spoken } from '../../src/words/index.js';
import { shownCell } from './shown.js';

/** Rows of each sheet that are enough to read a formula against. */
const ENOUGH_ROWS = 2;
/** A book with more rows is not copied whole for the sake of a preview. */
const MOST_COPIED = 6000;
const PREVIEWED = 3;

/** The answer that a formula gives in one row. */
export interface FirstAnswer {
  /** What the row is called: what stands in its first column. */
  readonly row: string;
  readonly answer: string;
}

/** What came of trying a formula: '' where nothing is wrong with the way it is written. */
export interface Tried {
  readonly problem: string;
  /** Empty where the book is too large to try it on the whole. */
  readonly first: readonly FirstAnswer[];
}

/**
 * Tries formulas of a column in a copy of the book, so that the book itself, its history and its storage know
 * nothing of it. What its values come to is each row's own affair.
 */
export class FormulaTrial {
  readonly #live: LiveBook;
  readonly #sheet: string;
  readonly #licenceKey: string;
  /** The column that the formula is for, which a copy of it need not hold; '' for a new one. */
  readonly #column: string;
  #copy: Promise<LiveBook> | null = null;
  #whole = false;

  constructor(live: LiveBook, sheet: string, licenceKey: string, column = '') {
    this.#live = live;
    this.#sheet = sheet;
    this.#licenceKey = licenceKey;
    this.#column = column;
  }

  async try(formula: string): Promise<Tried> {
    this.#copy ??= this.#open();
    const copy = await this.#copy;
    const sheet = this.#sheet;
    const made = copy.addColumn(sheet, 'Trial of a formula', { formula });
    if (!made.ok)
      return { problem: `${spoken(made.problem.message)} ${spoken(made.problem.mend)}`.trim(), first: [] };
    const rows = copy.rowIds(sheet);
    const value = copy.value(sheet, rows[0]!, made.column);
    const unreadable = isCellError(value) && (value.error === '#ERROR!' || value.error === '#NAME?');
    const first = this.#whole && !unreadable ? this.#first(copy, made.column) : [];
    copy.removeColumns(sheet, [made.column]);
    return { problem: unreadable ? spoken(value.message) : '', first };
  }

  close(): void {
    void this.#copy?.then((copy) => copy.close());
    this.#copy = null;
  }

  #first(copy: LiveBook, column: string): FirstAnswer[] {
    const sheet = this.#sheet;
    const [head] = copy.columns(sheet).filter(({ hidden, id }) => !hidden && id !== column);
    const view = copy.column(sheet, column)!;
    return this.#live
      .rowIds(sheet)
      .slice(0, PREVIEWED)
      .map((row, i) => {
        const { text, unit } = shownCell(copy, sheet, row, view, false);
        const name = head ? shownCell(copy, sheet, row, head, false).text : '';
        return {
          row: name || say`row ${i + 1}`,
          answer: [text, unit].filter(Boolean).join(' ') || say`blank`,
        };
      });
  }

  async #open(): Promise<LiveBook> {
    const { HyperFormulaEngine } = await import('../../src/engine/hyperformula-engine.js');
    const { asOf, basis } = this.#live.household;
    const book = this.#live.toJSON();
    const rows = Object.values(book.sheets).reduce((sum, each) => sum + Object.keys(each.rows).length, 0);
    this.#whole = rows <= MOST_COPIED;
    const copy = openBook(this.#whole ? book : smallCopy(book), {
      engine: new HyperFormulaEngine({ asOf, basis }, this.#licenceKey),
      today: () => asOf,
    });
    if (this.#column !== '') copy.removeColumns(this.#sheet, [this.#column]);
    if (copy.rowIds(this.#sheet).length === 0) copy.insertRows(this.#sheet, [{}]);
    return copy;
  }
}

function smallCopy(book: BookDoc): BookDoc {
  const sheets: Record<string, SheetDoc> = {};
  for (const [id, sheet] of Object.entries(book.sheets)) {
    sheets[id] = { ...sheet, rows: Object.fromEntries(Object.entries(sheet.rows).slice(0, ENOUGH_ROWS)) };
  }
  return { ...book, sheets };
}
