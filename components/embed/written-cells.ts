/** What a page wrote into its own table, for as long as it holds; loaded with what works figures out. */

import { oneValueAt } from '../../src/book/formula/one-value.js';
import { type BookDoc, isFormula, type Raw, type Typed, usesOf } from '../../src/book/index.js';
import { areaOf } from '../../src/live/doings/formula-areas.js';
import { pointingHome } from '../../src/live/doings/pointing-home.js';
import type { ShownTable } from '../../src/live/embed/index.js';
import { wordOf } from '../../src/live/embed/keep-name.js';
import { takesOneValue } from '../../src/live/engine-sync.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { roundSig } from '../../src/units/index.js';
import { isSameUnit, numberIn, typedIn, writtenNumber } from './written-number.js';

/** Of each row, something of each column. */
type ByCell<T> = Readonly<Record<string, Readonly<Record<string, T>>>>;

/** The page's own table beside what was read of it: goes along with the book that is made of it. */
export interface PageTable {
  /** Id of its sheet. */
  readonly sheet: string;
  /** Language in which it is written, as a BCP 47 tag. */
  readonly language: string;
  /** What was read of its cells, as a book stores it. */
  readonly cells: ByCell<Raw>;
  /** Formulas of its columns, as a book stores them. */
  readonly formulas: Readonly<Record<string, string>>;
  /** What its cells say. */
  readonly texts: ByCell<string>;
}

/** A book that was made of a page's own table. */
export interface PageTableDoc extends BookDoc {
  readonly page_table?: PageTable;
}

/** The page's own words in the cells of a book, where neither they nor what they come from has been changed. */
export class WrittenCells {
  readonly #live: LiveBook;
  readonly #page: PageTable;

  constructor(live: LiveBook, page: PageTable) {
    this.#live = live;
    this.#page = page;
  }

  /** What the page wrote into a cell, or a number as it would; undefined for anything else. */
  text(row: string, column: string): string | undefined {
    const { sheet, texts, language } = this.#page;
    const text = texts[row]?.[column];
    if (text !== undefined && this.#stands(row, column, new Set())) return text;
    const value = this.#live.value(sheet, row, column);
    return typeof value === 'number' ? numberIn(roundSig(value), language) : undefined;
  }

  /** What editing a cell begins with. */
  typed(row: string, column: string): string | undefined {
    const { sheet, language } = this.#page;
    const raw = this.#live.typed(sheet, row, column);
    return typeof raw === 'number' ? typedIn(raw, language) : undefined;
  }

  /** A table with the page's own words where they hold. */
  table(shown: ShownTable): ShownTable {
    if (shown.sheet !== this.#page.sheet) return shown;
    const rows = shown.rows.map(({ id, cells }) => ({
      id,
      cells: cells.map((cell, i) => this.text(id, shown.columns[i]?.id ?? '') ?? cell),
    }));
    return { ...shown, rows };
  }

  /** What a reader wrote, as the page would have meant it: `30 jars` where it says `28 jars`. */
  meant(row: string, column: string, typed: Typed): Typed {
    const { texts, language } = this.#page;
    if (typeof typed !== 'string' || !this.#takesNumber(row, column)) return typed;
    const [now, before] = [typed, texts[row]?.[column] ?? ''].map((text) => writtenNumber(text, language));
    if (!now) return typed;
    return now.unit === '' || isSameUnit(now.unit, before?.unit ?? '') ? now.value : typed;
  }

  #takesNumber(row: string, column: string): boolean {
    const { sheet, cells } = this.#page;
    return typeof cells[row]?.[column] === 'number' || this.#live.column(sheet, column)?.type === 'number';
  }

  #stands(row: string, column: string, seen: Set<string>): boolean {
    const { sheet, cells, formulas } = this.#page;
    const key = `${row}/${column}`;
    if (seen.has(key)) return true;
    seen.add(key);
    const { state, layout } = this.#live.inside;
    const now = state.raw(sheet, row, column) ?? state.sheets.get(sheet)?.columns.get(column)?.formula;
    if (now !== (cells[row]?.[column] ?? formulas[column])) return false;
    if (!isFormula(now)) return true;
    const isOne = oneValueAt(now, takesOneValue);
    const ids = state.sheets.get(sheet)?.rowOrder.ids ?? [];
    const isSameRows = ids.length === Object.keys(cells).length && ids.every((id) => cells[id]);
    return usesOf(now, sheet).every((use) => {
      const area = use.sheet === sheet ? areaOf(use, layout) : undefined;
      if (!area) return false;
      const isOwnRow = use.byName && isOne(use.at, use.text.length);
      if (!isOwnRow && !isSameRows) return false;
      const rows = isOwnRow ? [row] : ids.slice(area.top, area.bottom + 1);
      const columns = state.sheets.get(sheet)?.columnOrder.ids.slice(area.left, area.right + 1) ?? [];
      return rows.every((each) => columns.every((of) => this.#stands(each, of, seen)));
    });
  }
}

/** The words of the page whose table a book was made of; null where it was made of none. */
export function writtenCells(live: LiveBook, { page_table: page }: PageTableDoc): WrittenCells | null {
  return page ? new WrittenCells(live, page) : null;
}

/**
 * The book alone, as a person takes it home. One that was made of a page's own table gets ids of its own, or it would
 * be taken for a copy of that of any other table.
 *
 * @param address of the page, and `name` of its table, where it has one: they make the same id whenever it is taken.
 */
export function withoutPage(
  { page_table: page, ...book }: PageTableDoc,
  address: string,
  name: string | null,
): BookDoc {
  const sheet = page && book.sheets[page.sheet];
  if (!sheet) return book;
  // Without a name it is told from others on the page by what it says.
  const said = name ?? JSON.stringify(page.texts);
  const heads = Object.values(sheet.columns).map(({ title }) => title);
  const id = `page-${wordOf([address, said, book.title, ...heads].join('\n'))}`;
  const asThere = (raw: Raw): Raw => (isFormula(raw) ? pointingHome(raw, page.sheet) : raw);
  const rows = Object.entries(sheet.rows).map(([row, { cells, ...rest }]) => [
    row,
    { ...rest, cells: Object.fromEntries(Object.entries(cells).map(([of, raw]) => [of, asThere(raw)])) },
  ]);
  const columns = Object.entries(sheet.columns).map(([column, { formula, ...rest }]) => [
    column,
    { ...rest, ...(formula !== undefined && { formula: pointingHome(formula, page.sheet) }) },
  ]);
  const { [page.sheet]: _sheet, ...sheets } = book.sheets;
  const home = { ...sheet, columns: Object.fromEntries(columns), rows: Object.fromEntries(rows) };
  return { ...book, id, sheets: { ...sheets, [id]: home } };
}
