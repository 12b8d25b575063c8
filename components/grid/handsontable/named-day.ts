import { toIsoDay } from '../../../src/planning/dates.js';
import type { DayNumber } from '../../../src/planning/types.js';

const DAYS: Readonly<Record<string, number>> = { yesterday: -1, today: 0, tomorrow: 1 };

/** `today`, `yesterday` and `tomorrow` as the day that is meant; whatever else was typed as it stands. */
export function namedDay(text: string, today: DayNumber): string {
  const word = text.trim().toLowerCase();
  const away = Object.hasOwn(DAYS, word) ? DAYS[word] : undefined;
  return away === undefined ? text : toIsoDay(today + away);
}
