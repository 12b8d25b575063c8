import { type Marking, readEntry } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { holds, type MarkingContext, sameKey } from '../../../src/live/marking.js';

/** As it will be read when it is kept: days as days, numbers as numbers. */
function asKept({ value, to, ...rule }: Marking): Marking {
  const type = rule.when === 'before' || rule.when === 'after' ? 'date' : 'any';
  const [from, end] = [value, to].map((each) => (each === undefined ? undefined : readEntry(each, type)));
  return { ...rule, ...(from !== undefined && { value: from }), ...(end !== undefined && { to: end }) };
}

/** How many cells of the column each rule would take, the first that holds counting; null for a rule that is not whole. */
export function takenByEach(
  live: LiveBook,
  sheet: string,
  column: Pick<ColumnView, 'id'>,
  rules: readonly (Marking | null)[],
): readonly (number | null)[] {
  const kept = rules.map((rule) => rule && asKept(rule));
  const values = live.rowIds(sheet).map((row) => live.value(sheet, row, column.id));
  const times = new Map<string, number>();
  for (const value of values) {
    const key = sameKey(value);
    if (key !== undefined) times.set(key, (times.get(key) ?? 0) + 1);
  }
  const context: MarkingContext = {
    today: live.household.asOf,
    isDouble: (value) => (times.get(sameKey(value) ?? '') ?? 0) > 1,
  };
  const counts = kept.map((rule) => (rule ? 0 : null));
  for (const value of values) {
    const at = kept.findIndex((rule) => rule !== null && holds(rule, value, context));
    if (at >= 0) counts[at]!++;
  }
  return counts;
}
