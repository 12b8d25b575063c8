/** A line of the grid: a row of the book, or the blank line at the end, which has no row yet. */
export interface Line {
  readonly id: string | null;
}

/** What the grid is told a cell holds: for sorting, filtering and copying as shown. */
export type Shown = string | number | boolean | null;

/** Gives the shown value of one column; also how the grid names the column. */
export type Accessor = (line: Line) => Shown;
