/**
 * What the planners read and what they answer. Planners know typed rows, never cells, grids or
 * storage. A figure that cannot be computed is `null` (blank); what would fill it is in its working.
 */
import type { Problem } from '../problem.js';

/** Days since 1970-01-01 in the civil calendar: no clock, no time zone. */
export type DayNumber = number;

/** A day of every year, `{ month: 1..12, day: 1..31 }`. 29 February falls on the 28th in common years. */
export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

export const WAYS_KEPT = [
  'canned',
  'frozen',
  'dried',
  'freeze-dried',
  'fermented',
  'cellared',
  'cured',
  'dry goods',
  'rendered',
  'fresh',
] as const;
export type WayKept = (typeof WAYS_KEPT)[number];

/** Which end of a range a plan counts on; lean always gives less food. */
export const BASES = ['lean', 'usual', 'good'] as const;
export type Basis = (typeof BASES)[number];

export const DRAW_PURPOSES = ['dish', 'count', 'gift', 'spoiled', 'other'] as const;
export type DrawPurpose = (typeof DRAW_PURPOSES)[number];

export const COMES_FROM = ['ground', 'animals', 'bought'] as const;
export type ComesFrom = (typeof COMES_FROM)[number];

/** Containers of one food, put up on one day, standing in one place: a row of the Shelf. */
export interface Lot {
  readonly id: string;
  /** Food name in its canonical spelling (`foodKey`), or null where the cell is blank. */
  readonly food: string | null;
  readonly way: WayKept | null;
  /** Container id of `src/units`, or null where blank or unknown. */
  readonly container: string | null;
  readonly count: number | null;
  readonly putUpOn: DayNumber | null;
  readonly place: string;
  /** The household's own best-quality date for this lot. */
  readonly ownBestBy: DayNumber | null;
  /** 'Still counting on it': past or near best-by, yet the household plans to eat it. */
  readonly stillCounting: boolean;
}

/** How much of a draw came from which lot, in that lot's own containers. */
export type Allotment = Readonly<Record<string, number>>;

export interface Draw {
  readonly id: string;
  readonly date: DayNumber | null;
  readonly food: string | null;
  readonly way: WayKept | null;
  /** In `container`; negative only in a correction. */
  readonly amount: number | null;
  /** Container id, or a unit id of `src/units` (a cup, a pound); null = the line's counted-in container. */
  readonly container: string | null;
  readonly purpose: DrawPurpose;
  /** The lot named by the person; null = oldest first. */
  readonly lot: string | null;
  /** Id of the draw that this one corrects. */
  readonly corrects: string | null;
  /** For 'count' draws: the person says that the difference was not use. */
  readonly notUse: boolean;
  /** The allotment stored when the draw was posted, if any. */
  readonly allotted: Allotment | null;
}

/** One crop in a container, as typed in Foods: pounds null = the published figure. */
export interface CropShare {
  readonly crop: string;
  readonly pounds: number | null;
}

/** A row of Foods: the year's plan for one food line. */
export interface FoodRow {
  readonly id: string;
  readonly food: string | null;
  readonly way: WayKept | null;
  /** Container id in which the line is reckoned; null = that of its first lot. */
  readonly countedIn: string | null;
  readonly comesFrom: ComesFrom | null;
  readonly crops: readonly CropShare[];
  /** Own use per week, in counted-in containers. */
  readonly ownUse: number | null;
  /** Fresh use per week in season, in counted-in containers. */
  readonly freshUse: number | null;
  readonly freshFrom: MonthDay | null;
  readonly freshTo: MonthDay | null;
  /** Day on which the next harvest or supply begins, when typed; else it is the next `freshFrom`. */
  readonly nextSupply: DayNumber | null;
  /** Containers wanted on the shelf when the harvest ends. */
  readonly ownTarget: number | null;
  /** Containers to carry past the harvest. */
  readonly carry: number;
  /** Own months of best quality. */
  readonly ownMonths: number | null;
  /** Size of a serving in cups; null = half a cup. */
  readonly servingCups: number | null;
}

/** What a plan needs to know of the household. */
export interface Household {
  readonly asOf: DayNumber;
  /** Sum of the shares at the table; 1 = one grown appetite. */
  readonly shares: number;
  readonly basis: Basis;
  /** Fraction, 0.1 = 10 %. */
  readonly cushion: number;
  readonly measures: 'US customary' | 'metric';
  readonly lastFrost: MonthDay | null;
  readonly firstFrost: MonthDay | null;
  readonly altitudeFt: number | null;
  /** First day on which the household kept a draws ledger: the earliest dated draw of any line. */
  readonly ledgerFrom: DayNumber | null;
}

/** One food line with all that bears on it. */
export interface LineInput {
  readonly food: string;
  readonly way: WayKept;
  readonly row: FoodRow | null;
  readonly lots: readonly Lot[];
  readonly draws: readonly Draw[];
  /** A published amount as use per week, for a household that has no draws yet; counts only where nothing else does. */
  readonly suggested?: SuggestedUse | null;
}

/** Use per week in counted-in containers by a published figure. */
export interface SuggestedUse {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly source: string;
  readonly steps: readonly string[];
}

/** A planned value: a number, words ('no use'), an ISO day, or null for blank. */
export type PlanValue = number | string | null;

/** Planning columns of the Shelf, by column id. */
export interface LotFigures {
  /** Containers left, in the lot's own container; never below 0. */
  readonly left: PlanValue;
  readonly months_kept: PlanValue;
  /** ISO day. A quality date, never a safety date. */
  readonly best_by: PlanValue;
  /** Days from the as-of date to best-by; negative when past. */
  readonly days_left: PlanValue;
  /** What is left holds: quarts, or pounds where the container is reckoned by weight (see `units.holds`). */
  readonly holds: PlanValue;
  readonly servings: PlanValue;
  /** ISO day, or words. */
  readonly eaten_by: PlanValue;
  /** Containers of this lot not eaten by its best-by, in its own container. */
  readonly at_risk: PlanValue;
  /** 1 = the next of its food line to open. Blank when none is left. */
  readonly use_first: PlanValue;
  /** Of the food line; the same on each of its lots. */
  readonly weeks_of_supply: PlanValue;
}

/** Planning columns of Draws, by column id. */
export interface DrawFigures {
  /** The draw in the line's counted-in containers. */
  readonly in_counted: PlanValue;
  /** Words: how much came from which lots. */
  readonly took_from: PlanValue;
  /** The part not found on the shelf, in the draw's own measure; blank when none. */
  readonly not_found: PlanValue;
}

/** Planning columns of Foods, by column id. Amounts are in counted-in containers. */
export interface FoodFigures {
  readonly on_hand: PlanValue;
  readonly use_low: PlanValue;
  readonly use_per_week: PlanValue;
  readonly use_high: PlanValue;
  readonly weeks_low: PlanValue;
  readonly weeks_of_supply: PlanValue;
  readonly weeks_high: PlanValue;
  /** ISO day, or 'no use' / 'more than ten years' / 'not eaten from the shelf'. */
  readonly runs_out_on: PlanValue;
  /** ISO day on which the coming harvest (or supply) begins. */
  readonly next_harvest: PlanValue;
  readonly left_at_harvest: PlanValue;
  /** Over what is to be carried (positive) or short of what will be eaten (negative) when the harvest begins. */
  readonly short_or_over: PlanValue;
  /** Containers a week, on top of usual use. */
  readonly pace: PlanValue;
  /** Whole containers. */
  readonly to_put_up: PlanValue;
  /** Pounds of all the line's crops together. */
  readonly pounds_to_grow: PlanValue;
}

/** Figures of one row, with the unit of a cell where it varies by row, and problems by column. */
export interface RowPlan<F> {
  readonly figures: F;
  readonly units?: Partial<Record<keyof F, string>>;
  readonly problems?: Partial<Record<keyof F, Problem>>;
  /** Problems at kept cells of the row that only planning finds. */
  readonly kept?: Readonly<Record<string, Problem>>;
}

/** All that is planned for one food line. */
export interface LinePlan {
  readonly lots: ReadonlyMap<string, RowPlan<LotFigures>>;
  readonly draws: ReadonlyMap<string, RowPlan<DrawFigures>>;
  /** Null where Foods has no row for the line. */
  readonly food: RowPlan<FoodFigures> | null;
  /** How each draw is allotted to lots, in each lot's own containers. */
  readonly allotments: ReadonlyMap<string, Allotment>;
  /** Pounds of each crop to grow for this line. */
  readonly poundsByCrop: ReadonlyMap<string, number>;
}

/** Where a number of a working came from. */
export type Origin =
  | 'own'
  | 'learned'
  | 'published'
  | 'from memory'
  | 'computed'
  | 'entered'
  | 'common practice, no source';

/** One number that went into a figure. */
export interface WorkingInput {
  readonly name: string;
  readonly value: PlanValue;
  readonly unit: string;
  readonly origin: Origin;
  /** Published source, in words, where there is one. */
  readonly source?: string;
  /** The cell that holds it, where it is in one. */
  readonly from?: { readonly sheet: string; readonly row: string; readonly column: string };
}

/** One step of a working, as `53 pounds ÷ 3 pounds a quart jar = 17⅔ quart jars`. */
export interface WorkingStep {
  readonly text: string;
  /** How far inside another step it stands; 0 unless given. */
  readonly depth?: number;
}

/** The explanation of a figure. Made when asked for, not with every plan. */
export interface Working {
  readonly title: string;
  readonly value: PlanValue;
  readonly unit: string;
  /** The rule in plain words. */
  readonly rule: string;
  readonly inputs: readonly WorkingInput[];
  readonly steps: readonly WorkingStep[];
  /** The same figure as a formula for an own column, where one gives it. */
  readonly formula?: string;
  /** What would fill the figure when it is blank. */
  readonly missing?: string;
  /** What would change the figure: what to write where, in words. */
  readonly changes?: readonly string[];
  /** Units that do not go together. */
  readonly problems?: readonly Problem[];
  /** Food-safety words that belong beside this figure. */
  readonly cautions?: readonly string[];
}
