import { readFileSync } from 'node:fs';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { byUrgency, spanOf, stretches } from '../../components/runway/runway-layout.js';
import { type Runway, readRunway } from '../../components/runway/runway-model.js';
import { summary, untilInWords, verdict } from '../../components/runway/runway-words.js';
import { blankBook, parseBook, type Typed } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { fromIsoDay, toIsoDay } from '../../src/planning/dates.js';
import { formatMonthDay } from '../../src/planning/parse-date.js';

const day = (iso: string): number => {
  const read = fromIsoDay(iso);
  if (!read.ok) throw new Error(iso);
  return read.value;
};

const TODAY = '2026-02-15';

interface Line {
  readonly food: string;
  readonly count?: number;
  readonly container?: string;
  readonly more?: { readonly [column: string]: Typed };
}

/** A book with one lot and one Foods row for each line. */
function bookOf(...lines: Line[]): LiveBook {
  const live = openBook(blankBook(), { today: () => day(TODAY) });
  for (const { food, count, container = 'quart jar', more = {} } of lines) {
    if (count !== undefined)
      live.insertRows('shelf', [{ food, way: 'canned', container, count, put_up_on: '2025-09-01' }]);
    live.insertRows('foods', [{ food, way: 'canned', counted_in: container, ...more }]);
  }
  return live;
}

const read = (live: LiveBook): Runway => {
  const runway = readRunway(live);
  if (!runway) throw new Error('no Foods sheet');
  return runway;
};

const one = (line: Line) => read(bookOf(line)).rows[0]!;

function demo(): LiveBook {
  const book = parseBook(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
  if (!book.ok) throw new Error('the demo book does not open');
  return openBook(book.book);
}

describe('bars of the Foods sheet', () => {
  it('end where the sheet says that the food runs out, and stand against its next harvest', () => {
    // 20 jars at 2 a week: ten weeks. Short for the 5 weeks from 26 April to 31 May: 10 jars.
    const row = one({ food: 'Plums', count: 20, more: { own_use: 2, next_supply: '2026-05-31' } });
    expect(toIsoDay(row.end!)).toBe('2026-04-26');
    expect(toIsoDay(row.nextHarvest!)).toBe('2026-05-31');
    expect(row.standing).toBe('short');
    expect(verdict(row)).toBe('10 quart jars short');
  });

  it('say what is over, and what comes out even', () => {
    // 24 jars at 1 a week, 20 weeks to 5 July: 4 left over.
    const more = { own_use: 1, next_supply: '2026-07-05' };
    expect(verdict(one({ food: 'Plums', count: 24, more }))).toBe('4 quart jars over');
    expect(verdict(one({ food: 'Plums', count: 20, more }))).toBe('just enough');
    expect(verdict(one({ food: 'Plums', count: 24, more: { ...more, carry: 6 } }))).toBe(
      '4 quart jars left, none over',
    );
  });

  it('name one container in the singular', () => {
    const row = one({ food: 'Plums', count: 21, more: { own_use: 1, next_supply: '2026-07-05' } });
    expect(verdict(row)).toBe('1 quart jar over');
  });

  it('go on past ten years without an end', () => {
    const row = one({ food: 'Salt', count: 1e9, more: { own_use: 0.01, next_supply: '2026-09-01' } });
    expect(row.end).toBeNull();
    expect(untilInWords(row, day(TODAY))).toBe('more than ten years');
  });

  it('have no length where nothing is on hand', () => {
    const row = one({ food: 'Plums', more: { own_use: 1, next_supply: '2026-07-05' } });
    expect(row.end).toBe(day(TODAY));
    expect(row.standing).toBe('short');
  });

  it('say that a harvest is in progress', () => {
    const row = one({
      food: 'Plums',
      count: 3,
      more: { own_use: 1, fresh_from: '02-01', fresh_to: '03-01' },
    });
    expect(row.standing).toBe('in harvest');
    expect(verdict(row)).toMatch(/^harvest now/);
  });

  it('say where no harvest is known', () => {
    expect(one({ food: 'Plums', count: 3, more: { own_use: 1 } }).standing).toBe('no harvest');
  });
});

describe('foods without a bar', () => {
  it('stand apart, each with its reason', () => {
    const { rows, apart } = read(
      bookOf(
        { food: 'Sage', count: 3, more: { own_use: 0 } },
        { food: 'Eggs', count: 3, more: { own_use: 2, fresh_from: '01-01', fresh_to: '12-31' } },
        { food: 'Quinces', count: 3 },
      ),
    );
    expect(rows).toEqual([]);
    expect(apart.map(({ food, reason }) => [food, reason])).toEqual([
      ['Sage', 'no use'],
      ['Eggs', 'not from the shelf'],
      ['Quinces', 'not known'],
    ]);
  });

  it('say what would give them one', () => {
    const [quinces] = read(bookOf({ food: 'Quinces', count: 3 })).apart;
    expect(quinces!.mend).toMatch(/own use/i);
  });

  it('are not rows without a name', () => {
    expect(read(bookOf({ food: '' }))).toMatchObject({ rows: [], apart: [] });
  });
});

describe('order', () => {
  it('puts what runs short first, the soonest out before the others, then the rest likewise', () => {
    const { rows } = read(
      bookOf(
        { food: 'Over late', count: 60, more: { own_use: 1, next_supply: '2026-07-05' } },
        { food: 'Short late', count: 15, more: { own_use: 1, next_supply: '2026-07-05' } },
        { food: 'Over soon', count: 4, more: { own_use: 1, next_supply: '2026-03-01' } },
        { food: 'Short soon', count: 5, more: { own_use: 1, next_supply: '2026-07-05' } },
      ),
    );
    expect([...rows].sort(byUrgency).map(({ food }) => food)).toEqual([
      'Short soon',
      'Short late',
      'Over soon',
      'Over late',
    ]);
    expect(summary({ rows })).toBe(
      '2 foods run short before the next harvest or supply; 2 will have some over.',
    );
  });
});

describe('the demo’s bars', () => {
  const live = demo();
  const { rows, asOf, sheet } = read(live);

  it('carry the figures of the sheet', () => {
    expect(rows.length).toBeGreaterThan(60);
    for (const row of rows) {
      expect(row.weeks).toBe(live.value(sheet, row.id, 'weeks_of_supply'));
      expect(row.end === null ? null : toIsoDay(row.end)).toBe(live.value(sheet, row.id, 'runs_out_on'));
    }
  });

  it('have ranges whose days, less the fresh season, are the weeks of the sheet (counted day by day)', () => {
    let counted = 0;
    for (const row of rows) {
      if (!row.range) continue;
      // As typed in Foods, else as Beds has it.
      const line = live.foodLines.find(({ input }) => input.row?.id === row.id)?.input.row;
      const from = line?.freshFrom ? formatMonthDay(line.freshFrom) : '';
      const to = line?.freshTo ? formatMonthDay(line.freshTo) : '';
      for (const [end, weeks] of [
        [row.range.low, row.weeksLow],
        [row.range.high, row.weeksHigh],
      ] as const) {
        if (end === null || weeks === null) continue;
        let days = 0;
        let at = DateTime.fromISO(toIsoDay(asOf), { zone: 'utc' });
        const last = DateTime.fromISO(toIsoDay(end), { zone: 'utc' });
        for (; at < last; at = at.plus({ days: 1 })) {
          const now = at.toFormat('MM-dd');
          if (from === '' || now < from || now > to) days += 1;
        }
        // Whole days, the last one begun.
        expect(days - weeks * 7, row.food).toBeGreaterThan(-1e-6);
        expect(days - weeks * 7, row.food).toBeLessThan(1);
        counted += 1;
      }
    }
    expect(counted).toBeGreaterThan(100);
  });

  it('fit the span shown, every coming harvest within it', () => {
    const { from, to } = spanOf({ sheet, asOf, rows, apart: [] }, null);
    expect(from).toBeLessThan(asOf);
    for (const { nextHarvest } of rows) if (nextHarvest !== null) expect(nextHarvest).toBeLessThan(to);
    expect(toIsoDay(spanOf({ sheet, asOf, rows, apart: [] }, 6).to)).toBe('2026-08-15');
  });
});

describe('stretches of a bar', () => {
  const season = { from: { month: 8, day: 12 }, to: { month: 9, day: 25 } };
  const shown = (from: string, to: string, of: typeof season | null) =>
    stretches(day(from), day(to), of).map((each) => [toIsoDay(each.from), toIsoDay(each.to), each.resting]);

  it('rest in the fresh season, its last day included', () => {
    expect(shown('2026-02-15', '2026-10-01', season)).toEqual([
      ['2026-02-15', '2026-08-12', false],
      ['2026-08-12', '2026-09-26', true],
      ['2026-09-26', '2026-10-01', false],
    ]);
  });

  it('join without a gap over years, also where the season spans the new year', () => {
    const south = { from: { month: 12, day: 10 }, to: { month: 2, day: 29 } };
    const cut = shown('2026-01-15', '2028-06-01', south);
    expect(cut.map(([from, , resting]) => [from, resting])).toEqual([
      ['2026-01-15', true],
      ['2026-03-01', false],
      ['2026-12-10', true],
      ['2027-03-01', false],
      ['2027-12-10', true],
      ['2028-03-01', false],
    ]);
    expect(cut.slice(1).map(([from]) => from)).toEqual(cut.slice(0, -1).map(([, to]) => to));
  });

  it('are one without a season, and none without days', () => {
    expect(shown('2026-02-15', '2026-10-01', null)).toEqual([['2026-02-15', '2026-10-01', false]]);
    expect(shown('2026-02-15', '2026-02-15', season)).toEqual([]);
  });
});
