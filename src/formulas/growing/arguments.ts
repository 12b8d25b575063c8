import { MEASURE_NAMES } from '../measures/arguments.js';

/** Source of what the Growing functions say, in words. */
export const GROWING_SOURCE =
  'state extension planting charts and others, named crop by crop in Facts with what each of them says';

export const UNIT = {
  name: 'unit',
  kind: 'measure',
  optional: true,
  otherwise: 'pounds',
  help: 'unit of the amount: "pound", "bushel", "each" for ears, heads and fruits, or a jar',
  values: MEASURE_NAMES,
} as const;

export const PLANTS = {
  name: 'plants',
  kind: 'number',
  least: 0,
  most: 1e9,
  help: 'how many plants',
  unit: 'plants',
} as const;

export const LAST_FROST = {
  name: 'last_frost',
  kind: 'date',
  help: 'the day of the last spring frost that you plan by',
} as const;

/** Said of every function that counts from a frost. */
export const FROST_IS_A_CHANCE =
  'A frost date is a chance, not a promise: after the day of a 50 % date frost still comes one year in two, after that of a 10 % date one year in ten.';
