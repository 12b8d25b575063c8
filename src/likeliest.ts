import { distance } from 'fastest-levenshtein';
import { MAX_NAME } from './problem.js';

/**
 * The known name that a mistyped one most likely means; undefined where none is near. A third of its letters
 * may be wrong, and `slips` of them in any case. `known` pairs each name in the form in which names are
 * compared with the form that is shown.
 */
export function likeliest(
  name: string,
  known: Iterable<readonly [compared: string, shown: string]>,
  slips = 2,
): string | undefined {
  if (name.length > MAX_NAME) return undefined;
  let best: string | undefined;
  let least = Math.max(slips, Math.floor(name.length / 3)) + 1;
  for (const [compared, shown] of known) {
    const apart = distance(name, compared);
    if (apart < least) [best, least] = [shown, apart];
  }
  return best;
}
