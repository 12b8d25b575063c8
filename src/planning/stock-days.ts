import { FIRST_DAY } from './dates.js';
import { daysOutside, type Season } from './season.js';
import type { DayNumber } from './types.js';

/** Days from `from` up to, not including, `to`. */
export interface StockSpan {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/**
 * Notes on which days a line had something on the shelf. A day on which the last jar was drawn is one.
 * Days must be told in order.
 */
export class StockDays {
  readonly #done: StockSpan[] = [];
  #since: DayNumber | null = null;

  /** From `day` on (null = from before all days), `lots` lots have something left. */
  change(lots: number, day: DayNumber | null): void {
    const at = day ?? FIRST_DAY;
    if (lots > 0 && this.#since === null) {
      const last = this.#done.at(-1);
      if (last && last.to >= at) {
        this.#done.pop();
        this.#since = last.from;
      } else this.#since = at;
    } else if (lots === 0 && this.#since !== null) {
      this.#done.push({ from: this.#since, to: at + 1 });
      this.#since = null;
    }
  }

  /** The spans up to and including `asOf`. */
  spans(asOf: DayNumber): readonly StockSpan[] {
    return this.#since === null ? this.#done : [...this.#done, { from: this.#since, to: asOf + 1 }];
  }
}

/** Weeks within [`from`, `to`) that had stock and lie outside the fresh season. */
export function observedWeeks(
  spans: readonly StockSpan[],
  from: DayNumber,
  to: DayNumber,
  season: Season | null,
): number {
  let days = 0;
  for (const span of spans) days += daysOutside(Math.max(from, span.from), Math.min(to, span.to), season);
  return days / 7;
}

/** A test for days in order: is `day` within one of the spans? */
export function isWithin(spans: readonly StockSpan[], day: DayNumber): boolean {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (spans[middle]!.to <= day) low = middle + 1;
    else high = middle;
  }
  return low < spans.length && spans[low]!.from <= day;
}
