import { canning, growing } from '../../facts/index.js';
import { ok, type Problem, type Result, refuse } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import type { Ranged } from '../ranged.js';
import { isAmount } from '../words.js';
import type { InUse, OwnFigures } from './own-figures.js';
import { treeKind } from './tree-yield.js';
import type { PlantingRow } from './types.js';
import { problem } from './words.js';

/** Pounds a plant by basis, with where it comes from. */
export interface PlantYield extends Ranged {
  /** How the sheet says it: 'own', 'learned from 2 seasons', 'published'. */
  readonly from: string;
  /** The figure of Facts behind it; null where the row has its own yield. */
  readonly figure: InUse | null;
}

const SOURCE_OWN = phrase('your own yield, in this row');

const some = (seasons: number): string =>
  say`learned from ${seasons} ${seasons === 1 ? 'season' : 'seasons'}`;

/** How a figure in use is called in a cell. */
export function originWords(figure: InUse): string {
  if (figure.own !== null) return say`own, on Facts`;
  if (figure.learned) return some(new Set(figure.seasons.map(({ year }) => year)).size);
  return figure.origin === 'computed' ? say`worked out from published` : figure.origin;
}

/** The spacing that counts for a planting where it has its own. */
export const ownInches = ({ ownSpacing }: PlantingRow): number | undefined =>
  ownSpacing !== null && ownSpacing > 0 && isAmount(ownSpacing) ? ownSpacing : undefined;

/**
 * What one plant of a planting gives: the row's own yield, else the household's, else published. Where pounds per
 * foot of row are the published figure they stay fixed, so that a closer spacing gives less a plant.
 * Refused with what would fill it.
 */
export function plantYield(row: PlantingRow, crop: string, figures: OwnFigures): Result<PlantYield> {
  const { ownYield } = row;
  if (ownYield !== null) {
    if (!isAmount(ownYield)) {
      return refuse(
        'bad-amount',
        say`The own yield is not a number from 0 up.`,
        say`Write it in pounds a plant, or leave it blank.`,
      );
    }
    return ok({
      lean: ownYield,
      usual: ownYield,
      good: ownYield,
      unit: phrase('pounds a plant'),
      source: SOURCE_OWN,
      origin: 'own',
      notes: [],
      from: 'own',
      figure: null,
    });
  }
  const found = figures.inUse(
    { of: crop, what: 'yield' },
    { inches: ownInches(row), kind: treeKind(crop, row.variety) },
  );
  if (!found.ok) return found;
  const { low, usual, high, unit, source, origin, notes } = found.value;
  return ok({
    lean: low,
    usual,
    good: high,
    unit,
    source,
    origin,
    notes,
    from: originWords(found.value),
    figure: found.value,
  });
}

/** What a yield's source says of how it was weighed: shelled, dry; each text once. */
export function weighedNotes(crop: string): readonly string[] {
  const of = growing(crop);
  if (!of.ok) return [];
  const notes = of.value.yields.flatMap(({ note }) => (note === undefined ? [] : [note]));
  return [...new Set(notes)].filter((note) => /shell|dry|pod|husk/.test(note));
}

/**
 * The trap of lima beans: yields are printed shelled, and pounds for jars in the pod, so that plants come out too
 * many. Null where both are weighed alike, or the yield is the household's own.
 */
export function weighedApart(crop: string, found: PlantYield | null): Problem | null {
  if (!found || found.origin === 'own') return null;
  const shelled = weighedNotes(crop).some((note) => /^pounds shelled/.test(note));
  const of = shelled ? canning(crop) : null;
  if (!of?.ok || !/in pods/i.test(of.value.note ?? '')) return null;
  return problem(
    'shelled-and-in-pods',
    say`The yield of ${crop} is published shelled, and what goes into a jar is weighed in the pod: these plants are more than enough.`,
    say`Write your own yield as picked, in the pod; or the shelled pounds of a container in Foods.`,
  );
}
