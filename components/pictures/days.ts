import { toIsoDay } from '../../src/planning/dates.js';
import type { DayNumber } from '../../src/planning/types.js';
import { shownDay, shownMonthDay } from '../sheet/shown.js';

export const dayInWords = (day: DayNumber): string => shownDay(toIsoDay(day));

/** A day without its year where that is the as-of date's. */
export function shortDay(day: DayNumber, asOf: DayNumber): string {
  const iso = toIsoDay(day);
  return iso.slice(0, 4) === toIsoDay(asOf).slice(0, 4) ? shownMonthDay(iso.slice(5)) : shownDay(iso);
}
