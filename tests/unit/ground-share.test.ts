import { describe, expect, it } from 'vitest';
import { crop, plantsOf, share } from './ground-make.js';

describe('the smallest share as large as possible', () => {
  // Aumann and Maschler, "Game Theoretic Analysis of a Bankruptcy Problem from the Talmud", Journal of Economic
  // Theory 36 (1985): claims of 100, 200 and 300 on an estate of 300 are divided 50, 100, 150.
  it('divides 300 among claims of 100, 200 and 300 as 50, 100 and 150', async () => {
    const plan = await share([crop('a', 100, 1), crop('b', 200, 1), crop('c', 300, 1)], 300);
    expect(plantsOf(plan)).toEqual([50, 100, 150]);
    expect(plan.leastShare).toBe(0.5);
    expect(plan.givenUp).toMatchObject({ plants: 300, servings: 300 });
  });

  // The same claims on 100: in parts 16 2/3, 33 1/3, 50. By hand for whole plants: 17, 33, 50 are 100 in all and
  // the smallest share is 33/200; the next share up, 50/300, would take 17 + 34 + 50 = 101.
  it('keeps to whole plants where the even parts are none', async () => {
    const plan = await share([crop('a', 100, 1), crop('b', 200, 1), crop('c', 300, 1)], 100);
    expect(plantsOf(plan)).toEqual([17, 33, 50]);
    expect(plan.leastShare).toBe(33 / 200);
  });

  // Balinski and Young, "Fair Representation" (1982), the five states for whom five methods give five
  // apportionments of 26 seats. That of Adams makes the fewest seats a head as many as can be: 9, 7, 5, 3, 2.
  it('gives seats as the method of Adams does', async () => {
    const people = [9061, 7179, 5259, 3319, 1182];
    const plan = await share(
      people.map((n, i) => crop(`s${i}`, n, 1)),
      26,
    );
    expect(plantsOf(plan)).toEqual([9, 7, 5, 3, 2]);
  });

  it('goes by ground, not by plants: squash at 4 feet and carrots at 2 inches are covered alike', async () => {
    const plan = await share([crop('squash', 10, 4), crop('carrots', 240, 2 / 12)], 40);
    expect(plantsOf(plan)).toEqual([5, 120]);
    expect(plan.used).toBe(40);
  });

  it('leaves out a crop of which not one plant has room, and shares among the others', async () => {
    const plan = await share(
      [crop('walnut', 1, 40), crop('beans', 60, 0.5, { servingsPerPlant: 9 }), crop('kale', 20, 1.5)],
      30,
    );
    expect(plantsOf(plan)).toEqual([0, 30, 10]);
    expect(plan.crops[0]).toMatchObject({ noRoom: true, share: 0 });
    expect(plan.crops[0]?.words).toContain('no room');
  });
});

describe('then the most servings', () => {
  // Cormen, Leiserson, Rivest and Stein, "Introduction to Algorithms", on greedy strategies: room for 50, things of
  // 10, 20 and 30 worth 60, 100 and 120. Best are the last two, 220; taking the best for its size first gives 160.
  it('fills what is left as the textbook knapsack', async () => {
    const things = [
      [10, 60],
      [20, 100],
      [30, 120],
    ] as const;
    const plan = await share(
      things.map(([size, servings], i) => crop(`t${i}`, 1, size, { servingsPerPlant: servings })),
      50,
    );
    expect(plantsOf(plan)).toEqual([0, 1, 1]);
    expect(plan.givenUp.servings).toBe(60);
    expect(plan.proved).toBe(true);
  });

  it('counts servings by their weight', async () => {
    const two = (weight: number) => [
      crop('peas', 1, 2, { servingsPerPlant: 5 }),
      crop('chard', 1, 2, { servingsPerPlant: 3, weight }),
    ];
    expect(plantsOf(await share(two(1), 3))).toEqual([1, 0]);
    expect(plantsOf(await share(two(2), 3))).toEqual([0, 1]);
  });

  it('goes by pounds where servings are not known of all crops and pounds are', async () => {
    const plan = await share(
      [
        crop('peas', 1, 2, { servingsPerPlant: 50, poundsPerPlant: 1 }),
        crop('chard', 1, 2, { servingsPerPlant: null, poundsPerPlant: 4 }),
      ],
      3,
    );
    expect(plan.reckonedBy).toBe('pounds');
    expect(plantsOf(plan)).toEqual([0, 1]);
    expect(plan.givenUp).toEqual({ plants: 1, pounds: 1, servings: 50 });
  });

  it('never guesses what a plant gives, says so, and still uses ground that others leave', async () => {
    const plan = await share([crop('peas', 4, 1), crop('okra', 4, 1, { servingsPerPlant: null })], 5);
    expect(plan.crops.map(({ evenPlants }) => evenPlants)).toEqual([2, 2]);
    expect(plantsOf(plan)).toEqual([3, 2]);
    expect(plan.givenUp).toEqual({ plants: 3, pounds: null, servings: null });
    expect(plan.words.join(' ')).toContain('not known for okra');
    const unknown = { servingsPerPlant: null };
    const both = await share([crop('okra', 4, 1, unknown), crop('leek', 4, 1, unknown)], 5);
    expect(plantsOf(both)).toEqual([3, 2]);
  });
});

describe('an order given by the household', () => {
  const garden = [
    crop('tomatoes', 10, 2, { servingsPerPlant: 1 }),
    crop('beans', 40, 0.5, { servingsPerPlant: 50, rank: 2 }),
    crop('squash', 5, 4, { servingsPerPlant: 1, rank: 1 }),
  ];

  it('covers the first crop fully before the next gets any', async () => {
    expect(plantsOf(await share(garden, 20))).toEqual([0, 0, 5]);
    expect(plantsOf(await share(garden, 30))).toEqual([0, 20, 5]);
    expect(plantsOf(await share(garden, 50))).toEqual([5, 40, 5]);
  });

  it('lets later crops have ground on which no plant of an earlier one can stand', async () => {
    expect(plantsOf(await share(garden, 11))).toEqual([0, 6, 2]);
  });

  it('shares among crops of one place, and says that there is an order', async () => {
    const plan = await share(
      [crop('a', 10, 1, { rank: 1 }), crop('b', 20, 1, { rank: 1 }), crop('c', 50, 1)],
      15,
    );
    expect(plantsOf(plan)).toEqual([5, 10, 0]);
    expect(plan.words.join(' ')).toContain('in the order given');
  });

  it('takes the less ground of two choices that give as much, for the crops that come after', async () => {
    const first = { rank: 1, servingsPerPlant: 5 };
    const plan = await share([crop('a', 1, 4, first), crop('b', 1, 2, first), crop('c', 9, 1)], 5);
    expect(plantsOf(plan)).toEqual([0, 1, 3]);
  });

  it('gives the least asked for before all, whatever the order', async () => {
    const plan = await share([crop('a', 10, 1, { rank: 1 }), crop('b', 10, 1, { least: 4 })], 10);
    expect(plantsOf(plan)).toEqual([6, 4]);
  });
});

describe('what it says', () => {
  it('says that all fits, and gives all', async () => {
    const plan = await share([crop('a', 3, 2), crop('b', 0, 1)], 6);
    expect(plan).toMatchObject({ fits: true, used: 6, needed: 6, leastShare: 1, proved: true });
    expect(plan.words).toEqual(['All the plants wanted fit: they take 6 feet of row of 6.']);
    expect(plan.crops.map(({ words }) => words)).toEqual(['a: all of 3 plants.', 'b: none wanted.']);
  });

  it('lists what is given up in plants, pounds and servings', async () => {
    const plan = await share([crop('tomatoes', 31, 2, { poundsPerPlant: 8, servingsPerPlant: 16 })], 38);
    expect(plan.crops[0]?.words).toBe(
      'tomatoes: 19 of 31 plants (61 %); given up: 12 plants, 96 pounds, 192 servings.',
    );
    expect(plan.words[0]).toBe('The plants wanted take 62 feet of row, and there are 38.');
  });

  it('fits to the inch in spite of binary fractions', async () => {
    // 30 plants at 4 inches are 10 feet, though 30 × (4/12) is not exactly so in every order of summing.
    const plan = await share([crop('a', 30, 4 / 12), crop('b', 7, 0.1), crop('c', 1, 0.2)], 10.9);
    expect(plan.fits).toBe(true);
    expect(plan.used).toBe(10.9);
  });

  it('has nothing to share where nothing is wanted', async () => {
    expect(await share([], 10)).toMatchObject({ fits: true, used: 0, leastShare: null });
    expect((await share([crop('a', 0, 1)], 10)).words).toEqual(['No plants are wanted.']);
  });
});
