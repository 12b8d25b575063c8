/** Published figures, each with its source. Lookups answer values or a problem; nothing is ever invented. */
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
export { type AcidClass, type Crop, cropNames, crops, findCrop } from './crops.js';
export { allDensities, densityOf } from './densities.js';
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
export { type Headspace, type HeadspaceClass, headspace } from './headspace.js';
export { wordsOf } from './names.js';
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
export { figureSource, sources, sourceText } from './sources.js';
export {
  allColdStorage,
  allQuality,
  type ColdStorage,
  coldStorage,
  type Quality,
  qualityMonths,
} from './storage.js';
export type { Certainty, Figure, Reading, Said, SourceId } from './types.js';
export { WAYS, type Way } from './ways.js';
