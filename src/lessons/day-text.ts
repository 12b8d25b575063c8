import { dayToCivil } from '../planning/dates.js';
import { WEEKDAYS, weekdayInWords } from '../planning/day-words.js';
import type { DayNumber, MonthDay } from '../planning/types.js';
import { dateFormat } from '../words/index.js';

/** A leap year: 29 February is a day of it. */
const YEAR = 2024;
/** Monday, 5 January 1970. */
const A_MONDAY = 4;

const written = (
  { year = YEAR, month, day }: { readonly year?: number; readonly month: number; readonly day: number },
  options: Intl.DateTimeFormatOptions,
): string => dateFormat(options).format(Date.UTC(year, month - 1, day));

/** 'May', of 5. */
export const monthName = (month: number): string => written({ month, day: 1 }, { month: 'long' });

/** 'Sep', of 9. */
export const shortMonthName = (month: number): string => written({ month, day: 1 }, { month: 'short' });

/** 'May 24' */
export const dayOfYear = ({ month, day }: MonthDay): string =>
  written({ month, day }, { month: 'long', day: 'numeric' });

/** 'Nov 25', short enough to stand under a bar. */
export const shortDayOfYear = (day: DayNumber): string =>
  written(dayToCivil(day), { month: 'short', day: 'numeric' });

/** 'Nov 2026' */
export const shortMonth = (day: DayNumber): string =>
  written(dayToCivil(day), { month: 'short', year: 'numeric' });

/** 'Wednesday' */
export const weekdayOf = (day: DayNumber): string => weekdayInWords(day);

/** Days of the week, Monday first. */
export const weekdayNames = (): readonly string[] => WEEKDAYS.map((_, at) => weekdayInWords(A_MONDAY + at));
