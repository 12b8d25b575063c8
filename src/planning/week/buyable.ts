import { asFraction, ceilSafe, containerWithId, inMeasure, unitWithId } from '../../units/index.js';
import type { Household } from '../types.js';

/** An amount as one can ask for it in a shop: rounded up, and in words. */
export interface Buyable {
  readonly amount: number;
  readonly measure: string;
  /** '2½ pounds', '1 dozen', '3 tablespoons'. */
  readonly words: string;
}

interface Step {
  readonly measure: string;
  /** Rounded up to a multiple of this. */
  readonly step: number;
  /** Used from so many of `measure` up. */
  readonly from: number;
}

// Greatest first: the first that the amount reaches is the one to ask for.
const LADDERS = {
  'US customary': {
    weight: [
      { measure: 'pound', step: 0.5, from: 1 },
      { measure: 'ounce', step: 1, from: 0 },
    ],
    volume: [
      { measure: 'gallon', step: 0.5, from: 1 },
      { measure: 'quart', step: 0.5, from: 1 },
      { measure: 'cup', step: 0.5, from: 1 },
      { measure: 'tablespoon', step: 1, from: 1 },
      { measure: 'teaspoon', step: 1, from: 0 },
    ],
  },
  metric: {
    weight: [
      { measure: 'kilogram', step: 0.1, from: 1 },
      { measure: 'gram', step: 50, from: 100 },
      { measure: 'gram', step: 5, from: 0 },
    ],
    volume: [
      { measure: 'litre', step: 0.1, from: 1 },
      { measure: 'millilitre', step: 50, from: 100 },
      { measure: 'millilitre', step: 5, from: 0 },
    ],
  },
} as const satisfies Record<Household['measures'], Record<'weight' | 'volume', readonly Step[]>>;

function ladderOf(measure: string, measures: Household['measures']): readonly Step[] | null {
  const container = containerWithId(measure);
  if (container && container.family !== 'weight') return null;
  const dimension = unitWithId(measure)?.dimension ?? unitWithId(container?.holds?.unit ?? '')?.dimension;
  return dimension === 'weight' || dimension === 'volume' ? LADDERS[measures][dimension] : null;
}

/**
 * `amount` rounded up to what one can buy: whole jars, cans, pieces and bunches; half pounds, or ounces below a
 * pound; half gallons, quarts and cups, or whole spoons below that; in metric books tenths of a kilogram or litre.
 */
export function buyable(amount: number, measure: string, measures: Household['measures']): Buyable {
  for (const { measure: to, step, from } of ladderOf(measure, measures) ?? []) {
    const turned = inMeasure(amount, measure, to);
    if (!turned.ok || turned.value < from - 1e-9) continue;
    const rounded = ceilSafe(turned.value / step) * step;
    const clean = Math.round(rounded * 1000) / 1000;
    return { amount: clean, measure: to, words: asFraction(clean, to) };
  }
  const whole = ceilSafe(amount);
  const words = measure === 'each' || measure === 'piece' ? `${whole}` : asFraction(whole, measure);
  return { amount: whole, measure, words };
}
