/**
 * Units as a formula carries them: `{ pound: 1, 'quart jar': -1 }` is pounds a quart jar. Multiplying and
 * dividing merge them, so that pounds ÷ pounds a quart jar are quart jars; adding wants one and the same.
 */
import { BASE_UNITS, containerWithId, type Dimension, unitWithId } from '../units/index.js';

/** Exponents by the id of a unit, a container or a thing counted. None: a plain number. */
export type Quantity = ReadonlyMap<string, number>;

/** A plain number, or one whose units have cancelled out. */
export const PLAIN: Quantity = new Map();

/** A day of the calendar: it takes days, and two of them lie days apart. */
export const DATE = 'date';

export const quantityOf = (id: string, exponent = 1): Quantity => new Map([[id, exponent]]);

export const isPlain = (q: Quantity): boolean => q.size === 0;

export const isDate = (q: Quantity): boolean => q.size === 1 && q.get(DATE) === 1;

/** The two merged, the second taken `sign` times: 1 multiplies, −1 divides. */
function merged(a: Quantity, b: Quantity, sign: 1 | -1): Quantity {
  const out = new Map(a);
  for (const [id, exponent] of b) {
    const sum = (out.get(id) ?? 0) + sign * exponent;
    if (sum === 0) out.delete(id);
    else out.set(id, sum);
  }
  return out;
}

export const multiplied = (a: Quantity, b: Quantity): Quantity => merged(a, b, 1);

export const divided = (a: Quantity, b: Quantity): Quantity => merged(a, b, -1);

/** To a whole power; what a root of a unit is, nobody at a table asks. */
export function raised(a: Quantity, power: number): Quantity | undefined {
  if (isPlain(a)) return PLAIN;
  if (!Number.isInteger(power)) return undefined;
  return power === 0 ? PLAIN : new Map([...a].map(([id, exponent]) => [id, exponent * power]));
}

export const sameUnits = (a: Quantity, b: Quantity): boolean =>
  a.size === b.size && [...a].every(([id, exponent]) => b.get(id) === exponent);

/** Times, in days, of what a calendar does not stretch. Months and years differ in length, so they have no size. */
const TIMES: ReadonlyMap<string, number> = new Map([
  ['hour', 1 / 24],
  ['day', 1],
  ['week', 7],
  ['month', Number.NaN],
  ['year', Number.NaN],
]);

/** Words for some container, whatever its size. */
const ANY_OF: Readonly<Record<string, (id: string) => boolean>> = {
  container: (id) => containerWithId(id) !== undefined,
  jar: (id) => containerWithId(id)?.family === 'jar',
};

interface Size {
  /** What it measures: a dimension of units, `time`, or the thing that is counted. */
  readonly of: string;
  /** How much of it one is; not a number where that is not fixed. */
  readonly factor: number;
}

function sizeOf(id: string): Size {
  const unit = unitWithId(id);
  if (unit) return { of: unit.dimension, factor: unit.factor };
  const container = containerWithId(id);
  if (container) {
    const held = container.holds && unitWithId(container.holds.unit);
    return held
      ? { of: held.dimension, factor: held.factor * container.holds!.amount }
      : { of: id, factor: Number.NaN };
  }
  const days = TIMES.get(id);
  return days === undefined ? { of: id, factor: 1 } : { of: 'time', factor: days };
}

/** What a quantity measures, as exponents by dimension, and how big one of it is in base units. */
export function measured(q: Quantity): { readonly of: ReadonlyMap<string, number>; readonly factor: number } {
  const of = new Map<string, number>();
  let factor = 1;
  for (const [id, exponent] of q) {
    const size = sizeOf(id);
    const sum = (of.get(size.of) ?? 0) + exponent;
    if (sum === 0) of.delete(size.of);
    else of.set(size.of, sum);
    factor *= size.factor ** exponent;
  }
  return { of, factor };
}

/** `alike`: can be added as they are. `convertible`: measure the same in units of another size. */
export type Likeness = 'alike' | 'convertible' | 'unlike';

/** 'container' and 'jar' without a size go with any of their kind. */
function named(a: Quantity, b: Quantity): Quantity {
  const out = new Map(a);
  for (const [word, fits] of Object.entries(ANY_OF)) {
    const exponent = out.get(word);
    if (exponent === undefined) continue;
    const other = [...b].find(([id, e]) => e === exponent && fits(id));
    if (!other) continue;
    out.delete(word);
    out.set(other[0], exponent);
  }
  return out;
}

/** May the two be added, subtracted or compared? */
export function likeness(a: Quantity, b: Quantity): Likeness {
  if (sameUnits(a, b)) return 'alike';
  const [x, y] = [named(a, b), named(b, a)];
  if (sameUnits(x, y)) return 'alike';
  const [one, other] = [measured(x), measured(y)];
  if (!sameUnits(one.of, other.of)) return 'unlike';
  return Math.abs(one.factor / other.factor - 1) < 1e-9 ? 'alike' : 'convertible';
}

/** How many of `to` one of `from` is, where both measure the same and are of a fixed size. */
export function conversion(from: Quantity, to: Quantity): number | undefined {
  const [a, b] = [measured(from), measured(to)];
  if (!sameUnits(a.of, b.of)) return undefined;
  const ratio = a.factor / b.factor;
  return Number.isFinite(ratio) ? ratio : undefined;
}

/** Units of volume, weight and so on, of which MEASURE knows how to turn one into another. */
export const isMeasured = (q: Quantity): boolean => {
  const [first, ...rest] = [...measured(q).of.keys()];
  return first !== undefined && rest.length === 0 && Object.hasOwn(BASE_UNITS, first as Dimension);
};
