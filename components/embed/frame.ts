/** Whether a row is words across the table, and none of its data. */
export const isAcross = ({ cells }: HTMLTableRowElement): boolean =>
  cells.length === 1 && (cells[0]?.colSpan ?? 1) > 1;

/** Rows among the data that the page's author says are totals. */
export const TOTALS = 'tbody > tr[data-total]';

const isData = (row: HTMLTableRowElement): boolean => !isAcross(row) && !row.matches(TOTALS);

/** The table as it stands in the element, with its cells by row and column. */
export class Frame {
  readonly table: HTMLTableElement;
  readonly #columns = new Map<string, number>();
  readonly #rows = new Map<string, HTMLTableRowElement>();
  readonly #types: readonly (string | undefined)[];

  constructor(table: HTMLTableElement) {
    this.table = table;
    const head = table.tHead?.rows[table.tHead.rows.length - 1];
    const cells = [...(head?.cells ?? [])];
    // Written by hand: columns and rows are called by where they stand.
    const byPlace = !cells.some(({ dataset }) => dataset.column);
    for (const [i, { dataset }] of cells.entries()) {
      const column = dataset.column ?? (byPlace ? `c${i + 1}` : undefined);
      if (column) this.#columns.set(column, i);
    }
    const body = [...table.tBodies].flatMap(({ rows }) => [...rows]).filter(isData);
    for (const [i, row] of body.entries()) {
      const given = row.dataset.row;
      const id = byPlace ? this.#freeId(given, i) : given;
      if (id) this.#rows.set(id, row);
    }
    this.#types = cells.map(
      ({ dataset }, i) => dataset.type ?? (byPlace && isAllNumbers(body, i) ? 'number' : undefined),
    );
    this.#markColumns(cells);
  }

  /** Others on the page may number rows by `data-row`, too, in ways that are no ids. */
  #freeId(given: string | undefined, at: number): string {
    if (given && /^[a-z][\w-]*$/i.test(given) && !this.#rows.has(given)) return given;
    const id = `r${at + 1}`;
    return this.#rows.has(id) ? `${id}-` : id;
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

  /** Formula that the page gives a column of its own table, as in `data-formula="=Pounds/6"`. */
  formula(column: string): string | undefined {
    return this.#header(column)?.dataset.formula;
  }

  /** A column's title without its unit. */
  title(column: string): string {
    const words = [...(this.#header(column)?.childNodes ?? [])]
      .filter(({ nodeName }) => nodeName !== 'SMALL')
      .map(({ textContent }) => textContent);
    return words.join('').replace(/\s+/g, ' ').trim();
  }

  /** What names a row: its header, or its first cell. */
  rowTitle(row: string): string {
    const found = this.#rows.get(row);
    return (found?.querySelector('th') ?? found?.cells[0])?.textContent?.trim() ?? '';
  }

  /** What a column holds, as the table says it: `number`, `date`, `tick`, or nothing. */
  type(column: string): string | undefined {
    return this.#types[this.#columns.get(column) ?? -1];
  }

  /** Cells that the page opens to its readers: by column, or one by one. */
  open(also: readonly string[]): { row: string; column: string; cell: HTMLTableCellElement }[] {
    const columns = this.columns;
    const open = new Set(
      columns.filter((each) => also.includes(each) || this.#header(each)?.hasAttribute('data-open')),
    );
    for (const column of columns) {
      // A cell for two rows would be tried in both.
      const isSpanned = open.has(column) && this.rows.some((row) => this.cell(row, column)?.hidden);
      if (isSpanned || this.#header(column)?.matches('[data-planning], [data-formula]')) open.delete(column);
    }
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
  #markColumns(head: readonly HTMLElement[]): void {
    const marks = head.map((cell, i) =>
      [this.#types[i], cell.matches('[data-planning], [data-formula]') ? 'planning' : '']
        .filter(Boolean)
        .join(' '),
    );
    for (const { cells } of this.table.rows)
      marks.forEach((mark, i) => {
        const cell = mark === '' ? undefined : cells[i];
        if (cell) cell.className = mark;
      });
  }
}

/** Whether every cell of a column that holds something holds a number. */
function isAllNumbers(rows: readonly HTMLTableRowElement[], at: number): boolean {
  const texts = rows.map(({ cells }) => cells[at]?.textContent?.trim() ?? '').filter((text) => text !== '');
  return texts.length > 0 && texts.every((text) => /^[-+−]?\d[\d.,'’\s]*$/.test(text));
}
