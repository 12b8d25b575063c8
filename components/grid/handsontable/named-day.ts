import { toIsoDay } from '../../../src/planning/dates.js';
import type { DayNumber } from '../../../src/planning/types.js';
import { phrase, spoken } from '../../../src/words/index.js';

const DAYS: readonly (readonly [word: string, away: number])[] = [
  [phrase('yesterday'), -1],
  [phrase('today'), 0],
  [phrase('tomorrow'), 1],
];

/** `today`, `yesterday` and `tomorrow` as the day that is meant, in English and in the language spoken now; whatever else was typed as it stands. */
export function namedDay(text: string, today: DayNumber): string {
  const word = text.trim().toLowerCase();
  const found = DAYS.find(([name]) => word === name || word === spoken(name));
  return found ? toIsoDay(today + found[1]) : text;
}
