import type { DayNumber } from '../../planning/types.js';
import { MOST_WEEKS } from '../../planning/use.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { Explained } from '../declare.js';
import { isoOf, toldOf, toldValue } from '../tell.js';

/** Arguments of the functions that read a ledger. */
export const DATES = {
  name: 'dates',
  kind: 'dates with blanks',
  help: 'the cells with the days on which some was taken',
} as const;

export const AMOUNTS = {
  name: 'amounts',
  kind: 'numbers with blanks',
  help: 'the cells with how much was taken on each, all in one container',
  unit: 'X',
} as const;

export const WEEKS = {
  name: 'weeks',
  kind: 'number',
  least: 4,
  most: 5200,
  optional: true,
  otherwise: 'from the first draw on, 52 weeks at most',
  help: 'how many weeks back to look',
  unit: 'weeks',
} as const;

interface Draws {
  readonly dates: readonly DayNumber[];
  readonly amounts: readonly number[];
}

/** Pairs the two ranges cell by cell. Pairs that are both blank are left out; half a pair is refused. */
export function drawsFrom(
  dates: readonly (DayNumber | null)[],
  amounts: readonly (number | null)[],
): Result<Draws> {
  if (dates.length !== amounts.length) {
    return refuse(
      'ranges-differ',
      say`There are ${dates.length} cells of dates and ${amounts.length} of amounts.`,
      say`Give two ranges of the same length.`,
    );
  }
  const days: DayNumber[] = [];
  const taken: number[] = [];
  for (const [i, day] of dates.entries()) {
    const amount = amounts[i] ?? null;
    if (day === null && amount === null) continue;
    if (day === null || amount === null) {
      return refuse(
        'half-a-draw',
        day === null
          ? say`Draw ${i + 1} has an amount but no date.`
          : say`Draw ${i + 1} has a date but no amount.`,
        day === null ? say`Fill in its date, or clear both.` : say`Fill in its amount, or clear both.`,
      );
    }
    days.push(day);
    taken.push(amount);
  }
  return ok({ dates: days, amounts: taken });
}

/** How a use per week comes from draws, in steps. */
export function usedSteps(
  dates: readonly (DayNumber | null)[],
  amounts: readonly (number | null)[],
  asOf: DayNumber,
  weeks: number | undefined,
  { value }: Explained,
  x: string,
): readonly string[] {
  const words = x || 'containers';
  const draws = drawsFrom(dates, amounts);
  if (!draws.ok || typeof value !== 'number') return [];
  const first = Math.min(...draws.value.dates);
  const span = weeks ?? Math.min(MOST_WEEKS, (asOf - first) / 7);
  return [
    say`${isoOf(asOf)} and ${toldOf(span, 'weeks')} back`,
    say`${toldOf(value * span, words)} taken ÷ ${toldOf(span, 'weeks')} = ${toldValue(value, `${words} a week`)}`,
  ];
}
