import type { FunctionDeclaration } from './declare.js';
import { CONTAINER_HOLDS } from './measures/container-holds.js';
import { CONVERT } from './measures/convert.js';
import { SERVINGS_IN } from './measures/servings-in.js';
import { LEFT_AT } from './supply/left-at.js';
import { MONTHS_KEPT } from './supply/months-kept.js';
import { PACE_TO_USE_UP } from './supply/pace-to-use-up.js';
import { RUNS_OUT_ON } from './supply/runs-out-on.js';
import { TO_PUT_UP } from './supply/to-put-up.js';
import { USE_PER_WEEK } from './supply/use-per-week.js';
import { USE_RANGE } from './supply/use-range.js';
import { WEEKS_OF_SUPPLY } from './supply/weeks-of-supply.js';

/** Every formula function, by group. */
export const functions: readonly FunctionDeclaration[] = [
  WEEKS_OF_SUPPLY,
  RUNS_OUT_ON,
  USE_PER_WEEK,
  USE_RANGE,
  PACE_TO_USE_UP,
  LEFT_AT,
  TO_PUT_UP,
  MONTHS_KEPT,
  CONVERT,
  CONTAINER_HOLDS,
  SERVINGS_IN,
];

const byName = new Map(functions.map((each) => [each.name, each]));

/** The function called `name`, without case; undefined where there is none. */
export const functionNamed = (name: string): FunctionDeclaration | undefined =>
  byName.get(name.trim().toUpperCase());
