export { type AllotResult, allot, type Taken } from './allot.js';
export { bestBy, type QualityMonths, qualityMonths } from './best-by.js';
export {
  addMonths,
  civilToDay,
  dayToCivil,
  FIRST_DAY,
  FIRST_YEAR,
  fromIsoDay,
  type IsoDay,
  isDay,
  LAST_DAY,
  LAST_YEAR,
  makeDay,
  monthsBetween,
  toIsoDay,
} from './dates.js';
export { gammaQuantile } from './gamma.js';
export { atBasis, defaultGuide, emptyGuide, type Guide, type GuideFigure, type LeanEnd } from './guide.js';
export { comingHarvest, type Harvest, seasonOfRow } from './harvest.js';
export { type HouseholdSettings, ledgerFrom, makeHousehold } from './household.js';
export { planLine } from './line.js';
export { formatMonthDay, parseDay, parseMonthDay } from './parse-date.js';
export { type Eaten, eatInOrder, eatingOrder, isPast, type QueueLot } from './queue.js';
export {
  allYear,
  daysOutside,
  dayWhenOutside,
  inSeason,
  makeSeason,
  nextMonthDay,
  type Season,
  type SeasonSpan,
  seasonAt,
  seasonOf,
  weeksOutside,
} from './season.js';
export {
  leftAndShort,
  leftAt,
  monthsKept,
  paceToUseUp,
  runsOutOn,
  toPutUp,
  toReachTarget,
  weeksOfSupply,
} from './supply.js';
export type * from './types.js';
export { BASES, COMES_FROM, DRAW_PURPOSES, WAYS_KEPT } from './types.js';
export { type LearnedUse, learnFrom, usePerWeek, useRange } from './use.js';
export {
  NO_USE,
  NOT_BY_BEST_BY,
  NOT_FROM_SHELF,
  OVER_TEN_YEARS,
  PAST_BEST,
  STILL_TO_PUT_UP,
} from './words.js';
export { explainDraw, explainFood, explainLot } from './working.js';
