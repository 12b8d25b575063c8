import {
  type BookDoc,
  type Change,
  type ColumnDeclaration,
  type Json,
  settingOf,
  titleOfSheet,
} from '../../book/index.js';
import { phrase, say, spoken } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { choiceShown } from '../choice-words.js';
import { rowName } from '../row-name.js';

/** Fields of columns and rows as they are stored, which a person may read. */
const FIELDS: readonly string[] = [
  phrase('title'),
  phrase('formula'),
  phrase('width'),
  phrase('order'),
  phrase('hidden'),
  phrase('pinned'),
  phrase('type'),
  phrase('measure'),
  phrase('choices'),
  phrase('decimals'),
  phrase('note'),
  phrase('summary'),
  phrase('marks'),
];

const fieldWords = (field: string): string => (FIELDS.includes(field) ? spoken(field) : field);

/** A note or a colour, which are fields of the row. */
const aboutCell = (about: string, column: string): string =>
  about === 'note'
    ? say`note on ${column}`
    : about === 'colour'
      ? say`colour on ${column}`
      : `${about} on ${column}`;

/** What a path of a book is, for a person: 'Shelf: tomatoes, canned · Place'. */
export function placeInWords(live: BookReading, path: readonly string[], theirs?: BookDoc): string {
  const [head, sheet, part, id, field, column] = path;
  if (head === 'title') return say`Title of the book`;
  if (head !== 'sheets' || sheet === undefined)
    return say`Setting: ${settingOf(sheet ?? '')?.title ?? (sheet ?? head ?? '').replaceAll('_', ' ')}`;
  const title = live.sheets().find((each) => each.id === sheet)?.title ?? titleIn(theirs, sheet) ?? sheet;
  if (part === undefined) return title;
  if (id === undefined) return part === 'title' ? say`Title of ${title}` : `${title}: ${fieldWords(part)}`;
  const columnTitle = (of: string): string => live.column(sheet, of)?.title ?? of;
  if (part === 'columns')
    return `${say`${title}: column ${columnTitle(id)}`}${field ? `, ${fieldWords(field)}` : ''}`;
  const name = live.rowIds(sheet).includes(id)
    ? rowName(live, sheet, id)
    : nameOf(theirs?.sheets[sheet]?.rows[id]?.cells, (of) => live.column(sheet, of)?.declaration);
  if (field === undefined) return `${title}: ${name}`;
  if (field === 'cells') return `${title}: ${name} · ${columnTitle(column!)}`;
  const [about, of] = field.split(':');
  return `${title}: ${name} · ${of ? aboutCell(about!, columnTitle(of)) : fieldWords(about!)}`;
}

const nameOf = (
  cells: { readonly [column: string]: Json } | undefined,
  declared: (column: string) => ColumnDeclaration | undefined,
): string =>
  Object.entries(cells ?? {})
    .filter(([, cell]) => typeof cell !== 'boolean')
    .slice(0, 4)
    .map(([column, cell]) => choiceShown(String(cell), declared(column)))
    .join(', ') || say`a row`;

const titleIn = (doc: BookDoc | undefined, sheet: string): string | undefined => {
  const found = doc?.sheets[sheet];
  return found && titleOfSheet(found);
};

/** What comes in with a merge, counted by sheet. */
export interface ComingIn {
  readonly sheet: string;
  readonly title: string;
  readonly rowsAdded: number;
  readonly rowsRemoved: number;
  readonly cells: number;
  readonly other: number;
}

export function comingIn(live: BookReading, edits: readonly Change[], theirs: BookDoc): ComingIn[] {
  const by = new Map<string, { -readonly [K in keyof ComingIn]: ComingIn[K] }>();
  for (const { path, to } of edits) {
    const [head, sheet, part, , field] = path;
    const key = head === 'sheets' ? sheet! : '';
    const title =
      key === ''
        ? say`Title and settings`
        : (live.sheets().find(({ id }) => id === key)?.title ?? titleIn(theirs, key) ?? key);
    const found = by.get(key) ?? { sheet: key, title, rowsAdded: 0, rowsRemoved: 0, cells: 0, other: 0 };
    by.set(key, found);
    if (part === 'rows' && path.length === 4) {
      if (to === undefined) found.rowsRemoved++;
      else found.rowsAdded++;
    } else if (field === 'cells') found.cells++;
    else found.other++;
  }
  return [...by.values()];
}
