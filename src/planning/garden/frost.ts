import { ok, type Problem, type Result } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import { civilToDay, dayToCivil } from '../dates.js';
import { formatMonthDay } from '../parse-date.js';
import { makeSeason, monthDayIn } from '../season.js';
import type { DayNumber, Household, MonthDay } from '../types.js';
import { problem } from './words.js';

/** One growing season, by the year of its last spring frost. Frost days are null where the household gives none. */
export interface GrowingSeason {
  readonly year: number;
  /** Midway between the frosts of the winter before: where one season's harvests end and the next one's begin. */
  readonly begins: DayNumber;
  readonly lastFrost: DayNumber | null;
  readonly firstFrost: DayNumber | null;
}

/** The household's frost dates, year by year. */
export interface FrostYears {
  season(year: number): GrowingSeason;
  /** True where spring comes in the second half of the year. */
  readonly south: boolean;
}

const before = (a: MonthDay, b: MonthDay): boolean =>
  a.month < b.month || (a.month === b.month && a.day < b.day);

const MISSING: Problem = problem(
  'frost-dates-missing',
  phrase('The household gives no last spring frost or no first fall frost.'),
  phrase('Write both among the household’s settings, as 05-24 and 09-18.'),
);

/** Years by the calendar alone, for what needs no frost date. */
export const calendarYears: FrostYears = {
  south: false,
  season: (year) => ({ year, begins: civilToDay(year, 1, 1), lastFrost: null, firstFrost: null }),
};

/**
 * Frost dates year by year. A last frost from July on with a first fall frost before August is a southern place:
 * its season spans the new year. Refused: `frost-dates-missing`, `frost-dates-reversed`.
 */
export function frostYears({ lastFrost, firstFrost }: Household): Result<FrostYears> {
  const frosts = makeSeason(lastFrost, firstFrost);
  if (!frosts) return { ok: false, problem: MISSING };
  const { from: last, to: first } = frosts;
  const north = before(last, first) && last.month <= 7;
  const south = before(first, last) && last.month >= 7 && first.month <= 7;
  if (!north && !south) {
    return {
      ok: false,
      problem: problem(
        'frost-dates-reversed',
        say`The last spring frost (${formatMonthDay(last)}) and the first fall frost (${formatMonthDay(first)}) leave no growing season between them.`,
        say`Check whether the two are the wrong way round: in the north 05-24 and 09-18, say; in the south 10-05 and 04-20.`,
      ),
    };
  }
  const fallOf = (year: number) => monthDayIn(south ? year + 1 : year, first);
  return ok({
    south,
    season(year) {
      const lastFrostDay = monthDayIn(year, last);
      const firstFrostDay = fallOf(year);
      const begins = Math.ceil((fallOf(year - 1) + lastFrostDay) / 2);
      return { year, begins, lastFrost: lastFrostDay, firstFrost: firstFrostDay };
    },
  });
}

const ends = (season: GrowingSeason, next: GrowingSeason): DayNumber => season.firstFrost ?? next.begins - 1;

/** The season that `day` is in, or the next to come: the first whose fall frost is not past. */
export function comingSeason(years: FrostYears, day: DayNumber): GrowingSeason {
  const { year } = dayToCivil(day);
  for (let at = year - 1; ; at++) {
    const season = years.season(at);
    if (at > year + 1 || ends(season, years.season(at + 1)) >= day) return season;
  }
}

/** The season that a harvest of `day` belongs to: it runs from mid-winter to mid-winter. */
export function seasonOfHarvest(years: FrostYears, day: DayNumber): GrowingSeason {
  const { year } = dayToCivil(day);
  const next = years.season(year + 1);
  if (next.begins <= day) return next;
  const here = years.season(year);
  return here.begins <= day ? here : years.season(year - 1);
}
