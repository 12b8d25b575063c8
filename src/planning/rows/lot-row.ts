import type { Problem } from '../../problem.js';
import { isDay, monthsBetween, toIsoDay } from '../dates.js';
import { laterThan } from '../later.js';
import { cupsIn, holdsOf } from '../measure.js';
import type { LineReckoning, LotReckoning } from '../reckon.js';
import { dayAfterWeeks, weeksOfSupply } from '../supply.js';
import type { LotFigures, PlanValue, RowPlan } from '../types.js';
import { NO_USE, NOT_BY_BEST_BY, PAST_BEST, tidy } from '../words.js';

/** Half a cup: the serving where Foods gives none. */
export const SERVING_CUPS = 0.5;

/** Cups of a serving of the line. */
export function servingCups(line: LineReckoning): number {
  const own = line.input.row?.servingCups ?? null;
  return own !== null && own >= 0.001 && own <= 1000 ? own : SERVING_CUPS;
}

/** Weeks of supply of the line at usual use. */
export function weeksOfLine(line: LineReckoning): PlanValue {
  if (line.countedOn === null || !line.use) return null;
  const weeks = weeksOfSupply(line.countedOn, line.use.usual);
  return weeks.ok ? weeks.value : null;
}

function eatenBy(line: LineReckoning, at: LotReckoning): PlanValue {
  if (at.left === null || at.left <= 0) return null;
  if (at.past) return PAST_BEST;
  const eaten = line.eaten.get(at.lot.id);
  if (!eaten || !line.use) return null;
  if (eaten.weeks !== null) return dayAfterWeeks(eaten.weeks, line.household.asOf, line.season);
  return line.use.usual === 0 && eaten.atRisk === 0 ? NO_USE : NOT_BY_BEST_BY;
}

/** The planning columns of one lot. `rank` = 1 for the next of its line to open; null when out of the queue. */
export function lotRow(line: LineReckoning, at: LotReckoning, rank: number | null): RowPlan<LotFigures> {
  const { lot, left, bestBy } = at;
  const { asOf } = line.household;
  const eaten = line.eaten.get(lot.id);
  const holds = left !== null && lot.container !== null ? holdsOf(lot.container, left, line.bridges) : null;
  const cups = left !== null && lot.container !== null ? cupsIn(lot.container, line.bridges) : null;
  const problems: Partial<Record<keyof LotFigures, Problem>> = {};
  if (at.countProblem) problems.left = at.countProblem;
  if (at.bridgeProblem) problems.at_risk = at.bridgeProblem;
  const units: Partial<Record<keyof LotFigures, string>> = {};
  if (lot.container !== null) {
    units.left = lot.container;
    units.at_risk = lot.container;
  }
  const later = laterThan(asOf, lot.putUpOn);
  if (holds?.ok) units.holds = holds.value.unit;
  return {
    figures: {
      left: left === null ? null : tidy(left),
      months_kept: isDay(lot.putUpOn) ? monthsBetween(lot.putUpOn, asOf) : null,
      best_by: bestBy === null ? null : toIsoDay(bestBy),
      days_left: bestBy === null ? null : bestBy - asOf,
      holds: holds?.ok ? holds.value.amount : null,
      servings: cups?.ok && left !== null ? tidy((left * cups.value) / servingCups(line)) : null,
      eaten_by: eatenBy(line, at),
      at_risk: atRisk(at, eaten?.atRisk ?? null),
      use_first: rank,
      weeks_of_supply: weeksOfLine(line),
    },
    units,
    ...(later && { kept: { put_up_on: later } }),
    ...(Object.keys(problems).length > 0 ? { problems } : {}),
  };
}

function atRisk(at: LotReckoning, risk: number | null): PlanValue {
  if (at.left === 0) return 0;
  return risk === null || at.past ? null : Math.min(at.left ?? 0, tidy(risk));
}
