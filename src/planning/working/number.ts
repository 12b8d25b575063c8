import { phrase, spoken } from '../../words/index.js';
import { shortNumber } from '../measure.js';

const THIRDS = ['', '⅓', '⅔'] as const;

/** A number for reading: thirds as fractions, else at most three decimals. */
export function n(value: number): string {
  if (!Number.isFinite(value)) return spoken(phrase('no number'));
  const size = Math.abs(value);
  const whole = Math.floor(size + 1e-9);
  const thirds = Math.round((size - whole) * 3);
  const third = THIRDS[thirds];
  if (third && size < 1e6 && Math.abs(size - whole - thirds / 3) < 1e-7)
    return `${value < 0 ? '−' : ''}${whole === 0 ? '' : whole}${third}`;
  return shortNumber(value).replace('-', '−');
}
