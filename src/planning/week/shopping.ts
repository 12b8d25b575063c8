import type { Problem } from '../../problem.js';
import { asFraction } from '../../units/index.js';
import { say } from '../../words/index.js';
import type { Guide } from '../guide.js';
import { measuresOf } from '../measure.js';
import type { Household } from '../types.js';
import { type Buyable, buyable } from './buyable.js';
import type { MealPlan, MetNeed } from './plan-week.js';
import { amountWords, isCount } from './words.js';

/** One line of the shopping list. */
export interface ToBuy extends Buyable {
  /** Made from the food and the measure: stays the same, so that a tick stays at its line. */
  readonly id: string;
  readonly food: string;
  /** What the meals need, before rounding up: '1⅓ pounds'; a bare number of pieces. */
  readonly exactly: string;
  /** The line to write down: '3 onions', '1½ pounds of carrots'. */
  readonly text: string;
  readonly meals: readonly string[];
  /** Part of it the shelf was to give, and lacks. */
  readonly short: boolean;
  /** Why lots that stand on the shelf were not used, where their measure does not meet. */
  readonly problem: Problem | null;
}

interface Heap {
  readonly food: string;
  readonly name: string;
  readonly measure: string;
  amount: number;
  readonly meals: Set<string>;
  short: boolean;
  problem: Problem | null;
}

/** What to buy for a need: all of a bought line, and of a shelf line what the shelf lacks. */
const wantedOf = (need: MetNeed): number => (need.from === 'bought' ? need.amount : need.short);

/**
 * What the planned meals need and the shelf lacks, with the lines that are bought: one line for each food,
 * or several where its amounts are in measures that do not meet. By name.
 */
export function shopping(plans: readonly MealPlan[], household: Household, guide: Guide): ToBuy[] {
  const heaps = new Map<string, Heap[]>();
  for (const { meal, state, needs } of plans) {
    if (state !== 'planned') continue;
    for (const need of needs) {
      const wanted = wantedOf(need);
      if (!(wanted > 0)) continue;
      const ofFood = heaps.get(need.food) ?? [];
      heaps.set(need.food, ofFood);
      const measures = measuresOf(guide.bridges(need.food));
      let heap = ofFood.find((each) => measures.factorOrNull(need.measure, each.measure) !== null);
      if (!heap) {
        heap = {
          food: need.food,
          name: need.foodName,
          measure: need.measure,
          amount: 0,
          meals: new Set(),
          short: false,
          problem: null,
        };
        ofFood.push(heap);
      }
      heap.amount += wanted * (measures.factorOrNull(need.measure, heap.measure) ?? 0);
      heap.meals.add(meal.id);
      heap.short ||= need.from === 'shelf';
      heap.problem ??= need.unbridged;
    }
  }
  return [...heaps.values()]
    .flat()
    .map((heap): ToBuy => {
      const buy = buyable(heap.amount, heap.measure, household.measures);
      return {
        id: `${heap.food}|${heap.measure}`,
        food: heap.name,
        ...buy,
        exactly: isCount(heap.measure) ? asFraction(heap.amount) : amountWords(heap.amount, heap.measure),
        text: isCount(buy.measure) ? `${buy.words} ${heap.name}` : say`${buy.words} of ${heap.name}`,
        meals: [...heap.meals],
        short: heap.short,
        problem: heap.problem,
      };
    })
    .sort((a, b) => a.food.localeCompare(b.food));
}
