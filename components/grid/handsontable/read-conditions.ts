import { readTypedNumber } from '../../../src/book/index.js';
import { decimalSign } from '../../../src/words/index.js';

/** A condition of the filter, as far as it is read here. */
interface Condition {
  readonly args: unknown[];
}

/**
 * Puts numbers in place of what people wrote as the language spoken now writes them (`1,5`): the library reads
 * English signs only. In place, since the library holds on to the list.
 */
export function readConditions(conditions: readonly Condition[]): void {
  if (decimalSign() === '.') return;
  for (const { args } of conditions)
    for (const [i, arg] of args.entries()) {
      const number = typeof arg === 'string' ? readTypedNumber(arg) : undefined;
      if (number !== undefined) args[i] = number;
    }
}
