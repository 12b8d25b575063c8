import { addMonths, civilToDay, dayToCivil, fromIsoDay } from '../../src/planning/dates.js';
import { comingSeason, frostYears } from '../../src/planning/garden/frost.js';
import type { DayNumber, Household } from '../../src/planning/types.js';
import { phrase } from '../../src/words/index.js';
import { mondayOf } from '../pictures/time-axis.js';

/** One planting as it is given: days as `YYYY-MM-DD`, null where not known. */
export interface Planting {
  readonly crop: string;
  readonly variety: string;
  /** Planned day of sowing, indoors where it is set out later. */
  readonly startOn: string | null;
  readonly setOutOn: string | null;
  /** The day on which it was sown or planted; goes before `startOn`. */
  readonly sownOn: string | null;
  readonly harvestFrom: string | null;
  readonly harvestTo: string | null;
  readonly putUpFrom?: string | null;
  readonly putUpTo?: string | null;
  /** How it is started (`indoors`, `direct`, `set`…), where that is known. */
  readonly how?: string | null;
  /** Its row in a sheet of the book. */
  readonly cell?: { readonly sheet: string; readonly row: string } | null;
}

export type Beginning = 'start indoors' | 'sow under cover' | 'sow' | 'plant';

/** Days, both included. */
export interface Span {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/** A planting laid out in days. */
export interface SeasonRow {
  readonly key: string;
  readonly crop: string;
  readonly variety: string;
  readonly cell: Planting['cell'];
  readonly what: Beginning;
  readonly begin: DayNumber | null;
  /** True where the beginning is on record, not planned. */
  readonly done: boolean;
  readonly setOut: DayNumber | null;
  readonly harvest: Span | null;
  readonly putUp: Span | null;
}

/** The last spring frost or the first fall frost of one year. */
export interface FrostDay {
  readonly kind: 'last' | 'first';
  readonly day: DayNumber;
}

const dayOf = (iso: string | null | undefined): DayNumber | null => {
  const read = iso ? fromIsoDay(iso) : null;
  return read?.ok ? read.value : null;
};

/** Two days as a span; one day where the other is missing; null where they are the wrong way round. */
function spanOf(from: string | null | undefined, to: string | null | undefined): Span | null {
  const [first, last] = [dayOf(from), dayOf(to)];
  const [a, b] = [first ?? last, last ?? first];
  return a === null || b === null || b < a ? null : { from: a, to: b };
}

function beginningOf({ how }: Planting, setOut: DayNumber | null): Beginning {
  if (how === 'winter-sown') return phrase('sow under cover');
  if (how === 'set' || how === 'crown' || how === 'tree') return 'plant';
  return setOut === null ? phrase('sow') : phrase('start indoors');
}

/** Plantings as rows, in the order given. One without a crop is left out. */
export const seasonRows = (plantings: readonly Planting[]): SeasonRow[] =>
  plantings.flatMap((planting, i) => {
    const { crop, variety, cell = null } = planting;
    if (crop.trim() === '') return [];
    const setOut = dayOf(planting.setOutOn);
    const sown = dayOf(planting.sownOn);
    return [
      {
        key: cell ? `${cell.sheet}/${cell.row}` : `given ${i}`,
        crop: crop.trim(),
        variety: variety.trim(),
        cell,
        what: beginningOf(planting, setOut),
        begin: sown ?? dayOf(planting.startOn),
        done: sown !== null,
        setOut,
        harvest: spanOf(planting.harvestFrom, planting.harvestTo),
        putUp: spanOf(planting.putUpFrom, planting.putUpTo),
      },
    ];
  });

/** First and last day that a row has; null where it has none. */
export function reach({ begin, setOut, harvest, putUp }: SeasonRow): Span | null {
  const days = [begin, setOut, harvest?.from, harvest?.to, putUp?.from, putUp?.to].filter(
    (day): day is DayNumber => day !== null && day !== undefined,
  );
  return days.length === 0 ? null : { from: Math.min(...days), to: Math.max(...days) };
}

export type SeasonOrder = 'start' | 'harvest' | 'name';

const LAST = Number.POSITIVE_INFINITY;

/** Rows in an order; those without a day last, equals by crop and variety. */
export function inOrder(rows: readonly SeasonRow[], order: SeasonOrder): SeasonRow[] {
  const day = (row: SeasonRow): number =>
    order === 'name' ? 0 : ((order === 'harvest' ? row.harvest?.from : reach(row)?.from) ?? LAST);
  const at = (a: number, b: number): number => (a === b ? 0 : a - b);
  return [...rows].sort(
    (a, b) =>
      at(day(a), day(b)) || a.crop.localeCompare(b.crop, 'en') || a.variety.localeCompare(b.variety, 'en'),
  );
}

/** Months shown at least, and at most. */
const [YEAR, MOST] = [12, 18];

const monthOf = (day: DayNumber): DayNumber => {
  const { year, month } = dayToCivil(day);
  return civilToDay(year, month, 1);
};

/**
 * The days that the picture spans: the calendar year of the season that is planned, from the as-of month where
 * that comes before it; in the south, a year from the as-of month on. Longer, to a year and a half, where a
 * harvest is.
 */
export function seasonSpan(rows: readonly SeasonRow[], household: Household): Span {
  const { asOf } = household;
  const years = frostYears(household);
  const now = monthOf(asOf);
  let from = now;
  if (!years.ok) from = civilToDay(dayToCivil(asOf).year, 1, 1);
  else if (!years.value.south) {
    from = Math.min(now, civilToDay(comingSeason(years.value, asOf).year, 1, 1));
  }
  const year = years.ok && !years.value.south ? comingSeason(years.value, asOf).year : null;
  const least = year === null ? after(from, YEAR) : civilToDay(year + 1, 1, 1);
  const last = Math.max(...rows.map((row) => (reach(row)?.to ?? from) + 7), least);
  return { from, to: Math.min(last, after(from, MOST)) };
}

const after = (day: DayNumber, months: number): DayNumber => addMonths(day, months) ?? day + months * 30;

/** The frost dates within a span; none where the household gives none that make a season. */
export function frostDays(household: Household, { from, to }: Span): FrostDay[] {
  const years = frostYears(household);
  if (!years.ok) return [];
  const found: FrostDay[] = [];
  for (let year = dayToCivil(from).year - 1; year <= dayToCivil(to).year + 1; year++) {
    const { lastFrost, firstFrost } = years.value.season(year);
    if (lastFrost !== null) found.push({ kind: 'last', day: lastFrost });
    if (firstFrost !== null) found.push({ kind: 'first', day: firstFrost });
  }
  return found.filter(({ day }) => day >= from && day <= to).sort((a, b) => a.day - b.day);
}

/** The stretches between a last frost and the first one after it. */
export function frostFree(frosts: readonly FrostDay[], { from, to }: Span): Span[] {
  const free: Span[] = [];
  let since: DayNumber | null = frosts[0]?.kind === 'first' ? from : null;
  for (const { kind, day } of frosts) {
    if (kind === 'last') since = day;
    else if (since !== null) {
      free.push({ from: since, to: day });
      since = null;
    }
  }
  return since === null ? free : [...free, { from: since, to }];
}

type Doing = 'begin' | 'setOut' | 'harvest' | 'putUp';

/** What begins in one week. */
export interface SeasonWeek extends Readonly<Record<Doing, readonly SeasonRow[]>> {
  /** Its Monday. */
  readonly monday: DayNumber;
}

/** The weeks in which something begins, in their order. Beginnings on record are left out. */
export function seasonWeeks(rows: readonly SeasonRow[]): SeasonWeek[] {
  const weeks = new Map<DayNumber, Record<Doing, SeasonRow[]>>();
  const add = (day: DayNumber | null | undefined, to: Doing, row: SeasonRow): void => {
    if (day === null || day === undefined) return;
    const monday = mondayOf(day);
    const week = weeks.get(monday) ?? { begin: [], setOut: [], harvest: [], putUp: [] };
    weeks.set(monday, week);
    week[to].push(row);
  };
  for (const row of rows) {
    if (!row.done) add(row.begin, 'begin', row);
    add(row.setOut, 'setOut', row);
    add(row.harvest?.from, 'harvest', row);
    add(row.putUp?.from, 'putUp', row);
  }
  return [...weeks].sort(([a], [b]) => a - b).map(([monday, week]) => ({ ...week, monday }));
}
