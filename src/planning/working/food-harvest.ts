import { phrase, say } from '../../words/index.js';
import { measureName } from '../measure.js';
import { measuredIn } from '../measured.js';
import type { LineReckoning } from '../reckon.js';
import type { FoodReckoning } from '../reckon-food.js';
import type { FoodRow, WorkingInput } from '../types.js';
import {
  amount,
  asOfInput,
  call,
  cautionsOf,
  countedUnit,
  type Explained,
  input,
  iso,
  n,
  seasonArguments,
  seasonInputs,
  some,
} from './parts.js';
import { plannedInputs, stockInputs, stockMissing, useMissing } from './shared.js';

/** A Foods row with what was worked out for it. */
export interface FoodCase {
  readonly line: LineReckoning;
  readonly row: FoodRow;
  readonly food: FoodReckoning;
}

const supplyWord = (row: FoodRow): string => (row.comesFrom === 'bought' ? 'supply' : 'harvest');

const harvestMissing = phrase(
  'Write the first and last day of the fresh season, or the day of the next supply, in Foods.',
);

function harvestInputs({ line, row }: FoodCase): readonly WorkingInput[] {
  const { harvest } = line;
  if (!harvest) return [];
  return [input(say`Next ${supplyWord(row)} begins`, iso(harvest.begins), phrase('day'), 'computed')];
}

/** What would fill a blank that hangs on what is left at harvest. */
function leftMissing({ line, food }: FoodCase): string {
  if (line.seasonProblem) return `${line.seasonProblem.message} ${line.seasonProblem.mend}`;
  if (!line.harvest) return harvestMissing;
  if (line.countedOn === null) return stockMissing(line);
  const problem = food.problems.left_at_harvest;
  return problem ? `${problem.message} ${problem.mend}` : useMissing(line);
}

export function explainNextHarvest(at: FoodCase): Explained {
  const { line, row } = at;
  const { harvest } = line;
  return {
    rule: say`The first day of the coming ${supplyWord(row)}: the day of the next supply where you wrote one, else the next first day of the fresh season. One in progress is the coming one.`,
    inputs: [
      ...(row.nextSupply === null
        ? []
        : [input(phrase('Next supply'), iso(row.nextSupply), phrase('day'), 'own')]),
      ...seasonInputs(line),
      asOfInput(line),
    ],
    steps: harvest
      ? [
          harvest.inProgress ? say`it is in progress: what is put up now is still to come` : null,
          harvest.ends > harvest.begins ? say`it lasts until ${iso(harvest.ends)}` : null,
          say`the one after begins ${iso(harvest.next)}`,
        ]
      : [],
    missing: line.seasonProblem ? `${line.seasonProblem.message} ${line.seasonProblem.mend}` : harvestMissing,
  };
}

export function explainLeft(at: FoodCase): Explained {
  const { line, row, food } = at;
  const { harvest, countedOn, planned, household, season } = line;
  const weeks = food.weeksToHarvest ?? 0;
  const known = food.left !== null && harvest && countedOn !== null;
  return {
    rule: harvest?.inProgress
      ? say`The ${supplyWord(row)} is in progress, so this is what is on hand and counted on, this season’s included; what is wanted beyond it is still to put up.`
      : say`What is counted on, less use per week × the weeks outside the fresh season until the ${supplyWord(row)} begins; never below 0.`,
    inputs: [
      ...stockInputs(line),
      ...(harvest?.inProgress ? [] : plannedInputs(line)),
      ...harvestInputs(at),
      asOfInput(line),
      ...seasonInputs(line),
    ],
    steps:
      known && !harvest.inProgress
        ? [
            say`${iso(household.asOf)} to ${iso(harvest.begins)}: ${some(weeks, 'week')} of eating from the shelf`,
            say`${amount(countedOn, line.countedIn)} − ${amount(planned ?? 0, line.countedIn)} a week × ${some(weeks, 'week')} = ${amount(countedOn - (planned ?? 0) * weeks, line.countedIn)}`,
            food.short ? say`short by ${amount(food.short, line.countedIn)}` : null,
          ]
        : [],
    ...(known
      ? {
          formula: call(
            'LEFT_AT',
            countedOn,
            planned ?? 0,
            iso(harvest.begins),
            iso(household.asOf),
            ...seasonArguments(season),
          ),
        }
      : {}),
    missing: leftMissing(at),
  };
}

export function explainShortOrOver(at: FoodCase): Explained {
  const { line, row, food } = at;
  const problem = food.problems.short_or_over;
  return {
    rule: say`What is left when the ${supplyWord(row)} begins, over what you want to carry past it. Below 0: how much will be eaten that is not there.`,
    inputs: [
      ...(food.left === null
        ? []
        : [input(phrase('Left at next harvest'), food.left, countedUnit(line), 'computed')]),
      input(phrase('To carry past it'), row.carry, countedUnit(line), 'own'),
      ...(food.short ? [input(phrase('Short'), food.short, countedUnit(line), 'computed')] : []),
    ],
    steps: [
      food.short && !line.harvest?.inProgress
        ? say`nothing is left, and ${amount(food.short, line.countedIn)} that will be eaten are not there = ${amount(-food.short, line.countedIn)}`
        : null,
      food.over !== null && food.left !== null && !food.short
        ? say`${amount(food.left, line.countedIn)} − ${amount(row.carry, line.countedIn)} to carry past it = ${amount(food.left - row.carry, line.countedIn)}${food.left < row.carry ? say`: nothing is over` : ''}`
        : null,
      line.harvest?.inProgress ? say`it is in progress: still to put up` : null,
    ],
    missing: problem
      ? `${problem.message} ${problem.mend}`
      : line.harvest?.inProgress
        ? say`The ${supplyWord(row)} is in progress: short or over shows when it has ended.`
        : leftMissing(at),
  };
}

export function explainPace(at: FoodCase): Explained {
  const { line, row, food } = at;
  const { harvest, household, season } = line;
  const problem = food.problems.pace;
  const weeks = food.weeksToHarvest ?? 0;
  return {
    rule: say`What is over ÷ the weeks outside the fresh season until the ${supplyWord(row)} begins. It comes on top of usual use.`,
    inputs: [
      ...(food.over === null ? [] : [input(phrase('Over'), food.over, countedUnit(line), 'computed')]),
      ...harvestInputs(at),
      asOfInput(line),
      ...seasonInputs(line),
    ],
    steps: [
      food.over !== null && food.pace !== null && weeks > 0
        ? say`${amount(food.over, line.countedIn)} ÷ ${some(weeks, 'week')} = ${amount(food.pace, line.countedIn)} a week`
        : null,
    ],
    ...(food.over !== null && harvest
      ? {
          formula: call(
            'PACE_TO_USE_UP',
            food.over,
            iso(harvest.begins),
            iso(household.asOf),
            ...seasonArguments(season),
          ),
        }
      : {}),
    missing: problem
      ? `${problem.message} ${problem.mend}`
      : harvest?.inProgress
        ? say`The ${supplyWord(row)} is in progress: there is nothing to hurry for yet.`
        : leftMissing(at),
  };
}

export function explainToPutUp(at: FoodCase): Explained {
  const { line, row, food } = at;
  const { harvest, planned, household, countedIn } = line;
  const problem = food.problems.to_put_up;
  const missing = problem ? `${problem.message} ${problem.mend}` : leftMissing(at);
  const verb = row.comesFrom === 'bought' ? 'buy' : say`put up`;
  const cautions = row.comesFrom === 'bought' ? [] : cautionsOf(line, false);
  const leftInput =
    food.left === null
      ? []
      : [input(phrase('Left at next harvest'), food.left, countedUnit(line), 'computed')];
  const still = harvest?.inProgress ? say`in progress: still to ${verb}` : null;
  const safe = cautions.length > 0 ? { cautions } : {};
  if (row.ownTarget !== null) {
    return {
      rule: say`Your own target, less what is left when the ${supplyWord(row)} begins, rounded up to whole containers. No cushion is added.`,
      inputs: [input(phrase('Own target'), row.ownTarget, countedUnit(line), 'own'), ...leftInput],
      steps: [
        still,
        food.left === null
          ? null
          : say`${amount(row.ownTarget, line.countedIn)} − ${amount(food.left, line.countedIn)} left = ${amount(row.ownTarget - food.left, line.countedIn)}`,
        food.toPutUp === null ? null : say`rounded up: ${amount(food.toPutUp, countedIn)}`,
      ],
      ...(food.left === null ? {} : { formula: `=ROUNDUP(MAX(0, ${row.ownTarget} - ${food.left}), 0)` }),
      missing,
      ...safe,
    };
  }
  const weeks = harvest?.weeksToCover ?? 0;
  const cushion = household.cushion;
  const known = food.left !== null && planned !== null && harvest !== null;
  return {
    rule: say`Use per week × the weeks that the shelf must cover, from the end of the coming ${supplyWord(row)} to the start of the one after, with the cushion on top, less what is left when it begins; rounded up to whole containers.`,
    inputs: [
      ...plannedInputs(line),
      ...(harvest
        ? [
            input(say`The ${supplyWord(row)} ends`, iso(harvest.ends), phrase('day'), 'computed'),
            input(say`The ${supplyWord(row)} after begins`, iso(harvest.next), phrase('day'), 'computed'),
            input(phrase('Weeks to cover'), weeks, phrase('weeks'), 'computed'),
          ]
        : []),
      input(phrase('Cushion'), cushion * 100, '%', 'entered'),
      ...leftInput,
      ...seasonInputs(line),
    ],
    steps: known
      ? [
          still,
          say`${amount(planned, line.countedIn)} a week × ${some(weeks, 'week')} × ${n(1 + cushion)} − ${amount(food.left ?? 0, line.countedIn)} left = ${amount(planned * weeks * (1 + cushion) - (food.left ?? 0), line.countedIn)}`,
          food.toPutUp === null ? null : say`rounded up: ${amount(food.toPutUp, countedIn)}`,
        ]
      : [],
    ...(known ? { formula: call('TO_PUT_UP', planned, weeks, food.left, cushion) } : {}),
    missing:
      food.left !== null && planned === null ? say`${useMissing(line)} Or write your own target.` : missing,
    ...safe,
  };
}

export function explainPounds(at: FoodCase): Explained {
  const { line, row, food } = at;
  const problem = food.problems.pounds_to_grow;
  const crops = food.crops?.ok ? food.crops.value : [];
  const fresh = (row.freshUse ?? 0) * (food.freshWeeks ?? 0);
  const one = line.countedIn === null ? 'container' : measureName(line.countedIn, 1);
  const missing = problem
    ? `${problem.message} ${problem.mend}`
    : (row.comesFrom ?? 'ground') !== 'ground'
      ? say`Only what comes from the ground is grown: see the column “comes from”.`
      : row.crops.length === 0
        ? say`Write which crops go into it.`
        : food.toPutUp === null
          ? (explainToPutUp(at).missing ?? '')
          : leftMissing(at);
  return {
    rule: say`For each crop: (containers to put up + fresh use per week × weeks of the season) × its pounds in one container. Weights are as harvested.`,
    inputs: [
      ...(food.toPutUp === null
        ? []
        : [input(phrase('To put up'), food.toPutUp, countedUnit(line), 'computed')]),
      ...(fresh > 0 && row.freshUse !== null && food.freshWeeks !== null
        ? [
            input(phrase('Fresh use per week'), row.freshUse, countedUnit(line), 'own'),
            input(phrase('Weeks of the season'), food.freshWeeks, phrase('weeks'), 'computed'),
          ]
        : []),
      ...crops.map(({ crop, pounds, origin, figure }) =>
        input(
          figure ? say`Pounds of ${crop} (${line.household.basis} basis)` : say`Pounds of ${crop}`,
          pounds,
          `pounds a ${one}`,
          origin,
          figure ? [figure.source, ...(figure.notes ?? [])].join('; ') : undefined,
        ),
      ),
    ],
    steps:
      food.pounds === null || food.toPutUp === null
        ? []
        : [
            fresh > 0
              ? say`${amount(food.toPutUp, line.countedIn)} + ${amount(row.freshUse ?? 0, line.countedIn)} a week × ${some(food.freshWeeks ?? 0, 'week')} = ${amount(food.toPutUp + fresh, line.countedIn)}`
              : null,
            ...crops.map(
              ({ crop, pounds }) =>
                say`${crop}: ${amount((food.toPutUp ?? 0) + fresh, line.countedIn)} × ${measuredIn(pounds, 'pound')} in each = ${measuredIn(pounds * ((food.toPutUp ?? 0) + fresh), 'pound')}`,
            ),
            crops.length > 1 ? say`in all ${measuredIn(food.pounds, 'pound')}` : null,
          ],
    missing,
  };
}
