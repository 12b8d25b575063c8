import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addMonths,
  daysOutside,
  dayWhenOutside,
  fromIsoDay,
  inSeason,
  makeSeason,
  monthsBetween,
  nextMonthDay,
  parseDay,
  parseMonthDay,
  toIsoDay,
  weeksOutside,
} from '../../src/planning/index.js';
import { day } from './planning-make.js';

const readBack = <T>(
  result: { ok: true; value: T } | { ok: false; problem: { code: string } },
): T | string => (result.ok ? result.value : result.problem.code);
const iso = (typed: string) => {
  const found = parseDay(typed);
  return found.ok ? toIsoDay(found.value) : found.problem.code;
};

describe('days', () => {
  it('round-trips every first and last of month, as luxon has them', () => {
    for (let at = DateTime.utc(1900, 1, 1); at.year < 2201; at = at.plus({ months: 1 })) {
      for (const d of [at, at.endOf('month')]) {
        const text = d.toISODate()!;
        const found = fromIsoDay(text);
        expect(found.ok && toIsoDay(found.value)).toBe(text);
        expect(found.ok && found.value).toBe(Math.floor(d.toMillis() / 86_400_000));
      }
    }
  });

  it('adds months with the end of the month kept, as luxon does', () => {
    for (let from = day('2023-11-20'); from < day('2024-04-10'); from++) {
      for (const months of [0, 1, 3, 6, 12, 13, 18, 25]) {
        const theirs = DateTime.fromMillis(from * 86_400_000, { zone: 'utc' }).plus({ months });
        expect(toIsoDay(addMonths(from, months)!)).toBe(theirs.toISODate());
      }
    }
  });

  it('counts complete months so that adding them does not pass the day', () => {
    expect(monthsBetween(day('2025-08-31'), day('2026-02-28'))).toBe(6);
    expect(monthsBetween(day('2025-08-31'), day('2026-02-27'))).toBe(5);
    expect(monthsBetween(day('2025-08-15'), day('2026-08-14'))).toBe(11);
    expect(monthsBetween(day('2026-08-15'), day('2026-08-14'))).toBeNull();
  });
});

describe('typed days', () => {
  it.each([
    ['2026-05-04', '2026-05-04'],
    ['2026-5-4', '2026-05-04'],
    [' 24 May 2026 ', '2026-05-24'],
    ['24th of May 2026', '2026-05-24'],
    ['May 24 2026', '2026-05-24'],
    ['May 24, 2026', '2026-05-24'],
    ['24-Sep-2025', '2025-09-24'],
    ['Sept. 3, 2025', '2025-09-03'],
    ['2024/02/29', '2024-02-29'],
    ['5/4/26', 'ambiguous-date'],
    ['5/4/2026', 'ambiguous-date'],
    ['2026-02-30', 'no-such-day'],
    ['2025-02-29', 'no-such-day'],
    ['2026-13-01', 'no-such-day'],
    ['0026-05-04', 'year-out-of-range'],
    ['1 May 2300', 'year-out-of-range'],
    ['soon', 'not-a-date'],
    ['', 'not-a-date'],
    ['20260504', 'not-a-date'],
  ])('reads %j as %s', (typed, wanted) => expect(iso(typed)).toBe(wanted));

  it('says both readings of an ambiguous day', () => {
    const found = parseDay('5/4/26');
    expect(!found.ok && found.problem.mend).toBe('Write the year first: 2026-05-04 or 2026-04-05.');
  });

  it.each([
    ['07-15', { month: 7, day: 15 }],
    ['Jul 15', { month: 7, day: 15 }],
    ['15 July', { month: 7, day: 15 }],
    ['July 15th', { month: 7, day: 15 }],
    ['02-29', { month: 2, day: 29 }],
    ['02-30', 'no-such-day'],
    ['15-07', 'no-such-day'],
    ['7/15', 'not-a-month-day'],
    ['mid July', 'not-a-month-day'],
  ])('reads the day of the year %j', (typed, wanted) =>
    expect(readBack(parseMonthDay(typed))).toEqual(wanted),
  );
});

describe('seasons', () => {
  const summer = makeSeason({ month: 7, day: 15 }, { month: 9, day: 30 });
  const winter = makeSeason({ month: 11, day: 1 }, { month: 2, day: 15 });

  it('includes both ends, also over the new year', () => {
    expect(
      ['2026-07-14', '2026-07-15', '2026-09-30', '2026-10-01'].map((d) => inSeason(summer, day(d))),
    ).toEqual([false, true, true, false]);
    expect(
      ['2026-10-31', '2026-11-01', '2027-02-15', '2027-02-16'].map((d) => inSeason(winter, day(d))),
    ).toEqual([false, true, true, false]);
  });

  it('counts the weeks outside: 2026-07-01 to 2026-10-08 is two weeks before and one after', () => {
    expect(weeksOutside(day('2026-07-01'), day('2026-10-08'), summer)).toBe(3);
  });

  it('agrees with counting day by day', () => {
    const leapEnd = makeSeason({ month: 2, day: 29 }, { month: 3, day: 10 });
    for (const season of [summer, winter, leapEnd, null]) {
      let count = 0;
      const from = day('2023-06-03');
      for (let d = from; d < from + 1200; d++) {
        expect(daysOutside(from, d, season)).toBe(count);
        if (!inSeason(season, d)) count += 1;
      }
    }
  });

  it('finds the day by which so many weeks have gone by', () => {
    expect(dayWhenOutside(day('2026-07-01'), 3, summer, day('2030-01-01'))).toBe(day('2026-10-08'));
    expect(dayWhenOutside(day('2026-07-01'), 2, summer, day('2030-01-01'))).toBe(day('2026-07-15'));
    expect(dayWhenOutside(day('2026-07-01'), 1000, summer, day('2036-07-01'))).toBeNull();
  });

  it('has no week outside a season of the whole year', () => {
    const always = makeSeason({ month: 3, day: 1 }, { month: 2, day: 28 });
    expect(weeksOutside(day('2026-07-01'), day('2029-10-08'), always)).toBe(0);
    expect(dayWhenOutside(day('2026-07-01'), 1, always, day('2036-07-01'))).toBeNull();
  });

  it('takes 29 February as the 28th in common years', () => {
    expect(nextMonthDay(day('2026-01-01'), { month: 2, day: 29 })).toBe(day('2026-02-28'));
    expect(nextMonthDay(day('2028-01-01'), { month: 2, day: 29 })).toBe(day('2028-02-29'));
  });
});
