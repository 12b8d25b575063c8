/**
 * An exact fraction of two whole numbers, each within `Number.MAX_SAFE_INTEGER`. Unit sizes are kept
 * as fractions so that four cups are exactly one quart, not 0.9999999999999999 of one.
 */
export type Ratio = readonly [numerator: number, denominator: number];

function gcd(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

function reduced(numerator: bigint, denominator: bigint): Ratio {
  const common = gcd(numerator, denominator);
  return [Number(numerator / common), Number(denominator / common)];
}

/** `a` × `b`, in lowest terms. */
export function times(a: Ratio, b: Ratio): Ratio {
  return reduced(BigInt(a[0]) * BigInt(b[0]), BigInt(a[1]) * BigInt(b[1]));
}

/** `a` ÷ `b`, in lowest terms. */
export function over(a: Ratio, b: Ratio): Ratio {
  return times(a, [b[1], b[0]]);
}

/** `n` × `ratio`; when the ratio is one over a whole number this divides once, so halves stay halves. */
export function scale(n: number, ratio: Ratio): number {
  return ratio[1] === 1 ? n * ratio[0] : (n * ratio[0]) / ratio[1];
}
