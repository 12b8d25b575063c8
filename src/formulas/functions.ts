import { DRY_TO_COOKED } from './animals-and-staples/dry-to-cooked.js';
import { FLOUR_FROM } from './animals-and-staples/flour-from.js';
import { HENS_FOR } from './animals-and-staples/hens-for.js';
import { MEAT_FROM } from './animals-and-staples/meat-from.js';
import type { FunctionDeclaration } from './declare.js';
import { BED_AREA_FOR } from './growing/bed-area-for.js';
import { HARVEST_FROM } from './growing/harvest-from.js';
import { LAST_SOWING } from './growing/last-sowing.js';
import { LEARNED } from './growing/learned.js';
import { PLANTS_FOR } from './growing/plants-for.js';
import { ROW_FEET_FOR } from './growing/row-feet-for.js';
import { SEEDS_FOR } from './growing/seeds-for.js';
import { SET_OUT_ON } from './growing/set-out-on.js';
import { START_ON } from './growing/start-on.js';
import { YIELD_PER_PLANT } from './growing/yield-per-plant.js';
import { YIELD_PER_ROW_FOOT } from './growing/yield-per-row-foot.js';
import { CONTAINER_HOLDS } from './measures/container-holds.js';
import { CONVERT } from './measures/convert.js';
import { MEASURE } from './measures/measure.js';
import { SERVINGS_IN } from './measures/servings-in.js';
import { ALTITUDE_PRESSURE } from './putting-up/altitude-pressure.js';
import { BUSHEL_POUNDS } from './putting-up/bushel-pounds.js';
import { BUSHELS_FOR } from './putting-up/bushels-for.js';
import { CANNER_LOADS } from './putting-up/canner-loads.js';
import { DRIED_FROM } from './putting-up/dried-from.js';
import { FRESH_FROM } from './putting-up/fresh-from.js';
import { HEADSPACE } from './putting-up/headspace.js';
import { JARS_PER_BUSHEL } from './putting-up/jars-per-bushel.js';
import { PINTS_FROZEN } from './putting-up/pints-frozen.js';
import { POUNDS_PER_JAR } from './putting-up/pounds-per-jar.js';
import { BEST_BY } from './supply/best-by.js';
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
  BEST_BY,
  MONTHS_KEPT,
  MEASURE,
  CONVERT,
  CONTAINER_HOLDS,
  SERVINGS_IN,
  YIELD_PER_PLANT,
  YIELD_PER_ROW_FOOT,
  PLANTS_FOR,
  ROW_FEET_FOR,
  BED_AREA_FOR,
  SEEDS_FOR,
  START_ON,
  SET_OUT_ON,
  HARVEST_FROM,
  LAST_SOWING,
  LEARNED,
  BUSHEL_POUNDS,
  POUNDS_PER_JAR,
  JARS_PER_BUSHEL,
  BUSHELS_FOR,
  CANNER_LOADS,
  PINTS_FROZEN,
  DRIED_FROM,
  FRESH_FROM,
  ALTITUDE_PRESSURE,
  HEADSPACE,
  HENS_FOR,
  MEAT_FROM,
  FLOUR_FROM,
  DRY_TO_COOKED,
];

const byName = new Map(functions.map((each) => [each.name, each]));

/** The function called `name`, without case; undefined where there is none. */
export const functionNamed = (name: string): FunctionDeclaration | undefined =>
  byName.get(name.trim().toUpperCase());
