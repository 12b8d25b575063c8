/**
 * `n` rounded to `digits` significant digits (9 unless told), which wipes out the crumbs of binary
 * arithmetic: 0.1 + 0.2 becomes 0.3. NaN and the infinities pass through.
 */
export function roundSig(n: number, digits = 9): number {
  if (!Number.isFinite(n) || n === 0) return n;
  return Number(n.toPrecision(digits));
}

/** Never answers −0, which would print as '-0'. */
const plain = (n: number): number => (n === 0 ? 0 : n);

/**
 * The least whole number not below `n`, after rounding `n` to 9 significant digits: 7.0000000001 jars
 * are 7 jars, not 8. Whole numbers of any size stay as they are.
 */
export function ceilSafe(n: number): number {
  return plain(Number.isInteger(n) ? n : Math.ceil(roundSig(n)));
}

/** The greatest whole number not above `n`, after rounding `n` to 9 significant digits. */
export function floorSafe(n: number): number {
  return plain(Number.isInteger(n) ? n : Math.floor(roundSig(n)));
}
