/**
 * A run of cells filled one after another by Tab: Enter at its end goes to the next line, under the cell
 * where the run began. So a row of jars is typed without leaving the keyboard.
 */
export class TypingRun {
  #start: { readonly row: number; readonly column: number } | null = null;
  #at: { readonly row: number; readonly column: number } | null = null;

  begin(row: number, column: number): void {
    this.#start = { row, column };
  }

  /** Tab has gone on to this cell. */
  next(row: number, column: number): void {
    this.#at = { row, column };
  }

  /** Is this the cell that the last Tab went to? */
  goesOn(row: number, column: number): boolean {
    return this.#at?.row === row && this.#at.column === column && this.#start?.row === row;
  }

  /** How far Enter goes from this cell: a row down, and back to where the run began. */
  enter(row: number, column: number): { readonly row: number; readonly col: number } {
    const back = this.goesOn(row, column) ? (this.#start?.column ?? column) - column : 0;
    this.#start = null;
    this.#at = null;
    return { row: 1, col: back };
  }
}
