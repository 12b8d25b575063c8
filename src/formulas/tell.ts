import { isDay, toIsoDay } from '../planning/dates.js';
import { unitTold } from '../planning/unit-told.js';
import { localNumber, say, spoken } from '../words/index.js';
import type { FunctionValue } from './declare.js';
import { singularOf } from './quantity-words.js';

const THIRDS = ['', '⅓', '⅔'] as const;

/**
 * A number as people read it in a step: thirds as fractions, else at most three decimals (three digits where
 * it is smaller than that).
 */
export function told(n: number): string {
  if (!Number.isFinite(n)) return say`no number`;
  const size = Math.abs(n);
  const whole = Math.floor(size + 1e-9);
  const thirds = Math.round((size - whole) * 3);
  const third = THIRDS[thirds];
  const sign = n < 0 ? '−' : '';
  if (third && size < 1e6 && Math.abs(size - whole - thirds / 3) < 1e-7)
    return localNumber(`${sign}${whole === 0 ? '' : whole}${third}`);
  const rounded = size < 0.1 && size > 0 ? Number(size.toPrecision(3)) : Math.round(size * 1000) / 1000;
  const text = rounded.toLocaleString('en-US', { maximumFractionDigits: 12, useGrouping: false });
  return rounded === 0 ? '0' : localNumber(`${sign}${text}`);
}

/** A number with the word of its unit, in the singular where it is one: `1 quart jar`, `0.8 quart jars a week`. */
export function toldOf(n: number, unit: string): string {
  if (unit === '' || unit === '%') return `${told(n)}${unit && ' %'}`;
  const [first = '', ...rest] = unit.split(/(?= an? )/);
  return `${told(n)} ${unitTold([n === 1 ? singularOf(first) : first, ...rest].join(''))}`;
}

/** An answer in words, with its unit where it is a number. */
export function toldValue(value: FunctionValue, unit = ''): string {
  if (typeof value === 'number') return toldOf(value, unit);
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  return typeof value === 'string' ? spoken(value) : isoOf(value.day);
}

export const isoOf = (day: number): string => (isDay(day) ? toIsoDay(day) : say`no date`);
