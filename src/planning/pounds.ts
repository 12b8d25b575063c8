import { ok, type Problem, type Result, refuse } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { atBasis, type Guide, type GuideFigure } from './guide.js';
import type { Basis, CropShare, Origin, WayKept } from './types.js';
import { isAmount, MOST } from './words.js';

/** Pounds of one crop in one counted-in container. */
export interface CropPounds {
  readonly crop: string;
  readonly pounds: number;
  readonly origin: Origin;
  readonly figure: GuideFigure | null;
}

/**
 * Pounds of each crop in one container: the row's own, else published (the high end on a lean basis: more pounds
 * a jar) where the line has one crop. Refused with what is missing.
 */
export function cropPounds(
  crops: readonly CropShare[],
  container: string,
  way: WayKept,
  basis: Basis,
  guide: Guide,
): Result<readonly CropPounds[]> {
  const found: CropPounds[] = [];
  for (const { crop, pounds } of crops) {
    if (pounds !== null) {
      if (!isAmount(pounds)) {
        return refuse(
          'bad-amount',
          say`The pounds of ${crop} are not a number from 0 up.`,
          say`Write the pounds of ${crop} in one container.`,
        );
      }
      found.push({ crop, pounds, origin: 'own', figure: null });
      continue;
    }
    if (crops.length > 1) {
      return refuse(
        'pounds-missing',
        say`With several crops in a container, the pounds of ${crop} are not published.`,
        say`Write how many pounds of ${crop} go into one container.`,
      );
    }
    const figure = guide.poundsPerContainer(crop, container, way);
    if (!figure.ok) return figure;
    const at = atBasis(figure.value, basis, 'high');
    if (!isAmount(at))
      return refuse(
        'pounds-missing',
        say`No pounds of ${crop} are known.`,
        say`Write the pounds of ${crop} in one container.`,
      );
    found.push({ crop, pounds: at, origin: figure.value.origin, figure: figure.value });
  }
  return ok(found);
}

/** Pounds of each crop for `containers` to fill, fresh use included. A crop named twice is added up. */
export function poundsToGrow(perContainer: readonly CropPounds[], containers: number): Map<string, number> {
  const pounds = new Map<string, number>();
  for (const { crop, pounds: each } of perContainer) {
    const wanted = each * containers;
    if (wanted <= MOST) pounds.set(crop, (pounds.get(crop) ?? 0) + wanted);
  }
  return pounds;
}

export const NO_FRESH_SEASON: Problem = {
  code: 'fresh-season-missing',
  message: phrase('Fresh use is given, but not the season in which it is fresh.'),
  mend: phrase('Give the first and last day of the fresh season, as 07-15 and 09-30.'),
};
