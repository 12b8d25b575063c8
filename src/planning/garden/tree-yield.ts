import { bushelPounds, type Figure, freshQuartPounds, type Tree, trees } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import { changed, exactly, type Ranged, ranged } from '../ranged.js';

const BACKYARD = phrase('any backyard tree');

/** The size of tree that a variety's text names, as in 'Liberty, semidwarf'; null for none. */
export function treeKind(crop: string, variety: string): string | null {
  const found = trees(crop);
  if (!found.ok) return null;
  const words = variety.toLowerCase().replace(/semi[ -]dwarf/, 'semidwarf');
  const kinds = [...new Set(found.value.map(({ kind }) => kind))].sort((a, b) => b.length - a.length);
  return kinds.find((kind) => new RegExp(`\\b${kind}\\b`).test(words)) ?? null;
}

/** The rows of one size; without a size, those for any backyard tree, else the first size printed. */
export function treesOfKind(crop: string, kind: string | null): Result<readonly Tree[]> {
  const found = trees(crop);
  if (!found.ok) return found;
  const plain = found.value.find((one) => one.kind === BACKYARD)?.kind ?? found.value[0]?.kind;
  const wanted = kind ?? plain;
  return ok(found.value.filter((one) => one.kind === wanted));
}

/** Pounds in what a tree's yield is counted in. */
function poundsIn(tree: Tree): Result<Figure | null> {
  const unit = tree.yield?.unit ?? '';
  if (/^pound/.test(unit)) return ok(null);
  if (/^bushel/.test(unit)) return tree.bushelPounds ? ok(tree.bushelPounds) : bushelPounds(tree.crop);
  const quart = freshQuartPounds(tree.crop);
  return quart
    ? ok(quart)
    : refuse(
        'no-weight',
        say`The yield of ${tree.crop} is published in ${unit}, and no weight of one is.`,
        say`Give your own yield in pounds a tree.`,
      );
}

function inPounds(tree: Tree): Result<Ranged> | null {
  if (!tree.yield) return null;
  const per = poundsIn(tree);
  if (!per.ok) return per;
  const figure = ranged(tree.yield, 'low', 'pounds a plant');
  if (per.value === null) return ok(figure);
  const each = per.value.usual;
  const note = say`worked out: ${tree.yield.low} to ${tree.yield.high} ${tree.yield.unit}, at ${each} pounds each`;
  return ok(changed(figure, 'pounds a plant', note, (n) => n * each));
}

/**
 * What a grown tree, bush or vine gives in a year, in pounds: the first source's figure, with ends that span
 * every source for that size. Refused where none is published, or not by anything that can be weighed.
 */
export function treeYield(crop: string, kind: string | null = null): Result<Ranged> {
  const rows = treesOfKind(crop, kind);
  if (!rows.ok) return rows;
  const found = rows.value.map(inPounds).filter((one) => one !== null);
  const first = found[0];
  if (!first) {
    return refuse(
      'no-yield',
      say`No yield of a grown ${crop} is published here.`,
      say`Give your own, in pounds.`,
    );
  }
  if (!first.ok) return first;
  const all = found.flatMap((one) => (one.ok ? [one.value] : []));
  const main = first.value;
  const sources = [...new Set(all.map(({ source }) => source))].join('; ');
  return ok({
    ...main,
    lean: Math.min(...all.map(({ lean }) => lean)),
    good: Math.max(...all.map(({ good }) => good)),
    source: sources,
    notes: [
      ...new Set([say`a grown tree: ${rows.value[0]?.kind ?? ''}`, ...all.flatMap(({ notes }) => notes)]),
    ],
  });
}

/** Years from planting to the first crop, spanning the sources; null where none prints them. */
export function yearsToBearing(crop: string, kind: string | null = null): Ranged | null {
  const rows = treesOfKind(crop, kind);
  const found = rows.ok
    ? rows.value.flatMap(({ yearsToBearing: years }) => (years ? [ranged(years, 'high', 'years')] : []))
    : [];
  const first = found[0];
  if (!first) return null;
  return {
    ...first,
    lean: Math.max(...found.map(({ lean }) => lean)),
    good: Math.min(...found.map(({ good }) => good)),
    source: [...new Set(found.map(({ source }) => source))].join('; '),
  };
}

/** Feet between grown trees, where published. */
export function treeSpacing(crop: string, kind: string | null = null): Ranged | null {
  const rows = treesOfKind(crop, kind);
  const spacing = rows.ok ? rows.value.find((one) => one.spacing)?.spacing : null;
  return spacing ? ranged(spacing, 'high', 'feet between trees') : null;
}

/** A figure that someone gave, without a range. */
export const given = (n: number, unit: string, source: string): Ranged => exactly(n, unit, source);
