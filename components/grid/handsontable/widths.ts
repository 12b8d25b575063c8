import type { ColumnView } from '../../../src/live/columns.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { messages } from '../../../src/words/index.js';
import { shownSoFar } from '../../sheet/shown.js';
import { textWidth } from '../../sheet/text-width.js';
import { wholeText } from './whole-text.js';

const USUAL = 110;

/** Rough widths, in pixels: of a character of a cell, and of what stands around its text. */
const CHARACTER = 7.2;
const AROUND = 22;
const MOST_FITTED = 210;
/** What is worked out in words may be a sentence. */
const MOST_TEXT = 380;
const MOST_NARROWED = 110;

/** More than this a title alone does not get. */
const MOST_FOR_TITLE = 170;

/** What a title takes on two lines, in pixels. Widths of kinds suit the English ones: those get no more. */
export function roomForTitle(title: string): number {
  if (messages() === null) return 0;
  const words = title.split(' ');
  const lines = words.map((_, i) =>
    Math.max(words.slice(0, i).join(' ').length, words.slice(i).join(' ').length),
  );
  return Math.min(MOST_FOR_TITLE, Math.round(Math.min(...lines) * CHARACTER + AROUND));
}

/** How many rows are looked at to fit a column. */
const ROWS_LOOKED_AT = 60;

/**
 * Widths of columns: what the person set, else what the kind gives. A figure with its range and unit gets
 * room for them, as far as the rows need it; once given, it keeps it.
 */
export class ColumnWidths {
  /** The column that takes less room than usual, unless the person set its width. */
  narrowed: string | undefined;
  readonly #fitted = new Map<string, number>();
  /** As the grid has them now. */
  readonly #given = new Map<string, number>();

  constructor(
    readonly live: LiveBook,
    readonly sheet: string,
  ) {}

  of(column: ColumnView): number {
    const width = this.#widthOf(column);
    this.#given.set(column.id, width);
    return width;
  }

  /** Some of the columns take another width than they were given, as when figures have come. */
  haveChanged(columns: readonly ColumnView[]): boolean {
    return columns.some((column) => {
      const given = this.#given.get(column.id);
      return given !== undefined && given !== this.of(column);
    });
  }

  #widthOf(column: ColumnView): number {
    const isSet = column.width !== column.declaration?.width;
    const given = column.width ?? textWidth(this.live, this.sheet, column) ?? USUAL;
    const usual = isSet ? given : Math.max(given, roomForTitle(column.title));
    const varies =
      column.role === 'planning' &&
      (column.type === 'text' || (column.type === 'number' && (!column.unit || column.range)));
    if (!isSet && column.id === this.narrowed) return Math.min(usual, MOST_NARROWED);
    if (isSet || !varies || this.#waits(column)) return usual;
    let fitted = this.#fitted.get(column.id);
    if (fitted === undefined) {
      fitted = this.#fit(column);
      this.#fitted.set(column.id, fitted);
    }
    return Math.max(usual, fitted);
  }

  /** To be called when rows have come: some may need more room. */
  refit(columns: readonly ColumnView[]): void {
    for (const column of columns) {
      const before = this.#fitted.get(column.id);
      if (before !== undefined) this.#fitted.set(column.id, Math.max(before, this.#fit(column)));
    }
  }

  /** Nothing is known of its figures yet. */
  #waits({ id }: ColumnView): boolean {
    const { live, sheet } = this;
    const [first] = live.rowIds(sheet);
    return !live.isPlanned && (first === undefined || live.known(sheet, first, id) === undefined);
  }

  #fit(column: ColumnView): number {
    const { live, sheet } = this;
    const longest = live
      .rowIds(sheet)
      .slice(0, ROWS_LOOKED_AT)
      .reduce(
        (most, row) => Math.max(most, wholeText(shownSoFar(live, sheet, row, column, false)).length),
        0,
      );
    const most = column.type === 'text' ? MOST_TEXT : MOST_FITTED;
    return Math.min(most, Math.round(longest * CHARACTER + AROUND));
  }
}
