import {
  type BatchesInput,
  type BatchRow,
  type BedsPlan,
  type FactRow,
  type GardenHousehold,
  type HarvestRow,
  type OwnFigures,
  type PlantingRow,
  planBatches,
  planBeds,
  planWindows,
  publishedOnly,
} from '../../src/planning/garden/index.js';
import { household } from './planning-make.js';

export const planting = (id: string, crop: string | null, more: Partial<PlantingRow> = {}): PlantingRow => ({
  id,
  crop,
  variety: '',
  ownYield: null,
  ownSpacing: null,
  how: null,
  nthYear: null,
  plants: null,
  sownOn: null,
  ownFrom: null,
  ownTo: null,
  seedsOnHand: null,
  packetYear: null,
  ...more,
});

export const harvested = (id: string, more: Partial<HarvestRow> = {}): HarvestRow => ({
  id,
  date: null,
  planting: null,
  crop: null,
  amount: null,
  unit: null,
  plants: null,
  ...more,
});

export const batch = (id: string, more: Partial<BatchRow> = {}): BatchRow => ({
  id,
  date: null,
  food: 'tomato',
  foodName: 'Tomatoes',
  way: 'canned',
  container: 'quart jar',
  crops: [],
  filled: null,
  failed: null,
  hoursALoad: null,
  loadsOf: null,
  mouth: null,
  lot: null,
  ...more,
});

export const fact = (id: string, figure: string, more: Partial<FactRow> = {}): FactRow => ({
  id,
  figure,
  ownValue: null,
  season: null,
  pounds: null,
  plants: null,
  spacing: null,
  ...more,
});

/** Tamarack Bench: last frost 24 May, first frost 18 September, 2,300 ft. */
export const bench = (asOf = '2026-02-01', more: Partial<GardenHousehold> = {}): GardenHousehold => ({
  ...household(asOf, {
    lastFrost: { month: 5, day: 24 },
    firstFrost: { month: 9, day: 18 },
    altitudeFt: 2300,
  }),
  lastFrostChance: 50,
  firstFrostChance: 50,
  shelfRoom: null,
  freezerRoom: null,
  groundRowFeet: null,
  ...more,
});

/** Beds planned from plantings and pounds by crop. */
export function bedsOf(
  plantings: readonly PlantingRow[],
  pounds: Readonly<Record<string, number>>,
  at: GardenHousehold = bench(),
  figures: OwnFigures = publishedOnly,
): BedsPlan {
  const windows = planWindows(plantings, at, figures);
  return planBeds({ plantings, pounds: new Map(Object.entries(pounds)), household: at, figures, windows });
}

export const batchesOf = (rows: readonly BatchRow[], more: Partial<BatchesInput> = {}) =>
  planBatches({ rows, lines: [], household: bench(), room: { shelf: 0, freezer: 0 }, ...more });
