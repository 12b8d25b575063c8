import type { Problem } from '../../problem.js';
import { dayToCivil, isDay } from '../dates.js';
import type { DayNumber, FoodRow, Household, MonthDay } from '../types.js';
import { calendarYears, comingSeason, type FrostYears, frostYears, type GrowingSeason } from './frost.js';
import { type OwnFigures, publishedOnly } from './own-figures.js';
import { isPerennial, type PlantingDates, plantingDates, usualStart } from './planting-dates.js';
import type { PlantingRow } from './types.js';
import { cropKey } from './words.js';
import { yearsOff } from './years-off.js';

/** A harvest of a crop: its first day, and its last where one is known. */
export interface HarvestWindow {
  readonly from: DayNumber;
  readonly to: DayNumber | null;
}

/** The coming harvest of a crop (one in progress counts), and the one after. */
export interface CropWindow {
  readonly next: HarvestWindow;
  readonly following: HarvestWindow | null;
}

/** Stage 1 of the garden's plan: dates, which hang on nothing but plantings, frosts and figures. */
export interface GardenWindows {
  /** The season that is planned: the present one until its first fall frost, then the coming one. */
  readonly season: GrowingSeason;
  readonly years: FrostYears;
  /** Why there are no frost dates, or null. */
  readonly frostProblem: Problem | null;
  /** By id of the planting. */
  readonly dates: ReadonlyMap<string, PlantingDates>;
  /** By crop key. */
  readonly crops: ReadonlyMap<string, CropWindow>;
}

/** The season that a planting belongs to: that of its sowing where it is written, else the one planned. */
function seasonOf(row: PlantingRow, years: FrostYears, planned: GrowingSeason): GrowingSeason {
  // What is sown after the fall frost, as garlic is, is for the season to come.
  // A tree planted years ago is picked this season.
  const stands = row.crop !== null && isPerennial(row.how ?? usualStart(row.crop));
  return isDay(row.sownOn) && !stands ? comingSeason(years, row.sownOn) : planned;
}

/** Harvests of a planting in the seasons about the as-of date. */
function harvests(
  row: PlantingRow,
  crop: string,
  own: PlantingDates,
  around: readonly GrowingSeason[],
  figures: OwnFigures,
): (readonly [year: number, window: HarvestWindow])[] {
  return around.flatMap((season) => {
    const sownLater = own.sown && !isPerennial(own.how) && season.year < own.season.year;
    if (sownLater) return [];
    const at =
      season.year === own.season.year ? own : plantingDates({ ...row, sownOn: null }, crop, season, figures);
    const { harvestFrom: from, harvestTo: to } = at;
    if (from === null || at.problems.harvest_to?.code === 'frost-comes-first') return [];
    return [[season.year, { from, to }] as const];
  });
}

function together(windows: readonly HarvestWindow[]): HarvestWindow {
  const lasts = windows.flatMap(({ to }) => (to === null ? [] : [to]));
  return {
    from: Math.min(...windows.map(({ from }) => from)),
    to: lasts.length > 0 ? Math.max(...lasts) : null,
  };
}

/**
 * The dates of every planting, and the coming harvest of every crop with the one after. Without frost dates
 * only what was sown, or has its own harvest window, has dates.
 */
export function planWindows(
  plantings: readonly PlantingRow[],
  household: Household,
  figures: OwnFigures = publishedOnly,
): GardenWindows {
  const found = frostYears(household);
  const years = found.ok ? found.value : calendarYears;
  const { asOf } = household;
  const at = isDay(asOf) ? asOf : 0;
  const season = comingSeason(years, at);
  const around = [-1, 0, 1, 2].map((add) => years.season(season.year + add));
  const dates = new Map<string, PlantingDates>();
  const byCrop = new Map<string, Map<number, HarvestWindow[]>>();
  for (const row of plantings) {
    const { crop } = row;
    if (crop === null) continue;
    const own = plantingDates(row, crop, seasonOf(row, years, season), figures);
    dates.set(row.id, own);
    // What bears nothing this season has no harvest to wait for.
    if (row.plants === 0 || yearsOff(row, crop, own.how, household.basis, figures) > 0) continue;
    let seasons = byCrop.get(crop);
    if (!seasons) {
      seasons = new Map();
      byCrop.set(crop, seasons);
    }
    for (const [year, window] of harvests(row, crop, own, around, figures)) {
      const here = seasons.get(year);
      if (here) here.push(window);
      else seasons.set(year, [window]);
    }
  }
  const crops = new Map<string, CropWindow>();
  for (const [crop, seasons] of byCrop) {
    const all = [...seasons].sort(([a], [b]) => a - b).map(([, windows]) => together(windows));
    const next = all.find(({ from, to }) => (to ?? from) >= at);
    if (!next) continue;
    const following = all.find(({ from }) => from > (next.to ?? next.from)) ?? null;
    crops.set(crop, { next, following });
  }
  return { season, years, frostProblem: found.ok ? null : found.problem, dates, crops };
}

const monthDayOf = (day: DayNumber): MonthDay => {
  const { month, day: date } = dayToCivil(day);
  return { month, day: date };
};

/** The crop whose harvest a food waits for: the one with the most pounds in it, else the first written. */
export function leadingCrop({ crops }: FoodRow): string | null {
  let most: { crop: string; pounds: number } | null = null;
  for (const { crop, pounds } of crops) {
    if (!most || (pounds ?? 0) > most.pounds) most = { crop, pounds: pounds ?? 0 };
  }
  return most ? cropKey(most.crop) : null;
}

/**
 * A Foods row with its fresh season from Beds, where the person wrote neither a season nor a next supply and its
 * crop stands there. The same object where nothing changes.
 */
export function withFreshSeason(row: FoodRow, windows: GardenWindows): FoodRow {
  if ((row.comesFrom ?? 'ground') !== 'ground') return row;
  if (row.freshFrom !== null || row.freshTo !== null || row.nextSupply !== null) return row;
  const crop = leadingCrop(row);
  const next = crop === null ? undefined : windows.crops.get(crop)?.next;
  if (!next) return row;
  return next.to === null
    ? { ...row, nextSupply: next.from }
    : { ...row, freshFrom: monthDayOf(next.from), freshTo: monthDayOf(next.to) };
}
