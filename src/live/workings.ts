import type { CellAddress } from '../book/index.js';
import {
  type BatchFigures,
  type BedFigures,
  explainBatch,
  explainFact,
  explainHarvest,
  explainPlanting,
  explainSupply,
  type FactFigures,
  type HarvestFigures,
  type SupplyFigures,
} from '../planning/garden/index.js';
import { explainDraw, explainFood, explainLot } from '../planning/index.js';
import type { DrawFigures, FoodFigures, LotFigures, Working } from '../planning/types.js';
import { type DishFigures, explainDish, explainMeal, type WeekFigures } from '../planning/week/index.js';
import { n } from '../planning/working/closing.js';
import { say } from '../words/index.js';
import type { GardenKind } from './garden-stage.js';
import type { PlannedKind } from './lines.js';
import type { PlanBook } from './plan-book.js';
import type { WeekKind } from './week-stage.js';

/** The working of a planning figure, made when asked for. */
export function workingOf(plan: PlanBook, { sheet, row, column }: CellAddress): Working | undefined {
  const kind = plan.rows.kindOf(sheet);
  switch (kind) {
    case 'household':
      return personWorking(plan, sheet, row);
    case 'shelf':
    case 'draws':
    case 'foods':
      return lineWorking(plan, kind, row, column);
    case 'dishes':
    case 'week':
      return weekWorking(plan, kind, row, column);
    default:
      return kind && gardenWorking(plan, kind, row, column);
  }
}

function lineWorking(plan: PlanBook, kind: PlannedKind, row: string, column: string): Working | undefined {
  const line = plan.lines.lineOf(kind, row);
  if (!line) return undefined;
  const { input, plan: linePlan, weekPlan } = line;
  const { household } = plan;
  const guide = plan.garden?.guide;
  if (kind === 'shelf')
    return explainLot(input, household, linePlan, row, column as keyof LotFigures, guide, weekPlan);
  if (kind === 'draws')
    return explainDraw(input, household, linePlan, row, column as keyof DrawFigures, guide, weekPlan);
  return explainFood(input, household, linePlan, column as keyof FoodFigures, guide, weekPlan);
}

function weekWorking(plan: PlanBook, kind: WeekKind, row: string, column: string): Working | undefined {
  if (!plan.week) return undefined;
  const { week, dishLines, dishes } = plan.week;
  if (kind === 'week') return explainMeal(week, row, column as keyof WeekFigures);
  const dish = dishes.get(row);
  const lines = plan.plannedLines();
  return (
    dish &&
    explainDish(dishLines, lines, plan.household, dish, row, column as keyof DishFigures, plan.garden?.guide)
  );
}

function gardenWorking(
  { garden, rows }: PlanBook,
  kind: GardenKind,
  row: string,
  column: string,
): Working | undefined {
  if (!garden) return undefined;
  const { beds, harvest, batches, supplies, figures, household } = garden;
  switch (kind) {
    case 'beds':
      return explainPlanting(beds, household, figures, row, column as keyof BedFigures);
    case 'harvest':
      return explainHarvest(harvest, row, column as keyof HarvestFigures);
    case 'batches':
      return explainBatch(batches, household, figures, row, column as keyof BatchFigures);
    case 'supplies':
      return explainSupply(supplies, row, column as keyof SupplyFigures);
    case 'facts': {
      const fact = rows.get('facts', row);
      return fact && explainFact(fact, figures, column as keyof FactFigures);
    }
  }
}

function personWorking(plan: PlanBook, sheet: string, row: string): Working | undefined {
  const { part_of_table: part = null } = plan.planOf(sheet, row).figures as { part_of_table?: number | null };
  const total = plan.household.shares;
  return {
    title: say`Part of the table`,
    value: part,
    unit: '%',
    rule: say`This share at the table, as a percentage of all shares.`,
    inputs: [{ name: say`All shares`, value: total, unit: 'shares', origin: 'entered' }],
    steps:
      part === null
        ? []
        : [{ text: say`${n((part * total) / 100)} shares ÷ ${n(total)} shares × 100 = ${n(part)} %` }],
    changes: [say`another share in this row`, say`more or fewer people at the table`],
    ...(part === null && { missing: say`Write a name and a share.` }),
  };
}
