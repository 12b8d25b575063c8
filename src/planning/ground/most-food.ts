import { roundSig } from '../../units/index.js';
import type { Answer, Program, Solver } from './solver.js';
import { inWholeParts } from './whole-ground.js';

/** Up to `most` plants more of a crop, each taking `size` of ground and worth `value` (more than 0). */
export interface More {
  readonly size: number;
  readonly value: number;
  readonly most: number;
}

/** How many plants more of each. */
export interface Choice {
  readonly plants: readonly number[];
  /** False when the time ran out first. */
  readonly proved: boolean;
  /** No choice can be worth more than this above the one chosen; 0 when proved. */
  readonly mayBeMissing: number;
}

const sumOf = (amounts: readonly number[], plants: readonly number[]): number =>
  amounts.reduce((sum, each, i) => sum + each * (plants[i] ?? 0), 0);

/** Whole plants out of the solver's numbers, or null where they break a limit. */
function wholePlants(answer: Answer, most: readonly number[], sizes: readonly number[], room: number) {
  if (answer.status === 'none') return null;
  const plants = most.map((top, i) => Math.min(top, Math.max(0, Math.round(answer.values[i] ?? 0))));
  return sumOf(sizes, plants) <= room ? plants : null;
}

/** By most value for the ground, as many as fit: near the best, and always within the room. */
function byValueForGround(items: readonly More[], sizes: readonly number[], room: number): number[] {
  const plants = items.map(() => 0);
  let left = room;
  const order = items.map((_, i) => i).sort((a, b) => worth(items[b]) - worth(items[a]));
  for (const i of order) {
    const size = sizes[i] ?? 1;
    const n = Math.min(items[i]?.most ?? 0, Math.floor(left / size));
    plants[i] = n;
    left -= n * size;
  }
  return plants;
}

const worth = (item: More | undefined): number => (item ? item.value / item.size : 0);

/**
 * The plants that are together worth most within `room` and, with `leastGround`, among those the ones that take
 * least ground. `timeLeft` gives the milliseconds that remain; without any, a good choice that is not proved is answered.
 */
export function mostFood(
  items: readonly More[],
  room: number,
  solver: Solver,
  timeLeft: () => number,
  leastGround: boolean,
): Choice {
  const all = items.map(({ most }) => most);
  const whole = inWholeParts(
    items.map(({ size }) => size),
    room,
  );
  if (sumOf(whole.sizes, all) <= whole.room) return { plants: all, proved: true, mayBeMissing: 0 };
  const greatest = Math.max(...items.map(({ value }) => value));
  // Values near 1, since the solver takes what lies below a hundred-millionth for nothing.
  const values = items.map(({ value }) => value / greatest);
  const eachAtMost = items.map(({ most }, i) => ({ coefficients: [[i, 1] as const], max: most }));
  const ground = { coefficients: whole.sizes.map((size, i) => [i, size] as const), max: whole.room };
  const program: Program = {
    direction: 'maximize',
    objective: values,
    limits: [ground, ...eachAtMost],
    whole: true,
  };

  const simple = byValueForGround(items, whole.sizes, whole.room);
  const time = timeLeft();
  const answer: Answer = time > 0 ? solver.solve(program, time) : { status: 'none' };
  const solved = wholePlants(answer, all, whole.sizes, whole.room);
  const better = solved !== null && sumOf(values, solved) >= sumOf(values, simple) * (1 - 1e-12);
  let plants: readonly number[] = better ? solved : simple;
  let proved = better && answer.status === 'best';

  let mayBeMissing = 0;
  if (!proved) {
    const inParts = solver.solve({ ...program, whole: false }, Number.POSITIVE_INFINITY);
    const bound = inParts.status === 'none' ? sumOf(values, all) : sumOf(values, inParts.values);
    mayBeMissing = roundSig(Math.max(0, bound - sumOf(values, plants)) * greatest, 9);
    proved = mayBeMissing === 0;
  }

  if (leastGround && proved) {
    const least = leanest(program, ground, eachAtMost, sumOf(values, plants), solver, timeLeft());
    const lean = wholePlants(least, all, whole.sizes, whole.room);
    const asGood = lean !== null && sumOf(values, lean) >= sumOf(values, plants) * (1 - 1e-9);
    if (asGood && sumOf(whole.sizes, lean) < sumOf(whole.sizes, plants)) plants = lean;
    proved = least.status === 'best';
  }
  return { plants, proved, mayBeMissing };
}

type Limits = Program['limits'];

/** The same worth on the least ground. */
function leanest(
  program: Program,
  ground: Limits[number],
  eachAtMost: Limits,
  worthAtLeast: number,
  solver: Solver,
  time: number,
): Answer {
  if (time <= 0) return { status: 'none' };
  return solver.solve(
    {
      direction: 'minimize',
      objective: ground.coefficients.map(([, size]) => size),
      limits: [
        {
          coefficients: program.objective.map((value, i) => [i, value] as const),
          min: worthAtLeast * (1 - 1e-9),
        },
        ground,
        ...eachAtMost,
      ],
      whole: true,
    },
    time,
  );
}
