import {
  type ColumnLook,
  type ColumnType,
  OWN_TYPES,
  type OwnType,
  readEntry,
  type Summary,
} from '../../src/book/index.js';
import type { ColumnView } from '../../src/live/columns.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say } from '../../src/words/index.js';

/** What the column dialog holds besides title and formula; text as it stands in the fields. */
export interface ColumnDraft {
  readonly type: OwnType;
  /** Id of a unit or container; '' for none. */
  readonly measure: string;
  /** '' for as many digits as there are. */
  readonly decimals: string;
  /** One a line. */
  readonly choices: string;
  readonly note: string;
  readonly summary: Summary | '';
}

export const NEW_COLUMN: ColumnDraft = {
  type: 'any',
  measure: '',
  decimals: '',
  choices: '',
  note: '',
  summary: '',
};

export const draftOf = (column: ColumnView): ColumnDraft => ({
  type: OWN_TYPES.find((each) => each === column.type) ?? 'any',
  measure: column.measure ?? '',
  decimals: column.declaration ? '' : String(column.decimals ?? ''),
  choices: column.listed.join('\n'),
  note: column.note ?? '',
  summary: column.summary ?? '',
});

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** What is said of the column; of a column of the kind only what the person may say of it. */
export function lookOf(draft: ColumnDraft, own: boolean): ColumnLook {
  const { type, measure, decimals, choices, note, summary } = draft;
  const common = { note: note.trim() || null, summary: summary || null };
  if (!own) return common;
  const number = type === 'number';
  return {
    ...common,
    type,
    measure: number && measure !== '' ? measure : null,
    decimals: number && decimals !== '' ? Number(decimals) : null,
    choices: type === 'choice' ? linesOf(choices) : null,
  };
}

const READ_AS: { readonly [type in ColumnType]?: string } = {
  number: phrase('numbers'),
  date: phrase('dates'),
  tick: phrase('ticks'),
  choice: phrase('one of the list'),
};

const fits = (raw: string | number | boolean, { type, choices }: ColumnDraft): boolean => {
  if (type === 'choice')
    return linesOf(choices).some((each) => each.toLowerCase() === String(raw).trim().toLowerCase());
  const read = readEntry(raw, type);
  if (type === 'number') return typeof read === 'number';
  if (type === 'tick') return typeof read === 'boolean';
  return type !== 'date' || (typeof read === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(read));
};

/** What becomes of entries that are there already and do not fit; '' where all do. */
export function misfits(live: LiveBook, sheet: string, column: string, draft: ColumnDraft): string {
  const words = READ_AS[draft.type];
  if (words === undefined || column === '') return '';
  const count = live.rowIds(sheet).filter((row) => {
    const raw = live.typed(sheet, row, column);
    return raw !== null && !String(raw).startsWith('=') && !fits(raw, draft);
  }).length;
  if (count === 0) return '';
  return count === 1
    ? say`One entry cannot be read as ${words}. It stays as it was typed, and is marked.`
    : say`${count} entries cannot be read as ${words}. They stay as they were typed, and are marked.`;
}
