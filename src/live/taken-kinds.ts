import {
  type ColumnDeclaration,
  KINDS,
  NAMED_KINDS,
  type NamedKind,
  takeableColumns,
} from '../book/index.js';
import { spoken } from '../words/index.js';

/** A kind of sheet whose rows a cell can name, and what can be taken from it. */
export interface TakeableKind {
  readonly kind: NamedKind;
  readonly title: string;
  /** What the naming column is to hold, in words. */
  readonly named: string;
  /** The kept column of the kind itself that says it. */
  readonly nameColumn: string;
  /** Planning columns, in the order of their sheet. */
  readonly columns: readonly ColumnDeclaration[];
}

/** Planning columns that can be taken onto a sheet of one's own, by the kind that has them. */
export const takeable = (): readonly TakeableKind[] =>
  (Object.entries(NAMED_KINDS) as [NamedKind, string][]).map(([kind, named]) => ({
    kind,
    title: spoken(KINDS[kind].title),
    named: spoken(named),
    nameColumn: NAME_COLUMN[kind],
    columns: takeableColumns(kind),
  }));

/** The kept column of a kind by which one usually calls its rows. */
export const NAME_COLUMN: { readonly [K in NamedKind]: string } = {
  foods: 'food',
  shelf: 'food',
  dishes: 'dish',
  beds: 'crop',
  supplies: 'item',
  household: 'name',
};
