import type { Problem, Result } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import { toIsoDay } from '../dates.js';
import { plantsAt } from '../growing.js';
import type { Basis, DayNumber, Household, RowPlan } from '../types.js';
import { isAmount, MOST } from '../words.js';
import { bedArea, rowFeet, type Spacing, spacingOf } from './ground.js';
import { type OwnFigures, publishedOnly } from './own-figures.js';
import { type PlantYield, plantYield, weighedApart } from './plant-yield.js';
import type { PlantingDates } from './planting-dates.js';
import { isSown, type Seeds, seedsOf } from './seeds.js';
import { sharePounds } from './share-pounds.js';
import type { BedFigures, PlantingRow } from './types.js';
import type { GardenWindows } from './windows.js';
import { cropKey, orNull, problem, problemsOf, shown, TOO_MUCH } from './words.js';
import { yearsOff } from './years-off.js';

/** Stage 2 of the garden's plan: what the beds are to bring. */
export interface BedsInput {
  readonly plantings: readonly PlantingRow[];
  /** Pounds to grow by crop key (`poundsWanted`). */
  readonly pounds: ReadonlyMap<string, number>;
  readonly household: Household;
  readonly figures?: OwnFigures;
  readonly windows: GardenWindows;
}

/** One planting reckoned. Null where a figure is lacking. */
export interface BedReckoning {
  readonly row: PlantingRow;
  readonly crop: string;
  readonly basis: Basis;
  readonly dates: PlantingDates;
  readonly yield: Result<PlantYield>;
  /** Years until a tree or crown bears; 0 for what bears this season. */
  readonly yearsOff: number;
  readonly poundsWanted: number | null;
  /** All pounds wanted of the crop. */
  readonly cropPounds: number | null;
  /** Whole plants by basis. */
  readonly wanted: Readonly<Record<Basis, number | null>>;
  /** Plants that row feet, bed area and seeds are for: those planned, else those wanted. */
  readonly plants: number | null;
  readonly spacing: Result<Spacing>;
  readonly seeds: Result<Seeds> | null;
  readonly expected: Readonly<Record<Basis, number | null>>;
}

export interface BedsPlan {
  readonly rows: ReadonlyMap<string, RowPlan<BedFigures>>;
  readonly reckoned: ReadonlyMap<string, BedReckoning>;
  /** Pounds wanted of crops that stand in no bed, by crop key. */
  readonly unplanted: ReadonlyMap<string, number>;
}

/** Pounds to grow by crop, added up over the food lines; names of one crop count together. */
export function poundsWanted(
  lines: Iterable<{ readonly poundsByCrop: ReadonlyMap<string, number> }>,
): Map<string, number> {
  const pounds = new Map<string, number>();
  for (const { poundsByCrop } of lines) {
    for (const [name, each] of poundsByCrop) {
      const crop = cropKey(name);
      if (crop !== null) pounds.set(crop, (pounds.get(crop) ?? 0) + each);
    }
  }
  return pounds;
}

const byBasis = <T>(of: (basis: Basis) => T): Record<Basis, T> => ({
  lean: of('lean'),
  usual: of('usual'),
  good: of('good'),
});
const inRange = (n: number | null): number | null => (n !== null && n <= MOST ? n : null);

interface Standing {
  readonly row: PlantingRow;
  readonly crop: string;
  readonly dates: PlantingDates;
  readonly yield: Result<PlantYield>;
  readonly yearsOff: number;
  readonly expected: Record<Basis, number | null>;
}

function standing(
  row: PlantingRow,
  crop: string,
  dates: PlantingDates,
  basis: Basis,
  figures: OwnFigures,
): Standing {
  const found = plantYield(row, crop, figures);
  const off = yearsOff(row, crop, dates.how, basis, figures);
  const { plants } = row;
  const expected = byBasis((at) =>
    found.ok && isAmount(plants) ? inRange(off > 0 ? 0 : plants * found.value[at]) : null,
  );
  return { row, crop, dates, yield: found, yearsOff: off, expected };
}

function reckon(
  of: Standing,
  pounds: number | null,
  cropPounds: number | null,
  input: BedsInput,
): BedReckoning {
  const { row, crop, dates } = of;
  const { basis } = input.household;
  const figures = input.figures ?? publishedOnly;
  const found = orNull(of.yield);
  const wanted = byBasis((at) => (pounds === null || !found ? null : inRange(plantsAt(pounds, found[at]))));
  const plants = isAmount(row.plants) ? row.plants : wanted[basis];
  return {
    ...of,
    basis,
    poundsWanted: pounds,
    cropPounds,
    wanted,
    plants,
    spacing: spacingOf(row, crop, figures),
    seeds:
      plants === null || !isSown(dates.how) ? null : seedsOf(row, crop, plants, dates.season.year, figures),
  };
}

const iso = (day: DayNumber | null): string | null => (day === null ? null : toIsoDay(day));

const NO_YIELD_AT_ALL: Problem = problem(
  'yield-is-nothing',
  phrase('A plant gives nothing at this yield, so no number of plants is enough.'),
  phrase('Correct the own yield, or the season’s totals on Facts.'),
);

function wantedProblem(bed: BedReckoning): Problem | null {
  if (bed.poundsWanted === null) return null;
  if (!bed.yield.ok) return bed.yield.problem;
  const at = bed.yield.value[bed.basis];
  if (bed.poundsWanted > 0 && !(at > 0)) return NO_YIELD_AT_ALL;
  return bed.wanted[bed.basis] === null ? TOO_MUCH : null;
}

function toRow(bed: BedReckoning): RowPlan<BedFigures> {
  const { dates, basis, expected, plants } = bed;
  const found = orNull(bed.yield);
  const spacing = orNull(bed.spacing);
  const seeds = bed.seeds?.ok ? bed.seeds.value : null;
  const area = spacing && plants !== null ? bedArea(plants, spacing, bed.row, bed.crop) : null;
  const now = expected[basis];
  const plantProblem = wantedProblem(bed);
  const bad = (n: number | null, what: string): Problem | null =>
    n !== null && !isAmount(n)
      ? problem(
          'bad-amount',
          say`The ${what} is not a number from 0 up.`,
          say`Write the ${what} as a number.`,
        )
      : null;
  const problems = problemsOf<keyof BedFigures>({
    ...dates.problems,
    yield: bed.yield.ok ? null : bed.yield.problem,
    plants_wanted: plantProblem ?? (bed.wanted[basis] === null ? null : weighedApart(bed.crop, found)),
    row_feet:
      plants !== null && !bed.spacing.ok ? bed.spacing.problem : bad(bed.row.ownSpacing, 'own spacing'),
    seeds: bed.seeds && !bed.seeds.ok ? bed.seeds.problem : null,
    seeds_to_buy: bad(bed.row.seedsOnHand, 'number of seeds on hand'),
    expected_pounds:
      bad(bed.row.plants, 'number of plants planned') ??
      (isAmount(bed.row.plants) && found && now === null ? TOO_MUCH : null),
  });
  return {
    figures: {
      pounds_wanted: shown(bed.poundsWanted),
      yield_low: shown(found?.lean),
      yield: shown(found?.[basis]),
      yield_high: shown(found?.good),
      yield_from: found?.from ?? null,
      plants_low: bed.wanted.good,
      plants_wanted: bed.wanted[basis],
      plants_high: bed.wanted.lean,
      row_feet: spacing && plants !== null ? shown(rowFeet(plants, spacing)) : null,
      bed_area: shown(area),
      seeds: shown(seeds?.seeds),
      seeds_to_buy: shown(seeds?.toBuy),
      start_on: iso(dates.startOn),
      set_out_on: iso(dates.setOutOn),
      harvest_from: iso(dates.harvestFrom),
      harvest_to: iso(dates.harvestTo),
      latest_sowing: iso(dates.latestSowing),
      expected_low: shown(expected.lean),
      expected_pounds: shown(now),
      expected_high: shown(expected.good),
      short_or_over: now === null || bed.poundsWanted === null ? null : shown(now - bed.poundsWanted),
    },
    ...(problems ? { problems } : {}),
  };
}

const BLANK_PLANTING: RowPlan<BedFigures> = {
  figures: Object.fromEntries(
    [
      'pounds_wanted',
      'yield_low',
      'yield',
      'yield_high',
      'yield_from',
      'plants_low',
      'plants_wanted',
      'plants_high',
      'row_feet',
      'bed_area',
      'seeds',
      'seeds_to_buy',
      'start_on',
      'set_out_on',
      'harvest_from',
      'harvest_to',
      'latest_sowing',
      'expected_low',
      'expected_pounds',
      'expected_high',
      'short_or_over',
    ].map((column) => [column, null]),
  ) as unknown as BedFigures,
};

/**
 * The planning columns of Beds: each crop's pounds shared over its plantings, and from them plants, ground and
 * seeds. Pounds of a crop with nothing planted are given as `unplanted`.
 */
export function planBeds(input: BedsInput): BedsPlan {
  const { plantings, pounds, household, windows } = input;
  const figures = input.figures ?? publishedOnly;
  const byCrop = new Map<string, Standing[]>();
  const rows = new Map<string, RowPlan<BedFigures>>();
  const reckoned = new Map<string, BedReckoning>();
  for (const row of plantings) {
    const dates = windows.dates.get(row.id);
    if (row.crop === null || !dates) {
      rows.set(row.id, BLANK_PLANTING);
      continue;
    }
    const one = standing(row, row.crop, dates, household.basis, figures);
    const same = byCrop.get(row.crop);
    if (same) same.push(one);
    else byCrop.set(row.crop, [one]);
  }
  for (const [crop, all] of byCrop) {
    const wanted = pounds.get(crop) ?? null;
    const shares =
      wanted === null || !isAmount(wanted)
        ? null
        : sharePounds(
            all.map((one) => ({
              id: one.row.id,
              plants: one.row.plants,
              bearing: (one.dates.how === 'tree' || one.dates.how === 'crown') && one.yearsOff === 0,
              expected: one.expected[household.basis],
            })),
            wanted,
          );
    for (const one of all) {
      const bed = reckon(one, shares?.get(one.row.id) ?? null, wanted, input);
      reckoned.set(one.row.id, bed);
      rows.set(one.row.id, toRow(bed));
    }
  }
  const unplanted = new Map([...pounds].filter(([crop, each]) => each > 0 && !byCrop.has(crop)));
  return { rows, reckoned, unplanted };
}
