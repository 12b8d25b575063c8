import type { Problem } from '../../problem.js';
import { say } from '../../words/index.js';
import { toIsoDay } from '../dates.js';
import type { LineReckoning } from '../reckon.js';
import type { FoodReckoning } from '../reckon-food.js';
import { runsOutOn, weeksOfSupply } from '../supply.js';
import type { FoodFigures, PlanValue, RowPlan } from '../types.js';
import { STILL_TO_PUT_UP, tidy } from '../words.js';
import { weeksOfLine } from './lot-row.js';

const known = (n: number | null): number | null => (n === null ? null : tidy(n));

function weeksAt(line: LineReckoning, use: number | null): PlanValue {
  if (line.countedOn === null || use === null) return null;
  const weeks = weeksOfSupply(line.countedOn, use);
  return weeks.ok ? weeks.value : null;
}

function shortOrOver(line: LineReckoning, food: FoodReckoning): PlanValue {
  if (line.harvest?.inProgress) return (food.toPutUp ?? 0) > 0 ? STILL_TO_PUT_UP : null;
  if (food.over === null) return null;
  return food.over > 0 ? tidy(food.over) : food.short ? -tidy(food.short) : 0;
}

/** The planning columns of a Foods row. */
export function foodRow(line: LineReckoning, food: FoodReckoning): RowPlan<FoodFigures> {
  const { use, countedIn, harvest } = line;
  const out =
    line.countedOn !== null && use
      ? runsOutOn(line.countedOn, use.usual, line.household.asOf, line.season)
      : null;
  const problems: Partial<Record<keyof FoodFigures, Problem>> = { ...food.problems };
  if (line.seasonProblem) problems.next_harvest = line.seasonProblem;
  if (line.onHand === null) {
    const lacking = [...line.lots.values()].find((at) => at.left !== null && at.bridgeProblem);
    if (lacking?.bridgeProblem) problems.on_hand = lacking.bridgeProblem;
  }
  if (use?.origin === 'published') {
    problems.use_per_week = {
      code: 'published-suggestion',
      message: say`A published suggestion, as nothing was drawn yet.`,
      mend: say`Write your own use a week, or let your draws say it.`,
    };
  }
  const units: Partial<Record<keyof FoodFigures, string>> = {};
  if (countedIn !== null) for (const column of IN_CONTAINERS) units[column] = countedIn;
  return {
    figures: {
      on_hand: line.onHand,
      use_low: known(use?.low ?? null),
      use_per_week: known(use?.usual ?? null),
      use_high: known(use?.high ?? null),
      weeks_low: weeksAt(line, use?.high ?? null),
      weeks_of_supply: weeksOfLine(line),
      weeks_high: weeksAt(line, use?.low ?? null),
      runs_out_on: out?.ok ? out.value : null,
      next_harvest: harvest ? toIsoDay(harvest.begins) : null,
      left_at_harvest: known(food.left),
      short_or_over: shortOrOver(line, food),
      pace: known(food.pace),
      to_put_up: food.toPutUp,
      pounds_to_grow: known(food.pounds),
    },
    units,
    ...(Object.keys(problems).length > 0 ? { problems } : {}),
  };
}

/** Columns of Foods whose amounts are in the counted-in container. */
const IN_CONTAINERS = [
  'on_hand',
  'use_low',
  'use_per_week',
  'use_high',
  'left_at_harvest',
  'short_or_over',
  'pace',
  'to_put_up',
] as const satisfies readonly (keyof FoodFigures)[];
