import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import { containerWithId, findMeasure, unitWithId } from './find.js';
import { containerSize, type Size, unitSize } from './size.js';

/** Density of a food: pounds (avoirdupois) in one US liquid cup. More than 0. */
export interface PoundsPerCup {
  readonly poundsPerCup: number;
}

/** What the food in one container or unit weighs: 3 pounds per quart jar, 53 pounds per bushel. More than 0. */
export interface PoundsPer {
  readonly pounds: number;
  /** Any name of a container or unit. */
  readonly per: string;
}

/** What a container of no fixed size holds, as the household says: a bin of 8 gallons, or of 40 pounds. */
export interface Holds {
  /** Container id, as in 'bin'. */
  readonly container: string;
  /** More than 0. */
  readonly amount: number;
  /** Unit id. */
  readonly unit: string;
}

/** Something known of a food or a container that lets an amount pass between measures of different kinds. */
export type Bridge = PoundsPerCup | PoundsPer | Holds;

const GRAMS_PER_POUND = 453.59237;

function measured(bridge: Bridge): { readonly value: number; readonly name: string } {
  if ('poundsPerCup' in bridge) return { value: bridge.poundsPerCup, name: say`pounds per cup` };
  if ('pounds' in bridge) return { value: bridge.pounds, name: say`pounds per ${bridge.per}` };
  return { value: bridge.amount, name: say`what a ${bridge.container} holds` };
}

/** What is wrong with the first bad bridge, or null. */
export function bridgeProblem(bridges: readonly Bridge[]): Problem | null {
  for (const bridge of bridges) {
    const { value, name } = measured(bridge);
    if (!(Number.isFinite(value) && value > 0)) {
      return {
        code: 'bridge-not-positive',
        message: say`${name}: ${value} is not a weight or size.`,
        mend: say`Write a number above 0, or leave it blank.`,
      };
    }
    if ('pounds' in bridge) {
      const per = findMeasure(bridge.per);
      if (!per.ok) return per.problem;
    }
    if ('container' in bridge && !(containerWithId(bridge.container) && unitWithId(bridge.unit))) {
      return {
        code: 'unknown-measure',
        message: say`${name}: no container "${bridge.container}" or no unit "${bridge.unit}".`,
        mend: say`Name the container and the unit by their ids.`,
      };
    }
  }
  return null;
}

/** Grams of the food in one `size`, by its own weight or through the bridges; null when they do not say. */
export function gramsPerOne(size: Size, bridges: readonly Bridge[]): number | null {
  if (size.dimension === 'weight') return size.factor;
  const pers = bridges.flatMap((bridge) => {
    if (!('pounds' in bridge)) return [];
    const per = findMeasure(bridge.per);
    if (!per.ok) return [];
    const one =
      per.value.kind === 'unit' ? unitSize(per.value.unit) : containerSize(per.value.container, bridges);
    return [{ size: one, grams: bridge.pounds * GRAMS_PER_POUND }];
  });
  // The very size first: a figure printed for pints beats one scaled from quarts.
  const own =
    pers.find((per) => per.size.id === size.id) ??
    pers.find((per) => per.size.dimension === size.dimension && per.size.factor === size.factor);
  if (own) return own.grams;
  if (size.dimension === null) return null;
  const alike = pers.find((per) => per.size.dimension === size.dimension);
  if (alike) return (alike.grams * size.factor) / alike.size.factor;
  if (size.dimension === 'volume') {
    const density = bridges.find((bridge) => 'poundsPerCup' in bridge);
    const cup = unitWithId('cup');
    if (density && cup) return (density.poundsPerCup * GRAMS_PER_POUND * size.factor) / cup.factor;
  }
  return null;
}
