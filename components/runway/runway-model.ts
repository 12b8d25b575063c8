import type { CellValue } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { fromIsoDay } from '../../src/planning/dates.js';
import { makeSeason, type Season } from '../../src/planning/season.js';
import { dayAfterWeeks } from '../../src/planning/supply.js';
import type { DayNumber } from '../../src/planning/types.js';
import { NO_USE, NOT_FROM_SHELF, OVER_TEN_YEARS } from '../../src/planning/words.js';
import { phrase } from '../../src/words/index.js';

/**
 * How a food stands at its next harvest. `even`: neither short nor over. `in harvest`: it is coming in now.
 * `no harvest`: none is known.
 */
export type Standing = 'short' | 'over' | 'even' | 'in harvest' | 'no harvest';

/** Why a food has no bar. */
export type ApartReason = 'no use' | 'not from the shelf' | 'not known';

/** The figures of one Foods row, as its sheet shows them. Amounts are in `unit`. */
export interface FoodLine {
  readonly id: string;
  readonly food: string;
  readonly way: string;
  /** Id of the container or measure that the line is counted in; blank where not known. */
  readonly unit: string;
  readonly bought: boolean;
  readonly onHand: number | null;
  readonly nextHarvest: DayNumber | null;
  readonly left: number | null;
  /** Below 0: short. */
  readonly shortOrOver: number | null;
  readonly toPutUp: number | null;
}

/** A day on which stock runs out; null: in more than ten years. */
export type End = DayNumber | null;

/** A food with its bar, from the as-of date to where it runs out. */
export interface RunwayRow extends FoodLine {
  readonly weeks: number | null;
  readonly weeksLow: number | null;
  readonly weeksHigh: number | null;
  readonly end: End;
  /** Where it would run out if use ran high, and low; absent where the range is not known. */
  readonly range: { readonly low: End; readonly high: End } | null;
  readonly season: Season | null;
  readonly standing: Standing;
}

/** A food without a bar, and why. */
export interface ApartRow extends FoodLine {
  readonly reason: ApartReason;
  /** What would give it a bar, where something would. */
  readonly mend: string;
}

export interface Runway {
  readonly sheet: string;
  readonly asOf: DayNumber;
  readonly rows: readonly RunwayRow[];
  readonly apart: readonly ApartRow[];
}

/** Less than this is nothing: the sheet, too, shows one decimal. */
const CRUMB = 0.05;

/** The bars of a book's Foods sheet, in the sheet's order; null where the book has none. */
export function readRunway(live: LiveBook): Runway | null {
  const sheet = live.sheetOfKind('foods');
  if (sheet === undefined) return null;
  const { asOf } = live.household;
  const rows: RunwayRow[] = [];
  const apart: ApartRow[] = [];
  const seasons = seasonsOf(live);
  for (const id of live.rowIds(sheet)) {
    const read = (column: string): CellValue => live.value(sheet, id, column);
    const line = foodLine(id, read, live.unit(sheet, id, 'on_hand') ?? '');
    if (line.food === '') continue;
    const reason = apartReason(read('weeks_of_supply'), read('runs_out_on'));
    if (reason === null) rows.push(runwayRow(line, read, seasons.get(id) ?? null, asOf));
    else apart.push({ ...line, reason, mend: reason === 'not known' ? mendOf(live, sheet, id) : '' });
  }
  return { sheet, asOf, rows, apart };
}

function foodLine(id: string, read: (column: string) => CellValue, unit: string): FoodLine {
  return {
    id,
    food: text(read('food')),
    way: text(read('way')).toLowerCase(),
    unit,
    bought: text(read('comes_from')).toLowerCase() === 'bought',
    onHand: number(read('on_hand')),
    nextHarvest: day(read('next_harvest')),
    left: number(read('left_at_harvest')),
    shortOrOver: number(read('short_or_over')),
    toPutUp: number(read('to_put_up')),
  };
}

function apartReason(weeks: CellValue, runsOut: CellValue): ApartReason | null {
  if (weeks === NO_USE || runsOut === NO_USE) return phrase('no use');
  if (runsOut === NOT_FROM_SHELF) return phrase('not from the shelf');
  return day(runsOut) === null && runsOut !== OVER_TEN_YEARS ? phrase('not known') : null;
}

const mendOf = (live: LiveBook, sheet: string, row: string): string =>
  live.problem(sheet, row, 'food')?.message ??
  live.problem(sheet, row, 'on_hand')?.message ??
  live.working(sheet, row, 'weeks_of_supply')?.missing ??
  '';

/** Fresh seasons by Foods row: as written there, else as Beds has them. */
const seasonsOf = (live: LiveBook): ReadonlyMap<string, Season | null> =>
  new Map(
    live.foodLines.flatMap(({ input: { row } }) =>
      row ? [[row.id, makeSeason(row.freshFrom, row.freshTo)] as const] : [],
    ),
  );

function runwayRow(
  line: FoodLine,
  read: (column: string) => CellValue,
  season: Season | null,
  asOf: DayNumber,
): RunwayRow {
  const end = day(read('runs_out_on'));
  const weeks = number(read('weeks_of_supply'));
  const [low, high] = [read('weeks_low'), read('weeks_high')];
  return {
    ...line,
    weeks,
    weeksLow: number(low),
    weeksHigh: number(high),
    end,
    range: rangeOf(weeks, end, low, high, season, asOf),
    season,
    standing: standingOf(line, asOf),
  };
}

/**
 * Where the range lies in the calendar: its weeks are of eating from the shelf, so the fresh season is left
 * out. Only where the same reckoning of the usual weeks gives the day that the sheet shows.
 */
function rangeOf(
  weeks: number | null,
  end: End,
  low: CellValue,
  high: CellValue,
  season: Season | null,
  asOf: DayNumber,
): RunwayRow['range'] {
  const after = (given: CellValue): End | undefined =>
    typeof given === 'number'
      ? day(dayAfterWeeks(given, asOf, season))
      : given === NO_USE || given === OVER_TEN_YEARS
        ? null
        : undefined;
  if (weeks !== null && after(weeks) !== end) return null;
  const [first, last] = [after(low), after(high)];
  return first === undefined || last === undefined || first === last ? null : { low: first, high: last };
}

function standingOf({ nextHarvest, shortOrOver }: FoodLine, asOf: DayNumber): Standing {
  if (nextHarvest === null) return 'no harvest';
  if (nextHarvest <= asOf) return 'in harvest';
  if (shortOrOver === null || Math.abs(shortOrOver) < CRUMB) return 'even';
  return shortOrOver < 0 ? 'short' : 'over';
}

const text = (value: CellValue): string => (typeof value === 'string' ? value.trim() : '');
const number = (value: CellValue): number | null => (typeof value === 'number' ? value : null);

function day(value: CellValue): DayNumber | null {
  if (typeof value !== 'string') return null;
  const read = fromIsoDay(value);
  return read.ok ? read.value : null;
}
