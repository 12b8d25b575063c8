import { type DateOrder, parseDay } from '../planning/parse-date.js';
import { cut } from '../problem.js';
import { say } from '../words/index.js';
import { asMeant } from './harmless.js';
import { isTickWord } from './read-cell.js';
import { isBareFraction, isNoAmount, numberForms, withoutUnseen } from './read-number.js';
import {
  asText,
  isBlank,
  isSourceDay,
  isSourceFormula,
  type Reading,
  type SourceCell,
  type SourceRow,
} from './types.js';

/** Cells of a column that must fit a type before the column is taken for it. */
const MOST_FIT = 0.9;
const MOST_CHOICES = 12;
const LONGEST_CHOICE = 40;

export interface GuessHints {
  /** How dates with the year last are meant where none of the column tells. */
  readonly dateOrder: DateOrder;
  /** Fields are separated by semicolons, as they are where numbers have decimal commas. */
  readonly semicolons: boolean;
}

const NUMERIC_DATE = /^(\d{1,2})\s*[-/.]\s*(\d{1,2})\s*[-/.]\s*(?:\d{4}|\d{2})$/;

const ORDERS: readonly DateOrder[] = ['day first', 'month first'];

/** What one column of a file holds, counted cell by cell. */
class Tally {
  filled = 0;
  figures = 0;
  point = 0;
  comma = 0;
  onlyPoint = 0;
  onlyComma = 0;
  codes = 0;
  bareFractions = 0;
  days = 0;
  dayFirst = 0;
  monthFirst = 0;
  ticks = 0;
  /** Of the ticks those that are more than a letter: `x` and `y` are names of things too. */
  tickWords = 0;
  readonly values = new Map<string, number>();
  /** A cell that cannot be chosen from a list: no text, or text that is not just what it looks like. */
  unchoosable = false;

  add(from: SourceCell): void {
    const cell = isSourceFormula(from) ? from.value : from;
    if (isBlank(cell)) return;
    this.filled++;
    if (typeof cell !== 'string' || /^[='\s]|\s$/.test(cell) || withoutUnseen(cell) !== cell)
      this.unchoosable = true;
    if (typeof cell === 'number') this.figures++;
    else if (typeof cell === 'boolean') {
      this.ticks++;
      this.tickWords++;
    } else if (isSourceDay(cell)) this.days++;
    else this.#text(withoutUnseen(String(cell)));
  }

  #text(text: string): void {
    if (this.values.size <= MOST_CHOICES) this.values.set(text, (this.values.get(text) ?? 0) + 1);
    if (text.length > 60) return;
    if (isTickWord(text)) {
      this.ticks++;
      if (!/^[xyn]$/i.test(text)) this.tickWords++;
    }
    const { point, comma } = numberForms(text);
    if (point || comma) {
      if (isNoAmount(text)) this.codes++;
      if (isBareFraction(text)) this.bareFractions++;
      if (point) this.point++;
      if (comma) this.comma++;
      if (point && !comma) this.onlyPoint++;
      if (comma && !point) this.onlyComma++;
    }
    const parts = NUMERIC_DATE.exec(text);
    if (parts && ORDERS.some((order) => parseDay(text, order).ok)) {
      this.days++;
      if (Number(parts[1]) > 12) this.dayFirst++;
      if (Number(parts[2]) > 12) this.monthFirst++;
    } else if (/\d{4}/.test(text) && parseDay(text).ok) this.days++;
  }
}

/** Letters alone are ticks where they are `y` and `n`, or `x` here and there between blanks. */
function isTicked({ values, filled }: Tally, rows: number): boolean {
  const letters = new Set([...values.keys()].map((value) => value.toLowerCase()));
  if (letters.has('x')) return letters.size === 1 && filled < rows;
  return letters.has('y') && letters.has('n');
}

/** What one column of a file holds, as far as its cells tell. The person confirms it. */
export function guessReading(rows: readonly SourceRow[], index: number, hints: GuessHints): Reading {
  const tally = new Tally();
  for (const { cells } of rows) tally.add(cells[index] ?? null);
  return readingOf(tally, rows.length, hints);
}

/** What each column holds, all cells looked at. Yields how far it is, for `inSlices`. */
export function* guessReadings(
  rows: readonly SourceRow[],
  hints: GuessHints,
): Generator<number, Reading[], void> {
  const tallies = Array.from({ length: widthOf(rows) }, () => new Tally());
  for (const [at, { cells }] of rows.entries()) {
    if (at % 500 === 0) yield at / rows.length;
    for (const [index, cell] of cells.entries()) tallies[index]!.add(cell);
  }
  return tallies.map((tally) => readingOf(tally, rows.length, hints));
}

function readingOf(tally: Tally, rows: number, hints: GuessHints): Reading {
  const { filled, dayFirst, monthFirst } = tally;
  const fits = (n: number): boolean => filled > 0 && n >= filled * MOST_FIT;
  const order = dayFirst > monthFirst ? 'day first' : monthFirst > dayFirst ? 'month first' : hints.dateOrder;
  const plain: Reading = { type: 'text', dateOrder: order, decimalComma: false, choices: [] };
  const decimalComma =
    tally.onlyComma > tally.onlyPoint ||
    (tally.onlyComma === tally.onlyPoint && hints.semicolons && tally.comma > 0);
  if (fits(tally.days)) return { ...plain, type: 'date' };
  const numbers = decimalComma ? tally.comma : tally.point;
  // `5/4` may be a day as well: fractions are amounts where whole numbers stand beside them.
  const isAmounts =
    tally.codes === 0 && (tally.bareFractions === 0 || tally.bareFractions < numbers + tally.figures);
  if (fits(numbers + tally.figures) && isAmounts) return { ...plain, type: 'number', decimalComma };
  if (fits(tally.ticks) && (tally.tickWords > 0 || isTicked(tally, rows))) return { ...plain, type: 'tick' };
  const isFew =
    !tally.unchoosable &&
    tally.values.size <= MOST_CHOICES &&
    filled >= 20 &&
    tally.values.size * 4 <= filled;
  if (
    isFew &&
    [...tally.values.keys()].every((value) => value.length <= LONGEST_CHOICE && !/[\r\n]/.test(value))
  )
    return { ...plain, type: 'choice', choices: [...tally.values.keys()].sort((a, b) => a.localeCompare(b)) };
  // Should the person say that it holds numbers all the same.
  return { ...plain, decimalComma };
}

const isWord = (cell: SourceCell | undefined): boolean => {
  if (isBlank(cell)) return true;
  if (typeof cell !== 'string') return false;
  const text = withoutUnseen(cell);
  const { point, comma } = numberForms(text);
  return !point && !comma && !isTickWord(text) && !parseDay(text).ok && text.length <= 200;
};

/** Whether the first row gives the columns' titles: all of it in words, and something below it. */
export function guessHeader(rows: readonly SourceRow[]): boolean {
  const [first] = rows;
  if (!first || rows.length < 2) return false;
  const filled = first.cells.filter((cell) => !isBlank(cell)).length;
  return filled > 0 && filled >= first.cells.length / 2 && first.cells.every(isWord);
}

/** Columns of a table: as many as the widest of its rows. */
export const widthOf = (rows: readonly SourceRow[]): number =>
  rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);

/**
 * Titles of a file's columns: what the first row says, made usable. Blank ones are numbered, and those that
 * come twice are told apart.
 */
export function headingsOf(rows: readonly SourceRow[], header: boolean): string[] {
  const taken = new Set<string>();
  return Array.from({ length: widthOf(rows) }, (_, i) => {
    const said = header ? asText(rows[0]?.cells[i]) : '';
    const plain = cut(withoutUnseen(asMeant(said).replace(/\s+/g, ' ')), 190);
    const base = plain === '' ? say`Column ${i + 1}` : plain;
    let title = base;
    for (let n = 2; taken.has(title.toLowerCase()); n++) title = `${base} (${n})`;
    taken.add(title.toLowerCase());
    return title;
  });
}
