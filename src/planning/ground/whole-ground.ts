/** Parts of a foot or square foot on which spacings in inches (quarters of them, and their squares) and decimals fall. */
const PARTS = [576, 1000];
/** Sizes above this many parts gain nothing. */
const MOST_PARTS = 1e9;

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/**
 * Ground in whole parts where the sizes have a common measure (inches mostly), else as it is. A remainder of room
 * that no plants can fill is dropped: with it the solver would search on and on for a way to use it.
 */
export function inWholeParts(
  sizes: readonly number[],
  room: number,
): { readonly sizes: readonly number[]; readonly room: number } {
  for (const parts of PARTS) {
    const scaled = sizes.map((size) => Math.round(size * parts));
    const exact = scaled.every(
      (n, i) => n > 0 && n < MOST_PARTS && Math.abs(n / parts / (sizes[i] ?? 0) - 1) < 1e-9,
    );
    if (!exact) continue;
    const common = scaled.reduce(greatestCommon, 0);
    return {
      sizes: scaled.map((n) => n / common),
      room: Math.floor((room * parts) / common),
    };
  }
  return { sizes, room };
}
