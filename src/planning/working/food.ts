import { phrase, say } from '../../words/index.js';
import type { LineReckoning } from '../reckon.js';
import { reckonFood } from '../reckon-food.js';
import type { FoodFigures, FoodRow, PlanValue, Working } from '../types.js';
import {
  explainLeft,
  explainNextHarvest,
  explainPace,
  explainPounds,
  explainShortOrOver,
  explainToPutUp,
  type FoodCase,
} from './food-harvest.js';
import { explainOnHand, explainRunsOut, explainUse, explainWeeks } from './food-stock.js';
import { countedUnit, type Explained, perWeek, working } from './parts.js';

/** How one column of Foods is explained. */
interface Column {
  readonly title: string;
  readonly unit: (at: FoodCase) => string;
  readonly explain: (at: FoodCase, value: PlanValue) => Explained;
}

const counted = (at: FoodCase): string => countedUnit(at.line);
const weekly = (at: FoodCase): string => perWeek(at.line);
const weeks = (): string => 'weeks';
const day = (): string => 'day';

const COLUMNS: Readonly<Record<keyof FoodFigures, Column>> = {
  on_hand: { title: phrase('On hand'), unit: counted, explain: ({ line }) => explainOnHand(line) },
  use_low: {
    title: phrase('Use per week, low'),
    unit: weekly,
    explain: ({ line }) => explainUse(line, 'low'),
  },
  use_per_week: {
    title: phrase('Use per week'),
    unit: weekly,
    explain: ({ line }) => explainUse(line, 'usual'),
  },
  use_high: {
    title: phrase('Use per week, high'),
    unit: weekly,
    explain: ({ line }) => explainUse(line, 'high'),
  },
  weeks_low: {
    title: phrase('Weeks of supply, low'),
    unit: weeks,
    explain: ({ line }) => explainWeeks(line, 'low'),
  },
  weeks_of_supply: {
    title: phrase('Weeks of supply'),
    unit: weeks,
    explain: ({ line }) => explainWeeks(line, 'usual'),
  },
  weeks_high: {
    title: phrase('Weeks of supply, high'),
    unit: weeks,
    explain: ({ line }) => explainWeeks(line, 'high'),
  },
  runs_out_on: {
    title: phrase('Runs out on'),
    unit: day,
    explain: ({ line }, value) => explainRunsOut(line, value),
  },
  next_harvest: { title: phrase('Next harvest'), unit: day, explain: explainNextHarvest },
  left_at_harvest: { title: phrase('Left at next harvest'), unit: counted, explain: explainLeft },
  short_or_over: { title: phrase('Short or over'), unit: counted, explain: explainShortOrOver },
  pace: { title: phrase('Pace to use up what is over'), unit: weekly, explain: explainPace },
  to_put_up: { title: phrase('To put up'), unit: counted, explain: explainToPutUp },
  pounds_to_grow: { title: phrase('Pounds to grow'), unit: () => 'pounds', explain: explainPounds },
};

/** Explains one planning figure of a Foods row. */
export function foodWorking(
  line: LineReckoning,
  row: FoodRow,
  column: keyof FoodFigures,
  value: PlanValue,
): Working | undefined {
  if (!Object.hasOwn(COLUMNS, column)) return undefined;
  const { title, unit, explain } = COLUMNS[column];
  const at: FoodCase = { line, row, food: reckonFood(line, row) };
  const shown = column === 'to_put_up' && row.comesFrom === 'bought' ? say`To buy` : title;
  return working(shown, value, unit(at), explain(at, value));
}
