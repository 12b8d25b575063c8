import { type CellValue, isCellError } from '../book/index.js';
import { phrase, say, spoken, spokenTag } from '../words/index.js';

/** Rows whose group column shows the same. */
export interface RowGroup {
  /** What the column shows in each of them; null: blank. */
  readonly value: CellValue;
  /** In words: 'canned', '12', 'yes', '(blank)'. */
  readonly label: string;
  /** In the order in which they were given. */
  readonly rows: readonly string[];
  readonly count: number;
}

const BLANK = phrase('(blank)');

const labelOf = (value: CellValue): string => {
  if (value === null || value === '') return BLANK;
  if (isCellError(value)) return value.error;
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  return String(value).trim() || BLANK;
};

/** Numbers first, then dates and text without case, ticks, errors; blank last. */
const rank = (value: CellValue, label: string): number => {
  if (label === BLANK) return 4;
  if (typeof value === 'number') return 0;
  if (typeof value === 'string') return 1;
  return typeof value === 'boolean' ? 2 : 3;
};

/** Rows in groups by what is shown, sorted; the same word in another case is the same group. */
export function rowsInGroups(
  rows: readonly string[],
  shown: (row: string) => CellValue,
  called: (text: string) => string = (text) => text,
): readonly RowGroup[] {
  const groups = new Map<string, { value: CellValue; label: string; rows: string[]; rank: number }>();
  for (const row of rows) {
    const value = shown(row);
    const label = typeof value === 'string' && value.trim() !== '' ? called(value.trim()) : labelOf(value);
    const at = rank(value, label);
    const key = `${at}:${label.toLowerCase()}`;
    const group = groups.get(key);
    if (group) group.rows.push(row);
    else groups.set(key, { value: at === 4 ? null : value, label, rows: [row], rank: at });
  }
  const compare = new Intl.Collator(spokenTag(), { sensitivity: 'base', numeric: true }).compare;
  return [...groups.values()]
    .sort((a, b) =>
      a.rank !== b.rank
        ? a.rank - b.rank
        : typeof a.value === 'number' && typeof b.value === 'number'
          ? a.value - b.value
          : compare(a.label, b.label),
    )
    .map(({ value, label, rows: ids }) => ({
      value,
      label: label === BLANK ? spoken(BLANK) : label,
      rows: ids,
      count: ids.length,
    }));
}
