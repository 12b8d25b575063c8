import { tidy } from '../words.js';
import type { CropGround, Food, Ground, GroundCrop, GroundPlan, Reckoned } from './types.js';
import { cropWords, planWords } from './words.js';

/** A crop while the ground is shared. */
export interface Shared {
  readonly crop: GroundCrop;
  plants: number;
  evenPlants: number;
  noRoom: boolean;
}

/** Food of so many plants; nothing given up is 0 even where the figure is not known. */
const foodOf = (crop: GroundCrop, plants: number): Food => ({
  pounds: plants === 0 ? 0 : crop.poundsPerPlant === null ? null : tidy(crop.poundsPerPlant * plants),
  servings: plants === 0 ? 0 : crop.servingsPerPlant === null ? null : tidy(crop.servingsPerPlant * plants),
});

const sumOrBlank = (amounts: readonly (number | null)[]): number | null =>
  amounts.reduce((sum, each) => (sum === null || each === null ? null : tidy(sum + each)), 0);

function cropGround({ crop, plants, evenPlants, noRoom }: Shared): CropGround {
  const up = crop.wanted - plants;
  const got: Omit<CropGround, 'words'> = {
    id: crop.id,
    name: crop.name,
    rank: crop.rank ?? null,
    wanted: crop.wanted,
    plants,
    share: crop.wanted === 0 ? 1 : plants / crop.wanted,
    evenPlants,
    ground: tidy(plants * crop.groundPerPlant),
    noRoom,
    givenUp: { plants: up, ...foodOf(crop, up) },
  };
  return { ...got, words: cropWords(got) };
}

/** The answer out of what each crop got, with all sums and words. */
export function groundPlan(
  shared: readonly Shared[],
  ground: Ground,
  reckonedBy: Reckoned,
  proved: boolean,
  mayBeMissing: number,
): GroundPlan {
  const crops = shared.map(cropGround);
  const wanting = crops.filter(({ wanted }) => wanted > 0);
  const plan: Omit<GroundPlan, 'words'> = {
    fits: crops.every(({ plants, wanted }) => plants === wanted),
    measure: ground.measure,
    available: ground.amount,
    needed: tidy(shared.reduce((sum, { crop }) => sum + crop.wanted * crop.groundPerPlant, 0)),
    used: Math.min(ground.amount, tidy(crops.reduce((sum, each) => sum + each.ground, 0))),
    crops,
    leastShare: wanting.length === 0 ? null : Math.min(...wanting.map(({ share }) => share)),
    givenUp: {
      plants: crops.reduce((sum, { givenUp }) => sum + givenUp.plants, 0),
      pounds: sumOrBlank(crops.map(({ givenUp }) => givenUp.pounds)),
      servings: sumOrBlank(crops.map(({ givenUp }) => givenUp.servings)),
    },
    reckonedBy,
    proved,
    mayBeMissing,
  };
  const unknown = shared
    .filter(({ crop }) => crop.wanted > 0 && isUnknown(crop, reckonedBy))
    .map(({ crop }) => crop.name);
  return { ...plan, words: planWords(plan, unknown) };
}

const isUnknown = (crop: GroundCrop, by: Reckoned): boolean =>
  by === 'servings' ? crop.servingsPerPlant === null : by === 'pounds' ? crop.poundsPerPlant === null : true;
