import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Chance that a seed gives again: the same seed answers the same numbers in the same order. */
export interface Random {
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  /** One of the list; undefined of an empty one. */
  pick<T>(from: readonly T[]): T | undefined;
  /** The list in another order. */
  shuffled<T>(list: readonly T[]): T[];
  /** Another that answers from here on what this one will. */
  copy(): Random;
}

/** A seed as a number of 32 bits (FNV-1a), so that any word may be one. */
function seedNumber(seed: string): number {
  let hash = 0x811c9dc5;
  for (const char of seed) hash = Math.imul(hash ^ (char.codePointAt(0) ?? 0), 0x01000193);
  return hash | 0;
}

/** Xoroshiro128+ begun from a seed: any number or word. */
export const seeded = (seed: string | number): Random => drawing(xoroshiro128plus(seedNumber(String(seed))));

function drawing(generator: ReturnType<typeof xoroshiro128plus>): Random {
  const whole = (least: number, most: number): number => uniformInt(generator, least, Math.max(least, most));
  return {
    whole,
    pick: (from) => (from.length === 0 ? undefined : from[whole(0, from.length - 1)]),
    shuffled(list) {
      const out = [...list];
      for (let at = out.length - 1; at > 0; at--) {
        const other = whole(0, at);
        [out[at], out[other]] = [out[other]!, out[at]!];
      }
      return out;
    },
    copy: () => drawing(generator.clone()),
  };
}
