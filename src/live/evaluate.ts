import { type BookDoc, blankBook, type CellValue } from '../book/index.js';
import { HyperFormulaEngine } from '../engine/hyperformula-engine.js';
import { parseDay } from '../planning/parse-date.js';
import type { DayNumber } from '../planning/types.js';
import { todayHere } from './household.js';
import { LiveBook } from './live-book.js';

export interface EvaluateOptions {
  /** The day that figures are for, as an ISO date; today unless given. */
  readonly asOf?: string;
  /** A book whose sheets the formula may refer to. */
  readonly book?: BookDoc;
  /** Licence key of the formula engine; 'gpl-v3' unless given. */
  readonly engineLicenceKey?: string;
}

/** A book with its engine, ready to use without a page. */
export function openWithEngine(
  book: BookDoc,
  { asOf, engineLicenceKey }: Omit<EvaluateOptions, 'book'> = {},
): LiveBook {
  const read = asOf === undefined ? null : parseDay(asOf);
  const today = (): DayNumber => (read?.ok ? read.value : todayHere());
  const engine = new HyperFormulaEngine({ asOf: today(), basis: 'usual' }, engineLicenceKey);
  return new LiveBook(book, { engine, today });
}

/**
 * The value of one formula: a number, text, true or false, an ISO date, null when blank, or an error with a
 * message that says how to mend it. Never throws for what the formula says.
 *
 * @example evaluate('=JARS_PER_BUSHEL("tomato","quart")', { asOf: '2026-02-01' })
 */
export function evaluate(formula: string, { book, ...options }: EvaluateOptions = {}): CellValue {
  if (options.asOf !== undefined) {
    const read = parseDay(options.asOf);
    if (!read.ok) return { error: '#VALUE!', message: `asOf: ${read.problem.message} ${read.problem.mend}` };
  }
  const live = openWithEngine(book ?? blankBook('', 'evaluate'), options);
  try {
    return live.evaluate(formula);
  } finally {
    live.close();
  }
}
