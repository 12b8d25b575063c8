import { type Growing, growing, trees } from '../../facts/index.js';
import type { Problem, Result } from '../../problem.js';
import { phrase } from '../../words/index.js';
import { isDay } from '../dates.js';
import { FALL_DAYS, startBefore, TENDER_DAYS } from '../growing-dates.js';
import { nextMonthDay } from '../season.js';
import type { DayNumber } from '../types.js';
import type { CropFigure } from './figure-names.js';
import type { GrowingSeason } from './frost.js';
import type { InUse, OwnFigures } from './own-figures.js';
import type { HowPlanted, PlantingRow } from './types.js';
import { problem, problemsOf } from './words.js';

/** Columns of Beds that hold dates. */
export type DateColumn = 'start_on' | 'set_out_on' | 'harvest_from' | 'harvest_to' | 'latest_sowing';

/** The dates of one planting in one season, and what stands in the way of those that are blank. */
export interface PlantingDates {
  readonly season: GrowingSeason;
  readonly how: HowPlanted;
  readonly startOn: DayNumber | null;
  readonly setOutOn: DayNumber | null;
  readonly harvestFrom: DayNumber | null;
  readonly harvestTo: DayNumber | null;
  readonly latestSowing: DayNumber | null;
  /** True where the sowing was written down, and the dates count from it. */
  readonly sown: boolean;
  /** True where the household gives its own days of harvest. */
  readonly ownWindow: boolean;
  /** True where the first fall frost ends the harvest. */
  readonly endsByFrost: boolean;
  readonly problems: Partial<Record<DateColumn, Problem>>;
}

/** How a crop is started when the row does not say. */
export function usualStart(crop: string): HowPlanted {
  const of = growing(crop);
  if (of.ok) return of.value.sow[0] ?? 'direct';
  return trees(crop).ok ? 'tree' : 'direct';
}

/** Whether it stands for years. */
export const isPerennial = (how: HowPlanted): boolean => how === 'tree' || how === 'crown';

/** A figure of a crop in use, or null with the problem. */
export type Figures = (what: CropFigure) => Result<InUse>;
export const figuresOf =
  (crop: string, own: OwnFigures): Figures =>
  (what) =>
    own.inUse({ of: crop, what });

const number = (found: Result<InUse>): number | null => (found.ok ? found.value.usual : null);
const why = (found: Result<InUse>): Problem | null => (found.ok ? null : found.problem);
const day = (n: number | null): DayNumber | null => (n !== null && isDay(n) ? n : null);

const PERENNIAL: Problem = problem(
  'perennial-dates',
  phrase('It stands for years, and no days to its harvest are published here.'),
  phrase('Write when you pick it under “Own harvest from” and “Own harvest to”.'),
);
const UNKNOWN_DAYS: Problem = problem(
  'days-to-harvest-unknown',
  phrase('No days to the harvest of this crop are published here.'),
  phrase('Write when you pick it under “Own harvest from” and “Own harvest to”.'),
);
const WINTER: Problem = problem(
  'winter-sowing-date',
  phrase('No date is published for sowing outdoors in winter under cover.'),
  phrase('Write the day under “Sown on” once you have sown.'),
);
const FALL_PLANTED: Problem = problem(
  'planted-in-fall',
  phrase('It is planted in fall, and no weeks about a frost are published for that.'),
  phrase('Write the day under “Sown on”.'),
);
const NO_FROST: Problem = problem(
  'frost-dates-missing',
  phrase('The frost dates of the household are missing or make no season.'),
  phrase('Write both among the household’s settings, as 05-24 and 09-18.'),
);
const TOO_LATE: Problem = problem(
  'frost-comes-first',
  phrase('The first fall frost comes before it is ready.'),
  phrase(
    'Start it sooner, indoors if it can be, or choose a variety that is ready sooner and give its days on Facts.',
  ),
);

/** Days that a crop spends as a seedling where its days count from setting out. */
function seedlingDays(of: Growing, figures: Figures): number | null {
  if (of.maturityFrom !== 'transplant') return 0;
  const weeks = number(figures('weeks indoors'));
  return weeks === null ? null : weeks * 7;
}

interface Start {
  readonly startOn: DayNumber | null;
  readonly setOutOn: DayNumber | null;
  readonly problems: Partial<Record<DateColumn, Problem | null>>;
}

/** Start and setting out, by the frost and the published weeks, or by the day it was sown. */
function starting(row: PlantingRow, how: HowPlanted, season: GrowingSeason, figures: Figures): Start {
  const sown = day(row.sownOn);
  const weeks = figures('weeks from the last frost');
  const { lastFrost } = season;
  // The earliest published week: what stands cold may go out then.
  const outdoors = lastFrost === null || !weeks.ok ? null : day(Math.ceil(lastFrost + weeks.value.low * 7));
  const outdoorsProblem = lastFrost === null ? NO_FROST : why(weeks);
  if (isPerennial(how)) {
    return { startOn: sown ?? (how === 'crown' ? outdoors : null), setOutOn: null, problems: {} };
  }
  if (how === 'direct' || how === 'set') {
    const clove = !weeks.ok && how === 'set';
    return {
      startOn: sown ?? outdoors,
      setOutOn: null,
      problems: { start_on: (sown ?? outdoors) ? null : clove ? FALL_PLANTED : outdoorsProblem },
    };
  }
  if (how === 'winter-sown') {
    return {
      startOn: sown,
      setOutOn: outdoors,
      problems: {
        start_on: sown === null ? WINTER : null,
        set_out_on: outdoors === null ? outdoorsProblem : null,
      },
    };
  }
  const indoors = figures('weeks indoors');
  const grown = sown !== null && indoors.ok ? day(Math.ceil(sown + indoors.value.usual * 7)) : null;
  // Seedlings sown early wait for the weather; those sown late are not ready when it comes.
  const setOutOn = grown === null ? outdoors : outdoors === null ? grown : Math.max(grown, outdoors);
  const startOn =
    sown ?? (outdoors !== null && indoors.ok ? day(startBefore(outdoors, indoors.value.usual)) : null);
  return {
    startOn,
    setOutOn,
    problems: {
      start_on: startOn === null ? (outdoors === null ? outdoorsProblem : why(indoors)) : null,
      set_out_on: setOutOn === null ? outdoorsProblem : null,
    },
  };
}

/** The first day of harvest by days to maturity, from the moment that they count from. */
function ready(
  of: Growing | null,
  how: HowPlanted,
  start: Start,
  figures: Figures,
): { from: DayNumber | null; problem: Problem | null } {
  if (isPerennial(how)) return { from: null, problem: PERENNIAL };
  if (!of) return { from: null, problem: UNKNOWN_DAYS };
  const days = figures('days to maturity');
  if (!days.ok) return { from: null, problem: days.problem };
  const transplanted = how === 'indoors' || how === 'winter-sown';
  // Days from setting out, for a crop sown where it grows: its weeks as a seedling come on top.
  const extra = !transplanted && of.maturityFrom === 'transplant' ? (seedlingDays(of, figures) ?? 0) : 0;
  const counted = transplanted && of.maturityFrom === 'transplant' ? start.setOutOn : start.startOn;
  // Winter-sown without a date: it comes up with the spring, so its days count from setting out.
  const fromDay = counted ?? (how === 'winter-sown' ? start.setOutOn : null);
  if (fromDay === null) {
    return { from: null, problem: start.problems.start_on ?? start.problems.set_out_on ?? NO_FROST };
  }
  const from = day(Math.ceil(fromDay + extra + days.value.usual));
  return { from, problem: from === null ? NO_FROST : null };
}

/** The last day for a harvest before the first fall frost, by the rule of `LAST_SOWING`. */
function latest(of: Growing | null, how: HowPlanted, season: GrowingSeason, figures: Figures) {
  if (isPerennial(how) || !of) return { day: null, problem: null };
  if (of.maturityFrom === 'clove' || of.maturityFrom === 'plant') return { day: null, problem: null };
  const days = figures('days to maturity');
  if (!days.ok) return { day: null, problem: days.problem };
  if (season.firstFrost === null) return { day: null, problem: NO_FROST };
  const seedling = seedlingDays(of, figures);
  if (!of.frost || seedling === null) return { day: null, problem: null };
  const back = days.value.usual + FALL_DAYS + (isTender(of) ? TENDER_DAYS : 0) + seedling;
  return { day: day(Math.floor(season.firstFrost - back)), problem: null };
}

export const isTender = (of: Growing | null): boolean =>
  of?.frost?.value === 'tender' || of?.frost?.value === 'very tender';

/**
 * The dates of a planting in a season. A harvest ends with the first fall frost where frost kills the crop, else
 * when the slowest of the published days are over; the household's own window wins over both.
 */
export function plantingDates(
  row: PlantingRow,
  crop: string,
  season: GrowingSeason,
  own: OwnFigures,
): PlantingDates {
  const found = growing(crop);
  const of = found.ok ? found.value : null;
  const how = row.how ?? usualStart(crop);
  const figures = figuresOf(crop, own);
  const start = starting(row, how, season, figures);
  const reckoned = ready(of, how, start, figures);
  const last = latest(of, how, season, figures);
  const from = row.ownFrom ? nextMonthDay(season.begins, row.ownFrom) : reckoned.from;

  const days = figures('days to maturity');
  const slow = days.ok ? Math.max(0, Math.ceil(days.value.high - days.value.usual)) : 0;
  const endsByFrost = !row.ownTo && isTender(of) && !isPerennial(how);
  let to: DayNumber | null = null;
  let toProblem: Problem | null = null;
  if (from !== null) {
    if (row.ownTo) to = nextMonthDay(from, row.ownTo);
    else if (isPerennial(how)) toProblem = PERENNIAL;
    else if (!endsByFrost) to = day(from + slow);
    else if (season.firstFrost === null) toProblem = NO_FROST;
    else if (season.firstFrost < from) toProblem = TOO_LATE;
    else to = season.firstFrost;
  }
  return {
    season,
    how,
    startOn: start.startOn,
    setOutOn: start.setOutOn,
    harvestFrom: from,
    harvestTo: to,
    latestSowing: last.day,
    sown: day(row.sownOn) !== null,
    ownWindow: row.ownFrom !== null,
    endsByFrost,
    problems:
      problemsOf<DateColumn>({
        ...start.problems,
        harvest_from: from === null ? reckoned.problem : null,
        harvest_to: toProblem,
        latest_sowing: last.problem,
      }) ?? {},
  };
}
