import type { ColumnView } from '../columns.js';

/** What differs about a column, apart from what stands in it. */
export interface ColumnDifference {
  readonly title: string;
  readonly what: 'added' | 'removed' | 'changed';
  readonly words: string;
}

const quoted = (text: string | undefined): string => (text === undefined ? 'none' : `“${text}”`);

export function compareColumns(
  before: readonly ColumnView[],
  after: readonly ColumnView[],
): ColumnDifference[] {
  const found: ColumnDifference[] = [];
  if (before.length === 0 || after.length === 0) return found;
  for (const now of after) {
    const was = before.find(({ id }) => id === now.id);
    if (!was) {
      found.push({ title: now.title, what: 'added', words: 'new column' });
      continue;
    }
    if (was.title !== now.title)
      found.push({ title: now.title, what: 'changed', words: `was called ${quoted(was.title)}` });
    if (was.formula !== now.formula)
      found.push({
        title: now.title,
        what: 'changed',
        words: `formula was ${quoted(was.formula)}, is ${quoted(now.formula)}`,
      });
    if (was.type !== now.type)
      found.push({ title: now.title, what: 'changed', words: `held ${was.type}, holds ${now.type}` });
  }
  for (const was of before)
    if (!after.some(({ id }) => id === was.id))
      found.push({ title: was.title, what: 'removed', words: 'column removed' });
  return found;
}
