import type { Command } from '../../book/index.js';
import { rowFeet } from '../../planning/garden/ground.js';
import { isPerennial } from '../../planning/garden/planting-dates.js';
import type { GroundCrop, GroundPlan } from '../../planning/ground/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say, spoken } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

/** How the ground could be shared, and the command that plans the plants so. */
export interface GroundToShare {
  readonly plan: GroundPlan;
  readonly command: Command;
}

/**
 * Shares the household's row feet among the plantings of Beds. Loads the solver only when asked, and only
 * where not everything fits.
 */
export async function groundToShare(live: BookReading): Promise<Result<GroundToShare>> {
  const sheet = live.sheetOfKind('beds');
  const { garden } = live;
  if (!sheet || !garden)
    return refuse('no-garden', say`The book has no Beds.`, say`Open it with this version first.`);
  const feet = garden.household.groundRowFeet;
  if (feet === null || feet <= 0) {
    return refuse(
      'no-ground',
      say`The household does not say how much ground there is.`,
      say`Write the row feet under Household, “Ground”.`,
    );
  }
  const crops = groundCrops(live, sheet);
  const taken = groundTaken(live, new Set(crops.map(({ id }) => id)));
  if (crops.length > 0 && taken >= feet) {
    return refuse(
      'no-ground',
      say`What stands for years, or is grown beyond what Foods asks for, takes ${Math.round(taken)} of ${feet} feet of row already.`,
      say`Write more ground under Household, or fewer plants in Beds.`,
      { sheet },
    );
  }
  if (crops.length === 0) {
    return refuse(
      'nothing-wanted',
      say`No planting of Beds wants ground yet.`,
      say`Name crops in Foods and in Beds, so that plants wanted can be worked out.`,
      { sheet },
    );
  }
  const { shareGround } = await import('../../planning/ground/index.js');
  const plan = await shareGround(crops, { amount: feet - taken, measure: 'feet of row' });
  if (!plan.ok) return plan;
  const cells = plan.value.crops.map(({ id, plants }) => ({ row: id, column: 'plants', typed: plants }));
  return ok({ plan: plan.value, command: { do: 'set cells', sheet, cells } });
}

/** Feet of row that are not to be shared: trees and crowns, and plantings that no food asks for. */
function groundTaken(live: BookReading, sharing: ReadonlySet<string>): number {
  let feet = 0;
  for (const { row, spacing } of live.garden!.beds.reckoned.values()) {
    if (!sharing.has(row.id) && spacing.ok) feet += rowFeet(row.plants ?? 0, spacing.value);
  }
  return feet;
}

function groundCrops(live: BookReading, sheet: string): GroundCrop[] {
  return [...live.garden!.beds.reckoned.values()].flatMap((bed) => {
    const wanted = bed.wanted[bed.basis];
    if (!wanted || !bed.spacing.ok || isPerennial(bed.dates.how)) return [];
    const { row } = bed;
    const [rank, weight] = ['rank', 'weight'].map((column) => live.value(sheet, row.id, column));
    return [
      {
        id: row.id,
        name: row.variety === '' ? spoken(bed.crop) : `${spoken(bed.crop)}, ${row.variety}`,
        wanted,
        groundPerPlant: rowFeet(1, bed.spacing.value),
        servingsPerPlant: null,
        poundsPerPlant: bed.yield.ok ? bed.yield.value[bed.basis] : null,
        rank: typeof rank === 'number' ? rank : null,
        weight: typeof weight === 'number' ? weight : null,
      },
    ];
  });
}
