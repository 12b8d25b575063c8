import type { BookState } from '../book/index.js';
import {
  type BatchesPlan,
  type BedsPlan,
  type GardenHousehold,
  type GardenWindows,
  type HarvestPlan,
  type LineToPutUp,
  type OwnFigures,
  ownFigures,
  ownGuide,
  planBatches,
  planBeds,
  planFacts,
  planHarvest,
  planSupplies,
  planWindows,
  poundsWanted,
  publishedOnly,
  type RoomLine,
  roomNow,
  type SuppliesPlan,
  withFreshSeason,
} from '../planning/garden/index.js';
import { defaultGuide, type Guide } from '../planning/guide.js';
import { comingHarvest, seasonOfRow } from '../planning/harvest.js';
import type { FoodRow, Household, RowPlan } from '../planning/types.js';
import type { PlannedLine } from './lines.js';
import { withGarden } from './read-garden.js';
import type { ReadKind, TypedRows } from './typed-rows.js';

/** What the garden's planners answered last. */
export interface GardenPlans {
  readonly household: GardenHousehold;
  readonly figures: OwnFigures;
  readonly guide: Guide;
  readonly windows: GardenWindows;
  readonly beds: BedsPlan;
  readonly harvest: HarvestPlan;
  readonly batches: BatchesPlan;
  readonly supplies: SuppliesPlan;
}

export const GARDEN_KINDS = [
  'beds',
  'harvest',
  'batches',
  'supplies',
  'facts',
] as const satisfies readonly ReadKind[];
export type GardenKind = (typeof GARDEN_KINDS)[number];

/**
 * Plans the garden in two stages: first figures and dates, which food lines need; then, once the lines say
 * what is to be grown and put up, beds, harvest, batches and supplies.
 */
export class GardenStage {
  readonly #state: BookState;
  readonly #rows: TypedRows;
  readonly #foods = new Map<string, { from: FoodRow; full: FoodRow }>();
  #household: GardenHousehold | null = null;
  #figures: OwnFigures = publishedOnly;
  #guide: Guide = defaultGuide;
  #windows: GardenWindows | null = null;
  #plans: GardenPlans | null = null;
  #inputs = '';

  constructor(state: BookState, rows: TypedRows) {
    this.#state = state;
    this.#rows = rows;
  }

  /** Published figures with the household's own and learned ones before them. */
  get guide(): Guide {
    return this.#guide;
  }

  get plans(): GardenPlans | null {
    return this.#plans;
  }

  /**
   * Stage one. Answers whether figures changed (every line is to be planned again) and whether the windows of
   * harvest did (foods may have another season).
   */
  begin(household: Household, changed: ReadonlySet<GardenKind>): { figures: boolean; windows: boolean } {
    const garden = withGarden(household, this.#state);
    const inputs = JSON.stringify(garden);
    const newHousehold = inputs !== this.#inputs;
    this.#inputs = inputs;
    this.#household = garden;
    let figures = false;
    if (changed.has('facts')) {
      const found = ownFigures(this.#rows.inOrder('facts'));
      figures = found.fingerprint !== this.#figures.fingerprint;
      this.#figures = found;
      if (figures) this.#guide = ownGuide(found);
    }
    const windows = this.#windows === null || newHousehold || figures || changed.has('beds');
    if (windows) this.#windows = planWindows(this.#rows.inOrder('beds'), garden, this.#figures);
    return { figures, windows };
  }

  /** A Foods row with its season from Beds where the person wrote none; the same object while nothing changes. */
  completed(row: FoodRow): FoodRow {
    if (!this.#windows) return row;
    const full = withFreshSeason(row, this.#windows);
    const known = this.#foods.get(row.id);
    if (known?.from === row && JSON.stringify(known.full) === JSON.stringify(full)) return known.full;
    this.#foods.set(row.id, { from: row, full });
    return full;
  }

  forgetFood(id: string): void {
    this.#foods.delete(id);
  }

  /** Stage two. Answers each kind's rows as planned. */
  finish(lines: readonly PlannedLine[]): Map<GardenKind, ReadonlyMap<string, RowPlan<object>>> {
    const household = this.#household!;
    const windows = this.#windows!;
    const [figures, guide] = [this.#figures, this.#guide];
    const rows = this.#rows;
    const beds = planBeds({
      plantings: rows.inOrder('beds'),
      pounds: poundsWanted(lines.map(({ plan }) => plan)),
      household,
      figures,
      windows,
    });
    const harvest = planHarvest({
      rows: rows.inOrder('harvest'),
      beds,
      basis: household.basis,
      years: windows.years,
      figures,
      guide,
    });
    const batchRows = rows.inOrder('batches');
    const batches = planBatches({
      rows: batchRows,
      lines: batchRows.length > 0 ? linesToPutUp(lines) : [],
      household,
      room: batchRows.length > 0 ? roomNow(roomLines(lines), figures, guide) : { shelf: 0, freezer: 0 },
      figures,
      guide,
    });
    const supplies = planSupplies(rows.inOrder('supplies'), batches);
    this.#plans = { household, figures, guide, windows, beds, harvest, batches, supplies };
    return new Map<GardenKind, ReadonlyMap<string, RowPlan<object>>>([
      ['beds', beds.rows],
      ['harvest', harvest.rows],
      ['batches', batches.rows],
      ['supplies', supplies.rows],
      ['facts', planFacts(rows.inOrder('facts'), figures)],
    ]);
  }
}

const numberOr = <T>(value: unknown, otherwise: T): number | T =>
  typeof value === 'number' ? value : otherwise;

/** What Foods says of the lines that batches are put up for. */
function linesToPutUp(lines: readonly PlannedLine[]): LineToPutUp[] {
  return lines.flatMap(({ input, plan }) => {
    const { row } = input;
    if (!row || !plan.food) return [];
    return [
      {
        food: input.food,
        way: input.way,
        countedIn: countedIn(input),
        toPutUp: numberOr(plan.food.figures.to_put_up, null),
        crops: row.crops,
      },
    ];
  });
}

const countedIn = ({ row, lots }: PlannedLine['input']): string | null =>
  row?.countedIn ?? lots[0]?.container ?? null;

/** Every food line as the reckoning of room sees it. */
export function roomLines(lines: readonly PlannedLine[], asOf?: number): RoomLine[] {
  return lines.map(({ input, plan }) => {
    const { season } = seasonOfRow(input.row);
    const harvest = asOf === undefined ? null : comingHarvest(season, input.row?.nextSupply ?? null, asOf);
    const figures = plan.food?.figures;
    const over = numberOr(figures?.short_or_over, null);
    return {
      food: input.food,
      way: input.way,
      countedIn: countedIn(input),
      lots: input.lots.map(({ id, container }) => ({
        container,
        left: numberOr(plan.lots.get(id)?.figures.left, 0),
      })),
      use: numberOr(figures?.use_per_week, null),
      season,
      harvest: harvest && { begins: harvest.begins, ends: harvest.ends },
      toPutUp: numberOr(figures?.to_put_up, null),
      over: over !== null && over > 0 ? over : null,
    };
  });
}
