import { findCrop, wordsOf } from '../../facts/index.js';
import type { Problem, Result } from '../../problem.js';
import { phrase } from '../../words/index.js';
import { MOST, tidy } from '../words.js';

const keys = new Map<string, string | null>();

/** The form in which crops are compared: the canonical name of a known crop, else its words. Null when blank. */
export function cropKey(name: string): string | null {
  const known = keys.get(name);
  if (known !== undefined) return known;
  const found = findCrop(name);
  const key = found.ok ? found.value.name : wordsOf(name) || null;
  if (keys.size < 5000) keys.set(name, key);
  return key;
}

/** A number for a planning cell: null where there is none that can be shown. */
export const shown = (n: number | null | undefined): number | null =>
  typeof n === 'number' && Math.abs(n) <= MOST ? tidy(n) : null;

export const problem = (code: string, message: string, mend: string): Problem => ({ code, message, mend });

/** The value, or null. */
export const orNull = <T>(result: Result<T> | null | undefined): T | null =>
  result?.ok ? result.value : null;

export const TOO_MUCH = problem(
  'too-much',
  phrase('That comes to more than a thousand million.'),
  phrase('Check the amounts and the yield for a slip of the key.'),
);

/** What stands in a result's way, or nothing. */
export const problemsOf = <K extends string>(
  found: Partial<Record<K, Problem | null | undefined>>,
): Partial<Record<K, Problem>> | null => {
  const kept = Object.entries(found).filter(([, each]) => each != null);
  return kept.length > 0 ? (Object.fromEntries(kept) as Partial<Record<K, Problem>>) : null;
};
