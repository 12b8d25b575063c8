import { excerpt, ok, type Result, refuse } from '../problem.js';
import { orList } from '../units/index.js';
import { say } from '../words/index.js';
import raw from './data/livestock.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure, SourceId } from './figure-types.js';
import { germanFor } from './german-names.js';
import { pluralOf, wordsOf } from './names.js';

/** What one source says of an animal or its product. Live, hanging and take-home weights are three things. */
export interface Livestock {
  readonly animal: string;
  readonly measure: string;
  readonly source: SourceId;
  /** Pounds, of the source's example. */
  readonly liveWeight: number | null;
  /** Hanging pounds, of the source's example. */
  readonly carcass: number | null;
  /** Carcass as a percent of live weight. */
  readonly dressing: Figure | null;
  /** Percent; of what, `basis` says. */
  readonly takeHomePercent: Figure | null;
  /** Pounds from the animal of the example. */
  readonly takeHome: Figure | null;
  readonly basis: string | null;
  /** Eggs, milk, feed and freezer room: the unit says of what. */
  readonly value: Figure | null;
  readonly note: string | null;
}

interface RawLivestock {
  readonly animal: string;
  readonly measure: string;
  readonly source: string;
  readonly live?: number;
  readonly carcass?: number;
  readonly dressing?: RawFigure;
  readonly takeHomePct?: RawFigure;
  readonly takeHome?: RawFigure;
  readonly basis?: string;
  readonly value?: RawFigure;
  readonly unit?: string;
  readonly note?: string;
}

const ALL: readonly Livestock[] = (raw as unknown as readonly RawLivestock[]).map((row) => ({
  animal: row.animal,
  measure: row.measure,
  source: row.source,
  liveWeight: row.live ?? null,
  carcass: row.carcass ?? null,
  dressing: figureFrom(row.dressing, 'percent of live weight'),
  takeHomePercent: figureFrom(row.takeHomePct, row.basis ?? 'percent'),
  takeHome: figureFrom(row.takeHome, 'pounds to take home'),
  basis: row.basis ?? null,
  value: figureFrom(row.value, row.unit ?? ''),
  note: row.note ?? null,
}));

const NAMES: Readonly<Record<string, readonly string[]>> = {
  Beef: ['steer', 'cattle', 'heifer', 'beef steer', 'beef animal'],
  Pork: ['hog', 'pig', 'swine'],
  Lamb: ['sheep', 'market lamb'],
  'Chicken, broiler': ['broiler', 'chicken', 'meat chicken', 'meat bird'],
  'Hen, backyard': ['hen', 'laying hen', 'layer', 'backyard hen'],
  'Hen, commercial flock': ['commercial hen'],
  Milk: ['dairy'],
  'Chest freezer': ['freezer'],
};

/** Names of the animals and products with figures. */
export const livestockNames = (): readonly string[] => [...new Set(ALL.map((one) => one.animal))];

/**
 * Every published figure of an animal or product, by source: steer, hog, lamb, hen, milk, freezer space.
 * They disagree, and each keeps its own basis. Refused: `unknown-animal`.
 */
export function livestock(animal: string): Result<readonly Livestock[]> {
  const words = wordsOf(animal);
  const names = livestockNames();
  const name =
    names.find((one) =>
      [one, ...(NAMES[one] ?? [])].some(
        (each) => wordsOf(each) === words || pluralOf(wordsOf(each)) === words,
      ),
    ) ?? names.find((one) => germanFor('animals', one).includes(words));
  return name
    ? ok(ALL.filter((one) => one.animal === name))
    : refuse('unknown-animal', say`no animal called "${excerpt(animal)}".`, say`Write ${orList(names)}.`);
}

/** Every row of the livestock table. */
export const allLivestock = (): readonly Livestock[] => ALL;
