import { describe, expect, it } from 'vitest';
import { readRunway } from '../../components/runway/runway-model.js';
import { seasonRows } from '../../components/season/season-model.js';
import { readPlantings } from '../../components/season/season-read.js';
import { blankBook } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { fromIsoDay, toIsoDay } from '../../src/planning/dates.js';
import { formatMonthDay } from '../../src/planning/parse-date.js';

const today = fromIsoDay('2026-02-15');

/** Beans in jars, and a bed of beans; the fresh season is left to Beds. */
function beans(): { live: LiveBook; beds: string; bed: string } {
  const live = openBook(blankBook(), { today: () => (today.ok ? today.value : 0) });
  for (const [setting, typed] of [
    ['last_frost', '05-24'],
    ['first_frost', '09-18'],
  ] as const)
    live.apply({ do: 'set setting', setting, typed });
  live.insertRows('shelf', [
    { food: 'Green beans', way: 'canned', container: 'pint jar', count: 40, put_up_on: '2025-08-20' },
  ]);
  live.insertRows('foods', [
    { food: 'Green beans', way: 'canned', counted_in: 'pint jar', crops: 'green bean 0.9', own_use: 1 },
  ]);
  const beds = live.sheetOfKind('beds')!;
  const [bed = ''] = live.insertRows(beds, [
    { crop: 'green bean', variety: 'bush', how_started: 'direct' },
    { crop: 'tomato' },
  ]).rows;
  return { live, beds, bed };
}

describe('pictures of a book with Beds', () => {
  it('show each planting on the days that its sheet shows', () => {
    const { live, beds, bed } = beans();
    const [first, second] = readPlantings(live);
    const shown = (column: string) => live.value(beds, bed, column);
    expect(first).toMatchObject({
      crop: 'green bean',
      variety: 'bush',
      startOn: shown('start_on'),
      setOutOn: null,
      harvestFrom: shown('harvest_from'),
      harvestTo: shown('harvest_to'),
      cell: { sheet: beds, row: bed },
    });
    expect(first!.startOn).toMatch(/^2026-/);
    expect(seasonRows([second!])[0]!.what).toBe('start indoors');
  });

  it('put up as they harvest what a food still wants on the shelf', () => {
    const { live } = beans();
    const [bean, tomato] = readPlantings(live);
    expect([bean!.putUpFrom, bean!.putUpTo]).toEqual([bean!.harvestFrom, bean!.harvestTo]);
    expect(tomato!.putUpFrom).toBeNull();
  });

  it('count from the day of sowing once it is written', () => {
    const { live, beds, bed } = beans();
    live.set(beds, bed, 'sown_on', '2026-06-10');
    const [row] = seasonRows(readPlantings(live));
    expect(row).toMatchObject({ done: true, what: 'sow' });
    expect(toIsoDay(row!.begin!)).toBe('2026-06-10');
  });

  it('rest a bar in the fresh season that Beds gives', () => {
    const { live, beds, bed } = beans();
    const [row] = readRunway(live)!.rows;
    const day = (column: string) => String(live.value(beds, bed, column)).slice(5);
    expect(formatMonthDay(row!.season!.from)).toBe(day('harvest_from'));
    expect(formatMonthDay(row!.season!.to)).toBe(day('harvest_to'));
  });
});
