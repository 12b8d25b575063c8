import { ok, type Problem, type Result, refuse } from '../../problem.js';
import { type Bridge, inMeasure } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import { isDay } from '../dates.js';
import { defaultGuide, type Guide } from '../guide.js';
import { measureName } from '../measure.js';
import type { Basis, RowPlan } from '../types.js';
import { isAmount } from '../words.js';
import type { BedReckoning, BedsPlan } from './beds.js';
import { calendarYears, type FrostYears, seasonOfHarvest } from './frost.js';
import { type OwnFigures, publishedOnly } from './own-figures.js';
import type { HarvestFigures, HarvestRow } from './types.js';
import { problem, problemsOf, shown } from './words.js';

/** What Harvest is reckoned against. */
export interface HarvestInput {
  readonly rows: readonly HarvestRow[];
  readonly beds: BedsPlan;
  readonly basis: Basis;
  readonly years?: FrostYears;
  readonly figures?: OwnFigures;
  readonly guide?: Guide;
}

/** A row of Harvest reckoned. */
export interface HarvestReckoning {
  readonly row: HarvestRow;
  readonly crop: string | null;
  /** The planting, where the row names one. */
  readonly bed: BedReckoning | null;
  readonly pounds: Result<number> | null;
  /** Year of the season; null when undated. */
  readonly season: number | null;
  readonly soFar: number | null;
  readonly plants: number | null;
  readonly plantsAre: 'written' | 'planned' | null;
  readonly plan: number | null;
  readonly planIs: 'expected' | 'wanted' | null;
}

export interface HarvestPlan {
  readonly rows: ReadonlyMap<string, RowPlan<HarvestFigures>>;
  readonly reckoned: ReadonlyMap<string, HarvestReckoning>;
}

/** Pounds of an amount of a crop as it was written, by the bushel weight or the weight of one where need be. */
export function harvestPounds(
  crop: string,
  amount: number,
  unit: string | null,
  figures: OwnFigures = publishedOnly,
  guide: Guide = defaultGuide,
): Result<number> {
  if (!isAmount(amount)) {
    return refuse(
      'bad-amount',
      say`The amount is not a number from 0 up.`,
      say`Write what came in as a number.`,
    );
  }
  if (unit === null || unit === 'pound') return ok(amount);
  const pieces = inMeasure(amount, unit, 'each');
  if (pieces.ok) {
    const weight = figures.inUse({ of: crop, what: 'weight of one' });
    return weight.ok
      ? ok(pieces.value * weight.value.usual)
      : refuse(
          'weight-of-one-missing',
          say`What one ${crop} weighs is not published here.`,
          say`Write pounds, or your own under “${crop}, weight of one” on Facts.`,
        );
  }
  const bushel = figures.inUse({ of: crop, what: 'bushel weight' });
  const bridges: Bridge[] = [
    ...(bushel.ok ? [{ pounds: bushel.value.usual, per: 'bushel' }] : []),
    ...guide.bridges(crop).filter((bridge) => !('per' in bridge && bridge.per === 'bushel')),
  ];
  const found = inMeasure(amount, unit, 'pound', bridges);
  return found.ok
    ? found
    : refuse(
        found.problem.code,
        say`${amount} ${measureName(unit, amount)} of ${crop} cannot be turned into pounds: ${found.problem.message}`,
        say`Write pounds.`,
      );
}

interface Group {
  pounds: number;
  plants: number | null;
}

const sum = (numbers: readonly (number | null)[]): number | null => {
  const known = numbers.filter((n) => n !== null);
  return known.length > 0 ? known.reduce((all, n) => all + n, 0) : null;
};

/** Plants planned, and pounds expected or wanted, of a planting or of all plantings of a crop. */
function planned(beds: readonly BedReckoning[], basis: Basis) {
  const expected = sum(beds.map((bed) => bed.expected[basis]));
  const wanted = sum(beds.map((bed) => bed.poundsWanted));
  return {
    plants: sum(beds.map(({ row }) => (isAmount(row.plants) ? row.plants : null))),
    plan: expected ?? wanted,
    planIs: expected !== null ? ('expected' as const) : wanted !== null ? ('wanted' as const) : null,
  };
}

const NO_CROP: Problem = problem(
  'missing',
  phrase('What came in is not named.'),
  phrase('Choose the planting, or write the crop.'),
);

function toRow(at: HarvestReckoning): RowPlan<HarvestFigures> {
  const { soFar, plants, plan } = at;
  const problems = problemsOf<keyof HarvestFigures>({
    pounds_so_far:
      at.row.amount === null
        ? null
        : at.crop === null
          ? NO_CROP
          : at.pounds && !at.pounds.ok
            ? at.pounds.problem
            : null,
  });
  return {
    figures: {
      pounds_so_far: shown(soFar),
      per_plant_so_far: soFar !== null && plants !== null && plants > 0 ? shown(soFar / plants) : null,
      against_plan: soFar !== null && plan !== null && plan > 0 ? shown((soFar / plan) * 100) : null,
    },
    ...(problems ? { problems } : {}),
  };
}

/**
 * The planning columns of Harvest: in the order of the days, what has come in so far of the planting named, or of
 * the whole crop where none is, within one season.
 */
export function planHarvest(input: HarvestInput): HarvestPlan {
  const { rows, beds, basis } = input;
  const years = input.years ?? calendarYears;
  const inOrder = rows
    .map((row, at) => ({ row, at, day: isDay(row.date) ? row.date : Number.POSITIVE_INFINITY }))
    .sort((a, b) => a.day - b.day || a.at - b.at);
  const bedsOfCrop = new Map<string, BedReckoning[]>();
  for (const bed of beds.reckoned.values()) {
    const same = bedsOfCrop.get(bed.crop);
    if (same) same.push(bed);
    else bedsOfCrop.set(bed.crop, [bed]);
  }
  const groups = new Map<string, Group>();
  const add = (key: string, pounds: number, plants: number | null): Group => {
    const group = groups.get(key) ?? { pounds: 0, plants: null };
    group.pounds += pounds;
    if (plants !== null) group.plants = Math.max(group.plants ?? 0, plants);
    groups.set(key, group);
    return group;
  };
  const reckoned = new Map<string, HarvestReckoning>();
  for (const { row } of inOrder) {
    const bed = row.planting === null ? null : (beds.reckoned.get(row.planting) ?? null);
    const crop = bed?.crop ?? row.crop;
    const season = isDay(row.date) ? seasonOfHarvest(years, row.date).year : null;
    const pounds =
      crop === null || row.amount === null
        ? null
        : harvestPounds(crop, row.amount, row.unit, input.figures, input.guide);
    const came = pounds?.ok ? pounds.value : 0;
    const written = isAmount(row.plants) && row.plants > 0 ? row.plants : null;
    const ofCrop = crop === null ? null : add(`${crop}|${season ?? ''}`, came, bed ? null : written);
    const ofBed = bed ? add(say`bed ${bed.row.id}|${season ?? ''}`, came, written) : null;
    const group = ofBed ?? ofCrop;
    const of = planned(bed ? [bed] : crop === null ? [] : (bedsOfCrop.get(crop) ?? []), basis);
    reckoned.set(row.id, {
      row,
      crop,
      bed,
      pounds,
      season,
      soFar: group && pounds?.ok ? group.pounds : null,
      plants: group?.plants ?? of.plants,
      plantsAre: group?.plants != null ? 'written' : of.plants !== null ? 'planned' : null,
      plan: of.plan,
      planIs: of.planIs,
    });
  }
  return {
    rows: new Map([...reckoned].map(([id, at]) => [id, toRow(at)])),
    reckoned,
  };
}
