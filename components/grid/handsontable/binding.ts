import type { CellValue, Raw } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import type { Accessor, Line } from './line.js';
import { plainValue } from './show.js';
import { ColumnWidths } from './widths.js';

/**
 * One sheet as the grid sees it: lines and visible columns by index, each known by its id. Read once per
 * change of the sheet's shape; values are always asked of the book.
 */
export class SheetBinding {
  /** The rows in the book's order, then the blank line. */
  lines: readonly Line[] = [];
  /** Columns that are not hidden, in the book's order. */
  columns: readonly ColumnView[] = [];
  /** Every column, hidden ones too. */
  all: readonly ColumnView[] = [];
  readonly widths: ColumnWidths;
  readonly #accessors = new Map<string, Accessor>();
  readonly #columnOf = new Map<unknown, string>();
  #indexOfRow = new Map<string, number>();
  #byId = new Map<string, ColumnView>();

  constructor(
    readonly live: LiveBook,
    readonly sheet: string,
  ) {
    this.widths = new ColumnWidths(live, sheet);
    this.read();
  }

  /** Looks at the sheet's shape again. Answers what is not as it was. */
  read(): { readonly rows: boolean; readonly columns: boolean } {
    const ids = this.live.rowIds(this.sheet);
    const rows = ids.length !== this.rowCount || ids.some((id, i) => this.lines[i]!.id !== id);
    if (rows || this.lines.length === 0) {
      this.lines = [...ids.map((id) => ({ id })), { id: null }];
      this.#indexOfRow = new Map(ids.map((id, i) => [id, i]));
    }
    this.all = this.live.columns(this.sheet);
    this.#byId = new Map(this.all.map((column) => [column.id, column]));
    const visible = this.all.filter(({ hidden }) => !hidden);
    const columns =
      visible.length !== this.columns.length ||
      visible.some(({ id, type }, i) => id !== this.columns[i]!.id || type !== this.columns[i]!.type);
    this.columns = visible;
    if (rows || columns) this.widths.refit(visible);
    return { rows, columns };
  }

  /** Rows of the book; the blank line has this index. */
  get rowCount(): number {
    return Math.max(0, this.lines.length - 1);
  }

  indexOfRow(row: string): number {
    return this.#indexOfRow.get(row) ?? -1;
  }

  indexOfColumn(column: string): number {
    return this.columns.findIndex(({ id }) => id === column);
  }

  column(id: string): ColumnView | undefined {
    return this.#byId.get(id);
  }

  /** Place of a column in the book's order, hidden ones counted: its letter in formulas. */
  letterIndex(column: string): number {
    return this.all.findIndex(({ id }) => id === column);
  }

  accessor(column: string): Accessor {
    let accessor = this.#accessors.get(column);
    if (!accessor) {
      accessor = ({ id }) => {
        const view = this.#byId.get(column);
        if (id === null || !view || this.#waits(view)) return null;
        return plainValue(this.live.value(this.sheet, id, column), view);
      };
      this.#accessors.set(column, accessor);
      this.#columnOf.set(accessor, column);
    }
    return accessor;
  }

  /** Cells are drawn before figures are there; whatever needs figures has them worked out first. */
  #waits({ role }: ColumnView): boolean {
    return role === 'planning' && !this.live.isPlanned;
  }

  /** The column that an accessor stands for. */
  columnOf(accessor: unknown): string | undefined {
    return this.#columnOf.get(accessor);
  }

  value(line: Line, column: string): CellValue {
    return line.id === null ? null : this.live.value(this.sheet, line.id, column);
  }

  typed(line: Line, column: string): Raw | null {
    return line.id === null ? null : this.live.typed(this.sheet, line.id, column);
  }
}
