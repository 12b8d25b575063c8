import { excerpt, ok, type Result, refuse } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import { CONTAINERS, type Container } from './containers.js';
import { germanNames } from './german-names.js';
import { nameIndex, orList } from './names.js';
import { UNITS, type Unit } from './units.js';

const unitIndex = nameIndex(UNITS, (unit) => [unit.id, unit.plural, ...unit.names, ...germanNames(unit.id)]);
const containerIndex = nameIndex(CONTAINERS, (box) => [
  box.id,
  box.plural,
  ...box.names,
  ...germanNames(box.id),
]);

const unitById: ReadonlyMap<string, Unit> = new Map(UNITS.map((unit) => [unit.id, unit]));
const containerById: ReadonlyMap<string, Container> = new Map(CONTAINERS.map((box) => [box.id, box]));

/** A unit or a container: anything that an amount can be in. */
export type Measure =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'container'; readonly container: Container };

/** The unit with exactly this id. */
export const unitWithId = (id: string): Unit | undefined => unitById.get(id);

/** The container with exactly this id. */
export const containerWithId = (id: string): Container | undefined => containerById.get(id);

const WORDS = {
  unit: {
    blank: phrase('the unit is blank'),
    none: (name: string) => say`no unit called "${name}"`,
    all: phrase('Write a unit such as cup, quart, pound or bushel.'),
  },
  container: {
    blank: phrase('the container is blank'),
    none: (name: string) => say`no container called "${name}"`,
    all: phrase('Write a container such as quart jar, gallon freezer bag, bucket, piece or pound.'),
  },
  measure: {
    blank: phrase('the measure is blank'),
    none: (name: string) => say`no measure called "${name}"`,
    all: phrase('Write a container or a unit, such as quart jar, cup or pound.'),
  },
};

/** Names that come near stand in the language spoken, in which they are understood everywhere. */
function unknown(what: keyof typeof WORDS, name: string, ids: readonly string[]) {
  const { blank, none, all } = WORDS[what];
  const near = [...new Set(ids.map(spoken))];
  const shown = name.trim() === '' ? spoken(blank) : none(excerpt(name));
  return refuse(
    `unknown-${what}`,
    near.length > 0 ? `${shown}${say`: did you mean `}${orList(near)}?` : `${shown}.`,
    near.length > 0 ? `${say`Write `}${orList(near)}.` : spoken(all),
  );
}

/**
 * The unit called `name`: without case, in the singular or plural, abbreviated or by a common synonym.
 * 'ounce' is the weight and 'quart' the liquid quart; 'fluid ounce' and 'dry quart' are the others.
 * Refused (`unknown-unit`) with the nearest names.
 */
export function findUnit(name: string): Result<Unit> {
  const found = unitIndex.find(name);
  if (found) return ok(found);
  // T and t are both in use for spoons, and differ only in case: too easily mistaken to accept.
  const near =
    name.trim().toLowerCase() === 't'
      ? ['tablespoon', 'teaspoon']
      : unitIndex.nearest(name).map((unit) => unit.id);
  return unknown('unit', name, near);
}

// Words that say what a jar is like, not how much it holds.
const MANNER = /\b(mason|canning|preserving|glass|(wide|regular|narrow)[- ]?mouth(ed)?)\b/gi;

function containerNamed(name: string): Container | undefined {
  const found = containerIndex.find(name);
  if (found) return found;
  const bare = name.replace(MANNER, ' ');
  return bare === name ? undefined : containerIndex.find(bare);
}

/**
 * The container called `name`: without case, in the singular or plural, abbreviated or by a common
 * synonym. A plain size is the jar: 'qt' is the quart jar. Refused (`unknown-container`) with the nearest names.
 */
export function findContainer(name: string): Result<Container> {
  const found = containerNamed(name);
  if (found) return ok(found);
  const near = containerIndex.nearest(name).map((box) => box.id);
  const unit = unitIndex.find(name);
  if (unit && near.length === 0) {
    return refuse(
      'unknown-container',
      /^[aeio]/.test(unit.id)
        ? say`an ${unit.id} is a measure, not a container.`
        : say`a ${unit.id} is a measure, not a container.`,
      spoken(WORDS.container.all),
    );
  }
  return unknown('container', name, near);
}

/**
 * The unit or container called `name`. Where a name is both ('quart', 'pound'), they hold the same, and
 * the unit is given. Refused (`unknown-measure`) with the nearest names of either.
 */
export function findMeasure(name: string): Result<Measure> {
  const unit = unitById.get(name) ?? (containerById.has(name) ? undefined : unitIndex.find(name));
  if (unit) return ok({ kind: 'unit', unit });
  const container = containerById.get(name) ?? containerNamed(name);
  if (container) return ok({ kind: 'container', container });
  const near = [
    ...new Set([
      ...containerIndex.nearest(name, 2).map((box) => box.id),
      ...unitIndex.nearest(name, 2).map((one) => one.id),
    ]),
  ];
  return unknown('measure', name, near);
}
