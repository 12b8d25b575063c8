import { ok, type Problem, type Result } from '../problem.js';
import { type Bridge, containerHolds, containerWithId, inMeasure, unitWithId } from '../units/index.js';
import { localNumber, spoken } from '../words/index.js';
import { tidy } from './words.js';

/** Turns amounts of one food from measure to measure; each pair is looked up once. */
export interface Measures {
  /** How many `to` one `from` is; both ids of containers or units. */
  factor(from: string, to: string): Result<number>;
  /** The factor, or null where the two do not meet. */
  factorOrNull(from: string, to: string): number | null;
}

/** Measures of one food, with what is known of its weight. */
export function measuresOf(bridges: readonly Bridge[]): Measures {
  const known = new Map<string, Map<string, Result<number>>>();
  const factor = (from: string, to: string): Result<number> => {
    let row = known.get(from);
    if (!row) {
      row = new Map();
      known.set(from, row);
    }
    let found = row.get(to);
    if (!found) {
      found = inMeasure(1, from, to, bridges);
      row.set(to, found);
    }
    return found;
  };
  return {
    factor,
    factorOrNull(from, to) {
      if (from === to) return 1;
      const found = factor(from, to);
      return found.ok && found.value > 0 ? found.value : null;
    },
  };
}

/** 'quart jar', 'quart jars', '3 cups': the measure's own name, in the plural unless `n` is 1. */
export function measureName(id: string, n = 2): string {
  const known = containerWithId(id) ?? unitWithId(id);
  return spoken(known ? (n === 1 ? known.id : known.plural) : id);
}

/** `2 quart jars`; at most 3 decimals. */
export const amountOf = (n: number, id: string): string => `${shortNumber(n)} ${measureName(id, n)}`;

/** A number for reading: at most 3 decimals, no trailing zeros. */
export const shortNumber = (n: number): string =>
  localNumber(Number.isInteger(n) ? String(n + 0) : String(Math.round(n * 1000) / 1000 + 0));

/** What `count` of a container hold, in quarts or, where they are reckoned by weight, in pounds. */
export function holdsOf(
  container: string,
  count: number,
  bridges: readonly Bridge[],
): Result<{ readonly amount: number; readonly unit: 'quart' | 'pound' }> {
  const quarts = containerHolds(container, 'quart', withoutWeights(bridges));
  if (quarts.ok) return ok({ amount: tidy(quarts.value.amount * count), unit: 'quart' });
  const pounds = containerHolds(container, 'pound', bridges);
  if (pounds.ok) return ok({ amount: tidy(pounds.value.amount * count), unit: 'pound' });
  return quarts;
}

const withoutWeights = (bridges: readonly Bridge[]): readonly Bridge[] =>
  bridges.filter((bridge) => 'unit' in bridge);

/** Cups in one container, through the food's weight where need be. */
export const cupsIn = (container: string, bridges: readonly Bridge[]): Result<number> =>
  inMeasure(1, container, 'cup', bridges);

/** The problem of a refused result, or null. */
export const problemOf = (result: Result<unknown>): Problem | null => (result.ok ? null : result.problem);
