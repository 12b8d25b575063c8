import { bushelPounds, densityOf, drying, freezing, qualityMonths } from '../facts/index.js';
import { ok, type Result, refuse } from '../problem.js';
import { type Bridge, containerHolds, containerWithId } from '../units/index.js';
import { say } from '../words/index.js';
import type { Guide, GuideFigure } from './guide.js';
import { measureName } from './measure.js';
import { poundsPerJar } from './putting-up.js';
import { changed, ends, exactly, type Ranged, ranged } from './ranged.js';
import type { WayKept } from './types.js';

const asGuide = (figure: Ranged): GuideFigure => ({
  ...ends(figure),
  usual: figure.usual,
  unit: figure.unit,
  source: figure.source,
  origin: figure.origin,
  notes: figure.notes,
});

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function months(way: WayKept, food: string): Result<GuideFigure> {
  const found = qualityMonths(way, food);
  if (!found.ok) return found;
  const { months: figure, said } = found.value;
  return figure
    ? ok({ ...asGuide(ranged(figure, 'low', 'months')), notes: [said] })
    : refuse('nothing-published', capital(said), say`Give your own months of best quality.`);
}

const lacking = (crop: string, container: string, way: WayKept) =>
  refuse(
    'nothing-published',
    say`Nothing is published here for the pounds of ${crop} in ${measureName(container, 1)}, ${way}.`,
    say`Write how many pounds of ${crop} go into one container.`,
  );

/** Pounds as bought by the pint, for as many pints as the container holds. */
function byPint(figure: Ranged, container: string): Result<Ranged> {
  const pints = containerHolds(container, 'pint');
  if (!pints.ok) return pints;
  const { amount } = pints.value;
  const note = amount === 1 ? '' : say`worked out: ${amount} pints`;
  return ok(changed(figure, `pounds a ${container}`, note, (n) => n * amount));
}

function pounds(crop: string, container: string, way: WayKept): Result<Ranged> {
  const { family } = containerWithId(container) ?? {};
  if (way === 'canned') return poundsPerJar(crop, container);
  if (way === 'frozen') {
    const of = freezing(crop);
    if (!of.ok) return of;
    return of.value.poundsPerPint && family !== 'weight'
      ? byPint(ranged(of.value.poundsPerPint, 'high'), container)
      : lacking(crop, container, way);
  }
  if (way === 'dried') {
    const of = drying(crop);
    if (!of.ok) return of;
    const { driedPints, freshPounds, freshPerDried } = of.value;
    if (family === 'weight') {
      const weight = containerHolds(container, 'pound');
      if (!weight.ok) return weight;
      return ok(
        changed(ranged(freshPerDried, 'high'), `pounds a ${container}`, '', (n) => n * weight.value.amount),
      );
    }
    if (!driedPints) return lacking(crop, container, way);
    const note = say`worked out: ${freshPounds} pounds ÷ the pints they dry to`;
    return byPint(
      changed(ranged(driedPints, 'low'), 'pounds a pint', note, (n) => freshPounds / n),
      container,
    );
  }
  // What is kept as it was dug or picked weighs what it weighs.
  if (family === 'weight' && (way === 'cellared' || way === 'fresh' || way === 'dry goods')) {
    const weight = containerHolds(container, 'pound');
    return weight.ok ? ok(exactly(weight.value.amount, `pounds a ${container}`)) : weight;
  }
  return lacking(crop, container, way);
}

/**
 * The published facts as planners ask for them. Pounds per container are of the crop as bought. Bridges are a
 * food's density and bushel weight, where published; the pounds that fill a jar are not what the jar weighs.
 */
export const publishedGuide: Guide = {
  qualityMonths: months,
  poundsPerContainer(crop, container, way) {
    const found = pounds(crop, container, way);
    return found.ok ? ok(asGuide(found.value)) : found;
  },
  bridges(food) {
    const known: Bridge[] = [];
    const density = densityOf(food);
    if (density.ok) known.push({ poundsPerCup: density.value.usual });
    const bushel = bushelPounds(food);
    if (bushel.ok) known.push({ pounds: bushel.value.usual, per: 'bushel' });
    return known;
  },
};
