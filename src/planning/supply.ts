import { ok, type Result, refuse } from '../problem.js';
import { ceilSafe } from '../units/index.js';
import { say } from '../words/index.js';
import { addMonths, isDay, monthsBetween, toIsoDay } from './dates.js';
import { allYear, dayWhenOutside, type Season, weeksOutside } from './season.js';
import type { DayNumber } from './types.js';
import { isAmount, MOST, NO_USE, NOT_FROM_SHELF, OVER_TEN_YEARS, tidy } from './words.js';

function badAmount(what: string, n: number) {
  const said = Number.isFinite(n) ? `${n}` : say`no number`;
  return refuse(
    'bad-amount',
    say`The ${what} is ${said}: it must be from 0 to ${MOST}.`,
    say`Give the ${what} as a number that is not negative.`,
  );
}

function badDay(what: string) {
  return refuse(
    'not-a-date',
    say`The ${what} is not a date.`,
    say`Give the ${what} as in 2026-05-04 (1900 to 2200).`,
  );
}

/**
 * Weeks that `onHand` lasts at `usePerWeek` (both in the same container, 0 or more);
 * 'no use' when nothing is used. Refused: `bad-amount`.
 */
export function weeksOfSupply(onHand: number, usePerWeek: number): Result<number | string> {
  if (!isAmount(onHand)) return badAmount('amount on hand', onHand);
  if (!isAmount(usePerWeek)) return badAmount('use per week', usePerWeek);
  if (usePerWeek === 0) return ok(NO_USE);
  const weeks = onHand / usePerWeek;
  return ok(Number.isFinite(weeks) && weeks <= MOST ? tidy(weeks) : OVER_TEN_YEARS);
}

/**
 * The day by which `weeks` of eating from the shelf have gone by, as an ISO day; 'more than ten years', or
 * 'not eaten from the shelf' where it is fresh all year.
 */
export function dayAfterWeeks(weeks: number, asOf: DayNumber, season: Season | null): string {
  if (weeks <= 0) return toIsoDay(asOf);
  if (allYear(season)) return NOT_FROM_SHELF;
  const latest = addMonths(asOf, 120);
  const day = latest === null ? null : dayWhenOutside(asOf, weeks, season, latest);
  return day === null ? OVER_TEN_YEARS : toIsoDay(day);
}

/**
 * The ISO day on which `onHand` runs out at `usePerWeek`, nothing being taken within the fresh season;
 * or 'no use', 'more than ten years', 'not eaten from the shelf'. Refused: `bad-amount`, `not-a-date`.
 */
export function runsOutOn(
  onHand: number,
  usePerWeek: number,
  asOf: DayNumber,
  season: Season | null = null,
): Result<string> {
  if (!isAmount(onHand)) return badAmount('amount on hand', onHand);
  if (!isAmount(usePerWeek)) return badAmount('use per week', usePerWeek);
  if (!isDay(asOf)) return badDay('as-of date');
  if (usePerWeek === 0) return ok(NO_USE);
  if (allYear(season)) return ok(NOT_FROM_SHELF);
  return ok(dayAfterWeeks(onHand / usePerWeek, asOf, season));
}

/**
 * What is left of `onHand` on `date` (never below 0) and what is `short` by then, at `usePerWeek`
 * outside the fresh season. A date before the as-of date answers as the as-of date does.
 */
export function leftAndShort(
  onHand: number,
  usePerWeek: number,
  date: DayNumber,
  asOf: DayNumber,
  season: Season | null = null,
): Result<{ readonly left: number; readonly short: number; readonly weeks: number }> {
  if (!isAmount(onHand)) return badAmount('amount on hand', onHand);
  if (!isAmount(usePerWeek)) return badAmount('use per week', usePerWeek);
  if (!isDay(date)) return badDay('date');
  if (!isDay(asOf)) return badDay('as-of date');
  const weeks = weeksOutside(asOf, date, season);
  const after = tidy(onHand - usePerWeek * weeks);
  const crumbs = Math.abs(after) <= 1e-9 * Math.max(1, onHand);
  return ok({ left: crumbs ? 0 : Math.max(0, after), short: crumbs ? 0 : Math.max(0, -after), weeks });
}

/** What is left of `onHand` on `date`, in the same container; never below 0. See `leftAndShort`. */
export function leftAt(
  onHand: number,
  usePerWeek: number,
  date: DayNumber,
  asOf: DayNumber,
  season: Season | null = null,
): Result<number> {
  const found = leftAndShort(onHand, usePerWeek, date, asOf, season);
  return found.ok ? ok(found.value.left) : found;
}

/**
 * Containers a week, on top of usual use, that use up `over` by `until` outside the fresh season
 * (24 quarts over, thirty weeks: 0.8 a week). Refused: `no-weeks-left` when something is over and no
 * week is left to eat it from the shelf.
 */
export function paceToUseUp(
  over: number,
  until: DayNumber,
  asOf: DayNumber,
  season: Season | null = null,
): Result<number> {
  if (!isAmount(over)) return badAmount('amount over', over);
  if (!isDay(until)) return badDay('date to use it up by');
  if (!isDay(asOf)) return badDay('as-of date');
  if (over === 0) return ok(0);
  const weeks = weeksOutside(asOf, until, season);
  if (weeks <= 0) {
    return refuse(
      'no-weeks-left',
      say`No week outside the fresh season is left before that date.`,
      say`Give a later date, or carry what is over.`,
    );
  }
  return ok(tidy(over / weeks));
}

/**
 * Whole containers to put up so that `usePerWeek` lasts `weeksToCover`, with `cushion` (a fraction,
 * 0.1 = a tenth more) on top, less what is left over; never below 0. Rounded up.
 */
export function toPutUp(
  usePerWeek: number,
  weeksToCover: number,
  leftOver: number,
  cushion = 0.1,
): Result<number> {
  if (!isAmount(usePerWeek)) return badAmount('use per week', usePerWeek);
  if (!isAmount(weeksToCover)) return badAmount('number of weeks to cover', weeksToCover);
  if (!isAmount(leftOver)) return badAmount('amount left over', leftOver);
  if (!isAmount(cushion)) return badAmount('cushion', cushion);
  const wanted = usePerWeek * weeksToCover * (1 + cushion) - leftOver;
  if (wanted > MOST) return badAmount('amount to put up', wanted);
  return ok(ceilSafe(Math.max(0, wanted)));
}

/** Whole containers to put up to have `target` on the shelf when the harvest ends; no cushion. */
export function toReachTarget(target: number, leftOver: number): Result<number> {
  if (!isAmount(target)) return badAmount('own target', target);
  if (!isAmount(leftOver)) return badAmount('amount left over', leftOver);
  return ok(ceilSafe(Math.max(0, target - leftOver)));
}

/** Complete months since `putUpOn`. Refused: `not-a-date`, `not-put-up-yet` when it is after `asOf`. */
export function monthsKept(putUpOn: DayNumber, asOf: DayNumber): Result<number> {
  if (!isDay(putUpOn)) return badDay('date put up');
  if (!isDay(asOf)) return badDay('as-of date');
  const months = monthsBetween(putUpOn, asOf);
  if (months !== null) return ok(months);
  return refuse('not-put-up-yet', say`The date put up is after the as-of date.`, say`Check the date put up.`);
}
