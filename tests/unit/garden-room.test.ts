import { describe, expect, it } from 'vitest';
import { planRoom, type RoomLine, roomNow } from '../../src/planning/garden/index.js';
import { batch, batchesOf, bench } from './garden-make.js';
import { day } from './planning-make.js';

const jars = (more: Partial<RoomLine> = {}): RoomLine => ({
  food: 'tomato',
  way: 'canned',
  countedIn: 'quart jar',
  lots: [{ container: 'quart jar', left: 40 }],
  use: 1,
  season: null,
  harvest: { begins: day('2026-08-12'), ends: day('2026-09-18') },
  toPutUp: 60,
  over: null,
  ...more,
});
const none = batchesOf([]);
const room = (lines: RoomLine[], shelfRoom: number | null = 60, batches = none) =>
  planRoom({ lines, batches, household: bench('2026-02-01', { shelfRoom, freezerRoom: 12 }) });

describe('room over the year', () => {
  it('in February one sees that August’s jars will not fit', () => {
    const plan = room([jars()]);
    // 40 eaten at 1 a week: 13 left by early August; 60 more do not fit on 60.
    expect(plan.now.shelf).toBe(40);
    expect(plan.weeks[0]!.shelf).toBe(39);
    expect(plan.shelfFull).not.toBeNull();
    expect(plan.shelfFull!.from).toBeGreaterThan(day('2026-08-20'));
    expect(plan.shelfFull!.from).toBeLessThanOrEqual(day('2026-09-18'));
    expect(room([jars()], 80).shelfFull).toBeNull();
    expect(room([jars()], null).shelfFull).toBeNull();
  });
  it('counts jars as quarts by what they hold', () => {
    const mixed = jars({
      lots: [
        { container: 'pint jar', left: 10 },
        { container: 'half-gallon jar', left: 3 },
      ],
    });
    expect(roomNow([mixed])).toEqual({ shelf: 11, freezer: 0 });
  });
  it('does not eat from the shelf in the fresh season', () => {
    const fresh = { from: { month: 1, day: 1 }, to: { month: 12, day: 31 } };
    expect(room([jars({ season: fresh, toPutUp: 0 })]).weeks.at(-1)!.shelf).toBe(40);
  });
  it('a dated batch comes in on its day and is not counted again', () => {
    const batches = batchesOf([
      batch('b', { crops: [{ crop: 'tomato', pounds: 180 }], date: day('2026-08-20') }),
    ]);
    const plan = room([jars({ use: 0, lots: [] })], 1000, batches);
    const before = plan.weeks.find(({ from }) => from + 6 >= day('2026-08-19'))!;
    expect(plan.weeks.filter(({ from }) => from < before.from - 7).every(({ shelf }) => shelf === 0)).toBe(
      true,
    );
    expect(plan.weeks.at(-1)!.shelf).toBeCloseTo(60, 9);
  });
  it('frozen food goes by pounds to the cubic foot', () => {
    const beef = jars({
      food: 'beef',
      way: 'frozen',
      countedIn: 'pound',
      lots: [{ container: 'pound', left: 311 }],
      use: null,
      toPutUp: null,
    });
    expect(room([beef]).now.freezer).toBeCloseTo(10, 9);
    // A pint weighs about a pound: common practice.
    const peas = jars({
      food: 'green pea',
      way: 'frozen',
      countedIn: 'quart freezer bag',
      lots: [{ container: 'quart freezer bag', left: 31.1 }],
      use: null,
      toPutUp: null,
    });
    expect(room([peas]).now.freezer).toBeCloseTo(2, 9);
  });
  it('says which surplus to eat first, the one that makes most room before all', () => {
    const plan = room(
      [
        jars({ over: 10 }),
        jars({
          food: 'peach',
          over: 24,
          toPutUp: 20,
          countedIn: 'pint jar',
          lots: [{ container: 'pint jar', left: 30 }],
        }),
        jars({ food: 'beet', over: 0 }),
      ],
      100,
    );
    expect(plan.eatFirst.map(({ food }) => food)).toEqual(['peach', 'tomato']);
    expect(plan.eatFirst[0]).toMatchObject({ frees: 12, over: 24 });
    expect(plan.eatFirst[0]!.pace).toBeGreaterThan(0);
  });
  it('food in containers of unknown size is left out with a reason', () => {
    const odd = jars({ way: 'frozen', countedIn: 'bin', lots: [{ container: 'bin', left: 2 }] });
    expect(room([odd]).leftOut[0]?.problem.mend).toMatch(/pounds|holds/);
  });
});
