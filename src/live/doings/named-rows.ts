import { isNamedKind, type NamedKind, type SheetKind } from '../../book/index.js';
import type { BookReading } from '../book-reading.js';
import { fullName } from '../taken-names.js';

export interface NamedRows {
  readonly kind: NamedKind;
  /** A name for each row that has one, by which no other row is meant. */
  readonly names: ReadonlyMap<string, string>;
  /** True where the usual name, as the kind's own column has it, is enough for every row. */
  readonly sameAsColumn: boolean;
}

/** What each row of a kind can be called so that it alone is meant; undefined for kinds whose rows have no names. */
export function namedRows(
  live: BookReading,
  kind: SheetKind,
  rows: readonly string[],
): NamedRows | undefined {
  if (!isNamedKind(kind)) return undefined;
  const known = live.namesOfKind(kind);
  const byRow = new Map(known.rows.map((named) => [named.row, named] as const));
  const meant = (name: string, row: string): boolean => {
    const found = known.find(name);
    return found.is === 'row' && found.row === row;
  };
  const names = new Map<string, string>();
  let sameAsColumn = true;
  for (const row of rows) {
    const named = byRow.get(row);
    if (!named) continue;
    if (meant(named.short, row)) names.set(row, named.short);
    else {
      sameAsColumn = false;
      const full = fullName(named);
      names.set(row, meant(full, row) ? full : row);
    }
  }
  return { kind, names, sameAsColumn };
}
