import type { Problem } from '../problem.js';
import { phrase } from '../words/index.js';
import { isDay } from './dates.js';
import { defaultGuide, type Guide } from './guide.js';
import { reckonLine } from './reckon.js';
import { reckonFood } from './reckon-food.js';
import { drawRow } from './rows/draw-row.js';
import { foodRow } from './rows/food-row.js';
import { lotRow } from './rows/lot-row.js';
import type {
  Allotment,
  DrawFigures,
  FoodFigures,
  Household,
  LineInput,
  LinePlan,
  LotFigures,
  RowPlan,
} from './types.js';

/**
 * Plans one food line: the planning columns of its lots, its draws and its Foods row, as of
 * `household.asOf`. Pure and without state: the same input gives the same plan. `weekPlan` is the Week plan's
 * average use per week in counted-in containers, used where there is neither an own nor a learned figure.
 * What cannot be computed is blank, or blank with a problem at its column.
 */
export function planLine(
  input: LineInput,
  household: Household,
  guide: Guide = defaultGuide,
  weekPlan: number | null = null,
): LinePlan {
  if (!isDay(household.asOf)) return blankPlan(input);
  const line = reckonLine(input, household, guide, weekPlan);
  const food = input.row ? reckonFood(line, input.row) : null;
  const lots = new Map<string, RowPlan<LotFigures>>();
  const rank = new Map(line.order.map((lot, at) => [lot.id, at + 1]));
  for (const lot of line.lots.values()) lots.set(lot.lot.id, lotRow(line, lot, rank.get(lot.lot.id) ?? null));
  const draws = new Map<string, RowPlan<DrawFigures>>();
  const allotments = new Map<string, Allotment>();
  for (const draw of input.draws) {
    const taken = line.allotted.taken.get(draw.id);
    draws.set(draw.id, drawRow(line, draw, taken ?? null));
    if (taken?.counts) allotments.set(draw.id, taken.allotted);
  }
  return {
    lots,
    draws,
    food: food ? foodRow(line, food) : null,
    allotments,
    poundsByCrop: food?.poundsByCrop ?? new Map(),
  };
}

const NO_AS_OF: Problem = {
  code: 'not-a-date',
  message: phrase('The as-of date is not a date.'),
  mend: phrase('Give the household an as-of date, or leave it blank for today.'),
};

function blankPlan(input: LineInput): LinePlan {
  const lot: RowPlan<LotFigures> = {
    figures: {
      left: null,
      months_kept: null,
      best_by: null,
      days_left: null,
      holds: null,
      servings: null,
      eaten_by: null,
      at_risk: null,
      use_first: null,
      weeks_of_supply: null,
    },
    problems: { left: NO_AS_OF },
  };
  const draw: RowPlan<DrawFigures> = {
    figures: { in_counted: null, took_from: null, not_found: null },
    problems: { took_from: NO_AS_OF },
  };
  const food: RowPlan<FoodFigures> = {
    figures: {
      on_hand: null,
      use_low: null,
      use_per_week: null,
      use_high: null,
      weeks_low: null,
      weeks_of_supply: null,
      weeks_high: null,
      runs_out_on: null,
      next_harvest: null,
      left_at_harvest: null,
      short_or_over: null,
      pace: null,
      to_put_up: null,
      pounds_to_grow: null,
    },
    problems: { on_hand: NO_AS_OF },
  };
  return {
    lots: new Map(input.lots.map(({ id }) => [id, lot])),
    draws: new Map(input.draws.map(({ id }) => [id, draw])),
    food: input.row ? food : null,
    allotments: new Map(),
    poundsByCrop: new Map(),
  };
}
