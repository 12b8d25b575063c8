import { distance } from 'fastest-levenshtein';
import { MAX_NAME } from '../../problem.js';

const plain = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** How much two names are alike, from 0 to 1 (the same but for capitals, spaces and signs). */
export function likeness(a: string, b: string): number {
  const [x, y] = [plain(a).slice(0, MAX_NAME), plain(b).slice(0, MAX_NAME)];
  const longest = Math.max(x.length, y.length);
  if (longest === 0) return 0;
  const alike = 1 - distance(x, y) / longest;
  // One that begins with the other, or holds it as words, is close, as 'Price' and 'Price per jar' are.
  const [short, long] = x.length < y.length ? [x, y] : [y, x];
  const inside = short.length >= 3 && (long.startsWith(short) || ` ${long} `.includes(` ${short} `));
  return inside ? Math.max(alike, 0.7) : alike;
}

/** From here on a name is likely meant. */
export const LIKELY = 0.6;

/** What is likely meant by a name, the likeliest first. */
export function likelyOnes<T>(name: string, among: readonly T[], nameOf: (each: T) => string): T[] {
  if (name.length > MAX_NAME) return [];
  return among
    .map((each) => ({ each, alike: likeness(name, nameOf(each)) }))
    .filter(({ alike }) => alike >= LIKELY)
    .sort((a, b) => b.alike - a.alike)
    .map(({ each }) => each);
}
