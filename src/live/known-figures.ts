/** A planning figure in words, as a page shows it already. */
export interface KnownFigure {
  readonly text: string;
  /** The word for its unit, where that is not the column's. */
  readonly unit?: string;
  /** Low and high of a figure with a range. */
  readonly range?: string;
  /** A date as machines read it. */
  readonly iso?: string;
}

/** Figures known before a book has worked them out; undefined for every other cell. */
export type KnownFigures = (sheet: string, row: string, column: string) => KnownFigure | undefined;
