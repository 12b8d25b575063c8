import type { Raw } from '../book/index.js';
import { civilToDay, fromIsoDay, toIsoDay } from '../planning/dates.js';
import type { DayNumber } from '../planning/types.js';
import type { Varied } from './what-if.js';

/** From where to where a value is varied, and in what steps. Days as day numbers. */
export interface Range {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** Days to either side of a date that comes once, and of one that comes every year. */
const DAYS_AROUND = 90;
const YEARLY_AROUND = 30;
/** So many steps a slider has, about. */
const STEPS = 50;

const NICE = [1, 2, 5, 10];

/** The next of 1, 2, 5, 10, 20, 50 … that is not smaller. */
export function niceUp(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const tidy = (NICE.find((each) => each * power >= value * (1 - 1e-9)) ?? 10) * power;
  return Number(tidy.toPrecision(12));
}

/** A month and a day in the year of `near`, or a date, as a day number; null for anything else. */
export function dayOf(value: Raw | null, near: DayNumber): DayNumber | null {
  if (typeof value !== 'string') return null;
  const monthDay = /^(\d{2})-(\d{2})$/.exec(value);
  if (monthDay) {
    const year = Number(toIsoDay(near).slice(0, 4));
    return civilToDay(year, Number(monthDay[1]), Number(monthDay[2]));
  }
  const read = fromIsoDay(value);
  return read.ok ? read.value : null;
}

/** A day number as this kind of value is written. */
export const dayWritten = ({ type }: Pick<Varied, 'type'>, day: DayNumber): string =>
  type === 'month-day' ? toIsoDay(day).slice(5) : toIsoDay(day);

/** What a slider begins at: what is written, else what counts instead. */
export const beginning = ({ present, instead }: Varied): Raw | null => present ?? instead;

/** The finest amount that the value is written in. */
export const finest = ({ decimals, unit }: Pick<Varied, 'decimals' | 'unit'>): number =>
  decimals !== undefined ? 10 ** -decimals : unit === '%' || unit === 'ft' || unit === 'jars' ? 1 : 0.1;

/**
 * Sensible ends and steps for what is there now: from nothing to about twice as much, percentages to 100, years
 * and dates to both sides; never outside of what the value can be.
 */
export function usualRange(varied: Varied, asOf: DayNumber): Range {
  const value = beginning(varied);
  if (varied.type === 'date' || varied.type === 'month-day') {
    const at = dayOf(value, asOf) ?? asOf;
    const around = varied.type === 'date' ? DAYS_AROUND : YEARLY_AROUND;
    return { min: at - around, max: at + around, step: 1 };
  }
  const now = typeof value === 'number' && Number.isFinite(value) ? value : 0;
  const { min: least, max: most, unit } = varied;
  const fine = finest(varied);
  if (least !== undefined && least >= 1000) return { min: Math.max(least, now - 10), max: now + 10, step: 1 };
  const min = now < 0 ? -niceUp(-2 * now) : Math.max(least ?? 0, 0);
  const wanted = unit === '%' ? Math.max(100, now) : now <= 0 ? 10 : niceUp(2 * now);
  const max = Math.min(most ?? Number.POSITIVE_INFINITY, Math.max(wanted, min + fine));
  return {
    min: least === undefined ? min : Math.max(least, min),
    max,
    step: Math.max(fine, unit === '%' ? 1 : niceUp((max - min) / STEPS)),
  };
}
