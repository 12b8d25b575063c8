import { distance } from 'fastest-levenshtein';
import { MAX_NAME } from '../problem.js';
import { say } from '../words/index.js';

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
};

function singular(word: string): string {
  return word.length > 2 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

/**
 * The form in which names are compared: lower case, singular, without spaces, hyphens and full stops,
 * and with fractions as decimals, so that '1½-Pint Jars', '1 1/2 pint jar' and '1.5 pint jar' are one name.
 */
export function nameKey(name: string): string {
  return name
    .toLowerCase()
    .replace(/[½¼¾⅓⅔⅛]/g, (mark) => ` ${VULGAR[mark]} `)
    .replace(/#/g, ' no ')
    .replace(
      /(?:(\d+)\s+)?(\d+)\/(\d+)/g,
      (_all, whole: string | undefined, top: string, bottom: string) =>
        ` ${Number(whole ?? 0) + Math.round((Number(top) / Number(bottom)) * 1000) / 1000} `,
    )
    .replace(/\bhalf\b/g, ' 0.5 ')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/\.(?!\d)/g, ' ')
    .split(/[^\p{L}\p{N}.]+/u)
    .map(singular)
    .join('');
}

/** Things found by name: exact keys, and the nearest when there is none. */
export interface NameIndex<T> {
  /** The thing called `name`, in any spelling that `nameKey` evens out. */
  find(name: string): T | undefined;
  /** Up to `most` things whose names are nearest to `name`, best first; none when nothing is near. */
  nearest(name: string, most?: number): readonly T[];
}

/**
 * An index of `things`, each under all the names that `namesOf` gives for it, most proper first: a proper
 * name beats another thing's synonym, and between equals the earlier thing keeps the name.
 */
export function nameIndex<T>(things: readonly T[], namesOf: (thing: T) => readonly string[]): NameIndex<T> {
  const byKey = new Map<string, T>();
  // Spellings repeat thousands of times in a ledger; the same text is evened out once.
  const seen = new Map<string, T | undefined>();
  const named = things.map((thing) => ({ thing, names: namesOf(thing) }));
  const deepest = Math.max(0, ...named.map(({ names }) => names.length));
  for (let place = 0; place < deepest; place += 1) {
    for (const { thing, names } of named) {
      const name = names[place];
      if (name === undefined) continue;
      const key = nameKey(name);
      if (!byKey.has(key)) byKey.set(key, thing);
    }
  }
  return {
    find(name) {
      // Evening out takes seconds on text as long as a cell can hold, and no name is nearly so long.
      if (name.length > 5 * MAX_NAME) return undefined;
      if (seen.has(name)) return seen.get(name);
      const found = byKey.get(nameKey(name));
      if (seen.size < 5000) seen.set(name, found);
      return found;
    },
    nearest(name, most = 3) {
      if (name.length > MAX_NAME) return [];
      const key = nameKey(name);
      const best = new Map<T, number>();
      for (const [candidate, thing] of byKey) {
        const score = farness(key, candidate);
        if (score < (best.get(thing) ?? Number.POSITIVE_INFINITY)) best.set(thing, score);
      }
      return [...best]
        .sort((a, b) => a[1] - b[1])
        .slice(0, most)
        .map(([thing]) => thing);
    },
  };
}

const numbersIn = (key: string): string => key.replace(/[^\d.]+/g, ' ').trim();

/** How far a mistyped `key` is from `candidate`; infinite when it is no likely slip of it. */
function farness(key: string, candidate: string): number {
  const shorter = Math.min(key.length, candidate.length);
  // A 12 oz jar is not a slip of a 16 oz jar, and very short names are near to everything.
  const comparable =
    numbersIn(key) === numbersIn(candidate) && shorter > 2 && (shorter > 3 || key[0] === candidate[0]);
  const apart = comparable ? distance(key, candidate) : Number.POSITIVE_INFINITY;
  if (apart <= Math.ceil(shorter / 3)) return apart;
  // A name typed in part ('freezer bag') comes after misspellings.
  if (key.length > 2 && candidate.includes(key)) return 10 + candidate.length - key.length;
  return Number.POSITIVE_INFINITY;
}

const listed = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')}${last}${words.at(-1)}`;

/** 'a', 'a or b', 'a, b or c'. */
export const orList = (words: readonly string[]): string => listed(words, say` or `);

/** 'a', 'a and b', 'a, b and c'. */
export const andList = (words: readonly string[]): string => listed(words, say` and `);
