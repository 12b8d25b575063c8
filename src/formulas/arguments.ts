import { cropNames } from '../facts/index.js';
import { BASES } from '../planning/types.js';

/** Arguments that several groups share. */
export const CROP = {
  name: 'crop',
  kind: 'crop',
  help: 'a crop, in the singular or plural, as in "tomato" or "green beans"',
  values: cropNames(),
} as const;

export const BASIS = {
  name: 'basis',
  kind: 'basis',
  optional: true,
  otherwise: "the household's season basis",
  help: '"lean" counts on the end of the range that gives less food, "good" on the other, "usual" on the middle',
  values: BASES,
} as const;

export const POUNDS = {
  name: 'pounds',
  kind: 'number',
  least: 0,
  most: 1e9,
  help: 'pounds of it, fresh, as harvested or bought',
  unit: 'pounds',
} as const;
