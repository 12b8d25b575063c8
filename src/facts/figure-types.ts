/** Key of a published source; ids joined by '+' mean that the figure is in one or more of them. */
export type SourceId = string;

/**
 * How sure a figure is. `published`: a text that was looked up prints it. `derived`: arithmetic on
 * published figures. `from memory`: recalled, not looked up, and always shown as such.
 */
export type Certainty = 'published' | 'derived' | 'from memory';

/** What one source says. */
export interface Reading {
  readonly low: number;
  /** The source's central figure, else the midpoint of low and high. */
  readonly usual: number;
  readonly high: number;
  readonly source: SourceId;
  readonly certainty: Certainty;
  readonly note?: string;
  /** Kept and named, but not part of the range: another measure, an older edition or a lesser source. */
  readonly aside?: boolean;
}

/**
 * A figure with its range. `source` is the one that `usual` comes from; `low` and `high` span every
 * source that gives the same measure, and `readings` names each of them, the default first.
 */
export interface Figure {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  /** In words, as in 'pounds per quart'. */
  readonly unit: string;
  readonly source: SourceId;
  readonly certainty: Certainty;
  readonly note?: string;
  readonly readings: readonly Reading[];
}

/** Something said in words rather than a number, with its source. */
export interface Said<T> {
  readonly value: T;
  readonly source: SourceId;
  readonly certainty: Certainty;
}

/**
 * A reading as the data files write it: source, then one figure, or low and high, or low, usual and high.
 * The last part, where present, says what is particular: `m` from memory, `d` derived, `x` aside, `n` note.
 */
export type RawReading = readonly (string | number | RawMark)[];
export interface RawMark {
  readonly m?: 1;
  readonly d?: 1;
  readonly x?: 1;
  readonly n?: string;
}
export type RawFigure = readonly RawReading[];
