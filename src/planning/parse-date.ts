import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { makeDay } from './dates.js';
import { MONTHS } from './day-words.js';
import type { DayNumber, MonthDay } from './types.js';

const NAMES = MONTHS.map((month) => month.toLowerCase());

// Longest length of each month: 29 February stands for the 28th in common years.
const LONGEST = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** 1..12 for a month's English name or its first three or more letters, with or without a full stop. */
function monthNamed(word: string): number | null {
  const name = word.toLowerCase().replace(/\.$/, '');
  if (name === 'sept') return 9;
  if (name.length < 3) return null;
  const at = NAMES.findIndex((month) => month === name || (name.length === 3 && month.startsWith(name)));
  return at < 0 ? null : at + 1;
}

const ORDINAL = '(\\d{1,2})(?:st|nd|rd|th)?';
const WORD = '([A-Za-z]{3,9}\\.?)';
const YEAR_FIRST = /^(\d{4})\s*[-/.]\s*(\d{1,2})\s*[-/.]\s*(\d{1,2})(?:[T ]00:00(?::00(?:\.0+)?)?Z?)?$/;
const DAY_MONTH_YEAR = new RegExp(`^${ORDINAL}[\\s-]+(?:of\\s+)?${WORD}[\\s,-]+(\\d{4})$`, 'i');
const MONTH_DAY_YEAR = new RegExp(`^${WORD}\\s+${ORDINAL}[\\s,]+(\\d{4})$`, 'i');
const DAY_MONTH = new RegExp(`^${ORDINAL}[\\s-]+(?:of\\s+)?${WORD}$`, 'i');
const MONTH_DAY = new RegExp(`^${WORD}[\\s-]+${ORDINAL}$`, 'i');
const NUMBERS = /^(\d{1,4})\s*[-/.]\s*(\d{1,2})\s*[-/.]\s*(\d{1,4})$/;
const TWO_NUMBERS = /^-{0,2}(\d{1,2})-(\d{1,2})$/;

const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

const two = (n: number): string => String(n).padStart(2, '0');

/** A year of two digits as POSIX reads `%y`: 69 to 99 are 1969 to 1999. */
const fullYear = (year: number): number => (year < 69 ? 2000 + year : year < 100 ? 1900 + year : year);

/** For numbers with the year last: which days could be meant, written out. */
function readings(text: string): string[] {
  const parts = NUMBERS.exec(text);
  if (!parts) return [];
  const [a, b, c] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const year = fullYear(c);
  const found = new Set<string>();
  for (const [month, day] of [
    [a, b],
    [b, a],
  ] as const) {
    if (makeDay(year, month, day).ok) found.add(`${year}-${two(month)}-${two(day)}`);
  }
  return [...found];
}

/** Which number of `5/4/2026` is the month. */
export type DateOrder = 'month first' | 'day first';

/**
 * The day that a person typed: `2026-05-04`, `2026-5-4`, `24 May 2026`, `May 24, 2026`, `24-May-2026`.
 * Numbers with the year last are read where they can only be one day, or in the order given.
 * Refused: other numbers with the year last (`ambiguous-date`, as 5/4/26 is two days), days that are none
 * (`no-such-day`), years outside 1900 to 2200 (`year-out-of-range`), anything else (`not-a-date`).
 */
export function parseDay(typed: string, order: DateOrder | null = null): Result<DayNumber> {
  const text = typed.trim().replace(/\s+/g, ' ');
  const iso = YEAR_FIRST.exec(text);
  if (iso) return makeDay(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const dayFirst = DAY_MONTH_YEAR.exec(text);
  const monthFirst = dayFirst ? null : MONTH_DAY_YEAR.exec(text);
  const month = monthNamed(dayFirst?.[2] ?? monthFirst?.[1] ?? '');
  if (month) {
    return makeDay(Number(dayFirst?.[3] ?? monthFirst?.[3]), month, Number(dayFirst?.[1] ?? monthFirst?.[2]));
  }
  if (NUMBERS.test(text)) {
    const could = readings(text);
    const [first, second, year] = text.split(/\s*[-/.]\s*/).map(Number) as [number, number, number];
    if (order && /^\d{1,2}\D+\d{1,2}\D+(?:\d{2}|\d{4})$/.test(text)) {
      const [month, day] = order === 'month first' ? [first, second] : [second, first];
      return makeDay(fullYear(year), month, day);
    }
    const [only, other] = could;
    if (only !== undefined && other === undefined) return parseDay(only);
    return refuse(
      'ambiguous-date',
      say`“${clip(text)}” can be read in more than one way.`,
      say`Write the year first: ${could.length > 0 ? could.join(' or ') : '2026-05-04'}.`,
    );
  }
  return refuse(
    'not-a-date',
    say`“${clip(text)}” is not a date.`,
    say`Write it as 2026-05-04 or 4 May 2026.`,
  );
}

/**
 * A day of every year that a person typed: `07-15` (month first, as in ISO 8601), `Jul 15`, `15 July`.
 * Refused (`not-a-month-day`, `no-such-day`) otherwise.
 */
export function parseMonthDay(typed: string): Result<MonthDay> {
  const text = typed.trim().replace(/\s+/g, ' ');
  const numbers = TWO_NUMBERS.exec(text);
  const dayFirst = DAY_MONTH.exec(text);
  const monthFirst = MONTH_DAY.exec(text);
  const month = numbers ? Number(numbers[1]) : monthNamed(dayFirst?.[2] ?? monthFirst?.[1] ?? '');
  if (month === null) {
    return refuse(
      'not-a-month-day',
      say`“${clip(text)}” is not a day of the year.`,
      say`Write month and day as 07-15, Jul 15 or 15 July.`,
    );
  }
  const day = Number(numbers?.[2] ?? dayFirst?.[1] ?? monthFirst?.[2]);
  const most = LONGEST[month - 1];
  if (most === undefined) {
    return refuse(
      'no-such-day',
      say`There is no month ${month}.`,
      say`Write the month first, as in 07-15 for 15 July.`,
    );
  }
  if (day < 1 || day > most) {
    return refuse(
      'no-such-day',
      say`There is no day ${day} in that month.`,
      say`Write a day from 1 to ${most}.`,
    );
  }
  return ok({ month, day });
}

/** `MM-DD`, as `parseMonthDay` reads it. */
export const formatMonthDay = (at: MonthDay): string => `${two(at.month)}-${two(at.day)}`;
