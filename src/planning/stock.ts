import type { DayNumber } from './types.js';

/** A lot as the allotment sees it. `count` is a usable amount. */
export interface StockLot {
  readonly id: string;
  readonly container: string;
  readonly count: number;
  readonly putUpOn: DayNumber | null;
  readonly bestBy: DayNumber | null;
}

const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const datesFirst = (a: DayNumber | null, b: DayNumber | null): number =>
  a === b ? 0 : a === null ? 1 : b === null ? -1 : a - b;

/** Oldest first, but for opened containers: by best-by, then put up on, then id; undated last. */
export function olderFirst(
  a: Pick<StockLot, 'id' | 'bestBy' | 'putUpOn'>,
  b: Pick<StockLot, 'id' | 'bestBy' | 'putUpOn'>,
): number {
  return datesFirst(a.bestBy, b.bestBy) || datesFirst(a.putUpOn, b.putUpOn) || byId(a.id, b.id);
}

/** Amounts nearer than this to a whole number are that whole number: crumbs of binary arithmetic. */
const CRUMB = 1e-9;

/** `n` with its crumbs swept up. */
export function swept(n: number): number {
  const whole = Math.round(n);
  return Math.abs(n - whole) <= CRUMB * Math.max(1, Math.abs(whole)) ? whole + 0 : n;
}

/** True where a container stands opened: what is left is not a whole number of them. */
export const isOpened = (left: number): boolean => !Number.isInteger(swept(left));

/** Least number first. Numbers may stand in it more than once. */
class Heap {
  readonly #at: number[] = [];

  get top(): number | undefined {
    return this.#at[0];
  }

  push(n: number): void {
    const at = this.#at;
    let i = at.push(n) - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (at[up]! <= n) break;
      at[i] = at[up]!;
      i = up;
    }
    at[i] = n;
  }

  pop(): void {
    const at = this.#at;
    const n = at.pop();
    if (n === undefined || at.length === 0) return;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= at.length) break;
      if (down + 1 < at.length && at[down + 1]! < at[down]!) down += 1;
      if (at[down]! >= n) break;
      at[i] = at[down]!;
      i = down;
    }
    at[i] = n;
  }
}

/** Lots of one container: those that stand opened and the others, each oldest first. */
interface Group {
  readonly container: string;
  readonly open: Heap;
  readonly whole: Heap;
}

/**
 * What stands on the shelf while draws are allotted. Lots are known by their rank, oldest first.
 * Finding the next lot costs log n: a lot is filed again whenever it is opened, used up or given back,
 * and what was filed under an older state is passed over.
 */
export class Stock {
  readonly lots: readonly StockLot[];
  readonly left: number[];
  readonly rankOf: ReadonlyMap<string, number>;
  /** Promised to posted draws that are still to come. */
  readonly #reserved: number[];
  readonly #groupOf: Group[];
  readonly #here: boolean[];
  #groups: Group[] = [];

  constructor(lots: readonly StockLot[]) {
    this.lots = [...lots].sort(olderFirst);
    this.left = this.lots.map((lot) => lot.count);
    this.rankOf = new Map(this.lots.map((lot, rank) => [lot.id, rank]));
    this.#here = this.lots.map(() => false);
    this.#reserved = this.lots.map(() => 0);
    this.#groupOf = [];
    this.clear();
  }

  /** Takes every lot off the shelf; what is left in each stays as it is. */
  clear(): void {
    const groups = new Map<string, Group>();
    this.lots.forEach((lot, rank) => {
      let group = groups.get(lot.container);
      if (!group) {
        group = { container: lot.container, open: new Heap(), whole: new Heap() };
        groups.set(lot.container, group);
      }
      this.#groupOf[rank] = group;
      this.#here[rank] = false;
    });
    this.#groups = [...groups.values()];
  }

  /** Puts a lot on the shelf, so that draws can take from it. */
  arrive(rank: number): void {
    this.#here[rank] = true;
    this.#file(rank);
  }

  isHere(rank: number): boolean {
    return this.#here[rank] === true;
  }

  /** Promises (or, when negative, frees again) an amount of a lot for a posted draw. */
  reserve(rank: number, amount: number): void {
    const rest = this.#reserved[rank]! + amount;
    this.#reserved[rank] = rest <= CRUMB ? 0 : rest;
    this.#file(rank);
  }

  /** What is left of a lot and not promised. */
  free(rank: number): number {
    const left = this.left[rank]!;
    const free = swept(left - this.#reserved[rank]!);
    // As much as sweeping takes for nothing beside what is left: taking it would leave as much as before, for ever.
    return free <= CRUMB * Math.max(1, left) ? 0 : free;
  }

  /** Takes from a lot (or gives back, when negative); never below 0 or above what was put up. */
  take(rank: number, amount: number): void {
    const most = this.lots[rank]!.count;
    const rest = this.left[rank]! - amount;
    const clean = rest <= CRUMB * Math.max(1, most) ? 0 : swept(rest);
    this.left[rank] = Math.min(most, clean);
    this.#file(rank);
  }

  /** The next lot with something free, of the containers that `meets` accepts: opened first, then oldest; or -1. */
  next(meets: (container: string) => boolean): number {
    let opened = -1;
    let whole = -1;
    for (const group of this.#groups) {
      if (!meets(group.container)) continue;
      const o = this.#top(group.open, true);
      if (o >= 0 && (opened < 0 || o < opened)) opened = o;
      const w = this.#top(group.whole, false);
      if (w >= 0 && (whole < 0 || w < whole)) whole = w;
    }
    return opened >= 0 ? opened : whole;
  }

  #file(rank: number): void {
    const left = this.free(rank);
    if (left <= 0 || !this.#here[rank]) return;
    const group = this.#groupOf[rank]!;
    (isOpened(left) ? group.open : group.whole).push(rank);
  }

  #top(heap: Heap, opened: boolean): number {
    for (;;) {
      const rank = heap.top;
      if (rank === undefined) return -1;
      const left = this.free(rank);
      if (this.#here[rank] && left > 0 && isOpened(left) === opened) return rank;
      heap.pop();
    }
  }
}
