import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { isDay } from './dates.js';
import { gammaQuantile } from './gamma.js';
import { inSeason, type Season } from './season.js';
import { isWithin, observedWeeks, type StockSpan } from './stock-days.js';
import type { DayNumber, SuggestedUse } from './types.js';
import { isAmount, MOST } from './words.js';

/** Weeks before the as-of date that use is learned from. */
export const MOST_WEEKS = 52;
/** Fewer observed weeks than these teach nothing. */
export const LEAST_WEEKS = 4;

/** Use per week with the ends of its range, in one measure; `low` and `high` null where no range is known. */
export interface Use {
  readonly low: number | null;
  readonly usual: number;
  readonly high: number | null;
  readonly origin: 'own' | 'learned' | 'computed' | 'published';
}

/** What was learned from draws, and the numbers it came from. */
export interface LearnedUse {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  /** Observed weeks. */
  readonly weeks: number;
  /** Sum of the draws. */
  readonly total: number;
  /** Size of a typical draw, `Σa² ÷ Σa`; 1 when there was none. */
  readonly typical: number;
  /** `total ÷ typical`: how many typical draws; 0 when there was none. */
  readonly times: number;
  /** How many draws counted. */
  readonly draws: number;
}

/** A net draw of a day, in the counted-in container. */
export interface UseOnDay {
  readonly day: DayNumber;
  readonly amount: number;
}

/** The value below which use per week lies with probability `p`: the Jeffreys posterior of typical draws a week. */
function useQuantile(p: number, typical: number, times: number, weeks: number): number {
  const q = gammaQuantile(p, times + 0.5, weeks);
  return q === null ? 0 : typical * q;
}

function sums(amounts: readonly number[]): { total: number; typical: number; times: number; draws: number } {
  let total = 0;
  let squares = 0;
  let draws = 0;
  for (const amount of amounts) {
    if (!(amount > 0)) continue;
    total += amount;
    squares += amount * amount;
    draws += 1;
  }
  if (!(total > 0)) return { total: 0, typical: 1, times: 0, draws: 0 };
  const typical = squares / total;
  return { total, typical, times: total / typical, draws };
}

/**
 * Use per week from net draws (each ≥ 0) over `weeks` observed weeks: usual = Σa ÷ w; low and high are the
 * typical draw × the 10 % and 90 % quantiles of Gamma(m + ½, rate w). With no draws usual and low are 0.
 * Null under 4 weeks.
 */
export function learnFrom(amounts: readonly number[], weeks: number): LearnedUse | null {
  if (!(weeks >= LEAST_WEEKS) || !(weeks <= MOST)) return null;
  const { total, typical, times, draws } = sums(amounts);
  if (total > MOST) return null;
  const high = useQuantile(0.9, typical, times, weeks);
  const low = draws === 0 ? 0 : useQuantile(0.1, typical, times, weeks);
  return { low, usual: total / weeks, high, weeks, total, typical, times, draws };
}

/** What was observed of a line's use. */
export interface Observed {
  readonly from: DayNumber;
  readonly weeks: number;
  readonly learned: LearnedUse | null;
}

/**
 * Learns use per week of a line. Observed are up to 52 weeks before `asOf`, from the first day on which the
 * household kept a draws ledger (`ledgerFrom`; null = never), leaving out days with none on hand and days of
 * the fresh season; draws on days left out are left out as well.
 */
export function learnUse(
  uses: readonly UseOnDay[],
  stockDays: readonly StockSpan[],
  season: Season | null,
  ledgerFrom: DayNumber | null,
  asOf: DayNumber,
): Observed {
  if (ledgerFrom === null || !isDay(ledgerFrom)) return { from: asOf, weeks: 0, learned: null };
  const from = Math.max(asOf - MOST_WEEKS * 7, ledgerFrom);
  const weeks = observedWeeks(stockDays, from, asOf, season);
  const amounts: number[] = [];
  for (const { day, amount } of uses) {
    if (day < from || day >= asOf) continue;
    if (isWithin(stockDays, day) && !inSeason(season, day)) amounts.push(amount);
  }
  return { from, weeks, learned: learnFrom(amounts, weeks) };
}

/** Own figure first, learned next, the week plan's average next, a published suggestion last; null with none. */
export function chooseUse(
  own: number | null,
  learned: LearnedUse | null,
  weekPlan: number | null = null,
  suggested: SuggestedUse | null = null,
): Use | null {
  if (isAmount(own)) return { low: null, usual: own, high: null, origin: 'own' };
  if (learned) return { low: learned.low, usual: learned.usual, high: learned.high, origin: 'learned' };
  if (isAmount(weekPlan)) return { low: null, usual: weekPlan, high: null, origin: 'computed' };
  if (suggested) {
    const { low, usual, high } = suggested;
    return { low, usual, high, origin: 'published' };
  }
  return null;
}

interface Window {
  readonly amounts: readonly number[];
  readonly weeks: number;
}

/** Draws of the `weeks` before `asOf`; without `weeks`, from the first draw on, 52 weeks at most. */
function windowOf(
  dates: readonly DayNumber[],
  amounts: readonly number[],
  asOf: DayNumber,
  weeks: number | null,
): Result<Window> {
  if (!isDay(asOf))
    return refuse('not-a-date', say`The as-of date is not a date.`, say`Give it as in 2026-05-04.`);
  if (dates.length !== amounts.length) {
    return refuse(
      'ranges-differ',
      say`There are ${dates.length} dates and ${amounts.length} amounts.`,
      say`Give as many amounts as dates.`,
    );
  }
  if (weeks !== null && !(weeks > 0 && weeks <= 5200)) {
    return refuse(
      'bad-amount',
      say`The number of weeks is not above 0.`,
      say`Give the weeks as a number, as in 52.`,
    );
  }
  const bad = dates.findIndex((day, i) => !isDay(day) || !(Math.abs(amounts[i]!) <= MOST));
  if (bad >= 0) {
    return refuse(
      'bad-amount',
      say`Draw ${bad + 1} has no date or no amount.`,
      say`Fill in its date and amount.`,
    );
  }
  const earliest = asOf - Math.round((weeks ?? MOST_WEEKS) * 7);
  let first = asOf;
  const kept: number[] = [];
  dates.forEach((day, i) => {
    if (day < earliest || day >= asOf) return;
    first = Math.min(first, day);
    kept.push(amounts[i]!);
  });
  const before = dates.some((day) => day < earliest);
  return ok({ amounts: netted(kept), weeks: weeks ?? (before ? MOST_WEEKS : (asOf - first) / 7) });
}

/** A negative amount takes back from the amounts before it, latest first. */
function netted(amounts: readonly number[]): number[] {
  const net: number[] = [];
  for (const amount of amounts) {
    if (amount > 0) net.push(amount);
    let back = Math.max(0, -amount);
    while (back > 0 && net.length > 0) {
      const last = net.pop()!;
      if (last > back) net.push(last - back);
      back -= Math.min(back, last);
    }
  }
  return net;
}

const tooFew = (weeks: number) =>
  refuse(
    'too-few-weeks',
    say`Draws over ${Math.max(0, Math.floor(weeks * 10) / 10)} weeks teach nothing yet: it takes ${LEAST_WEEKS}.`,
    say`Write down draws for a few weeks more, or give your own use per week.`,
  );

/**
 * Use per week from a list of draws (a negative amount takes back from those before it) before `asOf`, over
 * `weeks` or, when null, from the first draw on (52 weeks at most).
 * Refused: `too-few-weeks` under 4 weeks, `ranges-differ`, `bad-amount`, `not-a-date`.
 */
export function usePerWeek(
  dates: readonly DayNumber[],
  amounts: readonly number[],
  asOf: DayNumber,
  weeks: number | null = null,
): Result<number> {
  const draws = windowOf(dates, amounts, asOf, weeks);
  if (!draws.ok) return draws;
  const learned = learnFrom(draws.value.amounts, draws.value.weeks);
  return learned ? ok(learned.usual) : tooFew(draws.value.weeks);
}

/** The use per week that is not passed with `probability` (0.1 and 0.9 are the low and high of Foods). Refused as `usePerWeek`. */
export function useRange(
  dates: readonly DayNumber[],
  amounts: readonly number[],
  probability: number,
  asOf: DayNumber,
  weeks: number | null = null,
): Result<number> {
  if (!(probability > 0 && probability < 1)) {
    return refuse(
      'bad-probability',
      say`The probability must lie between 0 and 1.`,
      say`Give it as 0.1 or 90%.`,
    );
  }
  const draws = windowOf(dates, amounts, asOf, weeks);
  if (!draws.ok) return draws;
  const learned = learnFrom(draws.value.amounts, draws.value.weeks);
  if (!learned) return tooFew(draws.value.weeks);
  if (learned.draws === 0 && probability < 0.5) return ok(0);
  return ok(useQuantile(probability, learned.typical, learned.times, learned.weeks));
}
