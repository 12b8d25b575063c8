import { quoted, say } from '../../words/index.js';
import type { ColumnView } from '../columns.js';

/** What differs about a column, apart from what stands in it. */
export interface ColumnDifference {
  readonly title: string;
  readonly what: 'added' | 'removed' | 'changed';
  readonly words: string;
}

const orNone = (text: string | undefined): string => (text === undefined ? say`none` : quoted(text));

export function compareColumns(
  before: readonly ColumnView[],
  after: readonly ColumnView[],
): ColumnDifference[] {
  const found: ColumnDifference[] = [];
  if (before.length === 0 || after.length === 0) return found;
  for (const now of after) {
    const was = before.find(({ id }) => id === now.id);
    if (!was) {
      found.push({ title: now.title, what: 'added', words: say`new column` });
      continue;
    }
    if (was.title !== now.title)
      found.push({ title: now.title, what: 'changed', words: say`was called “${was.title}”` });
    if (was.formula !== now.formula)
      found.push({
        title: now.title,
        what: 'changed',
        words: say`formula was ${orNone(was.formula)}, is ${orNone(now.formula)}`,
      });
    if (was.type !== now.type)
      found.push({ title: now.title, what: 'changed', words: say`held ${was.type}, holds ${now.type}` });
  }
  for (const was of before)
    if (!after.some(({ id }) => id === was.id))
      found.push({ title: was.title, what: 'removed', words: say`column removed` });
  return found;
}
