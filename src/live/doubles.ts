import type { CellAddress, CellValue } from '../book/index.js';
import { sameKey } from './marking.js';

type Which = (sheet: string, column: string) => boolean;
type Cell = (sheet: string, row: string, column: string) => CellValue;

interface Index {
  readonly sheet: string;
  readonly column: string;
  /** Rows by what the column shows in them. */
  readonly rows: ReadonlyMap<string, readonly string[]>;
}

/** Which values stand in a column more than once; looked through once between two changes of the book. */
export class Doubles {
  readonly #cell: Cell;
  readonly #rowsOf: (sheet: string) => readonly string[];
  #indexes = new Map<string, Index>();

  constructor(cell: Cell, rowsOf: (sheet: string) => readonly string[]) {
    this.#cell = cell;
    this.#rowsOf = rowsOf;
  }

  isDouble(sheet: string, column: string, value: CellValue): boolean {
    const key = sameKey(value);
    return key !== undefined && (this.#indexOf(sheet, column).rows.get(key)?.length ?? 0) > 1;
  }

  /**
   * To be called after a change: answers cells that were double and are not now, or the other way about, in
   * columns that the change touched. Columns of which nobody asks any more are let go.
   */
  forget(isTouched: Which, isAsked: Which): CellAddress[] {
    const before = this.#indexes;
    this.#indexes = new Map();
    const other: CellAddress[] = [];
    for (const was of before.values()) {
      if (!isAsked(was.sheet, was.column)) continue;
      if (!isTouched(was.sheet, was.column)) {
        this.#indexes.set(`${was.sheet}/${was.column}`, was);
        continue;
      }
      const now = this.#indexOf(was.sheet, was.column);
      for (const key of new Set([...was.rows.keys(), ...now.rows.keys()])) {
        const [then, here] = [was.rows.get(key) ?? [], now.rows.get(key) ?? []];
        if (then.length > 1 === here.length > 1) continue;
        for (const row of new Set([...then, ...here]))
          other.push({ sheet: was.sheet, row, column: was.column });
      }
    }
    return other;
  }

  #indexOf(sheet: string, column: string): Index {
    const at = `${sheet}/${column}`;
    let index = this.#indexes.get(at);
    if (!index) {
      const rows = new Map<string, string[]>();
      for (const row of this.#rowsOf(sheet)) {
        const key = sameKey(this.#cell(sheet, row, column));
        if (key === undefined) continue;
        const same = rows.get(key);
        if (same) same.push(row);
        else rows.set(key, [row]);
      }
      index = { sheet, column, rows };
      this.#indexes.set(at, index);
    }
    return index;
  }
}
