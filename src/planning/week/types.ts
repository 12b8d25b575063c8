/** What the planners of Dishes and Week read and answer. Foods and dishes are known by their compared form. */
import { phrase } from '../../words/index.js';
import type { DayNumber, LineInput, LinePlan, PlanValue, WayKept } from '../types.js';

/** The meals that a day has without being told; a household may write others. */
export const MEALS = [phrase('breakfast'), phrase('midday'), phrase('snack'), phrase('supper')] as const;

/** Where a line of a dish comes from; blank is found out: a dish of the book, else the shelf. */
export const LINE_SOURCES = ['shelf', 'bought', 'dish'] as const;
export type LineSource = (typeof LINE_SOURCES)[number];

/** A step to take so many days before the meal; 0 on its day. */
export interface PrepStep {
  readonly text: string;
  readonly leadDays: number;
}

/** A row of Dishes: one line of a dish. What belongs to the dish counts from the first of its rows that says it. */
export interface DishLine {
  readonly id: string;
  /** Compared form of the dish's name; null where blank. */
  readonly dish: string | null;
  /** As written. */
  readonly dishName: string;
  /** Shares at the table that the amounts are for. More than 0. */
  readonly serves: number | null;
  /** Compared form of a food's name, or of another dish's. */
  readonly food: string | null;
  readonly foodName: string;
  /** Null = whichever way it is kept, oldest first. */
  readonly way: WayKept | null;
  /** In `measure`; of another dish, in shares of it (null = as many as this dish serves). */
  readonly amount: number | null;
  /** Id of a container or unit; null = what the food is counted in. */
  readonly measure: string | null;
  readonly from: LineSource | null;
  readonly prep: readonly PrepStep[];
  /** Meals that the dish suits, in lower case; empty = any. */
  readonly suits: readonly string[];
  /** Ticked: fit for a busy day. */
  readonly quick: boolean;
  readonly note: string;
}

/** A row of Week: one meal. */
export interface Meal {
  readonly id: string;
  readonly date: DayNumber | null;
  /** In lower case; '' where blank. */
  readonly meal: string;
  /** Compared form of the dish's name; null = an open meal. */
  readonly dish: string | null;
  readonly dishName: string;
  /** Shares at the table; null = the whole table. */
  readonly shares: number | null;
  /** What the amounts are multiplied by: 1.5 = half as much again; null = 1. */
  readonly times: number | null;
  readonly busy: boolean;
  readonly done: boolean;
  readonly skipped: boolean;
}

/** A food line of the shelf with its plan, as the book keeps it. */
export interface ShelfLine {
  readonly input: LineInput;
  readonly plan: LinePlan;
}

/** Planning columns of Dishes, by column id. */
export interface DishFigures {
  /** In the line's measure. */
  readonly on_hand: PlanValue;
  /** How many times the line can be cooked for the whole table. */
  readonly enough_for: PlanValue;
  /** On the dish's first row: whole times the dish can be cooked for the whole table from the shelf alone. */
  readonly makes: PlanValue;
  /** On the dish's first row: words, what one cooking for the whole table takes from the shelf. */
  readonly costs_shelf: PlanValue;
}

/** Planning columns of Week, by column id. All are words. */
export interface WeekFigures {
  readonly needs: PlanValue;
  /** 'in stock', 'short: …', 'marked done', 'skipped', 'no dish yet'. */
  readonly stock: PlanValue;
  /** The oldest lot that the meal would use. */
  readonly oldest_lot: PlanValue;
  /** Lots, or foods, of which it takes the last. */
  readonly uses_up: PlanValue;
  /** What stands opened after it, until a later meal uses it. */
  readonly open_after: PlanValue;
}
