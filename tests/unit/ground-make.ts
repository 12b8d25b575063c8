import { expect } from 'vitest';
import {
  type Ground,
  type GroundCrop,
  type GroundPlan,
  type ShareOptions,
  shareGround,
} from '../../src/planning/ground/index.js';

/** A crop with one serving and no known pounds a plant, unless told otherwise. */
export const crop = (
  id: string,
  wanted: number,
  groundPerPlant: number,
  more: Partial<GroundCrop> = {},
): GroundCrop => ({
  id,
  name: id,
  wanted,
  groundPerPlant,
  servingsPerPlant: 1,
  poundsPerPlant: null,
  ...more,
});

export const feet = (amount: number): Ground => ({ amount, measure: 'feet of row' });

/** The plan, where the sharing is expected to succeed. */
export async function share(
  crops: readonly GroundCrop[],
  ground: number,
  options?: ShareOptions,
): Promise<GroundPlan> {
  const shared = await shareGround(crops, feet(ground), options);
  if (!shared.ok) expect.fail(shared.problem.message);
  return shared.value;
}

export const plantsOf = (plan: GroundPlan): number[] => plan.crops.map(({ plants }) => plants);
