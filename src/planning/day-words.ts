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

/** 'Wed, Nov 25'. */
export function shortDay(day: DayNumber): string {
  const { month, day: of } = dayToCivil(day);
  return `${weekday(day).slice(0, 3)}, ${MONTHS[month - 1]!.slice(0, 3)} ${of}`;
}

/** 'Nov 25, 2026', as days stand in sheets. */
export function mediumDay(day: DayNumber): string {
  const { year, month, day: of } = dayToCivil(day);
  return `${MONTHS[month - 1]!.slice(0, 3)} ${of}, ${year}`;
}

/** 'November 25, 2026', for sentences to learn from. */
export function longDay(day: DayNumber): string {
  const { year, month, day: of } = dayToCivil(day);
  return `${MONTHS[month - 1]!} ${of}, ${year}`;
}
