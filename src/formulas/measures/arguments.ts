import { CONTAINERS, UNITS } from '../../units/index.js';

export const CONTAINER = {
  name: 'container',
  kind: 'container',
  help: 'a container, as in "quart jar" or "gallon freezer bag"; a plain "quart" is the jar',
  values: CONTAINERS.map((container) => container.id),
} as const;

/** Names of containers and units, for arguments that take either. */
export const MEASURE_NAMES: readonly string[] = [
  ...new Set([...CONTAINERS.map((container) => container.id), ...UNITS.map((unit) => unit.id)]),
];
