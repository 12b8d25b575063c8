import { unitTold } from '../planning/unit-told.js';
import { say } from '../words/index.js';
import type { Explained } from './declare.js';
import { isoOf, told, toldOf, toldValue } from './tell.js';

/** Steps of a figure that is looked up: what is particular about it, then the figure. */
export const lookedUp = (what: string, { value, unit, notes }: Explained): readonly string[] => [
  ...notes,
  `${what} = ${toldValue(value, unit)}`,
];

/** Steps of a day counted from another one; the notes say what is counted. */
export function countedOut(from: string, day: number, { value, notes }: Explained): readonly string[] {
  if (typeof value !== 'object') return [...notes, say`from ${from} = ${toldValue(value)}`];
  const days = value.day - day;
  const far =
    days === 0
      ? say`the same day`
      : days > 0
        ? say`${toldOf(days, 'days')} after it`
        : say`${toldOf(-days, 'days')} before it`;
  return [...notes, say`from ${from}: ${far} = ${isoOf(value.day)}`];
}

/** Steps of an amount multiplied or divided by one figure, which is told too. */
export function scaled(
  given: string,
  amount: number,
  per: string,
  how: 'multiply' | 'divide',
  unit: string,
  { value, notes }: Explained,
): readonly string[] {
  if (typeof value !== 'number') return [...notes, `${given} = ${toldValue(value)}`];
  const answer = toldOf(value, unit);
  if (amount === 0 || value === 0) return [...notes, `${given} = ${answer}`];
  const each = how === 'divide' ? amount / value : value / amount;
  return [...notes, `${given} ${how === 'divide' ? '÷' : '×'} ${told(each)} ${unitTold(per)} = ${answer}`];
}
