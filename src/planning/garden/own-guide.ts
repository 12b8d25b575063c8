import { ok, type Result } from '../../problem.js';
import { defaultGuide, type Guide, type GuideFigure } from '../guide.js';
import type { InUse, OwnFigures } from './own-figures.js';
import { cropKey } from './words.js';

const asGuide = ({ low, usual, high, unit, source, origin, notes }: InUse): GuideFigure => ({
  low,
  usual,
  high,
  unit,
  source,
  origin,
  notes,
});

/**
 * The guide that the shelf and food planners take (`planLine`), with the household's own and learned pounds per
 * container and months of best quality before the published ones.
 */
export function ownGuide(figures: OwnFigures, behind: Guide = defaultGuide): Guide {
  const first = (found: Result<InUse>, otherwise: () => Result<GuideFigure>): Result<GuideFigure> =>
    found.ok && (found.value.own !== null || found.value.learned !== null)
      ? ok(asGuide(found.value))
      : otherwise();
  return {
    qualityMonths(way, food) {
      const of = cropKey(food) ?? food;
      return first(figures.inUse({ of, what: 'months of best quality', way }), () =>
        behind.qualityMonths(way, food),
      );
    },
    poundsPerContainer(crop, container, way) {
      const of = cropKey(crop) ?? crop;
      return first(figures.inUse({ of, what: 'pounds per container', container, way }), () =>
        behind.poundsPerContainer(crop, container, way),
      );
    },
    bridges: (food) => behind.bridges(food),
  };
}
