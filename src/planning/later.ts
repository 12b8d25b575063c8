import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import { isDay, toIsoDay } from './dates.js';
import type { DayNumber } from './types.js';

/** The problem of something dated after the day that the figures are for; undefined where it is not. */
export function laterThan(asOf: DayNumber, day: DayNumber | null): Problem | undefined {
  if (!isDay(day) || day <= asOf) return undefined;
  return {
    code: 'later-than-as-of',
    message: say`This is after ${toIsoDay(asOf)}, the day that the figures are for, so it does not count yet.`,
    mend: say`Set “Figures for the day” on Household to a later day, or leave it blank for today.`,
  };
}
