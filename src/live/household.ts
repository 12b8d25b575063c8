import { type BookState, type Raw, SETTINGS, settingOf } from '../book/index.js';
import { fromIsoDay } from '../planning/dates.js';
import { parseDay, parseMonthDay } from '../planning/parse-date.js';
import { BASES, type Basis, type DayNumber, type Household, type MonthDay } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { say, spoken } from '../words/index.js';
import { inCustomary } from './cell-reader.js';

/** The household as the planners take it, and what of its settings could not be read, by setting. */
export interface ReadHousehold {
  readonly household: Household;
  readonly problems: Readonly<Record<string, Problem>>;
}

export interface TableFacts {
  readonly shares: number;
  readonly ledgerFrom: DayNumber | null;
}

/** Reads the settings; one that cannot be read counts as blank, with a problem. */
export function readHousehold(state: BookState, today: DayNumber, table: TableFacts): ReadHousehold {
  const problems: Record<string, Problem> = {};
  const raw = (id: string): Raw | undefined => state.settings[id] ?? settingOf(id)?.usual;
  const problem = (id: string, message: string, mend: string): null => {
    problems[id] = { code: 'bad-setting', message: `${spoken(settingOf(id)!.title)}: ${message}`, mend };
    return null;
  };

  const number = (id: string): number | null => {
    const value = raw(id);
    if (value === undefined) return null;
    const { min = Number.NEGATIVE_INFINITY, max = 1e9 } = settingOf(id)!;
    if (typeof value !== 'number')
      return problem(id, say`“${String(value).slice(0, 40)}” is not a number.`, say`Write it in digits.`);
    if (value < min || value > max)
      return problem(id, say`${value} is out of range.`, say`Write a number from ${min} to ${max}.`);
    return value;
  };
  const monthDay = (id: string): MonthDay | null => {
    const value = raw(id);
    if (value === undefined) return null;
    const read = parseMonthDay(String(value));
    return read.ok ? read.value : problem(id, read.problem.message, read.problem.mend);
  };
  const choice = <T extends string>(id: string, among: readonly T[], usual: T): T => {
    const value = String(raw(id) ?? usual).toLowerCase();
    const found = among.find((each) => each.toLowerCase() === value);
    if (found === undefined)
      problem(
        id,
        say`there is no “${value.slice(0, 40)}”.`,
        say`Choose one of: ${among.map(spoken).join(', ')}.`,
      );
    return found ?? usual;
  };
  const asOf = (): DayNumber => {
    const value = raw('as_of');
    if (value === undefined) return today;
    const read = parseDay(String(value));
    if (!read.ok)
      problem(
        'as_of',
        read.problem.message,
        `${read.problem.mend}${say` Until then the figures are for today.`}`,
      );
    return read.ok ? read.value : today;
  };

  // Every setting is read, so that each problem is known whether or not a planner uses it yet.
  for (const setting of SETTINGS) if (setting.type === 'number') number(setting.id);
  const altitude = number('altitude_ft');
  const household: Household = {
    asOf: asOf(),
    shares: table.shares,
    basis: choice<Basis>('basis', BASES, 'usual'),
    cushion: (number('cushion') ?? 10) / 100,
    measures: choice('measures', ['US customary', 'metric'] as const, 'US customary'),
    lastFrost: monthDay('last_frost'),
    firstFrost: monthDay('first_frost'),
    altitudeFt: altitude === null ? null : inCustomary(altitude, settingOf('altitude_ft')?.unit),
    ledgerFrom: table.ledgerFrom,
  };
  return { household, problems };
}

/** Today by the clock of the device, as a civil day. */
export function todayHere(now = new Date()): DayNumber {
  const two = (n: number) => String(n).padStart(2, '0');
  const day = fromIsoDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
  return day.ok ? day.value : 0;
}
