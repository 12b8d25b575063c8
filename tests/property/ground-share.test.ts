import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GroundCrop } from '../../src/planning/ground/index.js';
import { crop, plantsOf, share } from '../unit/ground-make.js';

const runs = Number(process.env.CROFTSHEET_RUNS ?? 200);
const GRACE = 1 + 1e-9;

interface Made {
  readonly crops: readonly GroundCrop[];
  readonly ground: number;
}

/** Crops with known servings, and ground from the least plants asked for to a little more than all. */
const gardens = (most: { crops: number; plants: number }, ranks: readonly (number | null)[]) =>
  fc
    .record({
      crops: fc.array(
        fc.record({
          wanted: fc.integer({ min: 0, max: most.plants }),
          groundPerPlant: fc.oneof(
            fc.integer({ min: 1, max: 48 }).map((inches) => inches / 12),
            fc.integer({ min: 1, max: 40 }).map((tenths) => tenths / 10),
            fc.double({ min: 0.05, max: 4, noNaN: true }),
          ),
          // Few different numbers, so that different choices often give the same servings.
          servingsPerPlant: fc.oneof(
            fc.constantFrom(1, 2, 3),
            fc.integer({ min: 1, max: 40 }).map((n) => n / 2),
          ),
          weight: fc.constantFrom(1, 1, 2, 0.5, null),
          rank: fc.constantFrom(...ranks),
          leastPart: fc.constantFrom(0, 0, 0, 0.3, 1),
        }),
        { minLength: 1, maxLength: most.crops },
      ),
      part: fc.double({ min: 0, max: 1.05, noNaN: true }),
    })
    .map(({ crops, part }): Made => {
      const made = crops.map(({ leastPart, wanted, groundPerPlant, ...more }, i) =>
        crop(`c${i}`, wanted, groundPerPlant, { ...more, least: Math.floor(wanted * leastPart) }),
      );
      const [least, all] = [
        groundOf(made, leasts(made)),
        groundOf(
          made,
          made.map(({ wanted }) => wanted),
        ),
      ];
      return { crops: made, ground: Math.max(0.01, least + (all - least) * part) };
    });

const leasts = (crops: readonly GroundCrop[]): number[] => crops.map(({ least }) => least ?? 0);
const groundOf = (crops: readonly GroundCrop[], plants: readonly number[]): number =>
  crops.reduce((sum, { groundPerPlant }, i) => sum + groundPerPlant * (plants[i] ?? 0), 0);
const placeOf = ({ rank }: GroundCrop): number => rank ?? Number.POSITIVE_INFINITY;

/** What is wanted of a sharing, most important first: for each place the smallest share, the servings, little ground. */
function merits(crops: readonly GroundCrop[], ground: number, plants: readonly number[]): number[] {
  const places = [...new Set(crops.map(placeOf))].sort((a, b) => a - b);
  return places.flatMap((place, at) => {
    const before = crops.map((each, i) => (placeOf(each) < place ? (plants[i] ?? 0) : (each.least ?? 0)));
    const left = ground * GRACE - groundOf(crops, before);
    let smallest = 1;
    let servings = 0;
    let taken = 0;
    crops.forEach((each, i) => {
      if (placeOf(each) !== place) return;
      const n = plants[i] ?? 0;
      const stuck = each.groundPerPlant > left || (each.least ?? 0) === each.wanted;
      if (!stuck) smallest = Math.min(smallest, n / each.wanted);
      servings += n * (each.servingsPerPlant ?? 0) * (each.weight ?? 1);
      taken += n * each.groundPerPlant;
    });
    return at < places.length - 1 ? [smallest, servings, -taken] : [smallest, servings];
  });
}

/** Above 0 where `a` is better, 0 where they are alike but for the crumbs of binary arithmetic. */
function compare(a: readonly number[], b: readonly number[]): number {
  for (const [i, mine] of a.entries()) {
    const theirs = b[i] ?? 0;
    if (Math.abs(mine - theirs) > 1e-8 * Math.max(1, Math.abs(mine))) return mine - theirs;
  }
  return 0;
}

/** The merits of the best of all sharings in whole plants, tried one by one. */
function bestOfAll({ crops, ground }: Made): number[] {
  let best: number[] | null = null;
  const plants = leasts(crops);
  const tryFrom = (i: number): void => {
    const each = crops[i];
    if (!each) {
      const mine = merits(crops, ground, plants);
      if (best === null || compare(mine, best) > 0) best = mine;
      return;
    }
    for (let n = each.least ?? 0; n <= each.wanted; n += 1) {
      plants[i] = n;
      if (groundOf(crops, plants) > ground * GRACE) break;
      tryFrom(i + 1);
    }
    plants[i] = each.least ?? 0;
  };
  tryFrom(0);
  return best ?? [];
}

describe('sharing ground', () => {
  it('is as good as the best of all sharings, tried one by one', async () => {
    await fc.assert(
      fc.asyncProperty(gardens({ crops: 4, plants: 6 }, [null, null, 1, 2]), async (made) => {
        const plan = await share(made.crops, made.ground, { milliseconds: 20_000 });
        expect(plan.proved).toBe(true);
        const mine = merits(made.crops, made.ground, plantsOf(plan));
        const best = bestOfAll(made);
        expect(compare(mine, best), `${mine} against ${best}`).toBe(0);
      }),
      { numRuns: runs },
    );
  });

  it('fits the ground, in whole plants between the least and those wanted, and leaves none that would fit', async () => {
    await fc.assert(
      fc.asyncProperty(
        gardens({ crops: 25, plants: 80 }, [null, null, 1, 2, 3]),
        async ({ crops, ground }) => {
          const plan = await share(crops, ground, { milliseconds: 100 });
          const used = groundOf(crops, plantsOf(plan));
          expect(used).toBeLessThanOrEqual(ground * GRACE);
          expect(plan.used).toBeLessThanOrEqual(ground);
          plan.crops.forEach(({ plants, givenUp, share: covered }, i) => {
            const { wanted = 0, least, groundPerPlant = 0 } = crops[i] ?? {};
            expect(Number.isInteger(plants)).toBe(true);
            expect(plants).toBeGreaterThanOrEqual(least ?? 0);
            expect(plants + givenUp.plants).toBe(wanted);
            expect(covered).toBe(wanted === 0 ? 1 : plants / wanted);
            if (plants < wanted) expect(used + groundPerPlant).toBeGreaterThan(ground * (1 - 1e-9));
          });
          expect(plan.fits).toBe(plan.givenUp.plants === 0);
        },
      ),
      { numRuns: runs },
    );
  });

  it('never covers the least covered crop less when there is more ground', async () => {
    await fc.assert(
      fc.asyncProperty(
        gardens({ crops: 12, plants: 50 }, [null]),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        async ({ crops, ground }, more) => {
          const small = await share(crops, ground, { milliseconds: 20 });
          const large = await share(crops, ground * more, { milliseconds: 20 });
          expect(large.leastShare ?? 1).toBeGreaterThanOrEqual(small.leastShare ?? 1);
        },
      ),
      { numRuns: runs },
    );
  });

  it('gives ground to a later crop only where no plant of an earlier one could stand on it', async () => {
    await fc.assert(
      fc.asyncProperty(gardens({ crops: 8, plants: 30 }, [null]), async (made) => {
        const crops = made.crops.map((each, i) => ({ ...each, rank: i + 1 }));
        const plants = plantsOf(await share(crops, made.ground));
        crops.forEach((each, i) => {
          if ((plants[i] ?? 0) === each.wanted) return;
          const others = plants.map((n, k) => (k > i ? (crops[k]?.least ?? 0) : n));
          expect(groundOf(crops, others) + each.groundPerPlant).toBeGreaterThan(made.ground * (1 - 1e-9));
        });
      }),
      { numRuns: runs },
    );
  });

  it('is the same by the foot and by the inch', async () => {
    await fc.assert(
      fc.asyncProperty(gardens({ crops: 6, plants: 20 }, [null, 1]), async ({ crops, ground }) => {
        const inInches = crops.map((each) => ({ ...each, groundPerPlant: each.groundPerPlant * 12 }));
        const [one, other] = [await share(crops, ground), await share(inInches, ground * 12)];
        const by = (plan: typeof one) => merits(crops, ground, plantsOf(plan));
        if (one.proved && other.proved) expect(compare(by(one), by(other))).toBe(0);
      }),
      { numRuns: runs },
    );
  });
});
