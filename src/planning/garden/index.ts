/** Planning of Beds, Harvest, Batches, Supplies and Facts, room over the year and turning the year. */
export {
  type AnimalBrings,
  animalBrings,
  animalsFor,
  cookedPerDryCup,
  eggsByAge,
  type HensWanted,
  hensForEggs,
  lardFrom,
} from './animals.js';
export type {
  BatchCrop,
  BatchesInput,
  BatchesPlan,
  BatchReckoning,
  LineToPutUp,
  RoomNow,
} from './batch-types.js';
export { ownFailures, type PostedLot, planBatches, postBatch } from './batches.js';
export { type BedReckoning, type BedsInput, type BedsPlan, planBeds, poundsWanted } from './beds.js';
export { batchCautions, headspaceGuidance, pressureGuidance, SEE_TESTED } from './canning-guidance.js';
export { explainBatch } from './explain-batches.js';
export { explainPlanting } from './explain-beds.js';
export { chanceWords } from './explain-dates.js';
export { explainFact, explainHarvest, explainSupply } from './explain-rest.js';
export { planFacts } from './facts-rows.js';
export {
  CROP_FIGURES,
  type CropFigure,
  type FigureName,
  figureKey,
  figureText,
  knownFigures,
  readFigureName,
} from './figure-names.js';
export { figureMeant, figureShown } from './figure-words.js';
export { comingSeason, type FrostYears, frostYears, type GrowingSeason, seasonOfHarvest } from './frost.js';
export { type HarvestInput, type HarvestPlan, harvestPounds, planHarvest } from './harvest-rows.js';
export { type InUse, type OwnFigures, ownFigures, publishedOnly } from './own-figures.js';
export { ownGuide } from './own-guide.js';
export { type PlantingDates, plantingDates, usualStart } from './planting-dates.js';
export {
  type EatFirst,
  planRoom,
  type RoomInput,
  type RoomLine,
  type RoomPlan,
  type RoomWeek,
  roomNow,
} from './room.js';
export { freezerFigure, QUART_EQUIVALENTS } from './room-measures.js';
export { type LineToSuggest, suggestUse, type UseSuggestion } from './suggest-use.js';
export { planSupplies, SUPPLY_ITEMS, type SuppliesPlan, supplyItem } from './supplies.js';
export {
  type Lesson,
  type TurnedYear,
  type TurnInput,
  turnYear,
  type YearEdit,
  type YearSheet,
} from './turn-year.js';
export type * from './types.js';
export { HOW_PLANTED, MOUTHS } from './types.js';
export {
  type CropWindow,
  type GardenWindows,
  type HarvestWindow,
  leadingCrop,
  planWindows,
  withFreshSeason,
} from './windows.js';
export { cropKey } from './words.js';
