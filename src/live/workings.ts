import type { CellAddress } from '../book/index.js';
import { explainDraw, explainFood, explainLot } from '../planning/index.js';
import type { DrawFigures, FoodFigures, LotFigures, Working } from '../planning/types.js';
import type { PlanBook } from './plan-book.js';

/** The working of a planning figure, made when asked for. */
export function workingOf(plan: PlanBook, { sheet, row, column }: CellAddress): Working | undefined {
  const kind = plan.rows.kindOf(sheet);
  const line = plan.lineOf(sheet, row);
  const { household } = plan;
  if (kind === 'household') return personWorking(plan, sheet, row);
  if (!line) return undefined;
  const { input, plan: linePlan } = line;
  switch (kind) {
    case 'shelf':
      return explainLot(input, household, linePlan, row, column as keyof LotFigures);
    case 'draws':
      return explainDraw(input, household, linePlan, row, column as keyof DrawFigures);
    case 'foods':
      return explainFood(input, household, linePlan, column as keyof FoodFigures);
    default:
      return undefined;
  }
}

function personWorking(plan: PlanBook, sheet: string, row: string): Working | undefined {
  const { part_of_table: part = null } = plan.planOf(sheet, row).figures as { part_of_table?: number | null };
  const total = plan.household.shares;
  return {
    title: 'Part of the table',
    value: part,
    unit: '%',
    rule: 'This share at the table, as a percentage of all shares.',
    inputs: [{ name: 'All shares', value: total, unit: 'shares', origin: 'entered' }],
    steps: part === null ? [] : [{ text: `share ÷ ${total} × 100 = ${Math.round(part)} %` }],
    ...(part === null && { missing: 'Write a name and a share.' }),
  };
}
