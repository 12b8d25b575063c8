import { dateFormat } from '../words/index.js';
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

const MS_PER_DAY = 86_400_000;

/** Day 0 is a Thursday. */
const OF_DAY_0 = WEEKDAYS.indexOf('Thursday');

/** 'Wednesday', in English: what is reckoned with. */
export const weekday = (day: DayNumber): (typeof WEEKDAYS)[number] =>
  WEEKDAYS[(((day + OF_DAY_0) % 7) + 7) % 7]!;

const written = (day: DayNumber, options: Intl.DateTimeFormatOptions): string =>
  dateFormat(options).format(new Date(day * MS_PER_DAY));

/** 'Wednesday', in the language spoken now. */
export const weekdayInWords = (day: DayNumber): string => written(day, { weekday: 'long' });

/** 'Wed', in the language spoken now. */
export const shortWeekday = (day: DayNumber): string => written(day, { weekday: 'short' });

/** 'Wed, Nov 25', in the language spoken now. */
export const shortDay = (day: DayNumber): string =>
  written(day, { weekday: 'short', month: 'short', day: 'numeric' });

/** 'Nov 25, 2026', as days stand in sheets. */
export const mediumDay = (day: DayNumber): string => written(day, { dateStyle: 'medium' });

/** 'Nov 25, 2026', as it is written on a label: the month as a word in every language. */
export const labelDay = (day: DayNumber): string =>
  written(day, { day: 'numeric', month: 'short', year: 'numeric' });

/** 'Nov 2026', as it is written on a label. */
export const labelMonth = (day: DayNumber): string => written(day, { month: 'short', year: 'numeric' });

/** 'November 25, 2026', for sentences to learn from. */
export const longDay = (day: DayNumber): string => written(day, { dateStyle: 'long' });
