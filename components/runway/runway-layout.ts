import { addMonths, dayToCivil } from '../../src/planning/dates.js';
import { allYear, type Season, seasonAt, seasonOf } from '../../src/planning/season.js';
import { type DayNumber, WAYS_KEPT } from '../../src/planning/types.js';
import type { FoodLine, Runway, RunwayRow } from './runway-model.js';

/** What runs short first, the soonest out before the others; then the rest, the soonest out first. */
export const byUrgency = (a: RunwayRow, b: RunwayRow): number =>
  Number(b.standing === 'short') - Number(a.standing === 'short') ||
  (a.end ?? Number.POSITIVE_INFINITY) - (b.end ?? Number.POSITIVE_INFINITY) ||
  byName(a, b);

export const byName = (a: FoodLine, b: FoodLine): number =>
  a.food.localeCompare(b.food, 'en') || wayPlace(a.way) - wayPlace(b.way);

/** Place of a way kept in the order of all of them; unknown ones last. */
export function wayPlace(way: string): number {
  const at = (WAYS_KEPT as readonly string[]).indexOf(way);
  return at < 0 ? WAYS_KEPT.length : at;
}

/** Ways kept that the foods have, in their order. */
export const waysOf = ({ rows, apart }: Pick<Runway, 'rows' | 'apart'>): string[] =>
  [...new Set([...rows, ...apart].map(({ way }) => way))].sort((a, b) => wayPlace(a) - wayPlace(b));

/** Part of a bar; `resting`: within the fresh season, when nothing is taken from the shelf. */
export interface Stretch {
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly resting: boolean;
}

/** The days from one up to another, cut where the fresh season begins and ends. */
export function stretches(from: DayNumber, to: DayNumber, season: Season | null): Stretch[] {
  if (!(to > from)) return [];
  if (!season || allYear(season)) return [{ from, to, resting: season !== null }];
  const cut: Stretch[] = [];
  let at = from;
  let year = dayToCivil(from).year - 1;
  while (at < to) {
    const now = seasonAt(season, at);
    if (now) {
      const until = Math.min(to, now.last + 1);
      cut.push({ from: at, to: until, resting: true });
      at = until;
      continue;
    }
    while (seasonOf(season, year).first <= at) year += 1;
    const until = Math.min(to, seasonOf(season, year).first);
    cut.push({ from: at, to: until, resting: false });
    at = until;
  }
  return cut;
}

/** Months that a picture shows at least, and at most. */
const [LEAST, MOST] = [12, 24];

/**
 * The days that the picture spans: from just before the as-of date to beyond every coming harvest, a year at
 * least and two at most, or as many months as asked for. What lasts longer goes on past the edge.
 */
export function spanOf({ asOf, rows }: Runway, months: number | null): { from: DayNumber; to: DayNumber } {
  const after = (n: number): DayNumber => addMonths(asOf, n) ?? asOf + 365;
  const wanted = months !== null && months >= 1 ? after(Math.min(Math.round(months), 120)) : null;
  const harvests = rows.flatMap(({ nextHarvest }) => (nextHarvest === null ? [] : [nextHarvest + 14]));
  const to = wanted ?? Math.min(after(MOST), Math.max(after(LEAST), ...harvests));
  return { from: asOf - Math.max(3, Math.round((to - asOf) / 80)), to };
}
