import type { ColumnView } from '../../src/live/columns.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { type ShownCell, shownSoFar } from './shown.js';
import { textWidth } from './text-width.js';

/** One row as a reader sees it; the same object until something in the row changes. */
export interface ShownRow {
  readonly id: string;
  readonly cells: readonly ShownCell[];
  /** Lower-case text of the whole row, to look through. */
  readonly text: string;
}

export interface FoundProblem {
  readonly row: string;
  readonly column: ColumnView;
  readonly problem: Problem;
}

/** A note of the household's: on a cell, or (row null) on a whole column. */
export interface FoundNote {
  readonly row: string | null;
  readonly column: ColumnView;
  readonly words: string;
}

/** The shown rows of one sheet, worked out once and then only where a change says so. */
export class ShownRows {
  readonly #rows = new Map<string, ShownRow>();
  #columns: readonly ColumnView[] = [];
  #long: ReadonlySet<string> | undefined;

  constructor(
    readonly live: LiveBook,
    readonly sheet: string,
    readonly pending: boolean,
    /** Ids or titles of the columns to show; empty: all that are not hidden. */
    readonly only: readonly string[] = [],
  ) {
    this.#columns = this.#choose();
  }

  get columns(): readonly ColumnView[] {
    return this.#columns;
  }

  /** Ids of own columns that hold long texts. */
  get long(): ReadonlySet<string> {
    this.#long ??= new Set(
      this.#columns
        .filter((column) => textWidth(this.live, this.sheet, column) !== undefined)
        .map(({ id }) => id),
    );
    return this.#long;
  }

  heed({ cells, sheets, changes }: BookChange): void {
    if (sheets.has(this.sheet)) {
      this.#rows.clear();
      this.#long = undefined;
      this.#columns = this.#choose();
      return;
    }
    for (const { sheet, row } of cells) if (sheet === this.sheet) this.#rows.delete(row);
    // Colours and notes are no cells.
    for (const { path } of changes)
      if (path[1] === this.sheet && path[2] === 'rows') this.#rows.delete(path[3] ?? '');
  }

  #choose(): ColumnView[] {
    const all = this.live.columns(this.sheet);
    if (this.only.length === 0) return all.filter(({ hidden }) => !hidden);
    return this.only.flatMap((name) => {
      const column = all.find(({ id, title }) => id === name || title.toLowerCase() === name.toLowerCase());
      return column ? [column] : [];
    });
  }

  row(id: string): ShownRow {
    let row = this.#rows.get(id);
    if (!row) {
      const cells = this.#columns.map((column) =>
        shownSoFar(this.live, this.sheet, id, column, this.pending),
      );
      row = {
        id,
        cells,
        text: cells
          .map(({ text }) => text)
          .join('\n')
          .toLowerCase(),
      };
      this.#rows.set(id, row);
    }
    return row;
  }

  /** Rows that hold all of the words looked for, in the book's order. */
  matching(words: string): readonly string[] {
    const ids = this.live.rowIds(this.sheet);
    const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
    return wanted.length === 0
      ? ids
      : ids.filter((id) => wanted.every((word) => this.row(id).text.includes(word)));
  }

  problems(ids: readonly string[]): FoundProblem[] {
    return ids.flatMap((id) =>
      this.row(id).cells.flatMap(({ problem }, i) =>
        problem ? [{ row: id, column: this.#columns[i]!, problem }] : [],
      ),
    );
  }

  /** Notes on the columns shown, then on their cells. */
  notes(ids: readonly string[]): FoundNote[] {
    const onColumns = this.#columns.flatMap((column): FoundNote[] =>
      column.note === undefined ? [] : [{ row: null, column, words: column.note }],
    );
    const onCells = ids.flatMap((id) =>
      this.row(id).cells.flatMap(({ note }, i): FoundNote[] =>
        note === undefined ? [] : [{ row: id, column: this.#columns[i]!, words: note }],
      ),
    );
    return [...onColumns, ...onCells];
  }
}
