import type { Hot } from './registry.js';

/**
 * A run of cells filled one after another by Tab: Enter at its end goes to the next line, under the cell
 * where the run began. So a row of jars is typed without leaving the keyboard. While it goes on, Tab also
 * passes cells in which nothing is typed; outside of a run it leaves the grid.
 */
export class TypingRun {
  #start: { readonly row: number; readonly column: number } | null = null;
  #at: { readonly row: number; readonly column: number } | null = null;

  /** Is this the cell that the last Tab went to? */
  goesOn(row: number, column: number): boolean {
    return this.#at?.row === row && this.#at.column === column && this.#start?.row === row;
  }

  /** How far Enter goes from this cell: a row down, and back to where the run began. */
  enter(row: number, column: number): { readonly row: number; readonly col: number } {
    const back = this.goesOn(row, column) ? (this.#start?.column ?? column) - column : 0;
    this.end();
    return { row: 1, col: back };
  }

  end(): void {
    this.#start = null;
    this.#at = null;
  }

  /** Tab in a cell in which something is typed: it begins a run, or goes on with it. `save` ends the editing. */
  tabFromEditor(hot: Hot, row: number, column: number, step: 1 | -1, save: () => void): void {
    if (!this.goesOn(row, column)) this.#start = { row, column };
    save();
    this.#move(hot, row, column, step);
  }

  /** Tab in a cell of a run in which nothing is typed; false where there is no cell to go on to. */
  tabOn(hot: Hot, row: number, column: number, step: 1 | -1): boolean {
    return this.goesOn(row, column) && this.#move(hot, row, column, step);
  }

  /** To the next cell, at the end of a line to the next line's first. */
  #move(hot: Hot, row: number, column: number, step: 1 | -1): boolean {
    const columns = hot.countCols();
    const inLine = column + step >= 0 && column + step < columns;
    const to = inLine
      ? { row, column: column + step }
      : { row: row + step, column: step > 0 ? 0 : columns - 1 };
    if (to.row < 0 || to.row >= hot.countRows()) {
      this.end();
      return false;
    }
    if (!inLine) this.#start = to;
    this.#at = to;
    hot.selectCell(to.row, to.column);
    return true;
  }
}
