import { ok, type Result, refuse } from '../../problem.js';
import { type Bridge, containerHolds, containerWithId, inMeasure } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import { defaultGuide, type Guide } from '../guide.js';
import type { WayKept } from '../types.js';
import { FREEZER } from './figure-names.js';
import { type InUse, type OwnFigures, publishedOnly } from './own-figures.js';

/** Where a food stands, as far as room goes; null where neither shelf nor freezer room is reckoned. */
export type Storey = 'shelf' | 'freezer' | null;

/** Jars and cans stand on shelves; frozen food lies in the freezer. What is cellared in bins is not reckoned. */
export function storeyOf(way: WayKept, container: string): Storey {
  if (way === 'frozen') return 'freezer';
  const family = containerWithId(container)?.family;
  return family === 'jar' || family === 'can' ? 'shelf' : null;
}

/** How quart-equivalents are reckoned, in words. */
export const QUART_EQUIVALENTS = phrase(
  'by what the jars hold: a pint counts as half a quart, a half-gallon as two. Small jars take rather more shelf than that.',
);

/** Quart jars that one container counts as, by its volume. */
export const quartsOf = (container: string): Result<number> => {
  const holds = containerHolds(container, 'quart');
  return holds.ok ? ok(holds.value.amount) : holds;
};

/** Said beside a weight that goes by the pint. */
export const PINT_A_POUND = phrase('a pint weighs about a pound: common practice, no source');

/** Pounds in one frozen container: by the food's weight where it is known, else a pound a pint. */
export function frozenPounds(
  food: string,
  container: string,
  guide: Guide = defaultGuide,
): Result<{ readonly pounds: number; readonly note: string | null }> {
  const bridges: readonly Bridge[] = guide.bridges(food);
  const weight = inMeasure(1, container, 'pound', bridges);
  if (weight.ok) return ok({ pounds: weight.value, note: null });
  const pints = containerHolds(container, 'pint');
  return pints.ok
    ? ok({ pounds: pints.value.amount, note: PINT_A_POUND })
    : refuse(
        'no-weight',
        say`What one ${container} of ${food} weighs in the freezer is not known.`,
        say`Count it in pounds or in freezer bags.`,
      );
}

/**
 * Pounds that a cubic foot of freezer holds: the household's own, else midway between published figures that
 * disagree, both of which stand in the range and the notes.
 */
export const freezerFigure = (figures: OwnFigures = publishedOnly): Result<InUse> => figures.inUse(FREEZER);

/** Shelf room in quart jars, or freezer room in cubic feet, of one container. */
export function roomOf(
  food: string,
  way: WayKept,
  container: string,
  figures: OwnFigures = publishedOnly,
  guide: Guide = defaultGuide,
): Result<{ readonly storey: Storey; readonly each: number; readonly note: string | null }> {
  const storey = storeyOf(way, container);
  if (storey === null) return ok({ storey, each: 0, note: null });
  if (storey === 'shelf') {
    const quarts = quartsOf(container);
    return quarts.ok ? ok({ storey, each: quarts.value, note: null }) : quarts;
  }
  const pounds = frozenPounds(food, container, guide);
  if (!pounds.ok) return pounds;
  const perFoot = freezerFigure(figures);
  if (!perFoot.ok) return perFoot;
  if (!(perFoot.value.usual > 0)) {
    return refuse(
      'bad-amount',
      say`A cubic foot of freezer that holds nothing cannot be reckoned with.`,
      say`Correct “freezer, pounds per cubic foot” on Facts.`,
    );
  }
  return ok({ storey, each: pounds.value.pounds / perFoot.value.usual, note: pounds.value.note });
}
