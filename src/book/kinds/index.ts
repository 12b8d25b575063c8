import { firstKeys } from '../order.js';
import type { ColumnDoc, SheetKind } from '../types.js';
import { batches } from './batches.js';
import { beds } from './beds.js';
import type { ColumnDeclaration, KindDeclaration } from './column.js';
import { dishes } from './dishes.js';
import { draws } from './draws.js';
import { facts } from './facts.js';
import { foods } from './foods.js';
import { harvest } from './harvest.js';
import { household } from './household.js';
import { shelf } from './shelf.js';
import { supplies } from './supplies.js';
import { week } from './week.js';

export type { ChoiceSource, ColumnDeclaration, ColumnType, KindDeclaration } from './column.js';

const ownSheet: KindDeclaration = {
  kind: 'own',
  title: 'Own sheet',
  help: 'A sheet of your own: any text, numbers, dates and formulas.',
  empty: 'An empty sheet. Add a column, give it a title, and write.',
  row: 'row',
  columns: [],
};

export const KINDS: { readonly [K in SheetKind]: KindDeclaration } = {
  household,
  shelf,
  draws,
  foods,
  week,
  dishes,
  beds,
  harvest,
  batches,
  supplies,
  facts,
  own: ownSheet,
};

const declared = new Map(
  Object.values(KINDS).map((kind) => [kind.kind, new Map(kind.columns.map((column) => [column.id, column]))]),
);

/** The declaration of a column that belongs to the kind, or undefined for an own column. */
export const declarationOf = (kind: SheetKind, columnId: string): ColumnDeclaration | undefined =>
  declared.get(kind)?.get(columnId);

const placed = new Map(
  Object.values(KINDS).map((kind) => {
    const keys = firstKeys(kind.columns.length);
    return [kind.kind, kind.columns.map((column, i) => [column.id, keys[i]!] as const)];
  }),
);

/** Where an own column stands that says nothing of it, as in a book made by hand: after all others. */
const AT_THE_END = 'z00000000000000000000000000';

/** Every column of a sheet with its order key: those of the kind where nothing else is said, and own ones. */
export function columnOrderOf(
  kind: SheetKind,
  columns: { readonly [id: string]: ColumnDoc },
): (readonly [id: string, order: string])[] {
  const entries = new Map<string, string>(placed.get(kind));
  for (const [id, column] of Object.entries(columns)) {
    if (column.order !== undefined) entries.set(id, column.order);
    else if (column.own === true && !entries.has(id)) entries.set(id, AT_THE_END);
  }
  return [...entries];
}
