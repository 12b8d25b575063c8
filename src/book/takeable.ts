import { phrase } from '../words/index.js';
import { type ColumnDeclaration, KINDS } from './kinds/index.js';
import type { SheetKind } from './types.js';

/** Kinds of which a cell can name one row, with what that cell holds, in words. */
export const NAMED_KINDS = {
  foods: phrase('the food; “tomatoes, canned” where it is kept in two ways'),
  shelf: phrase('the food, where it has one lot; else the lot, as Draws names it'),
  dishes: phrase('the dish'),
  beds: phrase('the crop, where it has one planting; else crop, variety and day, as Harvest names it'),
  supplies: phrase('the item; “pectin, strawberries” where it stands there twice'),
  household: phrase('the person'),
} as const satisfies { readonly [K in SheetKind]?: string };
export type NamedKind = keyof typeof NAMED_KINDS;

/** A dish has several rows; these figures are of the whole dish and stand at the first. */
const WHOLE_DISH: ReadonlySet<string> = new Set(['makes', 'costs_shelf']);

const takeable = Object.fromEntries(
  (Object.keys(NAMED_KINDS) as NamedKind[]).map((kind) => [
    kind,
    KINDS[kind].columns.filter(
      ({ id, role }) => role === 'planning' && (kind !== 'dishes' || WHOLE_DISH.has(id)),
    ),
  ]),
) as unknown as Record<NamedKind, readonly ColumnDeclaration[]>;

/** The planning columns of a kind that can be shown on a sheet of one's own, in the order of the kind. */
export const takeableColumns = (kind: SheetKind): readonly ColumnDeclaration[] =>
  isNamedKind(kind) ? takeable[kind] : [];

export const isNamedKind = (kind: SheetKind): kind is NamedKind => Object.hasOwn(NAMED_KINDS, kind);
