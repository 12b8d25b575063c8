import { readTypedNumber } from '../../../src/book/index.js';
import { decimalSign } from '../../../src/words/index.js';
import type { Shown } from './line.js';

/** A condition of the filter, as far as it is read here. */
interface Condition {
  readonly args: unknown[];
}

/** One that asks something of a value. */
interface Asking extends Condition {
  readonly name: string;
  func: (row: { readonly meta: object; readonly value: Shown }) => boolean;
}

/** Conditions that take values as they are kept: what is ticked in the list of values, and blanks. */
const OF_KEPT: ReadonlySet<string> = new Set(['by_value', 'empty', 'not_empty']);

/** Those that ask what cells show already. */
const asked = new WeakSet<object>();

/** Has conditions on text ask what the cells show: `shown` gives it for what is kept. In place, once for each. */
export function askWhatIsShown(conditions: readonly Asking[], shown: (value: Shown) => Shown): void {
  for (const condition of conditions) {
    if (OF_KEPT.has(condition.name) || asked.has(condition)) continue;
    asked.add(condition);
    const ask = condition.func;
    condition.func = (row) => ask({ ...row, value: shown(row.value) });
  }
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
