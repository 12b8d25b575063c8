/** A planting as its crop's pounds are shared out. */
export interface Sharer {
  readonly id: string;
  readonly plants: number | null;
  /** A tree, bush or crown that bears already. */
  readonly bearing: boolean;
  /** Pounds that it will give at the basis counted on; null where not known. */
  readonly expected: number | null;
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, n) => sum + n, 0);

/** Shares of 1 by plants planned, equal where none are. */
function weights(sharers: readonly Sharer[]): number[] {
  const plants = sharers.map((one) => Math.max(0, one.plants ?? 0));
  const all = total(plants);
  return all > 0 ? plants.map((n) => n / all) : sharers.map(() => 1 / sharers.length);
}

/**
 * Pounds of one crop shared over its plantings: trees and perennials that bear count first, each with what it
 * will give; the rest goes to the others by plants planned, equally when none are. The shares add up to `pounds`.
 */
export function sharePounds(sharers: readonly Sharer[], pounds: number): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  const bearing = sharers.filter((one) => one.bearing && (one.expected ?? 0) > 0);
  const others = sharers.filter((one) => !bearing.includes(one));
  if (bearing.length === 0 || others.length === 0) {
    const by = weights(sharers);
    for (const [i, { id }] of sharers.entries()) shares.set(id, pounds * (by[i] ?? 0));
    return shares;
  }
  const given = total(bearing.map((one) => one.expected ?? 0));
  const covered = Math.min(pounds, given);
  for (const { id, expected } of bearing) shares.set(id, (covered * (expected ?? 0)) / given);
  const by = weights(others);
  for (const [i, { id }] of others.entries()) shares.set(id, (pounds - covered) * (by[i] ?? 0));
  return shares;
}
