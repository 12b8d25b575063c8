import { fromIsoDay } from '../dates.js';
import type { Guide } from '../guide.js';
import { type Measures, measuresOf } from '../measure.js';
import { isOpened, olderFirst, swept } from '../stock.js';
import type { DayNumber, LinePlan, WayKept } from '../types.js';
import type { ShelfLine } from './types.js';

const CRUMB = 1e-9;

/** A lot with something left, as the week sees it. */
export interface WeekLot {
  readonly id: string;
  /** Compared form of the food's name. */
  readonly food: string;
  readonly way: WayKept;
  readonly container: string;
  /** On the shelf before any planned meal. */
  readonly left: number;
  readonly putUpOn: DayNumber | null;
  readonly bestBy: DayNumber | null;
  readonly place: string;
  /** Past best quality and not still counted on. */
  readonly past: boolean;
  /** Own containers that will not be eaten by best-by at the usual use. */
  readonly atRisk: number;
}

/** What was taken from one lot, in its own containers, and how much of what was asked that is. */
export interface Piece {
  readonly lot: WeekLot;
  readonly amount: number;
  /** In the measure asked for. */
  readonly covers: number;
  readonly before: number;
  readonly after: number;
}

export interface TakenFromShelf {
  readonly pieces: readonly Piece[];
  /** Not there, in the measure asked for; 0 when all was. */
  readonly short: number;
}

const known = new WeakMap<LinePlan, { readonly asOf: DayNumber; readonly lots: readonly WeekLot[] }>();

/** Lots with something left, of every food line that has some. A line planned before is not read again. */
export function lotsOf(lines: Iterable<ShelfLine>, asOf: DayNumber): WeekLot[] {
  const found: WeekLot[] = [];
  for (const line of lines) {
    let of = known.get(line.plan);
    if (of?.asOf !== asOf) {
      of = { asOf, lots: lotsOfLine(line, asOf) };
      known.set(line.plan, of);
    }
    found.push(...of.lots);
  }
  return found;
}

function lotsOfLine({ input, plan }: ShelfLine, asOf: DayNumber): WeekLot[] {
  const found: WeekLot[] = [];
  for (const lot of input.lots) {
    const figures = plan.lots.get(lot.id)?.figures;
    const left = figures?.left;
    if (typeof left !== 'number' || left <= CRUMB || lot.container === null) continue;
    const iso = typeof figures?.best_by === 'string' ? fromIsoDay(figures.best_by) : null;
    const bestBy = iso?.ok ? iso.value : null;
    found.push({
      id: lot.id,
      food: input.food,
      way: input.way,
      container: lot.container,
      left: swept(left),
      putUpOn: lot.putUpOn,
      bestBy,
      place: lot.place.trim(),
      past: bestBy !== null && bestBy < asOf && !lot.stillCounting,
      atRisk: typeof figures?.at_risk === 'number' ? figures.at_risk : 0,
    });
  }
  return found;
}

/**
 * A copy of the stock that planned meals draw on, in their order: opened containers first, then oldest, as
 * posted draws will. The shelf itself is never changed.
 */
export class ShelfCopy {
  readonly #lotsOf = new Map<string, WeekLot[]>();
  readonly #left = new Map<string, number>();
  readonly #opened = new Set<WeekLot>();
  readonly #measures = new Map<string, Measures>();

  constructor(
    readonly lots: readonly WeekLot[],
    readonly guide: Guide,
  ) {
    for (const lot of lots) {
      const ofFood = this.#lotsOf.get(lot.food);
      if (ofFood) ofFood.push(lot);
      else this.#lotsOf.set(lot.food, [lot]);
      this.#set(lot, lot.left);
    }
    for (const ofFood of this.#lotsOf.values()) ofFood.sort(olderFirst);
  }

  /** Measures of a food, with what is known of its weight. */
  measures(food: string): Measures {
    let known = this.#measures.get(food);
    if (!known) {
      known = measuresOf(this.guide.bridges(food));
      this.#measures.set(food, known);
    }
    return known;
  }

  left(lot: string): number {
    return this.#left.get(lot) ?? 0;
  }

  /** Lots of a food, oldest first; of one way where `way` says. */
  of(food: string, way: WayKept | null = null): readonly WeekLot[] {
    const all = this.#lotsOf.get(food) ?? [];
    return way === null ? all : all.filter((lot) => lot.way === way);
  }

  /** Everything that now stands opened, what was opened first foremost. */
  opened(): readonly WeekLot[] {
    return [...this.#opened];
  }

  #set(lot: WeekLot, left: number): void {
    this.#left.set(lot.id, left);
    if (isOpened(left)) this.#opened.add(lot);
    else this.#opened.delete(lot);
  }

  /**
   * Takes `amount` (in `measure`) of a food: opened first, then oldest, of one way or (null) of whichever. Lots
   * put up after `day`, and lots whose container does not meet the measure, are passed over.
   */
  take(
    food: string,
    way: WayKept | null,
    amount: number,
    measure: string,
    day: DayNumber | null,
  ): TakenFromShelf {
    const pieces: Piece[] = [];
    const measures = this.measures(food);
    const usable = this.of(food, way).filter(
      (lot) =>
        this.left(lot.id) > 0 &&
        !(day !== null && lot.putUpOn !== null && lot.putUpOn > day) &&
        measures.factorOrNull(measure, lot.container) !== null,
    );
    let need = amount;
    while (need > 0) {
      const has = (lot: WeekLot) => this.left(lot.id) > 0;
      const lot = usable.find((each) => this.#opened.has(each)) ?? usable.find(has);
      if (!lot) break;
      const factor = measures.factorOrNull(measure, lot.container)!;
      const before = this.left(lot.id);
      const own = need * factor;
      // What is all but the whole of a lot is the whole of it.
      const take = own >= before - CRUMB * Math.max(1, before) ? before : own;
      const rest = swept(before - take);
      const after = rest <= CRUMB ? 0 : rest;
      const covers = Math.min(need, take / factor);
      // An amount too small to be told from nothing is not found.
      if (covers <= 0) break;
      this.#set(lot, after);
      pieces.push({ lot, amount: take, covers, before, after });
      need -= covers;
      if (need <= CRUMB * amount) need = 0;
    }
    return { pieces, short: need };
  }
}
