import { isDay } from './dates.js';
import { defaultGuide, type Guide } from './guide.js';
import { type LineReckoning, reckonLine } from './reckon.js';
import type {
  DrawFigures,
  FoodFigures,
  Household,
  LineInput,
  LinePlan,
  LotFigures,
  Working,
} from './types.js';
import { drawWorking } from './working/draw.js';
import { foodWorking } from './working/food.js';
import { lotWorking } from './working/lot.js';

// Workings are made when asked for, so the line is worked out anew rather than kept with every plan.
function reckoned(
  input: LineInput,
  household: Household,
  guide: Guide,
  weekPlan: number | null,
): LineReckoning | null {
  return isDay(household.asOf) ? reckonLine(input, household, guide, weekPlan) : null;
}

/**
 * The working of a planning figure of a lot: the rule in words, the numbers that went in and where each
 * came from, the steps, the same figure as a formula where one gives it, what would fill a blank, and cautions.
 * `plan` is the line's own, from the same input. Undefined for a row or column that is not there.
 */
export function explainLot(
  input: LineInput,
  household: Household,
  plan: LinePlan,
  lotId: string,
  column: keyof LotFigures,
  guide: Guide = defaultGuide,
  weekPlan: number | null = null,
): Working | undefined {
  const figures = plan.lots.get(lotId)?.figures;
  if (!figures || !Object.hasOwn(figures, column)) return undefined;
  const line = reckoned(input, household, guide, weekPlan);
  const at = line?.lots.get(lotId);
  return line && at ? lotWorking(line, at, column, figures[column]) : undefined;
}

/** The working of a planning figure of a draw. See `explainLot`. */
export function explainDraw(
  input: LineInput,
  household: Household,
  plan: LinePlan,
  drawId: string,
  column: keyof DrawFigures,
  guide: Guide = defaultGuide,
  weekPlan: number | null = null,
): Working | undefined {
  const figures = plan.draws.get(drawId)?.figures;
  const draw = input.draws.find(({ id }) => id === drawId);
  if (!figures || !draw || !Object.hasOwn(figures, column)) return undefined;
  const line = reckoned(input, household, guide, weekPlan);
  return line ? drawWorking(line, draw, column, figures[column]) : undefined;
}

/** The working of a planning figure of the line's Foods row. See `explainLot`. */
export function explainFood(
  input: LineInput,
  household: Household,
  plan: LinePlan,
  column: keyof FoodFigures,
  guide: Guide = defaultGuide,
  weekPlan: number | null = null,
): Working | undefined {
  const figures = plan.food?.figures;
  if (!figures || !input.row || !Object.hasOwn(figures, column)) return undefined;
  const line = reckoned(input, household, guide, weekPlan);
  return line ? foodWorking(line, input.row, column, figures[column]) : undefined;
}
