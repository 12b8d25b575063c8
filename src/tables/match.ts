import { distance } from 'fastest-levenshtein';
import type { ColumnView } from '../live/columns.js';

/** Likeness from which a heading is taken to mean a column. */
const LIKE = 0.72;

const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\([^)]*\)\s*$/, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** 1 for the same title or id, down to 0. */
function likeness(heading: string, { id, title, name }: ColumnView): number {
  const said = plain(heading);
  if (said === '') return 0;
  let best = 0;
  for (const each of [title, id, name, `${title} ${id}`]) {
    const other = plain(each);
    if (said === other) return 1;
    best = Math.max(best, 1 - distance(said, other) / Math.max(said.length, other.length));
  }
  return best < LIKE ? 0 : best;
}

/** Columns that something from outside can be written into: planning columns never. */
export const targetsOf = (columns: readonly ColumnView[]): ColumnView[] =>
  columns.filter(({ role, taken }) => role !== 'planning' && !taken);

/**
 * The column that each heading most likely means, by id; null where none is like it. No column is given twice:
 * the likest pairs come first.
 */
export function matchColumns(headings: readonly string[], columns: readonly ColumnView[]): (string | null)[] {
  const pairs = headings.flatMap((heading, at) =>
    targetsOf(columns).map((column) => ({ at, id: column.id, score: likeness(heading, column) })),
  );
  pairs.sort((a, b) => b.score - a.score || a.at - b.at);
  const found: (string | null)[] = headings.map(() => null);
  const taken = new Set<string>();
  for (const { at, id, score } of pairs) {
    if (score === 0 || found[at] !== null || taken.has(id)) continue;
    found[at] = id;
    taken.add(id);
  }
  return found;
}

/** The sheet whose columns the headings match best, where two thirds of them do: fewer may be chance. */
export function likeliestSheet(
  headings: readonly string[],
  sheets: readonly { readonly id: string; readonly columns: readonly ColumnView[] }[],
): string | null {
  let best: { id: string; hits: number } | null = null;
  for (const { id, columns } of sheets) {
    const hits = matchColumns(headings, columns).filter((each) => each !== null).length;
    if (hits > 1 && hits * 3 >= headings.length * 2 && hits > (best?.hits ?? 0)) best = { id, hits };
  }
  return best?.id ?? null;
}
