/** The table as it stands in the element, with its cells by row and column. */
export class Frame {
  readonly table: HTMLTableElement;
  readonly #columns = new Map<string, number>();
  readonly #rows = new Map<string, HTMLTableRowElement>();

  constructor(table: HTMLTableElement) {
    this.table = table;
    const head = table.tHead?.rows[table.tHead.rows.length - 1];
    for (const [i, cell] of [...(head?.cells ?? [])].entries()) {
      const column = cell.dataset.column;
      if (column) this.#columns.set(column, i);
    }
    for (const row of table.querySelectorAll<HTMLTableRowElement>('tr[data-row]'))
      this.#rows.set(row.dataset.row!, row);
    this.#markColumns(head);
  }

  get columns(): string[] {
    return [...this.#columns.keys()];
  }

  get rows(): string[] {
    return [...this.#rows.keys()];
  }

  cell(row: string, column: string): HTMLTableCellElement | undefined {
    const at = this.#columns.get(column);
    return at === undefined ? undefined : this.#rows.get(row)?.cells[at];
  }

  /** A column's title without its unit. */
  title(column: string): string {
    const at = this.#header(column);
    return (at?.firstChild?.textContent ?? at?.textContent ?? column).trim();
  }

  /** What names a row: its header, or its first cell. */
  rowTitle(row: string): string {
    const found = this.#rows.get(row);
    return (found?.querySelector('th') ?? found?.cells[0])?.textContent?.trim() ?? '';
  }

  /** What a column holds, as the table says it: `number`, `date`, `tick`, or nothing. */
  type(column: string): string | undefined {
    return this.#header(column)?.dataset.type;
  }

  /** Cells that the page opens to its readers: by column, or one by one. */
  open(also: readonly string[]): { row: string; column: string; cell: HTMLTableCellElement }[] {
    const columns = this.columns;
    const open = new Set(
      columns.filter((each) => also.includes(each) || this.#header(each)?.hasAttribute('data-open')),
    );
    for (const column of columns)
      if (this.#header(column)?.hasAttribute('data-planning')) open.delete(column);
    return this.rows.flatMap((row) =>
      columns.flatMap((column) => {
        const cell = this.cell(row, column);
        return cell && (open.has(column) || cell.hasAttribute('data-open')) ? [{ row, column, cell }] : [];
      }),
    );
  }

  #header(column: string): HTMLTableCellElement | undefined {
    const head = this.table.tHead?.rows;
    return head?.[head.length - 1]?.cells[this.#columns.get(column) ?? -1];
  }

  /** Looks go by column: one class on each cell, since a table has no other way to say it. */
  #markColumns(head: HTMLTableRowElement | undefined): void {
    const marks = [...(head?.cells ?? [])].map(({ dataset }) =>
      [dataset.type, dataset.planning === undefined ? '' : 'planning'].filter(Boolean).join(' '),
    );
    marks.forEach((mark, i) => {
      if (mark === '') return;
      for (const row of this.table.rows) {
        const cell = row.cells[i];
        if (cell) cell.className = mark;
      }
    });
  }
}
