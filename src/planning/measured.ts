import { containerWithId, measureSystem, roundSig, turnedUnit, unitWithId } from '../units/index.js';
import { say, spoken } from '../words/index.js';
import { measureName } from './measure.js';
import type { PlanValue, WorkingInput } from './types.js';
import { n } from './working/number.js';

/** A figure with its unit, in the measures that are written now. */
export interface Figure {
  readonly value: PlanValue;
  readonly unit: string;
}

/** A figure in a customary unit, as it is read in the measures written now; words and days stay as they are. */
export function figureIn(value: PlanValue, unit: string): Figure {
  const turned = turnedUnit(unit);
  if (!turned) return { value, unit };
  return { value: typeof value === 'number' ? value * turned.factor : value, unit: turned.unit };
}

/** A formula that gives a figure in a customary unit, made to give it in the measures written now. */
export const formulaIn = (formula: string, unit: string): string => {
  const turned = turnedUnit(unit);
  return turned ? `=(${formula.slice(1)})*${roundSig(turned.factor, 12)}` : formula;
};

/** One number of a working in the measures written now. */
export const inputIn = (given: WorkingInput): WorkingInput => ({
  ...given,
  ...figureIn(given.value, given.unit),
});

/** `2.5 lb`, or `1.134 kg`: an amount of a customary unit, with the unit that it is written in now. */
export function measured(value: number, unit: string): string {
  const turned = turnedUnit(unit);
  return `${n(turned ? value * turned.factor : value)} ${spoken(turned?.unit ?? unit)}`;
}

/** The same in whole units: an altitude. */
export const measuredWhole = (value: number, unit: string): string => {
  const turned = turnedUnit(unit);
  return `${n(turned ? Math.round(value * turned.factor) : value)} ${spoken(turned?.unit ?? unit)}`;
};

/**
 * The same with the id of a unit, in the unit’s own name: `35.5 quarts`, `1 pound`, or `33.597 litres`. Steps of
 * workings write every measure so.
 */
export function measuredIn(value: number, id: string): string {
  const turned = turnedUnit(id);
  const text = n(turned ? value * turned.factor : value);
  return `${text} ${spoken(pluralOf(turned?.unit ?? id, text === '1' || text === '−1' ? 1 : 2))}`;
}

/** A unit's name to reckon with, in English: it is told in other words only when all is reckoned. */
export const pluralOf = (id: string, n = 2): string =>
  n === 1 ? id : ((containerWithId(id) ?? unitWithId(id))?.plural ?? id);

/** So many containers for each of a unit: `18 quart jars a bushel`, or `0.511 quart jars a litre`. */
export const measuredPer = (value: number, container: string, unit: string): string => {
  const turned = turnedUnit(unit);
  const each = turned ? value / turned.factor : value;
  return say`${`${n(each)} ${measureName(container, each)}`} a ${turned?.unit ?? unit}`;
};

/** How many of the units in which plants stand apart make one of those in which rows are long: 12, or 100. */
export const perLength = (): number => (measureSystem() === 'metric' ? 100 : 12);

/** The same in words, and how many squares of the one make a square of the other. */
export const perLengthWords = (): string =>
  measureSystem() === 'metric' ? say`100 centimetres a metre` : say`12 inches a foot`;
export const perAreaWords = (): string => say`${n(perLength() ** 2)} square inches a square foot`;

/** The number alone, as `measured` writes it. */
export const measuredNumber = (value: number, unit: string): string =>
  n(value * (turnedUnit(unit)?.factor ?? 1));
