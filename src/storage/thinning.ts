const MOST = 10;
/** Ages are compared as ratios; below this (ten minutes) all count as just now. */
const JUST_NOW = 10 * 60_000;

/**
 * Which of the versions saved at `times` (milliseconds) to keep at `now`; at most ten.
 *
 * The newest and the oldest stay. Of the others, as long as there are too many, the one goes whose neighbours
 * are closest in age *as a ratio*: two from this morning crowd each other, a month and two months do not. So
 * what stays is dense just now and thin long ago: minutes, hours, a day, some days, weeks, months.
 */
export function versionsToKeep(times: readonly number[], now: number): Set<number> {
  const kept = [...new Set(times)].sort((a, b) => b - a);
  // A clock that was put back makes ages negative: those count as just now.
  const age = (i: number): number => Math.max(0, now - kept[i]!) + JUST_NOW;
  while (kept.length > MOST) {
    let crowded = 1;
    for (let i = 2; i < kept.length - 1; i++)
      if (age(i + 1) / age(i - 1) < age(crowded + 1) / age(crowded - 1)) crowded = i;
    kept.splice(crowded, 1);
  }
  return new Set(kept);
}
