import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { timeAxis } from '../../components/pictures/time-axis.js';
import {
  frostDays,
  frostFree,
  inOrder,
  type Planting,
  seasonRows,
  seasonSpan,
  seasonWeeks,
} from '../../components/season/season-model.js';
import {
  chanceInWords,
  daysInWords,
  frostInWords,
  isLate,
  nextInWords,
} from '../../components/season/season-words.js';
import { fromIsoDay, toIsoDay } from '../../src/planning/dates.js';
import type { Household, MonthDay } from '../../src/planning/types.js';

const day = (iso: string): number => {
  const read = fromIsoDay(iso);
  if (!read.ok) throw new Error(iso);
  return read.value;
};

const monthDay = (text: string): MonthDay => {
  const [month = 0, date = 0] = text.split('-').map(Number);
  return { month, day: date };
};

const household = (asOf: string, lastFrost: string | null, firstFrost: string | null): Household => ({
  asOf: day(asOf),
  shares: 1,
  basis: 'usual',
  cushion: 0.1,
  measures: 'US customary',
  lastFrost: lastFrost === null ? null : monthDay(lastFrost),
  firstFrost: firstFrost === null ? null : monthDay(firstFrost),
  altitudeFt: null,
  ledgerFrom: null,
});

const planting = (given: Partial<Planting> = {}): Planting => ({
  crop: 'Tomato',
  variety: '',
  startOn: '2026-04-05',
  setOutOn: '2026-05-31',
  sownOn: null,
  harvestFrom: '2026-08-12',
  harvestTo: '2026-09-18',
  ...given,
});

const row = (given: Partial<Planting> = {}) => seasonRows([planting(given)])[0]!;
const shown = ({ from, to }: { from: number; to: number }) => [toIsoDay(from), toIsoDay(to)];

describe('plantings as rows', () => {
  it('begin indoors where they are set out later, in the ground where they are not', () => {
    expect(row().what).toBe('start indoors');
    expect(row({ setOutOn: null }).what).toBe('sow');
    expect(row({ setOutOn: null, how: 'set' }).what).toBe('plant');
  });

  it('begin when they were sown, once that is written', () => {
    const sown = row({ sownOn: '2026-04-11' });
    expect(toIsoDay(sown.begin!)).toBe('2026-04-11');
    expect(sown.done).toBe(true);
  });

  it('have no harvest where its days are the wrong way round, and one day where one end is missing', () => {
    expect(row({ harvestFrom: '2026-10-20', harvestTo: '2026-09-01' }).harvest).toBeNull();
    expect(shown(row({ harvestTo: null }).harvest!)).toEqual(['2026-08-12', '2026-08-12']);
  });

  it('leave out days that are none', () => {
    expect(row({ startOn: '2026-02-30', setOutOn: 'soon', harvestFrom: null, harvestTo: '' })).toMatchObject({
      begin: null,
      setOut: null,
      harvest: null,
    });
    expect(seasonRows([planting({ crop: ' ' })])).toEqual([]);
  });

  it('stand in the order asked for, those without days last', () => {
    const rows = seasonRows([
      planting({ crop: 'Quince', startOn: null, setOutOn: null, harvestFrom: null, harvestTo: null }),
      planting({ crop: 'Tomato' }),
      planting({ crop: 'Pea', startOn: '2026-04-12', setOutOn: null, harvestFrom: '2026-06-20' }),
    ]);
    const crops = (order: 'start' | 'harvest' | 'name') => inOrder(rows, order).map(({ crop }) => crop);
    expect(crops('start')).toEqual(['Tomato', 'Pea', 'Quince']);
    expect(crops('harvest')).toEqual(['Pea', 'Tomato', 'Quince']);
    expect(crops('name')).toEqual(['Pea', 'Quince', 'Tomato']);
  });
});

describe('the span of the picture', () => {
  it('is the calendar year in the north', () => {
    expect(shown(seasonSpan([row()], household('2026-02-15', '05-24', '09-18')))).toEqual([
      '2026-01-01',
      '2027-01-01',
    ]);
  });

  it('goes on to the coming year once the first fall frost is past, and still shows today', () => {
    const next = row({ startOn: '2027-04-05', setOutOn: '2027-05-31', harvestFrom: null, harvestTo: null });
    expect(shown(seasonSpan([next], household('2026-11-10', '05-24', '09-18')))).toEqual([
      '2026-11-01',
      '2028-01-01',
    ]);
  });

  it('begins with the present month in the south', () => {
    expect(shown(seasonSpan([], household('2026-08-20', '10-05', '04-20')))).toEqual([
      '2026-08-01',
      '2027-08-01',
    ]);
  });

  it('is longer for a harvest of the next spring, a year and a half at most', () => {
    const house = household('2026-02-15', '05-24', '09-18');
    expect(shown(seasonSpan([row({ harvestTo: '2027-03-25' })], house))[1]).toBe('2027-04-01');
    expect(shown(seasonSpan([row({ harvestTo: '2199-03-25' })], house))[1]).toBe('2027-07-01');
  });
});

describe('frost dates', () => {
  const north = household('2026-02-15', '05-24', '09-18');
  const south = household('2026-08-20', '10-05', '04-20');
  const days = (house: Household) =>
    frostDays(house, seasonSpan([], house)).map(({ kind, day: at }) => [kind, toIsoDay(at)]);

  it('fall on their days within the span, in the south a last frost in October', () => {
    expect(days(north)).toEqual([
      ['last', '2026-05-24'],
      ['first', '2026-09-18'],
    ]);
    expect(days(south)).toEqual([
      ['last', '2026-10-05'],
      ['first', '2027-04-20'],
    ]);
  });

  it('of 29 February fall on the 28th in a common year', () => {
    expect(days(household('2026-01-10', '02-29', '11-30'))[0]).toEqual(['last', '2026-02-28']);
    expect(days(household('2028-01-10', '02-29', '11-30'))[0]).toEqual(['last', '2028-02-29']);
  });

  it('are not drawn where they make no season', () => {
    expect(days(household('2026-02-15', '05-24', '05-10'))).toEqual([]);
    expect(days(household('2026-02-15', '05-24', null))).toEqual([]);
  });

  it('enclose the frost-free days, also where the span begins within them', () => {
    const span = seasonSpan([], south);
    expect(frostFree(frostDays(south, span), span).map(shown)).toEqual([['2026-10-05', '2027-04-20']]);
    const summer = household('2027-01-10', '10-05', '04-20');
    const late = seasonSpan([], summer);
    expect(frostFree(frostDays(summer, late), late).map(shown)).toEqual([
      ['2027-01-01', '2027-04-20'],
      ['2027-10-05', '2028-01-01'],
    ]);
  });

  it('say which chance they stand for', () => {
    expect(chanceInWords(50)).toBe('one year in two');
    expect(chanceInWords(33)).toBe('33 years in 100');
    expect(frostInWords('last', 'May 24', 50)).toBe(
      'Last spring frost May 24: frost comes later one year in two.',
    );
    expect(frostInWords('first', 'Sep 18', 10)).toBe(
      'First fall frost Sep 18: frost comes earlier one year in ten.',
    );
    expect(frostInWords('first', 'Sep 18', null)).toBe('First fall frost Sep 18.');
  });
});

describe('words of a planting', () => {
  const asOf = day('2026-02-15');

  it('name its days, harvest and putting up together where they are the same', () => {
    const kept = row({ putUpFrom: '2026-08-12', putUpTo: '2026-09-18' });
    expect(daysInWords(kept, asOf)).toEqual([
      'start indoors Apr 5',
      'set out May 31',
      'harvest and put up Aug 12–Sep 18',
    ]);
  });

  it('say what comes next', () => {
    const next = (iso: string, given: Partial<Planting> = {}) => nextInWords(row(given), day(iso));
    expect(next('2026-02-15')).toBe('start indoors Apr 5');
    expect(next('2026-04-20')).toBe('start indoors: was due Apr 5');
    expect(next('2026-04-20', { sownOn: '2026-04-04' })).toBe('set out May 31');
    expect(next('2026-07-01', { sownOn: '2026-04-04' })).toBe('harvest from Aug 12');
    expect(next('2026-09-01')).toBe('harvest until Sep 18');
    expect(next('2026-10-01')).toBe('harvest over');
    expect(isLate(row(), day('2026-04-20'))).toBe(true);
    expect(isLate(row(), day('2026-04-05'))).toBe(false);
  });
});

describe('week by week', () => {
  it('gathers what begins under each Monday, and leaves out what is done', () => {
    const weeks = seasonWeeks(
      seasonRows([
        planting({ startOn: '2026-04-12', setOutOn: null, harvestFrom: null, harvestTo: null, crop: 'Pea' }),
        planting({
          crop: 'Leek',
          startOn: '2026-04-06',
          setOutOn: '2026-04-13',
          harvestFrom: null,
          harvestTo: null,
        }),
        planting({ crop: 'Onion', sownOn: '2026-04-07', setOutOn: null, harvestFrom: null, harvestTo: null }),
      ]),
    );
    // Monday by another date library.
    const monday = DateTime.fromISO('2026-04-12').startOf('week').toISODate();
    expect(weeks.map((week) => toIsoDay(week.monday))).toEqual([monday, '2026-04-13']);
    expect(weeks[0]!.begin.map(({ crop }) => crop)).toEqual(['Pea', 'Leek']);
    expect(weeks[1]!.setOut.map(({ crop }) => crop)).toEqual(['Leek']);
  });
});

describe('the axis', () => {
  it('has the first of every month where another date library has it, over a leap day', () => {
    const [from, to] = [day('2027-11-20'), day('2028-05-20')];
    const axis = timeAxis(from, to);
    expect(axis.months.map(({ day: at }) => toIsoDay(at))).toEqual(
      [1, 2, 3, 4, 5, 6].map((n) =>
        DateTime.fromISO('2027-11-01', { zone: 'utc' }).plus({ months: n }).toISODate(),
      ),
    );
    for (const { day: at, x } of axis.months) expect(x).toBeCloseTo((100 * (at - from)) / (to - from), 3);
    expect(axis.months.find(({ year }) => year !== null)).toMatchObject({ text: 'Jan', year: 2028 });
  });

  it('holds days beyond its ends at its ends', () => {
    const axis = timeAxis(day('2026-01-01'), day('2026-12-31'));
    expect([axis.at(day('1999-01-01')), axis.at(day('2199-01-01'))]).toEqual([0, 100]);
  });

  it('is not the clock’s: a month begins on its first day also where clocks change', () => {
    const before = process.env.TZ;
    process.env.TZ = 'America/New_York';
    try {
      expect(new Date('2026-03-01T00:00:00Z').getDate(), 'the zone is behind').toBe(28);
      const axis = timeAxis(day('2026-01-01'), day('2026-12-31'));
      const march = axis.months.find(({ text }) => text === 'Mar')!;
      expect(toIsoDay(march.day)).toBe('2026-03-01');
      expect(axis.at(day('2026-03-09')) - axis.at(day('2026-03-08'))).toBeCloseTo(100 / 364, 2);
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  });
});
