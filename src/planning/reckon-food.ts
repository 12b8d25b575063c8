import type { Problem, Result } from '../problem.js';
import { say } from '../words/index.js';
import { type CropPounds, cropPounds, NO_FRESH_SEASON, poundsToGrow } from './pounds.js';
import type { LineReckoning } from './reckon.js';
import { type SeasonSpan, seasonAt, weeksOutside } from './season.js';
import { leftAndShort, paceToUseUp, toPutUp, toReachTarget } from './supply.js';
import type { FoodRow } from './types.js';
import { isAmount } from './words.js';

/** The harvest part of a Foods row. Amounts in counted-in containers; null where something is missing. */
export interface FoodReckoning {
  /** `u(harvest begins)`. */
  readonly weeksToHarvest: number | null;
  readonly left: number | null;
  readonly short: number | null;
  /** Over what is to be carried past the harvest. */
  readonly over: number | null;
  readonly pace: number | null;
  readonly toPutUp: number | null;
  readonly crops: Result<readonly CropPounds[]> | null;
  /** Weeks of the whole fresh season. */
  readonly freshWeeks: number | null;
  readonly poundsByCrop: ReadonlyMap<string, number>;
  readonly pounds: number | null;
  readonly problems: Readonly<
    Partial<
      Record<
        'left_at_harvest' | 'short_or_over' | 'pace' | 'to_put_up' | 'pounds_to_grow' | 'use_per_week',
        Problem
      >
    >
  >;
}

const bad = (what: string): Problem => ({
  code: 'bad-amount',
  message: say`The ${what} is not a number from 0 up.`,
  mend: say`Write the ${what} as a number, or leave it blank.`,
});

/** Works out left at harvest, short or over, pace, to put up and pounds for a line with a Foods row. */
export function reckonFood(line: LineReckoning, row: FoodRow): FoodReckoning {
  const { asOf } = line.household;
  const { harvest, planned, countedOn, season } = line;
  const problems: { -readonly [K in keyof FoodReckoning['problems']]: FoodReckoning['problems'][K] } = {};
  if (row.ownUse !== null && !isAmount(row.ownUse)) problems.use_per_week = bad('own use per week');

  const weeksToHarvest = harvest ? weeksOutside(asOf, harvest.begins, season) : null;
  let left: number | null = null;
  let short: number | null = null;
  if (harvest && countedOn !== null && (planned !== null || weeksToHarvest === 0)) {
    const found = leftAndShort(countedOn, planned ?? 0, harvest.begins, asOf, season);
    if (found.ok) {
      left = found.value.left;
      short = found.value.short;
    } else problems.left_at_harvest = found.problem;
  }

  let over: number | null = null;
  let pace: number | null = null;
  if (!isAmount(row.carry)) problems.short_or_over = bad('number to carry past the harvest');
  else if (left !== null && harvest && !harvest.inProgress) {
    over = Math.max(0, left - row.carry);
    const found = paceToUseUp(over, harvest.begins, asOf, season);
    if (found.ok) pace = found.value;
    else problems.pace = found.problem;
  }

  let wanted: number | null = null;
  if (left !== null && harvest) {
    const target = row.ownTarget;
    const found =
      target !== null
        ? toReachTarget(target, left)
        : planned !== null
          ? toPutUp(planned, harvest.weeksToCover, left, line.household.cushion)
          : null;
    if (found?.ok) wanted = found.value;
    else if (found) problems.to_put_up = found.problem;
  }

  const crops =
    line.countedIn !== null && row.crops.length > 0 && (row.comesFrom ?? 'ground') === 'ground'
      ? cropPounds(row.crops, line.countedIn, line.input.way, line.household.basis, line.guide)
      : null;
  const span = freshSpan(line);
  const freshWeeks = span ? (span.last - span.first + 1) / 7 : null;
  if (row.freshUse !== null && !isAmount(row.freshUse)) problems.pounds_to_grow = bad('fresh use per week');
  else if (crops && !crops.ok) problems.pounds_to_grow = crops.problem;
  else if (crops && (row.freshUse ?? 0) > 0 && freshWeeks === null) problems.pounds_to_grow = NO_FRESH_SEASON;
  let poundsByCrop: ReadonlyMap<string, number> = new Map();
  let pounds: number | null = null;
  if (crops?.ok && wanted !== null && !problems.pounds_to_grow) {
    poundsByCrop = poundsToGrow(crops.value, wanted + (row.freshUse ?? 0) * (freshWeeks ?? 0));
    pounds = [...poundsByCrop.values()].reduce((sum, each) => sum + each, 0);
  }
  return {
    weeksToHarvest,
    left,
    short,
    over,
    pace,
    toPutUp: wanted,
    crops,
    freshWeeks,
    poundsByCrop,
    pounds,
    problems,
  };
}

/** The whole fresh season that the coming harvest is part of. */
function freshSpan(line: LineReckoning): SeasonSpan | null {
  return line.season && line.harvest ? seasonAt(line.season, line.harvest.ends) : null;
}
