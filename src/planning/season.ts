import { civilToDay, daysInMonth, dayToCivil } from './dates.js';
import type { DayNumber, MonthDay } from './types.js';

/** A season of every year, both days included; `from` later in the year than `to` spans the new year. */
export interface Season {
  readonly from: MonthDay;
  readonly to: MonthDay;
}

/** One year's season: first and last day, both included. */
export interface SeasonSpan {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

const isMonthDay = (at: MonthDay | null | undefined): at is MonthDay =>
  at != null &&
  Number.isInteger(at.month) &&
  Number.isInteger(at.day) &&
  at.month >= 1 &&
  at.month <= 12 &&
  at.day >= 1 &&
  at.day <= 31;

/** A season from its two ends, or null unless both are real days of the year. */
export function makeSeason(from: MonthDay | null, to: MonthDay | null): Season | null {
  return isMonthDay(from) && isMonthDay(to) ? { from, to } : null;
}

/** `at` in `year`; a day that the month lacks there is its last one. */
export function monthDayIn(year: number, at: MonthDay): DayNumber {
  return civilToDay(year, at.month, Math.min(at.day, daysInMonth(year, at.month)));
}

/** First day on or after `day` that falls on `at`. */
export function nextMonthDay(day: DayNumber, at: MonthDay): DayNumber {
  const { year } = dayToCivil(day);
  const here = monthDayIn(year, at);
  return here >= day ? here : monthDayIn(year + 1, at);
}

/** The season that begins in `year`. */
export function seasonOf(season: Season, year: number): SeasonSpan {
  const { from, to } = season;
  const spansNewYear = to.month < from.month || (to.month === from.month && to.day < from.day);
  return { first: monthDayIn(year, from), last: monthDayIn(spansNewYear ? year + 1 : year, to) };
}

/** The season that `day` lies in, or null. */
export function seasonAt(season: Season, day: DayNumber): SeasonSpan | null {
  const { year } = dayToCivil(day);
  for (const begins of [year, year - 1]) {
    const span = seasonOf(season, begins);
    if (span.first <= day && day <= span.last) return span;
  }
  return null;
}

export const inSeason = (season: Season | null, day: DayNumber): boolean =>
  season !== null && seasonAt(season, day) !== null;

/** True when no day of the year is outside the season. */
export function allYear(season: Season | null): boolean {
  if (!season) return false;
  // A common year: whoever writes 1 March to 28 February does not mean to leave out the 29th.
  const span = seasonOf(season, 2025);
  return span.last - span.first + 1 >= 365;
}

/** Days from `from` up to, not including, `to` that lie outside the season; 0 when `to` is not later. */
export function daysOutside(from: DayNumber, to: DayNumber, season: Season | null): number {
  if (!(to > from)) return 0;
  if (!season) return to - from;
  if (allYear(season)) return 0;
  let inside = 0;
  const lastYear = dayToCivil(to).year;
  for (let year = dayToCivil(from).year - 1; year <= lastYear; year++) {
    const span = seasonOf(season, year);
    inside += Math.max(0, Math.min(to, span.last + 1) - Math.max(from, span.first));
  }
  return to - from - inside;
}

/** `u`: weeks from `from` to `to` that lie outside the fresh season. Takes time by the years between, not the days. */
export const weeksOutside = (from: DayNumber, to: DayNumber, season: Season | null): number =>
  daysOutside(from, to, season) / 7;

/**
 * The first day by which `weeks` outside the season have gone by since `from`: the inverse of `weeksOutside`.
 * Null when that is later than `latest` (or never, in a season of the whole year).
 */
export function dayWhenOutside(
  from: DayNumber,
  weeks: number,
  season: Season | null,
  latest: DayNumber,
): DayNumber | null {
  if (!(weeks > 0)) return weeks <= 0 ? from : null;
  // A crumb of binary arithmetic must not cost a day.
  const days = Math.ceil(Number((weeks * 7).toPrecision(9)));
  if (!Number.isFinite(days)) return null;
  if (!season) return from + days <= latest ? from + days : null;
  if (allYear(season)) return null;
  let at = from;
  let owed = days;
  let year = dayToCivil(from).year - 1;
  while (at <= latest) {
    const span = seasonOf(season, year);
    year += 1;
    if (span.last < at) continue;
    const free = Math.max(0, span.first - at);
    if (free >= owed) return at + owed <= latest ? at + owed : null;
    owed -= free;
    at = span.last + 1;
  }
  return null;
}
