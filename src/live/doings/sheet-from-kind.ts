import { type Command, type NamedKind, type NewColumn, newId } from '../../book/index.js';
import { spoken } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { NAME_COLUMN } from '../taken-kinds.js';
import { asOwn, isTakeable, lookOf } from './copied-columns.js';

export interface FromKind {
  readonly kind: NamedKind;
  readonly title: string;
  /** Planning columns to take, by id. */
  readonly planning: readonly string[];
}

/**
 * A new sheet of one's own with the columns that a kind's sheet has for entries, and the chosen ones of its
 * planning columns, in the order in which they stand there. It has no rows yet.
 */
export function sheetFromKind(live: BookReading, { kind, title, planning }: FromKind): Command {
  const home = live.sheetOfKind(kind) ?? '';
  const named = newId('c');
  const columns = live.columns(home).flatMap((column): NewColumn[] => {
    const id = column.id === NAME_COLUMN[kind] ? named : newId('c');
    if (column.role === 'kept') return [{ id, title: column.title, as: asOwn(live, home, column) }];
    if (!planning.includes(column.id) || !isTakeable(kind, column.id)) return [];
    const plan = { kind, column: column.id, by: named };
    // The kind’s own title is kept as it is declared, to be told in whichever language is spoken.
    const { title: declared = column.title } = column.declaration ?? {};
    const called = column.title === spoken(declared) ? declared : column.title;
    return [{ id, title: called, as: { ...lookOf(column), hidden: false, plan } }];
  });
  return { do: 'add sheet', sheet: newId('s'), title, columns };
}
