import { isToday, type Marking, type Raw, readEntry } from '../../../src/book/index.js';
import { textShown } from '../../../src/live/choice-words.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { holds, type MarkingContext, sameKey } from '../../../src/live/marking.js';
import { fromIsoDay } from '../../../src/planning/dates.js';

/** As it will be read when it is kept: days as days, numbers as numbers; null while what should be a day is none. */
function asKept({ value, to, ...rule }: Marking): Marking | null {
  const day = rule.when === 'before' || rule.when === 'after';
  const read = (each: Marking['value']): Raw | undefined =>
    each === undefined || isToday(each) ? each : readEntry(each, day ? 'date' : 'any');
  const [from, end] = [read(value), read(to)];
  if (day && !isToday(from) && !fromIsoDay(String(from)).ok) return null;
  return { ...rule, ...(from !== undefined && { value: from }), ...(end !== undefined && { to: end }) };
}

/** How many cells of the column each rule would take, the first that holds counting; null for a rule that is not whole. */
export function takenByEach(
  live: LiveBook,
  sheet: string,
  column: Pick<ColumnView, 'id' | 'role' | 'declaration'>,
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
    shown: (text) => textShown(text, column),
  };
  const counts = kept.map((rule) => (rule ? 0 : null));
  for (const value of values) {
    const at = kept.findIndex((rule) => rule !== null && holds(rule, value, context));
    if (at >= 0) counts[at]!++;
  }
  return counts;
}
