import { dayToCivil } from './dates.js';
import type { DayNumber } from './types.js';

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export const WEEKDAYS = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** Day 0 is a Thursday. */
const OF_DAY_0 = WEEKDAYS.indexOf('Thursday');

/** 'Wednesday'. */
export const weekday = (day: DayNumber): (typeof WEEKDAYS)[number] =>
  WEEKDAYS[(((day + OF_DAY_0) % 7) + 7) % 7]!;

/** 'Wed 25 Nov'. */
export function shortDay(day: DayNumber): string {
  const { month, day: of } = dayToCivil(day);
  return `${weekday(day).slice(0, 3)} ${of} ${MONTHS[month - 1]!.slice(0, 3)}`;
}

/** '25 November 2026'. */
export function longDay(day: DayNumber): string {
  const { year, month, day: of } = dayToCivil(day);
  return `${of} ${MONTHS[month - 1]!} ${year}`;
}
