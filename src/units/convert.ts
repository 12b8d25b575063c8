import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { type Bridge, bridgeProblem, gramsPerOne, type PoundsPer, type PoundsPerCup } from './bridges.js';
import type { Container, Holding } from './containers.js';
import { findContainer, findMeasure, findUnit } from './find.js';
import { over, type Ratio, scale } from './ratio.js';
import { containerSize, type Size, unitSize } from './size.js';
import type { Unit } from './units.js';

const ratios = new Map<string, Ratio>();

/** How many `to` one `from` is, exactly; for sizes of one dimension. */
function ratioOf(from: Size, to: Size): Ratio | null {
  if (!from.exact || !to.exact) return null;
  const key = `${from.id}|${to.id}`;
  let ratio = ratios.get(key);
  if (!ratio) {
    ratio = over(from.exact, to.exact);
    ratios.set(key, ratio);
  }
  return ratio;
}

function sameKind(from: Size, to: Size): boolean {
  if (from.dimension === null || to.dimension === null) return false;
  if (from.dimension === to.dimension) return true;
  const bothVolumes =
    (from.dimension === 'volume' && to.dimension === 'dry measure') ||
    (from.dimension === 'dry measure' && to.dimension === 'volume');
  return bothVolumes && (from.space || to.space);
}

function between(amount: number, from: Size, to: Size, bridges: readonly Bridge[]): Result<number> {
  if (!Number.isFinite(amount)) {
    return refuse('not-a-number', say`the amount is not a number.`, say`Write a number of ${from.plural}.`);
  }
  if (from.id === to.id) return ok(amount);
  if (sameKind(from, to)) {
    const ratio = ratioOf(from, to);
    return ok(ratio ? scale(amount, ratio) : (amount * from.factor) / to.factor);
  }
  const wrong = bridgeProblem(bridges);
  if (wrong) return { ok: false, problem: wrong };
  const gramsFrom = gramsPerOne(from, bridges);
  const gramsTo = gramsPerOne(to, bridges);
  if (gramsFrom !== null && gramsTo !== null) return ok((amount * gramsFrom) / gramsTo);
  return noBridge(from, to, gramsFrom === null ? from : to);
}

const isVolume = (size: Size) => size.dimension === 'volume' || size.dimension === 'dry measure';

/** Says why `from` cannot become `to`; `lacking` is the side whose weight is not known. */
function noBridge(from: Size, to: Size, lacking: Size): Result<never> {
  const unknown = [from, to].find((size) => size.dimension === null);
  if (unknown) {
    return refuse(
      'container-size-unknown',
      say`how much ${unknown.one} holds is not known.`,
      say`Say how much your ${unknown.id} holds, or how many pounds of this food go into it.`,
    );
  }
  if (isVolume(from) && isVolume(to)) {
    const [dry, liquid] = from.dimension === 'dry measure' ? [from, to] : [to, from];
    return refuse(
      'dry-and-liquid',
      say`${dry.one} is a dry measure of fresh produce; how many ${liquid.plural} come of it depends on the food.`,
      say`Use JARS_PER_BUSHEL, or give the pounds of this food in ${dry.one} and in ${liquid.one}. For bare space, go by litres.`,
    );
  }
  const weighed = (size: Size) => isVolume(size) || size.dimension === 'weight';
  if (weighed(from) && weighed(to)) {
    const orCup = lacking.dimension === 'volume' && lacking.id !== 'cup';
    return refuse(
      'density-missing',
      say`how much ${lacking.one} of this food weighs is not known, so ${from.plural} cannot become ${to.plural}.`,
      `${orCup ? say`Give the pounds of this food in ${lacking.one}, or in a cup.` : say`Give the pounds of this food in ${lacking.one}.`}${ounceHint(from, to)}`,
    );
  }
  if ([from, to].some((size) => size.dimension === 'count')) {
    return refuse(
      'count-does-not-convert',
      say`${from.one} is ${kindOf(from)} and ${to.one} is ${kindOf(to)}: a count says nothing of size.`,
      say`Count both in pieces, or give the pounds of this food in ${lacking.one}.`,
    );
  }
  return refuse(
    'measures-differ',
    say`${from.one} is ${kindOf(from)} and ${to.one} is ${kindOf(to)}: one cannot become the other.`,
    say`Choose two measures of the same kind.`,
  );
}

function ounceHint(from: Size, to: Size): string {
  return [from, to].some((size) => size.id === 'ounce') ? say` For ounces of liquid, write fluid ounce.` : '';
}

function kindOf(size: Size): string {
  const kinds = {
    volume: say`a volume`,
    'dry measure': say`a dry measure`,
    weight: say`a weight`,
    length: say`a length`,
    area: say`an area`,
    count: say`a count`,
  } as const;
  return size.dimension === null ? say`of unknown size` : kinds[size.dimension];
}

const listOf = (bridges: Bridge | readonly Bridge[] | undefined): readonly Bridge[] =>
  bridges === undefined ? [] : 'length' in bridges ? bridges : [bridges];

/**
 * `amount` of the unit `from`, in the unit `to`; both by any name that `findUnit` knows. Exact within a
 * dimension. Between volume and weight it needs `density`. Counts, lengths and areas never become anything
 * else, and dry measure (peck, bushel) becomes liquid measure only by weight.
 */
export function convert(
  amount: number,
  from: string | Unit,
  to: string | Unit,
  density?: PoundsPerCup | PoundsPer | readonly (PoundsPerCup | PoundsPer)[],
): Result<number> {
  const one = typeof from === 'string' ? findUnit(from) : ok(from);
  if (!one.ok) return one;
  const other = typeof to === 'string' ? findUnit(to) : ok(to);
  if (!other.ok) return other;
  const [a, b] = [unitSize(one.value), unitSize(other.value)];
  const weighed = (size: Size) => isVolume(size) || size.dimension === 'weight';
  return between(amount, a, b, weighed(a) && weighed(b) ? listOf(density) : []);
}

function sizeOf(measure: string | Unit | Container, bridges: readonly Bridge[]): Result<Size> {
  if (typeof measure !== 'string') {
    return ok('dimension' in measure ? unitSize(measure) : containerSize(measure, bridges));
  }
  const found = findMeasure(measure);
  if (!found.ok) return found;
  return ok(
    found.value.kind === 'unit' ? unitSize(found.value.unit) : containerSize(found.value.container, bridges),
  );
}

/**
 * `amount` of one container or unit in another: a pint jar is 0.5 quart jar, two cups are 0.5 quart jar.
 * Volume and weight (and pieces) meet only through `bridges`: what a cup or a container of the food
 * weighs. Buckets and bins of unknown size need a `Holds` bridge. The refusal says what is missing.
 */
export function inMeasure(
  amount: number,
  from: string | Unit | Container,
  to: string | Unit | Container,
  bridges?: Bridge | readonly Bridge[],
): Result<number> {
  const known = listOf(bridges);
  const a = sizeOf(from, known);
  if (!a.ok) return a;
  const b = sizeOf(to, known);
  if (!b.ok) return b;
  return between(amount, a.value, b.value, known);
}

/**
 * What one container holds: in its own unit (a pint jar: 1 pint), or in `unit`. Refused where the size is
 * not known (`container-size-unknown`) or `unit` is of another kind and no bridge is given.
 */
export function containerHolds(
  container: string | Container,
  unit?: string | Unit,
  bridges?: Bridge | readonly Bridge[],
): Result<Holding> {
  const found = typeof container === 'string' ? findContainer(container) : ok(container);
  if (!found.ok) return found;
  if (unit !== undefined) {
    const wanted = typeof unit === 'string' ? findUnit(unit) : ok(unit);
    if (!wanted.ok) return wanted;
    const amount = inMeasure(1, found.value, wanted.value, bridges);
    return amount.ok ? ok({ amount: amount.value, unit: wanted.value.id }) : amount;
  }
  if (found.value.holds) return ok(found.value.holds);
  for (const bridge of listOf(bridges)) {
    if ('container' in bridge && bridge.container === found.value.id) {
      return ok({ amount: bridge.amount, unit: bridge.unit });
    }
  }
  return refuse(
    'container-size-unknown',
    say`how much a ${found.value.id} holds is not known.`,
    say`Say how much your ${found.value.id} holds, as in 8 gallons.`,
  );
}
