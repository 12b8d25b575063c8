import type { CellValue, SheetKind } from '../book/index.js';
import type { BatchRow, FactRow, HarvestRow, PlantingRow, SupplyRow } from '../planning/garden/index.js';
import type { Allotment, Draw, FoodRow, Lot } from '../planning/types.js';
import type { DishLine, Meal } from '../planning/week/index.js';
import { readBatch, readFact, readHarvest, readPlanting, readSupply } from './read-garden.js';
import { type Person, type ReadRow, readDraw, readFood, readLot, readPerson } from './read-rows.js';
import { readDishLine, readMeal } from './read-week.js';

export type { ReadRow };

/** What planners read of a row, by the kind of its sheet. */
export interface TypedRow {
  household: Person;
  shelf: Lot;
  draws: Draw;
  foods: FoodRow;
  beds: PlantingRow;
  harvest: HarvestRow;
  batches: BatchRow;
  supplies: SupplyRow;
  facts: FactRow;
  dishes: DishLine;
  week: Meal;
}

type Reader<T> = (id: string, cells: (column: string) => CellValue, allotted: Allotment | null) => ReadRow<T>;

/** How rows of each kind are read, once for all. */
export const READERS: { readonly [K in Exclude<SheetKind, 'own'>]: Reader<TypedRow[K]> } = {
  household: readPerson,
  shelf: readLot,
  draws: readDraw,
  foods: readFood,
  beds: readPlanting,
  harvest: readHarvest,
  batches: readBatch,
  supplies: readSupply,
  facts: readFact,
  dishes: readDishLine,
  week: readMeal,
};
