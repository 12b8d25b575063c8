import { PLAIN, type Quantity } from '../formulas/quantity.js';
import type { FormulaPart } from './formula-working-tree.js';

type Cells = Extract<FormulaPart, { is: 'cells' }>;
type Args = readonly (FormulaPart | undefined)[];

/** The unit of one column of a range, counted from 1, where all of its cells are in one. */
export type UnitInColumn = (cells: Cells, nth: number) => Quantity | undefined;

/** Functions that find a place, or count places. */
const PLACES = new Set('MATCH ROW ROWS COLUMN COLUMNS'.split(' '));

/** Which argument holds the cells that functions take their answer from; the first that is given. */
const FROM: Readonly<Record<string, readonly number[]>> = {
  LOOKUP: [2, 1],
  XLOOKUP: [2],
  SUBTOTAL: [1],
  MINIFS: [0],
  MAXIFS: [0],
  AVERAGEIFS: [0],
};

const whole = (part: FormulaPart | undefined): number | undefined =>
  part?.is === 'number' && Number.isInteger(part.value) && part.value > 0 ? part.value : undefined;

/** Which column of which range a function looks its answer up in. */
function columnOf(name: string, args: Args): readonly [Cells, number] | undefined {
  const [first, second, third] = args;
  if (name === 'VLOOKUP' && second?.is === 'cells') {
    const nth = whole(third);
    return nth === undefined ? undefined : [second, nth];
  }
  const nth = whole(third);
  if (name === 'INDEX' && first?.is === 'cells' && nth !== undefined) return [first, nth];
  return undefined;
}

/**
 * The unit of what a function looks up: that of the column in which it finds it. Undefined: not known; null: it is
 * none of these functions.
 */
export function unitLookedUp(
  name: string,
  args: Args,
  units: readonly (Quantity | undefined)[],
  inColumn: UnitInColumn,
): Quantity | undefined | null {
  if (PLACES.has(name)) return PLAIN;
  const from = FROM[name];
  if (from) return units[from.find((at) => args[at] !== undefined) ?? -1];
  if (name !== 'VLOOKUP' && name !== 'INDEX') return null;
  // Of a single column no place need be said.
  if (name === 'INDEX' && args[2] === undefined) return units[0];
  const at = columnOf(name, args);
  return at && inColumn(...at);
}
