import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenShare } from '../../src/planning/ground/even-share.js';
import type { GroundCrop } from '../../src/planning/ground/index.js';
import { loadSolver, type Solver } from '../../src/planning/ground/solver.js';
import { crop, plantsOf, share } from './ground-make.js';

/** Spacings in the row as seed packets print them, in inches. */
const INCHES = [1, 2, 3, 4, 6, 8, 9, 12, 18, 24, 36, 48];

/** A garden of `n` crops of ordinary sizes, the same for the same seed. */
function garden(n: number, seed: number): { crops: GroundCrop[]; inches: number } {
  const [made] = fc.sample(
    fc.record({
      crops: fc.array(
        fc.record({
          at: fc.nat(INCHES.length - 1),
          plants: fc.integer({ min: 1, max: 60 }),
          food: fc.nat(30),
        }),
        { minLength: n, maxLength: n },
      ),
      part: fc.integer({ min: 20, max: 90 }),
    }),
    { numRuns: 1, seed },
  );
  const crops = (made?.crops ?? []).map(({ at, plants, food }, i) =>
    crop(`c${i}`, plants, (INCHES[at] ?? 1) / 12, { servingsPerPlant: food + 1 }),
  );
  const all = crops.reduce((sum, { wanted, groundPerPlant }) => sum + wanted * groundPerPlant * 12, 0);
  return { crops, inches: Math.floor((all * (made?.part ?? 50)) / 100) };
}

const inchesOf = (each: GroundCrop): number => Math.round(each.groundPerPlant * 12);

/** The greatest share that all can have, by trying every share that whole plants can make. */
function greatestShare(crops: readonly GroundCrop[], inches: number): readonly [plants: number, of: number] {
  const shares = crops.flatMap(({ wanted }) =>
    Array.from({ length: wanted + 1 }, (_, k) => [k, wanted] as const),
  );
  const fits = ([k, of]: readonly [number, number]): boolean =>
    crops.reduce((sum, each) => sum + inchesOf(each) * fewest(each, k, of), 0) <= inches;
  return shares.filter(fits).reduce((a, b) => (b[0] * a[1] > a[0] * b[1] ? b : a));
}

/** Fewest plants for a share of k/of, in whole numbers throughout. */
const fewest = ({ wanted }: GroundCrop, k: number, of: number): number =>
  Math.floor((k * wanted + of - 1) / of);

/** Most servings that up to so many plants more of each can give on so many inches: inch by inch, plant by plant. */
function mostServings(
  items: readonly { inches: number; servings: number; most: number }[],
  room: number,
): number {
  const best = new Array<number>(room + 1).fill(0);
  for (const { inches, servings, most } of items) {
    for (let plant = 0; plant < Math.min(most, Math.floor(room / inches)); plant += 1) {
      for (let at = room; at >= inches; at -= 1) {
        best[at] = Math.max(best[at] ?? 0, (best[at - inches] ?? 0) + servings);
      }
    }
  }
  return best[room] ?? 0;
}

describe.each([5, 20, 60])('gardens of %i crops', (n) => {
  it.each([1, 2, 3, 4, 5, 6])(
    'have the share and the servings of an exact solution (garden %i)',
    async (seed) => {
      const { crops, inches } = garden(n, seed);
      const plan = await share(crops, inches / 12, { milliseconds: 20_000 });
      const [k, of] = greatestShare(crops, inches);
      expect(plan.leastShare).toBe(k / of);

      const even = crops.map((each) => fewest(each, k, of));
      const evenServings = crops.reduce(
        (sum, each, i) => sum + (each.servingsPerPlant ?? 0) * (even[i] ?? 0),
        0,
      );
      const left = inches - crops.reduce((sum, each, i) => sum + inchesOf(each) * (even[i] ?? 0), 0);
      const items = crops.map((each, i) => ({
        inches: inchesOf(each),
        servings: each.servingsPerPlant ?? 0,
        most: each.wanted - (even[i] ?? 0),
      }));
      const plants = plantsOf(plan);
      const servings = crops.reduce(
        (sum, each, i) => sum + (each.servingsPerPlant ?? 0) * (plants[i] ?? 0),
        0,
      );
      expect(plan.proved).toBe(true);
      expect(servings).toBe(evenServings + mostServings(items, left));
    },
  );
});

describe('what the solver answers is checked', () => {
  const beds = [
    { size: 1, wanted: 7, least: 0 },
    { size: 2, wanted: 5, least: 1 },
    { size: 0.5, wanted: 30, least: 3 },
  ];

  it.each([0.5, 0.999, 1, 1.001, 1.5])(
    'whole plants come out alike when its share is off by × %f',
    async (by) => {
      const solver = await loadSolver();
      const off: Solver = {
        solve(program, milliseconds) {
          const answer = solver.solve(program, milliseconds);
          return answer.status === 'none' ? answer : { ...answer, values: answer.values.map((n) => n * by) };
        },
      };
      // By hand: 4/7, 3/5 and 18/30 take 4 + 6 + 9 = 19; the next share, 3/5, takes 5 + 6 + 9 = 20.
      expect(evenShare(beds, 19, off)).toEqual([4, 3, 18]);
      expect(evenShare(beds, 20, off)).toEqual([5, 3, 18]);
    },
  );

  it('no answer is no sharing', () => {
    expect(evenShare(beds, 19, { solve: () => ({ status: 'none' }) })).toBeNull();
  });
});

describe('crops all alike', () => {
  // Room for 13 and a bit: a search that tries to use the bit goes through all choices of 13 out of 30.
  it('are soon chosen from, and proved', async () => {
    const alike = Array.from({ length: 30 }, (_, i) => crop(`c${i}`, 1, 1.5));
    const plan = await share(alike, 20.2);
    expect(plan.givenUp.plants).toBe(17);
    expect(plan.proved).toBe(true);
  });
});
