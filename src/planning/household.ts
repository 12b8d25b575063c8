import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { isDay } from './dates.js';
import type { DayNumber, Household } from './types.js';
import { BASES } from './types.js';

/** What may be said of a household; everything but the as-of date has a default. */
export type HouseholdSettings = { readonly asOf: DayNumber } & {
  readonly [K in Exclude<keyof Household, 'asOf'>]?: Household[K] | null | undefined;
};

/**
 * A household from plain settings: one share, usual basis, a cushion of a tenth, US customary, and no
 * frost dates, altitude or ledger unless given. Refused: `not-a-date`, `bad-shares`, `bad-cushion`, `bad-basis`.
 */
export function makeHousehold(settings: HouseholdSettings): Result<Household> {
  const { asOf } = settings;
  const shares = settings.shares ?? 1;
  const cushion = settings.cushion ?? 0.1;
  const basis = settings.basis ?? 'usual';
  if (!isDay(asOf)) {
    return refuse(
      'not-a-date',
      say`The as-of date is not a date.`,
      say`Write it as in 2026-05-04 (years 1900 to 2200).`,
    );
  }
  if (!(shares >= 0 && shares <= 10_000)) {
    return refuse(
      'bad-shares',
      say`The shares at the table are not a number from 0 to 10000.`,
      say`Write 1 for each grown appetite.`,
    );
  }
  if (!(cushion >= 0 && cushion <= 10)) {
    return refuse('bad-cushion', say`The cushion is not from 0 to 1000 %.`, say`Write it as 10 % or 0.1.`);
  }
  if (!BASES.includes(basis)) {
    return refuse(
      'bad-basis',
      say`There is no season basis “${String(basis).slice(0, 40)}”.`,
      say`Choose lean, usual or good.`,
    );
  }
  return ok({
    asOf,
    shares,
    basis,
    cushion,
    measures: settings.measures ?? 'US customary',
    lastFrost: settings.lastFrost ?? null,
    firstFrost: settings.firstFrost ?? null,
    altitudeFt: settings.altitudeFt ?? null,
    ledgerFrom: isDay(settings.ledgerFrom) ? settings.ledgerFrom : null,
  });
}

/** The first day on which the household kept a draws ledger: the earliest dated draw, or null. */
export function ledgerFrom(draws: Iterable<{ readonly date: DayNumber | null }>): DayNumber | null {
  let first: DayNumber | null = null;
  for (const { date } of draws) {
    if (isDay(date) && (first === null || date < first)) first = date;
  }
  return first;
}
