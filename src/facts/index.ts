/** Published figures, each with its source. Lookups answer values or a problem; nothing is ever invented. */
export { allFigures, type FlatFigure } from './all.js';
export {
  allMarketContainers,
  bushelPounds,
  type MarketContainer,
  marketContainers,
} from './bushels.js';
export { type Canning, type CanningContainer, cannedCrops, canning, headspaceOf } from './canning.js';
export {
  allCautions,
  type Caution,
  type CautionId,
  type CautionTopic,
  caution,
  cautions,
  cautionsFor,
} from './cautions.js';
export {
  type AcidClass,
  type Crop,
  cropNames,
  crops,
  findCrop,
  inEnglishName,
  isForeignName,
  nearCrops,
} from './crops.js';
export { allDensities, densityOf } from './densities.js';
export { type Drying, driedCrops, drying, finishedWater } from './drying.js';
export type { Certainty, Figure, Reading, Said, SourceId } from './figure-types.js';
export { type Freezing, type FrozenYield, freezing, frozenCrops } from './freezing.js';
export { germanMeant } from './german-names.js';
export { FOOD_GROUPS, type FoodGroup, foodGroup, groupOf } from './groups.js';
export {
  type FrostClass,
  type Growing,
  growing,
  grownCrops,
  type MaturityFrom,
  plantShare,
  reckonedBy,
  type SowMethod,
  type Yield,
  type YieldOf,
  yieldOf,
} from './growing.js';
export { type Headspace, type HeadspaceClass, headspace, headspaceClasses } from './headspace.js';
export { allLivestock, type Livestock, livestock, livestockNames } from './livestock.js';
export { wordsOf } from './names.js';
export { noteInWords } from './notes.js';
export { childShare, type PerPerson, perPerson } from './per-person.js';
export {
  type AltitudePressure,
  altitudePressure,
  boilingWaterBands,
  type Gauge,
  type PressureGroup,
  pressureGroup,
  usualLoad,
} from './pressure.js';
export { allCanningRules, type CanningRule, type CanningVerdict, canningRules } from './rules.js';
export { figureSource, sources, sourceText, withoutLead } from './sources.js';
export { type Staple, staples } from './staples.js';
export {
  allColdStorage,
  allQuality,
  type ColdStorage,
  coldStorage,
  type Quality,
  qualityMonths,
} from './storage.js';
export { allTrees, freshQuartPounds, type Tree, trees } from './trees.js';
export { allWater, type WaterContent, type WaterState, waterContent, waterForms } from './water.js';
export { WAYS, type Way } from './ways.js';
