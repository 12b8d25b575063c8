import { scaleUtc } from 'd3-scale';
import { utcMonday, utcMonth } from 'd3-time';
import type { DayNumber } from '../../src/planning/types.js';
import { dateFormat } from '../../src/words/index.js';

const MS_PER_DAY = 86_400_000;
/** Pixels that a month's short name takes on the axis, with air. */
const LABEL = 30;
/** Least widths of the drawing: beside labels in a narrow place, and in a wide one. */
const NARROW_PLOT = 300;
const WIDE_PLOT = 520;

/** First of a month within the span. */
export interface MonthTick {
  readonly day: DayNumber;
  /** Percent of the width. */
  readonly x: number;
  /** `Mar`. */
  readonly text: string;
  /** In January. */
  readonly year: number | null;
  /** Left out where the drawing is narrow; where it is wide, too. */
  readonly narrow: boolean;
  readonly wide: boolean;
}

/** A span of civil days laid out over a width. Reckons in UTC, so that no clock shifts a day. */
export interface TimeAxis {
  readonly from: DayNumber;
  readonly to: DayNumber;
  /** Percent of the width at a day, held within 0 to 100. */
  readonly at: (day: DayNumber) => number;
  readonly within: (day: DayNumber) => boolean;
  readonly months: readonly MonthTick[];
  /** Percents at which weeks begin, on Mondays. */
  readonly weeks: readonly number[];
}

const asDate = (day: DayNumber): Date => new Date(day * MS_PER_DAY);
const asDay = (date: Date): DayNumber => Math.round(date.getTime() / MS_PER_DAY);

/** The axis from one day to a later one; a span that is not one counts as a year. */
export function timeAxis(from: DayNumber, to: DayNumber): TimeAxis {
  const monthName = dateFormat({ month: 'short' });
  const end = to > from ? to : from + 365;
  const scale = scaleUtc([asDate(from), asDate(end)], [0, 100]).clamp(true);
  const firsts = utcMonth.range(utcMonth.ceil(asDate(from)), asDate(end));
  const every = (width: number): number => Math.max(1, Math.ceil((firsts.length * LABEL) / width));
  const [narrowly, widely] = [every(NARROW_PLOT), every(WIDE_PLOT)];
  // Names are left out about January, which carries the year.
  const january = Math.max(
    0,
    firsts.findIndex((date) => date.getUTCMonth() === 0),
  );
  const round = (x: number): number => Math.round(x * 1000) / 1000;
  return {
    from,
    to: end,
    at: (day) => round(scale(asDate(day))),
    within: (day) => day >= from && day <= end,
    months: firsts.map((date, i) => ({
      day: asDay(date),
      x: round(scale(date)),
      text: monthName.format(date),
      year: date.getUTCMonth() === 0 ? date.getUTCFullYear() : null,
      narrow: (i - january) % narrowly !== 0,
      wide: (i - january) % widely !== 0,
    })),
    weeks: utcMonday.range(utcMonday.ceil(asDate(from)), asDate(end)).map((date) => round(scale(date))),
  };
}

/** The Monday on or before a day. */
export const mondayOf = (day: DayNumber): DayNumber => asDay(utcMonday.floor(asDate(day)));
