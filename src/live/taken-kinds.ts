import { type ColumnDeclaration, KINDS, type SheetKind } from '../book/index.js';

/** A kind of sheet whose rows a cell can name, and what can be taken from it. */
export interface TakeableKind {
  readonly kind: SheetKind;
  readonly title: string;
  /** What the naming column is to hold, in words. */
  readonly named: string;
  /** Planning columns, in the order of their sheet. */
  readonly columns: readonly ColumnDeclaration[];
}

/** Kinds of which one row can be named unambiguously, with how. */
const NAMED: { readonly [K in SheetKind]?: string } = {
  foods: 'the name of a food; “tomatoes, canned” where it is kept in two ways',
  shelf: 'the name of a food that has one lot, or the lot as Draws names it',
  dishes: 'the name of a dish',
  beds: 'the planting: its crop, or crop, variety and day as Harvest names it',
  supplies: 'the item as Supplies names it',
  household: 'the name of a person',
};

/** Planning columns that can be taken onto a sheet of one's own, by the kind that has them. */
export const takeable = (): readonly TakeableKind[] =>
  (Object.entries(NAMED) as [SheetKind, string][]).map(([kind, named]) => ({
    kind,
    title: KINDS[kind].title,
    named,
    columns: KINDS[kind].columns.filter(({ role }) => role === 'planning'),
  }));
