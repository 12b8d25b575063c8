/** What the sharing of ground reads and answers. Ground is in one measure throughout, named by the household. */

/** How the household measures its ground, for reading. */
export const GROUND_MEASURES = ['feet of row', 'square feet'] as const;
export type GroundMeasure = (typeof GROUND_MEASURES)[number];

/** The ground there is. */
export interface Ground {
  /** More than 0. */
  readonly amount: number;
  readonly measure: GroundMeasure;
}

/** One crop (or planting) that wants ground. */
export interface GroundCrop {
  /** Names the crop in answers and problems; no two alike. */
  readonly id: string;
  /** As people read it: 'tomatoes'. */
  readonly name: string;
  /** Whole plants wanted. */
  readonly wanted: number;
  /** Feet of row or square feet that one plant takes, in the measure of the ground; more than 0. */
  readonly groundPerPlant: number;
  /** What a plant gives in a season; null = not known, and never guessed. */
  readonly servingsPerPlant: number | null;
  readonly poundsPerPlant: number | null;
  /** How much a serving of this crop counts beside one of another; blank = 1. */
  readonly weight?: number | null;
  /** Place in the household's order, 1 = first; crops may share a place. Blank = after all that have one. */
  readonly rank?: number | null;
  /** Whole plants it gets before anything is shared, whatever its place in the order; blank = 0. */
  readonly least?: number | null;
}

/** Amounts of food; null where a figure that would be needed is not known. */
export interface Food {
  readonly pounds: number | null;
  readonly servings: number | null;
}

/** What one crop gets. */
export interface CropGround {
  readonly id: string;
  readonly name: string;
  readonly rank: number | null;
  readonly wanted: number;
  /** Whole plants; from the least to those wanted. */
  readonly plants: number;
  /** plants ÷ wanted, 0 to 1; 1 where none is wanted. */
  readonly share: number;
  /** Plants that the smallest share alone gives; those above it were added for the food they give. */
  readonly evenPlants: number;
  /** Ground that its plants take. */
  readonly ground: number;
  /** True where not one plant more could be had even before the others got theirs: left out of the smallest share. */
  readonly noRoom: boolean;
  readonly givenUp: { readonly plants: number } & Food;
  /** All of this in a sentence. */
  readonly words: string;
}

/** By what plants beyond the smallest share are chosen; null where no crop's food per plant is known. */
export type Reckoned = 'servings' | 'pounds' | null;

/** How the ground is shared. */
export interface GroundPlan {
  /** True when all that is wanted fits. */
  readonly fits: boolean;
  readonly measure: GroundMeasure;
  readonly available: number;
  /** Ground that all the plants wanted would take. */
  readonly needed: number;
  /** Ground that the plants given take; never more than available. */
  readonly used: number;
  /** In the order in which they were given. */
  readonly crops: readonly CropGround[];
  /** Smallest share of any crop, 0 to 1; null where nothing is wanted. */
  readonly leastShare: number | null;
  readonly givenUp: { readonly plants: number } & Food;
  readonly reckonedBy: Reckoned;
  /**
   * False when the time ran out before the best choice by servings was proved: the choice stands, is within the
   * ground and has the right smallest share (of the crops first in the order), but a better one may exist.
   */
  readonly proved: boolean;
  /** Where not proved, more than this many weighted servings (or pounds) cannot be missing; else 0. */
  readonly mayBeMissing: number;
  /** The whole in sentences. */
  readonly words: readonly string[];
}

/** How long the sharing may take. */
export interface ShareOptions {
  /** Milliseconds for all choices by servings together; default 1,000. Most take a few. */
  readonly milliseconds?: number;
}
