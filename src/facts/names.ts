import { distance } from 'fastest-levenshtein';
import { MAX_NAME } from '../problem.js';

/**
 * The form in which names of crops and foods are compared: lower case, no accents, ß as ss, words only, and
 * 'corn, sweet' turned round to 'sweet corn'. Plurals are not stripped: each name carries its own, so that a misspelled plural is asked about rather than guessed.
 */
export function wordsOf(name: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/['’]/g, '');
  const [head = '', ...tail] = plain.split(',');
  return [...tail, head]
    .join(' ')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .join(' ');
}

/** The regular English plural of a name's last word: 'tomato' 'tomatoes', 'cherry' 'cherries', 'beet' 'beets'. */
export function pluralOf(name: string): string {
  if (/(?:[sxo]|ch|sh)$/.test(name)) return `${name}es`;
  if (/[^aeiou]y$/.test(name)) return `${name.slice(0, -1)}ies`;
  return `${name}s`;
}

/** Up to three of `known` (compared form to shown name) nearest to `name`, best first; none when none is near. */
export function nearestNames(name: string, known: Iterable<readonly [string, string]>): string[] {
  const words = wordsOf(name);
  if (words === '' || words.length > MAX_NAME) return [];
  const best = new Map<string, number>();
  for (const [candidate, shown] of known) {
    const apart = distance(words, candidate);
    const near = apart <= Math.max(1, Math.floor(Math.min(words.length, candidate.length) / 3));
    const within = words.length > 3 && candidate.includes(words);
    if (!near && !within) continue;
    const score = near ? apart : apart + 10;
    if (score < (best.get(shown) ?? Number.POSITIVE_INFINITY)) best.set(shown, score);
  }
  return [...best]
    .sort((a, b) => a[1] - b[1])
    .slice(0, 3)
    .map(([shown]) => shown);
}
