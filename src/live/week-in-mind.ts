import type { DayNumber } from '../planning/types.js';
import { mondayOf } from '../planning/week/index.js';
import type { LiveBook } from './live-book.js';

/**
 * Monday of the week that one has in mind on the as-of date: this one while a meal of it is still to come, else
 * the next where that is planned. On its last day, when the week to come is planned and shopped for, the next.
 */
export function weekInMind(live: LiveBook): DayNumber {
  const { asOf } = live.household;
  const monday = mondayOf(asOf);
  const toCome = live.typedRows('week').filter(({ done, skipped }) => !done && !skipped);
  const within = (from: DayNumber, to: DayNumber) =>
    toCome.some(({ date }) => date !== null && date >= from && date <= to);
  const [now, next] = [within(asOf, monday + 6), within(monday + 7, monday + 13)];
  if (asOf === monday + 6) return next || !now ? monday + 7 : monday;
  return !now && next ? monday + 7 : monday;
}

/** The first row of Week, as it stands, whose meal is of the week in mind; null where there is none. */
export function firstRowInMind(live: LiveBook): string | null {
  const monday = weekInMind(live);
  const at = live.typedRows('week').findIndex(({ date }) => date !== null && mondayOf(date) === monday);
  const sheet = live.sheetOfKind('week');
  return (sheet && live.rowIds(sheet)[at]) ?? null;
}
