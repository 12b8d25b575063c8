import type { Problem } from '../problem.js';
import { phrase } from '../words/index.js';
import { addMonths, isDay } from './dates.js';
import { daysOutside, makeSeason, nextMonthDay, type Season, seasonAt } from './season.js';
import type { DayNumber, FoodRow } from './types.js';

/** The coming harvest, or supply, of a food line. Days are both included. */
export interface Harvest {
  readonly begins: DayNumber;
  readonly ends: DayNumber;
  /** The start of the one after. */
  readonly next: DayNumber;
  /** True when the as-of date lies within it. */
  readonly inProgress: boolean;
  /** `u` from the end of this one to the start of the one after: weeks that the shelf has to cover. */
  readonly weeksToCover: number;
}

/** The fresh season of a Foods row; null when blank. A season with one end only is a problem. */
export function seasonOfRow(row: FoodRow | null): {
  readonly season: Season | null;
  readonly problem: Problem | null;
} {
  if (!row) return { season: null, problem: null };
  const season = makeSeason(row.freshFrom, row.freshTo);
  const half = !season && (row.freshFrom !== null || row.freshTo !== null);
  return { season, problem: half ? HALF_SEASON : null };
}

const HALF_SEASON: Problem = {
  code: 'season-half-given',
  message: phrase('The fresh season has only one end.'),
  mend: phrase('Give both its first and its last day, as 07-15 and 09-30, or neither.'),
};

/** `day`, moved on by whole years until it is not before `asOf`. */
function comingYear(day: DayNumber, asOf: DayNumber): DayNumber | null {
  for (let years = 0; years <= 400; years++) {
    const moved = addMonths(day, years * 12);
    if (moved === null || moved >= asOf) return moved;
  }
  return null;
}

/**
 * The coming harvest: the one in progress, else from the next supply (or the next first day of the season) to the
 * season's end. With a next supply alone it is that one day, every year. Null when neither is known.
 */
export function comingHarvest(
  season: Season | null,
  nextSupply: DayNumber | null,
  asOf: DayNumber,
): Harvest | null {
  const typed = isDay(nextSupply) ? nextSupply : null;
  if (!season) {
    const begins = typed === null ? null : comingYear(typed, asOf);
    const next = begins === null ? null : addMonths(begins, 12);
    if (begins === null || next === null) return null;
    return { begins, ends: begins, next, inProgress: begins === asOf, weeksToCover: (next - begins) / 7 };
  }
  const now = seasonAt(season, asOf);
  // A supply typed for later within this very season puts its start off.
  const putOff = now !== null && typed !== null && typed > asOf && typed <= now.last;
  if (now && !putOff) return harvest(now.first, now.last, true, season);
  const begins = typed !== null && typed >= asOf ? typed : nextMonthDay(asOf, season.from);
  return harvest(begins, nextMonthDay(begins, season.to), begins === asOf, season);
}

function harvest(begins: DayNumber, ends: DayNumber, inProgress: boolean, season: Season): Harvest {
  const next = nextMonthDay(ends + 1, season.from);
  return { begins, ends, next, inProgress, weeksToCover: daysOutside(ends, next, season) / 7 };
}

/** Weeks of a harvest, both ends included. */
export const weeksOfHarvest = (at: Harvest): number => (at.ends - at.begins + 1) / 7;
