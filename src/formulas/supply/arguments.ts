import { formatMonthDay } from '../../planning/parse-date.js';
import type { Season } from '../../planning/season.js';
import { makeSeason } from '../../planning/season.js';
import type { MonthDay } from '../../planning/types.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';

/** Arguments that several Supply functions share. */
export const ON_HAND = {
  name: 'on_hand',
  kind: 'number',
  least: 0,
  help: 'how much stands on the shelf, in the container you count in',
  unit: 'X',
} as const;

export const USE_PER_WEEK = {
  name: 'use_per_week',
  kind: 'number',
  least: 0,
  help: 'how much is used a week, in the same container',
  unit: 'X a week',
} as const;

export const AS_OF = {
  name: 'as_of',
  kind: 'date',
  optional: true,
  otherwise: "the book's as-of date",
  help: 'the day the figure is for',
} as const;

export const FRESH_FROM = {
  name: 'fresh_from',
  kind: 'month-day',
  optional: true,
  otherwise: 'no fresh season: eaten from the shelf all year',
  help: 'first day of the season in which it is eaten fresh, as in "07-15"',
} as const;

export const FRESH_TO = {
  name: 'fresh_to',
  kind: 'month-day',
  optional: true,
  otherwise: 'no fresh season',
  help: 'last day of that season; earlier in the year than fresh_from means that it spans the new year',
} as const;

/** What a fresh season takes out of the count, as a step. */
export const leavingOut = (from: MonthDay | undefined, to: MonthDay | undefined): readonly string[] =>
  from && to
    ? [say`nothing is taken while it is fresh, ${formatMonthDay(from)} to ${formatMonthDay(to)}`]
    : [];

/** The fresh season of two optional ends: both or neither. */
export function seasonFrom(from: MonthDay | undefined, to: MonthDay | undefined): Result<Season | null> {
  if (from === undefined && to === undefined) return ok(null);
  if (from === undefined || to === undefined) {
    const [lacking, given] = from === undefined ? ['fresh_from', 'fresh_to'] : ['fresh_to', 'fresh_from'];
    return refuse(
      'half-a-season',
      say`“${given}” is given without “${lacking}”.`,
      say`A fresh season has a first and a last day: give both, or neither.`,
    );
  }
  return ok(makeSeason(from, to));
}
