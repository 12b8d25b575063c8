import quantile from '@stdlib/stats-base-dists-gamma-quantile';

/**
 * The value below which a Gamma variable falls with probability `p`.
 * `shape` > 0 has no unit; `rate` > 0 is in the inverse of the answer's unit. Null for anything else.
 */
export function gammaQuantile(p: number, shape: number, rate: number): number | null {
  if (!(p >= 0 && p < 1 && shape > 0 && rate > 0 && Number.isFinite(shape) && Number.isFinite(rate)))
    return null;
  const value = quantile(p, shape, rate);
  return Number.isFinite(value) ? value : null;
}
