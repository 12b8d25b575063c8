import { type Layout, shifted, toStored } from '../book/index.js';
import type { ColumnView } from './columns.js';
import type { LiveBook } from './live-book.js';

/** Rows about to be made at the end of a sheet, so that formulas put into them can refer to them. */
export interface RowsToCome {
  readonly sheet: string;
  readonly ids: readonly string[];
}

/** Where things stand in an open book. Lasts until rows or columns change. */
class LiveLayout implements Layout {
  readonly #rows = new Map<string, { ids: readonly string[]; at: Map<string, number> }>();
  readonly #columns = new Map<string, readonly ColumnView[]>();

  constructor(
    readonly live: LiveBook,
    readonly toCome: RowsToCome | undefined,
  ) {}

  sheetByTitle(title: string): string | undefined {
    const wanted = title.toLowerCase();
    const sheets = this.live.sheets();
    return (
      sheets.find((sheet) => sheet.title.toLowerCase() === wanted) ??
      // As the book itself does: kind titles go on working after a sheet is renamed.
      sheets.find(({ kind }) => kind !== 'own' && kind === wanted)
    )?.id;
  }

  titleOf(sheet: string): string | undefined {
    return this.live.sheets().find(({ id }) => id === sheet)?.title;
  }

  rowIndex(sheet: string, row: string): number {
    return this.#rowsOf(sheet).at.get(row) ?? -1;
  }

  columnIndex(sheet: string, column: string): number {
    return this.#columnsOf(sheet).findIndex(({ id }) => id === column);
  }

  rowAt(sheet: string, index: number): string | undefined {
    return this.#rowsOf(sheet).ids[index];
  }

  columnAt(sheet: string, index: number): string | undefined {
    return this.#columnsOf(sheet)[index]?.id;
  }

  columnByName(sheet: string, name: string): string | undefined {
    const wanted = name.toLowerCase();
    return this.#columnsOf(sheet).find((column) => column.name.toLowerCase() === wanted)?.id;
  }

  nameOf(sheet: string, column: string): string | undefined {
    return this.#columnsOf(sheet).find(({ id }) => id === column)?.name;
  }

  #columnsOf(sheet: string): readonly ColumnView[] {
    let columns = this.#columns.get(sheet);
    if (!columns) {
      columns = this.live.columns(sheet);
      this.#columns.set(sheet, columns);
    }
    return columns;
  }

  #rowsOf(sheet: string) {
    let rows = this.#rows.get(sheet);
    if (!rows) {
      const there = this.live.rowIds(sheet);
      const ids = this.toCome?.sheet === sheet ? [...there, ...this.toCome.ids] : there;
      rows = { ids, at: new Map(ids.map((id, i) => [id, i])) };
      this.#rows.set(sheet, rows);
    }
    return rows;
  }
}

/**
 * Copies formulas of one sheet to other places, as filling and pasting do: what they refer to moves along,
 * but for parts held by `$` and columns called by name.
 */
export class FormulaShift {
  readonly #layout: Layout;

  constructor(
    live: LiveBook,
    readonly sheet: string,
    toCome?: RowsToCome,
  ) {
    this.#layout = new LiveLayout(live, toCome);
  }

  /** A formula as shown, so that it keeps pointing at the same things whatever moves meanwhile. */
  keep(shown: string): string {
    return toStored(shown, this.sheet, this.#layout);
  }

  /**
   * The formula `rows` further down and `columns` further right in the book's own order, ready to be
   * written to a cell. A reference that would leave the sheet becomes `#REF!`.
   */
  to(formula: string, rows: number, columns: number): string {
    return shifted(this.keep(formula), this.sheet, rows, columns, this.#layout);
  }
}
