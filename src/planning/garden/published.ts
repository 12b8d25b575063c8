import { bushelPounds, type Figure, growing, livestock } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import { eggsPerHen } from '../animals.js';
import { yieldPerPlant } from '../growing.js';
import { defaultGuide, type Guide, type GuideFigure } from '../guide.js';
import { bothSources, ends, type Ranged, ranged } from '../ranged.js';
import type { CropFigure, FigureName } from './figure-names.js';
import { figureCalled } from './figure-words.js';
import { treeYield, yearsToBearing } from './tree-yield.js';

/** A published figure as Facts shows it: the central figure, its ends and where it is printed. */
export interface Published extends GuideFigure {
  readonly low: number;
  readonly high: number;
  readonly notes: readonly string[];
}

/** What narrows a figure down: inches between plants for a yield, the size of a tree. */
export interface Narrow {
  readonly inches?: number | undefined;
  readonly kind?: string | null | undefined;
}

export const asPublished = (figure: Ranged): Published => ({
  ...ends(figure),
  usual: figure.usual,
  unit: figure.unit,
  source: figure.source,
  origin: figure.origin,
  notes: figure.notes,
});

const lacking = (name: FigureName) =>
  refuse(
    'nothing-published',
    say`Nothing is published here for “${figureCalled(name)}”.`,
    say`Write your own value on Facts, or a season’s totals.`,
  );

function plain(figure: Figure | null | undefined, name: FigureName): Result<Published> {
  return figure ? ok(asPublished(ranged(figure, 'low'))) : lacking(name);
}

/** A figure with another number of its own: what the sources differ in is the range. */
function freezerRoom(name: FigureName): Result<Published> {
  const found = ['freezer', 'Freezer space'].flatMap((animal) => {
    const rows = livestock(animal);
    return rows.ok
      ? rows.value.flatMap(({ value }) => (value && /per cubic foot$/.test(value.unit) ? [value] : []))
      : [];
  });
  const first = found[0];
  if (!first) return lacking(name);
  const low = Math.min(...found.map((one) => one.low));
  const high = Math.max(...found.map((one) => one.high));
  return ok({
    low,
    // They disagree by half, and none leads.
    usual: (low + high) / 2,
    high,
    unit: phrase('pounds per cubic foot'),
    source: found.map((one) => ranged(one, 'low').source).reduce(bothSources),
    origin: 'published',
    notes: found.map(
      (one) =>
        say`${one.low === one.high ? one.low : say`${one.low} to ${one.high}`} by ${ranged(one, 'low').source}`,
    ),
  });
}

function ofCrop(of: string, what: CropFigure, name: FigureName, narrow: Narrow): Result<Published> {
  switch (what) {
    case 'yield': {
      const found = narrow.kind ? treeYield(of, narrow.kind) : yieldPerPlant(of, 'pound', narrow.inches);
      if (found.ok) return ok(asPublished(found.value));
      const tree = treeYield(of, narrow.kind ?? null);
      if (tree.ok) return ok(asPublished(tree.value));
      // Which problem helps more: the tree's, where the crop is a tree.
      return tree.problem.code === 'no-weight' ? tree : found;
    }
    case 'weight of one':
      return lacking(name);
    case 'years to bearing': {
      const years = yearsToBearing(of, narrow.kind ?? null);
      return years ? ok(asPublished(years)) : lacking(name);
    }
    case 'bushel weight': {
      const bushel = bushelPounds(of);
      return bushel.ok ? plain(bushel.value, name) : bushel;
    }
  }
  const found = growing(of);
  if (!found.ok) return found;
  switch (what) {
    case 'spacing':
      return plain(found.value.spacing, name);
    case 'days to maturity':
      return plain(found.value.daysToMaturity, name);
    case 'weeks indoors':
      return plain(found.value.weeksIndoors, name);
    case 'weeks from the last frost':
      return plain(found.value.weeksFromLastFrost, name);
    case 'germination':
      return plain(found.value.germination, name);
    case 'seed life':
      return plain(found.value.seedLife, name);
  }
}

const byGuide = (figure: Result<GuideFigure>): Result<Published> =>
  figure.ok
    ? ok({
        ...figure.value,
        low: figure.value.low ?? figure.value.usual,
        high: figure.value.high ?? figure.value.usual,
        notes: figure.value.notes ?? [],
      })
    : figure;

/** What is published under a figure's name. Refused with what is lacking; nothing is ever guessed. */
export function publishedFigure(
  name: FigureName,
  narrow: Narrow = {},
  guide: Guide = defaultGuide,
): Result<Published> {
  switch (name.what) {
    case 'pounds per container':
      return byGuide(guide.poundsPerContainer(name.of, name.container, name.way));
    case 'months of best quality':
      return byGuide(guide.qualityMonths(name.way, name.of));
    case 'pounds per cubic foot':
      return freezerRoom(name);
    case 'eggs a year': {
      const eggs = eggsPerHen();
      return eggs.ok ? ok(asPublished(eggs.value)) : eggs;
    }
    default:
      return ofCrop(name.of, name.what, name, narrow);
  }
}
