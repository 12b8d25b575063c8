import { type Command, KINDS, type NamedKind, newId, takeableColumns } from '../../book/index.js';
import { say, spoken } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import type { ColumnView } from '../columns.js';
import { NAME_COLUMN } from '../taken-kinds.js';

export interface Taking {
  /** A sheet of one's own. */
  readonly sheet: string;
  readonly kind: NamedKind;
  /** Planning columns, by id. */
  readonly columns: readonly string[];
  /** The column that names the rows; null: one is added. */
  readonly by: string | null;
}

/** Columns of an own sheet that can name rows: those that one fills in, the likeliest first. */
export function namingColumns(live: BookReading, sheet: string): ColumnView[] {
  const own = live.columns(sheet).filter(({ role, hidden }) => role === 'own' && !hidden);
  const naming = new Set(live.columns(sheet).flatMap(({ taken }) => taken?.by ?? []));
  const rank = ({ id, type }: ColumnView): number =>
    naming.has(id) ? 0 : type === 'text' || type === 'any' || type === 'choice' ? 1 : 2;
  return [...own].sort((a, b) => rank(a) - rank(b));
}

/** Shows planning columns on a sheet of one's own, as one step. `first` is the id of the first of them. */
export function takeColumns(
  live: BookReading,
  { sheet, kind, columns, by }: Taking,
): { readonly command: Command; readonly first: string } {
  const declared = takeableColumns(kind).filter(({ id }) => columns.includes(id));
  const naming = by ?? newId('c');
  const nameTitle = KINDS[kind].columns.find(({ id }) => id === NAME_COLUMN[kind])!.title;
  const ids = live.columns(sheet).map(({ id }) => id);
  // They stand right after the names, in the order of their own sheet.
  const before = by === null ? null : (ids[ids.indexOf(by) + 1] ?? null);
  const taken = declared.map((declaration) => ({ declaration, id: newId('c') }));
  const of: Command[] = [
    ...(by === null
      ? [
          {
            do: 'add column',
            sheet,
            column: naming,
            before: ids[0] ?? null,
            title: spoken(nameTitle),
          } as const,
        ]
      : []),
    ...taken.map(
      ({ declaration, id }): Command => ({
        do: 'add column',
        sheet,
        column: id,
        before: by === null ? (ids[0] ?? null) : before,
        title: declaration.title,
        as: { plan: { kind, column: declaration.id, by: naming } },
      }),
    ),
  ];
  return {
    command: {
      do: 'all',
      of,
      called: taken.length === 1 ? say`planning column taken` : say`planning columns taken`,
    },
    first: taken[0]?.id ?? '',
  };
}

/** Columns that show figures, but of which the column that named the rows is gone. */
export function unnamedColumns(live: BookReading, sheet: string): ColumnView[] {
  const naming = new Set(live.columns(sheet).flatMap(({ id, taken }) => (taken === undefined ? [id] : [])));
  return live.columns(sheet).filter(({ taken }) => taken !== undefined && !naming.has(taken.by));
}

/** Lets those columns take the names of their rows from another column. */
export const nameAnew = (columns: readonly ColumnView[], sheet: string, by: string): Command => ({
  do: 'all',
  of: columns.flatMap(({ id, taken }): Command[] =>
    taken ? [{ do: 'describe column', sheet, column: id, as: { plan: { ...taken, by } } }] : [],
  ),
  called: say`another column of names`,
});
