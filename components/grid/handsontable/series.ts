import type { Raw } from '../../../src/book/index.js';
import { dayToCivil, fromIsoDay, makeDay, toIsoDay } from '../../../src/planning/dates.js';

type Step = (index: number) => Raw | null;

const round = (value: number): number => Number(value.toPrecision(12));

const evenly = (values: readonly number[]): number | null => {
  const step = values[1]! - values[0]!;
  return values.every((value, i) => i === 0 || Math.abs(value - values[i - 1]! - step) < 1e-9) ? step : null;
};

function months(days: readonly number[]): Step | null {
  const civil = days.map(dayToCivil);
  if (civil.some(({ day }) => day !== civil[0]!.day)) return null;
  const counts = civil.map(({ year, month }) => year * 12 + month - 1);
  const step = evenly(counts);
  if (step === null || step === 0) return null;
  return (index) => {
    const count = counts[0]! + step * index;
    const made = makeDay(Math.floor(count / 12), (count % 12) + 1, civil[0]!.day);
    return made.ok ? toIsoDay(made.value) : null;
  };
}

function ofDays(days: readonly number[]): Step | null {
  const byMonth = days.length > 1 ? months(days) : null;
  if (byMonth) return byMonth;
  // One date alone goes on day by day; a number alone does not, since it is an amount.
  const step = days.length === 1 ? 1 : evenly(days);
  return step === null ? null : (index) => toIsoDay(days[0]! + step * index);
}

/**
 * How a row of values goes on: evenly spaced numbers and dates are continued (dates also by months), all
 * else repeats.
 *
 * @returns the value at an index: from 0 the given ones, beyond their number and below 0 those that follow
 *   and go before
 */
export function series(values: readonly (Raw | null)[]): Step {
  const repeat: Step = (index) => values[((index % values.length) + values.length) % values.length] ?? null;
  if (values.length > 1 && values.every((value) => typeof value === 'number')) {
    const step = evenly(values as number[]);
    if (step !== null) return (index) => round((values[0] as number) + step * index);
    return repeat;
  }
  const days = values.map((value) => (typeof value === 'string' ? fromIsoDay(value) : null));
  if (days.length > 0 && days.every((day) => day?.ok)) {
    return ofDays(days.map((day) => (day?.ok ? day.value : 0))) ?? repeat;
  }
  return repeat;
}
