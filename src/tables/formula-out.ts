import { parseA1Ref, tokenize } from '@borgar/fx';
import { sheetInEngine } from '../book/formula/references.js';
import { columnLetters, type Layout, toEngine } from '../book/index.js';
import type { OutTable } from './out-table.js';
import { functionOut } from './workbook-functions.js';

/** A table and the name of its worksheet. */
export interface Worksheet {
  readonly name: string;
  readonly table: OutTable;
}

/** Places in the workbook: columns as taken out, rows below the titles. What is not taken out has no place. */
class WorkbookLayout implements Layout {
  readonly #book: Layout;
  readonly #sheets: ReadonlyMap<string, { columns: Map<string, number>; rows: Map<string, number> }>;

  constructor(book: Layout, worksheets: readonly Worksheet[]) {
    this.#book = book;
    this.#sheets = new Map(
      worksheets.map(({ table }) => [
        table.sheet,
        {
          columns: new Map(table.columns.map(({ id }, i) => [id, i])),
          // The first row holds the titles.
          rows: new Map(table.rows.map(({ id }, i) => [id, i + 1])),
        },
      ]),
    );
  }

  sheetByTitle(title: string) {
    return this.#book.sheetByTitle(title);
  }
  titleOf(sheet: string) {
    return this.#sheets.has(sheet) ? this.#book.titleOf(sheet) : undefined;
  }
  rowIndex(sheet: string, row: string) {
    return this.#sheets.get(sheet)?.rows.get(row) ?? -1;
  }
  columnIndex(sheet: string, column: string) {
    return this.#sheets.get(sheet)?.columns.get(column) ?? -1;
  }
  rowAt() {
    return undefined;
  }
  columnAt() {
    return undefined;
  }
  columnByName(sheet: string, name: string) {
    return this.#book.columnByName(sheet, name);
  }
  nameOf(sheet: string, column: string) {
    return this.#book.nameOf(sheet, column);
  }
}

const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'`;

/** Writes the book's formulas as a workbook's, for worksheets that stand in one workbook together. */
export class FormulasOut {
  readonly #layout: Layout;
  readonly #bySheet: ReadonlyMap<string, Worksheet>;
  readonly #byEngineName: ReadonlyMap<string, Worksheet>;

  constructor(book: Layout, worksheets: readonly Worksheet[]) {
    this.#layout = new WorkbookLayout(book, worksheets);
    this.#bySheet = new Map(worksheets.map((each) => [each.table.sheet, each]));
    this.#byEngineName = new Map(worksheets.map((each) => [sheetInEngine(each.table.sheet), each]));
  }

  /**
   * A stored formula as the worksheet of its sheet has it, without `=`; undefined where it uses a function that
   * workbooks do not have, or refers to something that is not taken out.
   */
  write(stored: string, sheet: string, row: string): string | undefined {
    const own = this.#bySheet.get(sheet);
    if (!own) return undefined;
    let text = '';
    for (const { type, value } of tokenize(toEngine(stored, sheet, this.#layout, row))) {
      if (type === 'fx_prefix') continue;
      if (type === 'func') {
        const name = functionOut(value);
        if (name === undefined) return undefined;
        text += name;
      } else if (type === 'range' || type === 'range_beam') {
        const reference = this.#reference(value, own);
        if (reference === undefined) return undefined;
        text += reference;
      } else if (type === 'error' || type === 'range_named' || type === 'structured' || type === 'unknown') {
        return undefined;
      } else text += value;
    }
    return text;
  }

  #reference(value: string, own: Worksheet): string | undefined {
    const parsed = parseA1Ref(value);
    if (!parsed || !('range' in parsed)) return undefined;
    const context = parsed.context?.[0];
    const target = context === undefined ? own : this.#byEngineName.get(context);
    if (!target) return undefined;
    const prefix = target === own ? '' : `${quoted(target.name)}!`;
    const { top, left, right, bottom, $left, $right } = parsed.range;
    if (left == null || right == null) return undefined;
    if (top != null && bottom != null) return prefix + value.slice(value.lastIndexOf('!') + 1);
    // A whole column is what stands below its title: counting the title would change what it comes to.
    if (target.table.rows.length === 0) return undefined;
    const from = `${$left ? '$' : ''}${columnLetters(left)}`;
    const to = `${$right ? '$' : ''}${columnLetters(right)}`;
    return `${prefix}${from}$2:${to}$${target.table.rows.length + 1}`;
  }
}
