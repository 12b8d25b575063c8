import {
  callFunction,
  explainFunction,
  functionNamed,
  type GivenValue,
  problemText,
} from '../../src/formulas/index.js';
import { fromIsoDay, toIsoDay } from '../../src/planning/dates.js';
import type { Basis } from '../../src/planning/types.js';

export const dayOf = (iso: string): number => {
  const day = fromIsoDay(iso);
  if (!day.ok) throw new Error(iso);
  return day.value;
};

export const context = (basis: Basis = 'usual') => ({ asOf: dayOf('2026-02-01'), basis });

const declared = (name: string) => {
  const found = functionNamed(name);
  if (!found) throw new Error(`no function ${name}`);
  return found;
};

/** The value of a function: a number, text, or ISO date; a problem as its text. */
export function call(name: string, ...given: readonly (GivenValue | undefined)[]) {
  return callWith('usual', name, ...given);
}

export function callWith(basis: Basis, name: string, ...given: readonly (GivenValue | undefined)[]) {
  const answer = callFunction(declared(name), given, context(basis));
  if (!answer.ok) return `PROBLEM: ${problemText(answer.problem)}`;
  return typeof answer.value === 'object' ? toIsoDay(answer.value.day) : answer.value;
}

export const explain = (name: string, ...given: readonly GivenValue[]) => {
  const answer = explainFunction(declared(name), given, context());
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
};

/** Arguments that every function accepts, for tests that change one of them. */
export const GOOD_ARGUMENTS: Readonly<Record<string, readonly GivenValue[]>> = {
  WEEKS_OF_SUPPLY: [24, 0.8],
  RUNS_OUT_ON: [10, 1, '2026-02-01', '07-15', '09-15'],
  USE_PER_WEEK: [[['2026-01-04'], ['2026-01-18']], [[2], [1]], '2026-03-01', 8],
  USE_RANGE: [[['2026-01-04'], ['2026-01-18']], [[2], [1]], 0.9, '2026-03-01', 8],
  PACE_TO_USE_UP: [24, '2026-08-30', '2026-02-01', '07-15', '09-15'],
  LEFT_AT: [30, 1, '2026-08-02', '2026-02-01', '07-15', '09-15'],
  TO_PUT_UP: [1, 40, 4, 0.1],
  BEST_BY: ['2025-08-20', 'canned', 'peaches'],
  MONTHS_KEPT: ['2025-08-20', '2026-02-01'],
  MEASURE: [160, 'cup', 'quart', 'milk'],
  CONVERT: [3, 'gal', 'qt'],
  CONTAINER_HOLDS: ['pint jar', 'cup'],
  SERVINGS_IN: ['quart jar', 40, 1],
  YIELD_PER_PLANT: ['tomato', 'pound', 'usual'],
  YIELD_PER_ROW_FOOT: ['carrot', 'pound', 'usual'],
  PLANTS_FOR: ['tomato', 100, 'pound', 'usual'],
  ROW_FEET_FOR: ['cabbage', 30],
  BED_AREA_FOR: ['lima bean', 144],
  SEEDS_FOR: ['broccoli', 59],
  START_ON: ['tomato', '2026-06-01', 'indoors'],
  SET_OUT_ON: ['pumpkin', '2026-05-24'],
  HARVEST_FROM: ['tomato', '2026-06-01'],
  LAST_SOWING: ['snap bean', '2026-09-18'],
  LEARNED: [8, [[5, 6, 7]], 2],
  BUSHEL_POUNDS: ['tomato'],
  POUNDS_PER_JAR: ['tomato', 'quart', 'crushed', 'usual'],
  JARS_PER_BUSHEL: ['tomato', 'quart', 'crushed', 'usual'],
  BUSHELS_FOR: ['tomato', 60, 'quart', 'crushed', 'usual'],
  CANNER_LOADS: [40, 'quart', 7],
  PINTS_FROZEN: ['summer squash', 40, 'usual'],
  DRIED_FROM: ['onion', 12, 'usual'],
  FRESH_FROM: ['onion', 1.5],
  ALTITUDE_PRESSURE: ['green beans', 1500, 'dial'],
  HEADSPACE: ['fruit'],
  HENS_FOR: [24, 'usual'],
  MEAT_FROM: ['steer', 1200, 'usual'],
  FLOUR_FROM: ['wheat', 60],
  DRY_TO_COOKED: ['cornmeal', 2],
};
