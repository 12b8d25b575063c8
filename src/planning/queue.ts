import { isOpened, olderFirst } from './stock.js';
import type { DayNumber } from './types.js';

/** A lot with something left, in its own container. */
export interface QueueLot {
  readonly id: string;
  readonly left: number;
  readonly bestBy: DayNumber | null;
  readonly putUpOn: DayNumber | null;
  readonly stillCounting: boolean;
  /** How many counted-in containers one of its own is; null where they do not meet. */
  readonly toCounted: number | null;
}

/** What becomes of a lot in the queue. */
export interface Eaten {
  /** Own containers not eaten by the best-by date. */
  readonly atRisk: number;
  /** Weeks outside the fresh season until its last container is eaten; null when that is not before its best-by (or never). */
  readonly weeks: number | null;
}

/** True past best-by, unless the household still counts on the lot. */
export const isPast = (lot: Pick<QueueLot, 'bestBy' | 'stillCounting'>, asOf: DayNumber): boolean =>
  lot.bestBy !== null && lot.bestBy < asOf && !lot.stillCounting;

/** Lots in the order in which they are to be eaten: opened first, then oldest. Past ones are left out. */
export function eatingOrder<L extends QueueLot>(lots: readonly L[], asOf: DayNumber): L[] {
  return lots
    .filter((lot) => lot.left > 0 && !isPast(lot, asOf))
    .sort((a, b) => Number(isOpened(b.left)) - Number(isOpened(a.left)) || olderFirst(a, b));
}

/**
 * Eats the lots in `order` (from `eatingOrder`) at `usePerWeek` counted-in containers. `weeksTo(day)` gives the weeks
 * outside the fresh season from now to a day. A lot without a best-by date, or still counted on, is never at risk.
 * Lots that do not meet the counted-in container are passed over.
 */
export function eatInOrder(
  order: readonly QueueLot[],
  usePerWeek: number,
  weeksTo: (day: DayNumber) => number,
): Map<string, Eaten> {
  const eaten = new Map<string, Eaten>();
  let time = 0;
  for (const lot of order) {
    if (lot.toCounted === null) continue;
    const left = lot.left * lot.toCounted;
    const deadline = lot.bestBy === null || lot.stillCounting ? null : weeksTo(lot.bestBy);
    if (deadline === null) {
      // Never at risk; at no use it is never eaten either, and neither is what stands behind it.
      if (usePerWeek > 0) time += left / usePerWeek;
      eaten.set(lot.id, { atRisk: 0, weeks: usePerWeek > 0 && Number.isFinite(time) ? time : null });
      continue;
    }
    const eats = Math.min(left, usePerWeek * Math.max(0, deadline - time));
    if (usePerWeek > 0) time += eats / usePerWeek;
    const rest = left - eats;
    const all = rest <= 1e-9 * Math.max(1, left);
    eaten.set(lot.id, { atRisk: all ? 0 : rest / lot.toCounted, weeks: all ? time : null });
  }
  return eaten;
}
