import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { findCrop, firstOfKin } from './crops.js';
import raw from './data/trees.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure, SourceId } from './figure-types.js';

/** What one source says of a fruit tree, bush or vine when grown. */
export interface Tree {
  readonly crop: string;
  /** 'standard', 'semidwarf', 'dwarf', 'tree', 'vine', 'bush', 'any backyard tree'. */
  readonly kind: string;
  readonly source: SourceId;
  /** A year's crop of a mature plant; the unit says bushels, quarts or pounds. */
  readonly yield: Figure | null;
  readonly yearsToBearing: Figure | null;
  readonly yearsToFull: Figure | null;
  readonly yearsProductive: Figure | null;
  /** Feet between trees. */
  readonly spacing: Figure | null;
  readonly bushelPounds: Figure | null;
  readonly note: string | null;
}

interface RawTree {
  readonly crop: string;
  readonly kind?: string;
  readonly source?: string;
  readonly of?: string;
  readonly yield?: RawFigure;
  readonly bears?: RawFigure;
  readonly full?: RawFigure;
  readonly lives?: RawFigure;
  readonly spacing?: RawFigure;
  readonly bushel?: RawFigure;
  readonly note?: string;
  readonly quart?: RawFigure;
}

const BY_CROP = new Map<string, Tree[]>();
const QUARTS = new Map<string, Figure>();
for (const row of raw as unknown as readonly RawTree[]) {
  if (row.quart) {
    const figure = figureFrom(row.quart, 'pounds per quart as picked');
    if (figure) QUARTS.set(row.crop, figure);
    continue;
  }
  const tree: Tree = {
    crop: row.crop,
    kind: row.kind ?? 'tree',
    source: row.source ?? '',
    yield: figureFrom(row.yield, `${row.of ?? 'pound'}s per ${row.kind === 'bush' ? 'bush' : 'tree'}`),
    yearsToBearing: figureFrom(row.bears, 'years to bearing'),
    yearsToFull: figureFrom(row.full, 'years to full yield'),
    yearsProductive: figureFrom(row.lives, 'years productive'),
    spacing: figureFrom(row.spacing, 'feet between trees'),
    bushelPounds: figureFrom(row.bushel, 'pounds per bushel'),
    note: row.note ?? null,
  };
  const trees = BY_CROP.get(row.crop);
  if (trees) trees.push(tree);
  else BY_CROP.set(row.crop, [tree]);
}

/**
 * What each source says of a fruit tree, bush or vine. They disagree: each is kept under its own name, and
 * the University of Missouri's table, which has the most fruits, comes first.
 * `kind` ('dwarf') picks one size. Refused: `unknown-crop`, or `nothing-published`.
 */
export function trees(crop: string, kind?: string): Result<readonly Tree[]> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const all = firstOfKin(found.value, (name) => BY_CROP.get(name))?.value ?? [];
  const wanted = kind?.trim().toLowerCase();
  const here = wanted ? all.filter((one) => one.kind === wanted) : all;
  if (here.length > 0) return ok(here);
  const kinds = [...new Set(all.map((one) => one.kind))].join(', ');
  return refuse(
    'nothing-published',
    say`no tree figures are published here for ${wanted ? `${found.value.name}, ${wanted}` : found.value.name}.`,
    kinds === '' ? say`Enter your own yield of a tree.` : say`Known: ${kinds}.`,
  );
}

/** Pounds in a fresh quart of berries as picked, or null. A fresh quart is not a jar. */
export function freshQuartPounds(crop: string): Figure | null {
  const found = findCrop(crop);
  return found.ok ? (QUARTS.get(found.value.name) ?? null) : null;
}

/** Every tree, bush and vine of the tables. */
export const allTrees = (): readonly Tree[] => [...BY_CROP.values()].flat();
/** Fresh quart weights by crop. */
export const allFreshQuarts = (): readonly (readonly [string, Figure])[] => [...QUARTS];
