import { spokenTag } from './language.js';

const written = (at: number, options: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(spokenTag(), options).format(at);

/** The day of a moment by the device's clock, as the language spoken writes it: `May 4, 2026`, `4. Mai 2026`. `at` is in milliseconds since 1970. */
export const dayOfMoment = (at: number): string =>
  written(at, { year: 'numeric', month: 'short', day: 'numeric' });

/** The time of a moment by the device's clock: `14:05`. */
export const timeOfMoment = (at: number): string =>
  written(at, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
