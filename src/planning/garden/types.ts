/**
 * What the garden's planners read and answer: the sheets Beds, Harvest, Batches, Supplies and Facts as typed
 * rows, and their planning columns by column id. Weights are pounds, lengths inches or feet, as named.
 */
import type { CropShare, DayNumber, Household, MonthDay, PlanValue, WayKept } from '../types.js';

export const HOW_PLANTED = ['direct', 'indoors', 'winter-sown', 'set', 'crown', 'tree'] as const;
export type HowPlanted = (typeof HOW_PLANTED)[number];

export const MOUTHS = ['regular', 'wide'] as const;
export type Mouth = (typeof MOUTHS)[number];

/** A household with what only the garden and the shelf room ask for. Null where not given. */
export interface GardenHousehold extends Household {
  /** Percent: chance of frost after the last spring frost date. */
  readonly lastFrostChance: number | null;
  /** Percent: chance of frost before the first fall frost date. */
  readonly firstFrostChance: number | null;
  /** Quart jars that the shelves hold. */
  readonly shelfRoom: number | null;
  /** Cubic feet. */
  readonly freezerRoom: number | null;
  /** Feet of row that can be planted. */
  readonly groundRowFeet: number | null;
}

/** A row of Beds: one planting. */
export interface PlantingRow {
  readonly id: string;
  /** `cropKey` of the name, or null where blank. */
  readonly crop: string | null;
  readonly variety: string;
  /** Pounds a plant. */
  readonly ownYield: number | null;
  /** Inches between plants. */
  readonly ownSpacing: number | null;
  /** Null: as the crop is usually started. */
  readonly how: HowPlanted | null;
  /** Of a tree, bush or crown: 1 = planted this year; null = grown and bearing. */
  readonly nthYear: number | null;
  readonly plants: number | null;
  /** The day of sowing (of planting, for sets); overrides the planned one. */
  readonly sownOn: DayNumber | null;
  /** Own first and last day of harvest, every year. */
  readonly ownFrom: MonthDay | null;
  readonly ownTo: MonthDay | null;
  readonly seedsOnHand: number | null;
  readonly packetYear: number | null;
}

/** A row of Harvest: what came in on a day. */
export interface HarvestRow {
  readonly id: string;
  readonly date: DayNumber | null;
  /** Id of a planting. */
  readonly planting: string | null;
  readonly crop: string | null;
  readonly amount: number | null;
  /** Id of a container or unit; null = pounds. */
  readonly unit: string | null;
  /** Plants that it came from. */
  readonly plants: number | null;
}

/** A row of Batches: what is to be put up, or was. */
export interface BatchRow {
  readonly id: string;
  readonly date: DayNumber | null;
  /** Food key, as on the Shelf. */
  readonly food: string | null;
  /** As written. */
  readonly foodName: string;
  readonly way: WayKept | null;
  readonly container: string | null;
  /** Pounds in of each crop; null pounds = not weighed. */
  readonly crops: readonly CropShare[];
  readonly filled: number | null;
  readonly failed: number | null;
  readonly hoursALoad: number | null;
  /** Jars in a canner load, where the canner holds another number than usual. */
  readonly loadsOf: number | null;
  readonly mouth: Mouth | null;
  /** Id of the lot that the batch was posted as. */
  readonly lot: string | null;
}

/** A row of Supplies. */
export interface SupplyRow {
  readonly id: string;
  readonly item: string;
  readonly onHand: number | null;
  /** Food key of the batches that use it; null = all of them. */
  readonly usedFor: string | null;
  /** How much of it goes into one container, for what a tested recipe calls for. */
  readonly perContainer: number | null;
}

/** A row of Facts: an own figure, or one season's raw totals. */
export interface FactRow {
  readonly id: string;
  /** As written: 'tomato, yield'. */
  readonly figure: string;
  readonly ownValue: number | null;
  /** Year in which the season began. */
  readonly season: number | null;
  readonly pounds: number | null;
  /** Plants, or containers for pounds per container. */
  readonly plants: number | null;
  /** Inches between plants in that season; null = the spacing in use. */
  readonly spacing: number | null;
}

/** Planning columns of Beds. */
export interface BedFigures {
  /** Pounds. */
  readonly pounds_wanted: PlanValue;
  /** Pounds a plant. */
  readonly yield_low: PlanValue;
  readonly yield: PlanValue;
  readonly yield_high: PlanValue;
  /** Words: own, learned from so many seasons, published… */
  readonly yield_from: PlanValue;
  /** Whole plants: on a good season, on the season counted on, on a lean one. */
  readonly plants_low: PlanValue;
  readonly plants_wanted: PlanValue;
  readonly plants_high: PlanValue;
  readonly row_feet: PlanValue;
  /** Square feet. */
  readonly bed_area: PlanValue;
  readonly seeds: PlanValue;
  readonly seeds_to_buy: PlanValue;
  readonly start_on: PlanValue;
  readonly set_out_on: PlanValue;
  readonly harvest_from: PlanValue;
  readonly harvest_to: PlanValue;
  readonly latest_sowing: PlanValue;
  /** Pounds. */
  readonly expected_low: PlanValue;
  readonly expected_pounds: PlanValue;
  readonly expected_high: PlanValue;
  /** Pounds; below 0 is short. */
  readonly short_or_over: PlanValue;
}

/** Planning columns of Harvest. */
export interface HarvestFigures {
  readonly pounds_so_far: PlanValue;
  readonly per_plant_so_far: PlanValue;
  /** Percent of the pounds expected (or wanted, where no plants are planned). */
  readonly against_plan: PlanValue;
}

/** Planning columns of Batches: before, and after. */
export interface BatchFigures {
  readonly bushels_wanted: PlanValue;
  readonly jars: PlanValue;
  readonly lids: PlanValue;
  readonly canner_loads: PlanValue;
  readonly hours: PlanValue;
  /** Words: class and inches. */
  readonly headspace: PlanValue;
  /** Words: gauge pressures by altitude, never a time. */
  readonly pressure: PlanValue;
  /** Quart jars. */
  readonly shelf_room_after: PlanValue;
  /** Cubic feet. */
  readonly freezer_room_after: PlanValue;
  /** Pounds per container reached. */
  readonly pounds_per_container: PlanValue;
  /** Percent of the published pounds per container. */
  readonly against_published: PlanValue;
}

/** Planning columns of Supplies. */
export interface SupplyFigures {
  readonly wanted: PlanValue;
  readonly short: PlanValue;
}

/** Planning columns of Facts. */
export interface FactFigures {
  readonly published: PlanValue;
  readonly low: PlanValue;
  readonly high: PlanValue;
  readonly unit: PlanValue;
  readonly source: PlanValue;
  readonly own_seasons: PlanValue;
  readonly learned: PlanValue;
  readonly in_use: PlanValue;
}
