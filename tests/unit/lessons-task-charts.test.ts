import { describe, expect, it } from 'vitest';
import { LEVELS, makeSheet } from '../../src/lessons/index.js';
import { demoNumbers } from '../support/lesson-books.js';

describe('a sheet on charts from a small book', () => {
  const garden = demoNumbers('school-garden');

  it.each(LEVELS)('at level %i shows no chart twice', (level) => {
    for (let seed = 0; seed < 30; seed++) {
      const { problems } = makeSheet(garden, { topics: ['charts'], level, seed: String(seed), count: 6 });
      const titles = problems.map(({ chart }) => chart?.title);
      expect(titles).toHaveLength(6);
      expect([seed, new Set(titles).size]).toEqual([seed, 6]);
    }
  });

  it('draws its bars from several sheets of the book, with the numbers that stand there', () => {
    const bars = new Map<string, readonly { label: string; value: number }[]>();
    for (let seed = 0; seed < 60; seed++)
      for (const { chart } of makeSheet(garden, {
        topics: ['charts'],
        level: 2,
        seed: String(seed),
        count: 6,
      }).problems)
        if (chart) bars.set(chart.title, chart.bars);
    // Harvest, Beds, Shelf, Draws and Facts of the school garden, as written in its file.
    expect(bars.get('Pounds of tomatoes that came in, by day')?.map(({ value }) => value)).toEqual([
      31, 34, 24,
    ]);
    expect(bars.get('Plants in the plan, by crop')?.map(({ value }) => value)).toEqual([12, 80, 240, 120, 8]);
    expect(bars.get('Quart freezer bags of tomatoes put up, by day')?.map(({ value }) => value)).toEqual([
      8, 10, 6,
    ]);
    expect(bars.get('Pounds of tomatoes, by season')).toEqual([
      { label: '2024', value: 66 },
      { label: '2025', value: 89 },
    ]);
    expect([...bars.keys()].some((title) => title.endsWith('eaten, by month'))).toBe(true);
  });
});
