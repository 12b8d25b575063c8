import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { addMonths, isDay } from './dates.js';
import { atBasis, defaultGuide, type Guide, type GuideFigure } from './guide.js';
import type { Basis, DayNumber, FoodRow, Lot, Origin, WayKept } from './types.js';

/** Months of best quality that a plan counts on, and where they come from. */
export interface QualityMonths {
  readonly months: number;
  readonly origin: Origin;
  readonly figure: GuideFigure | null;
}

/** Months past which no quality date is reckoned (fifty years). */
const MOST_MONTHS = 600;

/**
 * Months of best quality of a food line: the row's own, else published (the low end on a lean basis, the
 * central figure on a usual one, the high end on a good one). A quality figure, never one of safety.
 */
export function qualityMonths(
  way: WayKept,
  food: string,
  ownMonths: number | null,
  basis: Basis,
  guide: Guide,
): Result<QualityMonths> {
  if (ownMonths !== null) {
    if (ownMonths > 0 && ownMonths <= MOST_MONTHS)
      return ok({ months: ownMonths, origin: 'own', figure: null });
    return refuse(
      'bad-months',
      say`The own months of best quality are ${Number.isFinite(ownMonths) ? ownMonths : say`no number`}.`,
      say`Write a number of months above 0 and up to ${MOST_MONTHS}, or leave it blank for the published figure.`,
    );
  }
  const found = guide.qualityMonths(way, food);
  if (!found.ok) return found;
  const months = atBasis(found.value, basis, 'low');
  if (!(months > 0 && months <= MOST_MONTHS)) {
    return refuse(
      'nothing-published',
      say`No months of best quality are known for ${food}.`,
      say`Give your own months.`,
    );
  }
  return ok({ months, origin: found.value.origin, figure: found.value });
}

/** The best-quality day of a lot: its own, else the day it was put up plus the line's months. Null when unknown. */
export function bestByOf(lot: Lot, months: QualityMonths | null): DayNumber | null {
  if (isDay(lot.ownBestBy)) return lot.ownBestBy;
  if (!months || !isDay(lot.putUpOn)) return null;
  return addMonths(lot.putUpOn, months.months);
}

/**
 * Best quality by: `putUpOn` plus the published months for the way kept and food. A *quality* date: old food
 * is never called safe by it. Refused: `not-a-date`, or what the guide lacks.
 */
export function bestBy(
  putUpOn: DayNumber,
  way: WayKept,
  food = '',
  basis: Basis = 'usual',
  guide: Guide = defaultGuide,
): Result<DayNumber> {
  if (!isDay(putUpOn))
    return refuse('not-a-date', say`The date put up is not a date.`, say`Write it as 2026-05-04.`);
  const months = qualityMonths(way, food, null, basis, guide);
  if (!months.ok) return months;
  const day = addMonths(putUpOn, months.value.months);
  return day === null
    ? refuse('year-out-of-range', say`The best-by date is after the year 2200.`, say`Check the date put up.`)
    : ok(day);
}

/** The own months of a Foods row, or null without one. */
export const ownMonthsOf = (row: FoodRow | null): number | null => row?.ownMonths ?? null;
