import type { Problem } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import { addMonths, isDay, monthsBetween, toIsoDay } from '../dates.js';
import { olderFirst } from '../stock.js';
import type { Allotment, DayNumber } from '../types.js';
import { isAmount, tidy } from '../words.js';
import { shortHash } from './post-id.js';
import type { ShelfLine } from './types.js';
import { amountWords } from './words.js';

/** A lot to be counted. */
export interface ToCount {
  readonly lot: string;
  /** Compared form of the food; the screen knows how it is written. */
  readonly food: string;
  readonly way: string;
  readonly container: string;
  readonly putUp: number;
  readonly putUpOn: DayNumber | null;
  readonly bestBy: string | null;
  /** What should be there. */
  readonly left: number;
}

export interface PlaceToCount {
  readonly place: string;
  readonly lots: readonly ToCount[];
}

/** A food that nothing was drawn from, put up or counted of for so long that it is asked for. */
export interface NotSeen {
  readonly food: string;
  readonly way: string;
  readonly months: number;
  readonly lastSeen: DayNumber;
  readonly lots: readonly string[];
}

/** Lots that should have something left, one place after the other, oldest first within a food. */
export function placesToCount(lines: Iterable<ShelfLine>): PlaceToCount[] {
  const places = new Map<string, { item: ToCount; id: string; putUpOn: DayNumber | null }[]>();
  for (const { input, plan } of lines) {
    for (const lot of input.lots) {
      const figures = plan.lots.get(lot.id)?.figures;
      const left = figures?.left;
      if (typeof left !== 'number' || left <= 0 || lot.container === null) continue;
      const place = lot.place.trim();
      const at = places.get(place) ?? [];
      places.set(place, at);
      at.push({
        id: lot.id,
        putUpOn: lot.putUpOn,
        item: {
          lot: lot.id,
          food: input.food,
          way: input.way,
          container: lot.container,
          putUp: lot.count ?? left,
          putUpOn: lot.putUpOn,
          bestBy: typeof figures?.best_by === 'string' ? figures.best_by : null,
          left,
        },
      });
    }
  }
  const byFood = (a: ToCount, b: ToCount) => a.food.localeCompare(b.food) || a.way.localeCompare(b.way);
  return [...places]
    .sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b)))
    .map(([place, lots]) => ({
      place,
      lots: lots
        .sort((a, b) => byFood(a.item, b.item) || olderFirst({ ...a, bestBy: null }, { ...b, bestBy: null }))
        .map(({ item }) => item),
    }));
}

/** Food lines with stock that nothing was put up, drawn or counted of for `months` (6 unless told). */
export function notSeen(lines: Iterable<ShelfLine>, asOf: DayNumber, months = 6): NotSeen[] {
  const found: NotSeen[] = [];
  const since = addMonths(asOf, -months);
  if (since === null) return found;
  for (const { input, plan } of lines) {
    const lots = input.lots.filter(({ id }) => Number(plan.lots.get(id)?.figures.left ?? 0) > 0);
    const days = [...lots.map(({ putUpOn }) => putUpOn), ...input.draws.map(({ date }) => date)];
    const last = days
      .filter((day) => isDay(day) && day <= asOf)
      .reduce<number>((a, b) => Math.max(a, b!), -1e9);
    // With no day known at all nothing can be said of when it was seen.
    if (lots.length === 0 || !isDay(last) || last > since) continue;
    found.push({
      food: input.food,
      way: input.way,
      months: monthsBetween(last, asOf) ?? months,
      lastSeen: last,
      lots: lots.map(({ id }) => id),
    });
  }
  return found.sort((a, b) => a.lastSeen - b.lastSeen || a.food.localeCompare(b.food));
}

/** A row to insert into Draws. */
export interface CountDraw {
  readonly id: string;
  readonly cells: {
    readonly date: string;
    readonly food: string;
    readonly way: string;
    readonly amount: number;
    readonly container: string;
    readonly purpose: 'count';
    readonly lot: string;
  };
  /** Empty for a count that found more: it gives back what earlier draws of the lot took. */
  readonly allotted: Allotment;
}

/** What the counting changes at one lot. */
export interface CountChange {
  readonly lot: string;
  readonly food: string;
  readonly way: string;
  readonly was: number;
  readonly now: number;
  /** '2 quart jars fewer than written', '½ pint jar more than written'. */
  readonly words: string;
}

export interface Counted {
  readonly draws: readonly CountDraw[];
  readonly changes: readonly CountChange[];
  /** By lot id. */
  readonly problems: Readonly<Record<string, Problem>>;
  /** '24 lots counted, 3 differ.' */
  readonly said: string;
}

/**
 * Turns counted numbers (by lot, in its own containers) into 'count' draws of the differences, dated `asOf`.
 * `mark` is an id of this counting, so that posting it twice is posting it once. A lot counted as written makes
 * no draw; more than were put up is refused, for the number put up is then wrong.
 */
export function countShelf(
  lines: Iterable<ShelfLine>,
  counted: ReadonlyMap<string, number>,
  asOf: DayNumber,
  mark: string,
): Counted {
  const draws: CountDraw[] = [];
  const changes: CountChange[] = [];
  const problems: Record<string, Problem> = {};
  let lots = 0;
  for (const { input, plan } of lines) {
    for (const lot of input.lots) {
      const now = counted.get(lot.id);
      const was = plan.lots.get(lot.id)?.figures.left;
      if (now === undefined || typeof was !== 'number' || lot.container === null) continue;
      lots += 1;
      if (!isAmount(now)) {
        problems[lot.id] = BAD_COUNT;
        continue;
      }
      if (now > (lot.count ?? 0) * (1 + 1e-9)) {
        problems[lot.id] = moreThanPutUp(now, lot.count ?? 0, lot.container);
        continue;
      }
      const gone = tidy(was - now);
      if (Math.abs(gone) <= 1e-9 * Math.max(1, was)) continue;
      draws.push({
        id: `k-${shortHash(mark)}-${shortHash(lot.id)}`,
        cells: {
          date: toIsoDay(asOf),
          food: input.food,
          way: input.way,
          amount: gone,
          container: lot.container,
          purpose: 'count',
          lot: lot.id,
        },
        allotted: gone > 0 ? { [lot.id]: gone } : {},
      });
      const words =
        gone > 0
          ? say`${amountWords(gone, lot.container)} fewer than written`
          : say`${amountWords(-gone, lot.container)} more than written`;
      changes.push({ lot: lot.id, food: input.food, way: input.way, was, now, words });
    }
  }
  const differ =
    changes.length === 0
      ? say`all as written`
      : changes.length === 1
        ? say`1 differs`
        : say`${changes.length} differ`;
  return { draws, changes, problems, said: say`${lots} ${lots === 1 ? 'lot' : 'lots'} counted, ${differ}.` };
}

const BAD_COUNT: Problem = {
  code: 'bad-amount',
  message: phrase('The number counted is not a number from 0 up.'),
  mend: phrase('Write how many stand there, as in 12, or leave it blank if you did not look.'),
};

const moreThanPutUp = (now: number, count: number, container: string): Problem => ({
  code: 'more-than-put-up',
  message: say`${amountWords(now, container)} counted, but only ${amountWords(count, container)} were put up in this lot.`,
  mend: say`Change the number put up on the Shelf, or write what is more as a lot of its own.`,
});
