import { roundSig } from '../units/index.js';
import { phrase } from '../words/index.js';

/** Words that stand in planning cells where no number or date would be true. */
export const NO_USE = phrase('no use');
export const OVER_TEN_YEARS = phrase('more than ten years');
export const NOT_FROM_SHELF = phrase('not eaten from the shelf');
export const NOT_BY_BEST_BY = phrase('not by its best-by');
export const PAST_BEST = phrase('past best quality: check, eat or clear out');
/** Shown in `short_or_over` and the heading of `to_put_up` while a harvest is in progress. */
export const STILL_TO_PUT_UP = phrase('still to put up');

/** Amounts above this are slips of the key, and are refused rather than reckoned with. */
export const MOST = 1e9;

/** A number that can be reckoned with: finite, from 0 to a thousand million. */
export const isAmount = (n: number | null | undefined): n is number =>
  typeof n === 'number' && n >= 0 && n <= MOST;

/** `n` without the crumbs of binary arithmetic (12 significant digits). Whole numbers pass at no cost. */
export function tidy(n: number): number {
  if (Number.isInteger(n)) return n + 0;
  // Writing a number out is slow, and most amounts have few decimals.
  const near = Math.round(n * 1e4) / 1e4;
  return near === n && Math.abs(n) < 1e7 ? near : roundSig(n, 12);
}
