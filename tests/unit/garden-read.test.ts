import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/book/index.js';
import { batches } from '../../src/book/kinds/batches.js';
import { beds } from '../../src/book/kinds/beds.js';
import { facts } from '../../src/book/kinds/facts.js';
import { harvest } from '../../src/book/kinds/harvest.js';
import { supplies } from '../../src/book/kinds/supplies.js';
import { readBatch, readFact, readHarvest, readPlanting, readSupply } from '../../src/live/read-garden.js';
import { day } from './planning-make.js';

const cells =
  (values: Record<string, CellValue>) =>
  (column: string): CellValue =>
    values[column] ?? null;

describe('rows as written become rows as planned', () => {
  it('a planting', () => {
    const { typed, problems } = readPlanting(
      'p',
      cells({
        crop: 'Tomatoes',
        variety: 'Bonny',
        how_started: 'Indoors',
        plants: 24,
        sown_on: '2026-04-05',
        packet_year: 2024,
        own_from: '08-10',
      }),
    );
    expect(problems).toEqual({});
    expect(typed).toMatchObject({
      crop: 'tomato',
      how: 'indoors',
      plants: 24,
      sownOn: day('2026-04-05'),
      packetYear: 2024,
      ownFrom: { month: 8, day: 10 },
    });
  });
  it('a tree in its nth year', () => {
    expect(
      readPlanting('p', cells({ crop: 'apple', how_started: 'tree in its 3rd year' })).typed,
    ).toMatchObject({
      how: 'tree',
      nthYear: 3,
    });
    expect(readPlanting('p', cells({ crop: 'apple', how_started: 'tree', nth_year: 5 })).typed.nthYear).toBe(
      5,
    );
  });
  it('a batch with its crops', () => {
    const { typed } = readBatch(
      'b',
      cells({
        food: 'Salsa',
        way: 'canned',
        container: 'pints',
        pounds_in: 'tomato 21; onion 3 lb',
        filled: 14,
      }),
    );
    expect(typed).toMatchObject({
      food: 'salsa',
      foodName: 'Salsa',
      container: 'pint jar',
      crops: [
        { crop: 'tomato', pounds: 21 },
        { crop: 'onion', pounds: 3 },
      ],
    });
  });
  it('harvest, supplies and facts', () => {
    expect(
      readHarvest('h', cells({ date: '2026-08-20', crop: 'green beans', amount: 2, unit: 'bushels' })).typed,
    ).toMatchObject({
      crop: 'snap bean',
      amount: 2,
      unit: 'bushel',
    });
    expect(
      readSupply('s', cells({ item: 'Salt', used_for: 'Tomatoes', per_container: 0.25 })).typed,
    ).toMatchObject({
      usedFor: 'tomato',
      perContainer: 0.25,
    });
    expect(
      readFact('f', cells({ figure: 'cabbage, weeks from the last frost', own_value: -5 })).typed.ownValue,
    ).toBe(-5);
  });
  it('what cannot be read counts as blank and says so', () => {
    const bad = readPlanting(
      'p',
      cells({ crop: 'tomato', plants: 'many', how_started: 'by hope', sown_on: '30 Feb', packet_year: 12 }),
    );
    expect(Object.keys(bad.problems).sort()).toEqual(['how_started', 'packet_year', 'plants', 'sown_on']);
    expect(bad.typed).toMatchObject({ plants: null, how: null, sownOn: null, packetYear: null });
    expect(readBatch('b', cells({ pounds_in: 'tomato; 3', filled: 4 })).problems).toHaveProperty('food');
    expect(readHarvest('h', cells({ amount: 4 })).problems).toHaveProperty('crop');
  });
});

describe('the kinds', () => {
  const all = [beds, harvest, batches, supplies, facts];
  it('explain every column, and give each figure with a range its ends', () => {
    for (const kind of all) {
      const ids = kind.columns.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const { id, help, range } of kind.columns) {
        expect(`${kind.kind}.${id}: ${help}`).toMatch(/: .{12,}[.…]$/);
        for (const end of range ?? []) expect(ids).toContain(end);
      }
    }
  });
});
