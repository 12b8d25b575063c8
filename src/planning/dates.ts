import { UTCDate } from '@date-fns/utc';
import { addMonths as addCalendarMonths } from 'date-fns/addMonths';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import type { DayNumber } from './types.js';

/** Calendar date as `YYYY-MM-DD`. */
export type IsoDay = string;

export const FIRST_YEAR = 1900;
export const LAST_YEAR = 2200;

const MS_PER_DAY = 86_400_000;

const DAYS_PER_400_YEARS = 146_097;
/** From 1 March of year 0 to 1970-01-01. */
const DAYS_BEFORE_1970 = 719_468;

/**
 * Days from 1970-01-01 to the given civil date; no check that the day exists. Years count from March, so that
 * a leap day is the last of its year. Plain whole numbers: planning asks this many thousand times.
 */
export function civilToDay(year: number, month: number, day: number): DayNumber {
  const fromMarch = (month + 9) % 12;
  const y = month <= 2 ? year - 1 : year;
  const days = 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return days + Math.floor((153 * fromMarch + 2) / 5) + day - 1 - DAYS_BEFORE_1970;
}

/** Year, month 1..12 and day 1..31 of a day number. */
export function dayToCivil(day: DayNumber): { year: number; month: number; day: number } {
  const days = day + DAYS_BEFORE_1970;
  const era = Math.floor(days / DAYS_PER_400_YEARS);
  const inEra = days - era * DAYS_PER_400_YEARS;
  const y = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
  );
  const inYear = inEra - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const fromMarch = Math.floor((5 * inYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return {
    year: y + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: inYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  };
}

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export function daysInMonth(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && leap ? 29 : (LENGTHS[month - 1] ?? 31);
}

export const FIRST_DAY: DayNumber = civilToDay(FIRST_YEAR, 1, 1);
export const LAST_DAY: DayNumber = civilToDay(LAST_YEAR, 12, 31);

/** True for a whole day number from 1900-01-01 to 2200-12-31. */
export function isDay(day: unknown): day is DayNumber {
  return Number.isInteger(day) && (day as number) >= FIRST_DAY && (day as number) <= LAST_DAY;
}

/** `YYYY-MM-DD` of a day number between 1900 and 2200. */
export function toIsoDay(day: DayNumber): IsoDay {
  const at = dayToCivil(day);
  return `${at.year}-${at.month < 10 ? '0' : ''}${at.month}-${at.day < 10 ? '0' : ''}${at.day}`;
}

/**
 * The day number of a civil date. Refused where the month has no such day (`no-such-day`) and outside
 * the years 1900 to 2200 (`year-out-of-range`).
 */
export function makeDay(year: number, month: number, day: number): Result<DayNumber> {
  if (!(year >= FIRST_YEAR && year <= LAST_YEAR)) {
    return refuse(
      'year-out-of-range',
      say`The year ${year} is outside ${FIRST_YEAR} to ${LAST_YEAR}.`,
      say`Write a date between ${FIRST_YEAR} and ${LAST_YEAR}, year first, as in 2026-05-04.`,
    );
  }
  if (!(month >= 1 && month <= 12)) {
    return refuse(
      'no-such-day',
      say`There is no month ${month}.`,
      say`Write the month as 1 to 12, as in 2026-05-04.`,
    );
  }
  const length = daysInMonth(year, month);
  if (!(day >= 1 && day <= length)) {
    return refuse(
      'no-such-day',
      say`There is no day ${day} in that month: it has ${length} days.`,
      say`Write a day from 1 to ${length}.`,
    );
  }
  return ok(civilToDay(year, month, day));
}

/** Reads exactly `YYYY-MM-DD`. Other spellings are read by `parseDay`. */
export function fromIsoDay(iso: IsoDay): Result<DayNumber> {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!parts) {
    return refuse(
      'not-a-date',
      say`“${iso.slice(0, 40)}” is not a date.`,
      say`Write it year first, as in 2026-05-04.`,
    );
  }
  return makeDay(Number(parts[1]), Number(parts[2]), Number(parts[3]));
}

/**
 * `months` calendar months after `day`; a day that the month lacks becomes its last one
 * (31 January + 1 month = 28 or 29 February). Part of a month counts as that part of 30.4375 days.
 * Null when the result is no day between 1900 and 2200.
 */
export function addMonths(day: DayNumber, months: number): DayNumber | null {
  if (!isDay(day) || !Number.isFinite(months) || Math.abs(months) > 12 * 400) return null;
  const whole = Math.floor(months);
  const moved = addCalendarMonths(new UTCDate(day * MS_PER_DAY), whole).getTime() / MS_PER_DAY;
  const result = moved + Math.round((months - whole) * 30.4375);
  return isDay(result) ? result : null;
}

/** Complete calendar months from one day to a later one; null when `to` is earlier or either is no day. */
export function monthsBetween(from: DayNumber, to: DayNumber): number | null {
  if (!isDay(from) || !isDay(to) || to < from) return null;
  const a = dayToCivil(from);
  const b = dayToCivil(to);
  const months = (b.year - a.year) * 12 + (b.month - a.month);
  const reached = b.day >= a.day || b.day === daysInMonth(b.year, b.month);
  return reached ? months : months - 1;
}
