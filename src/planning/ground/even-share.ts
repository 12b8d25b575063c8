import type { Solver } from './solver.js';

/** A crop while ground is shared: `plants` from `least` to `wanted`, each taking `size` of ground. */
export interface Bed {
  readonly size: number;
  readonly wanted: number;
  readonly least: number;
}

/** Fewest whole plants whose share is `share` or more, and not under the least. */
function plantsAtShare({ wanted, least }: Bed, share: number): number {
  // The product may be a hair beside a whole number, so the shares themselves are compared.
  let plants = Math.ceil(share * wanted);
  if ((plants - 1) / wanted >= share) plants -= 1;
  if (plants / wanted < share) plants += 1;
  return Math.min(wanted, Math.max(least, plants));
}

const groundOf = (beds: readonly Bed[], plants: readonly number[]): number =>
  beds.reduce((sum, { size }, i) => sum + size * (plants[i] ?? 0), 0);

/** The greatest share that every crop could have if plants could be cut in parts; null if the solver fails. */
function shareInParts(beds: readonly Bed[], room: number, solver: Solver): number | null {
  // The last variable is the share that all reach; the others are the crops' own shares.
  const all = beds.length;
  const answer = solver.solve(
    {
      direction: 'maximize',
      objective: [...beds.map(() => 0), 1],
      limits: [
        { coefficients: beds.map(({ size, wanted }, i) => [i, (size * wanted) / room]), max: 1 },
        { coefficients: [[all, 1]], max: 1 },
        ...beds.map((_, i) => ({ coefficients: [[i, 1] as const, [all, -1] as const], min: 0 })),
        ...beds.flatMap(({ least, wanted }, i) =>
          least > 0 ? [{ coefficients: [[i, 1] as const], min: least / wanted }] : [],
        ),
      ],
      whole: false,
    },
    Number.POSITIVE_INFINITY,
  );
  const share = answer.status === 'none' ? undefined : answer.values[all];
  return share !== undefined && Number.isFinite(share) ? Math.min(1, Math.max(0, share)) : null;
}

/**
 * The greatest share that every crop can have in whole plants within `room`, and the fewest plants that give it.
 * The least of all of them must fit. Null if the solver fails.
 *
 * The solver finds the share for plants cut in parts, which no sharing in whole plants exceeds. From there it goes
 * down, share by share that whole plants can make, until all fits: a plant less of each crop is enough, so the steps
 * are few. (One program in whole plants takes the library too long from thirty crops on.) Going up once more
 * guards against a solver that answered a hair too low.
 */
export function evenShare(beds: readonly Bed[], room: number, solver: Solver): readonly number[] | null {
  const start = shareInParts(beds, room, solver);
  if (start === null) return null;
  let plants = beds.map((bed) => plantsAtShare(bed, start));
  let steps = 1000 + 10 * beds.length;
  while (groundOf(beds, plants) > room) {
    let lower = -1;
    beds.forEach(({ wanted, least }, i) => {
      const now = plants[i] ?? 0;
      if (now > least) lower = Math.max(lower, (now - 1) / wanted);
    });
    steps -= 1;
    if (lower < 0 || steps < 0) return null;
    plants = beds.map((bed) => plantsAtShare(bed, lower));
  }
  for (; steps > 0; steps -= 1) {
    const shares = beds.map(({ wanted }, i) => (plants[i] ?? 0) / wanted);
    const least = Math.min(...shares);
    if (least >= 1) break;
    // The next share that whole plants can make: one plant more of the least covered, or another crop's share.
    const higher = Math.min(
      ...beds.map(({ wanted }, i) => {
        const now = shares[i] ?? 1;
        return now > least ? now : ((plants[i] ?? 0) + 1) / wanted;
      }),
    );
    const more = beds.map((bed) => plantsAtShare(bed, higher));
    if (groundOf(beds, more) > room) break;
    plants = more;
  }
  return plants;
}
