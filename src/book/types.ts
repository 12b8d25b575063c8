/**
 * The document: what a household enters, and nothing computed. Everything has an id that never repeats
 * and is kept in records by id; position is an order key, not an array index. So two copies edited apart
 * can merge row by row and cell by cell.
 */
import type { Problem } from '../problem.js';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** What a cell stores. Absent means blank. Text that begins with `=` is a formula in stored form. */
export type Raw = string | number | boolean;

/** Sheet kinds of this version; `own` is a sheet that the person made. */
export const SHEET_KINDS = [
  'household',
  'shelf',
  'draws',
  'foods',
  'week',
  'dishes',
  'beds',
  'harvest',
  'batches',
  'supplies',
  'facts',
  'own',
] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export interface ColumnDoc {
  /** Order key; absent on a column of the kind that stands where the kind puts it. */
  readonly order?: string;
  /** The person's own title; absent = the kind's. */
  readonly title?: string;
  /** True on a column that the person added. */
  readonly own?: boolean;
  /** Stored form of a formula that fills every blank cell of an own column. */
  readonly formula?: string;
  readonly hidden?: boolean;
  readonly pinned?: boolean;
  /** Pixels. */
  readonly width?: number;
  /** Of an own column: what it holds; see `own-column.ts` for this and what follows. */
  readonly type?: string;
  /** Of an own column of numbers: id of the unit or container in which they are meant. */
  readonly measure?: string;
  /** Of an own column of choices. */
  readonly choices?: readonly string[];
  /** Of an own column of numbers: digits after the point. */
  readonly decimals?: number;
  /** The person's note on the column. */
  readonly note?: string;
  /** What stands under the column: `sum`, `mean`, `count`, `least` or `most`. */
  readonly summary?: string;
  /** Rules by which cells take a colour. */
  readonly marks?: Json;
  /** The planning column that this own column shows. */
  readonly plan?: Json;
  /** Fields that a newer version wrote survive. */
  readonly [unknown: string]: Json | undefined;
}

export interface RowDoc {
  readonly order: string;
  readonly cells: { readonly [columnId: string]: Raw };
  /** On a posted draw: how much came from which lot, by lot id, in the lot's containers. */
  readonly allotted?: { readonly [lotId: string]: number };
  /** The person's note on a cell; a field for each cell, so that two copies' notes merge. */
  readonly [note: `note:${string}`]: string | undefined;
  /** The colour with which the person marked a cell. */
  readonly [colour: `colour:${string}`]: string | undefined;
  readonly [unknown: string]: Json | undefined;
}

export interface SheetDoc {
  readonly kind: SheetKind;
  readonly title: string;
  readonly order: string;
  /** Column by whose values the rows are shown in groups. */
  readonly group?: string;
  readonly columns: { readonly [columnId: string]: ColumnDoc };
  readonly rows: { readonly [rowId: string]: RowDoc };
  readonly [unknown: string]: unknown;
}

export const BOOK_FORMAT = 'croftsheet-book';
export const BOOK_VERSION = 2;

export interface BookDoc {
  readonly format: typeof BOOK_FORMAT;
  readonly version: number;
  readonly id: string;
  readonly title: string;
  /** Written once formulas refer by id; without it, references by position are read as of now. */
  readonly references?: 'by id';
  /** Household settings, by id (see `settings.ts`). */
  readonly settings: { readonly [settingId: string]: Raw };
  readonly sheets: { readonly [sheetId: string]: SheetDoc };
  readonly [unknown: string]: unknown;
}

/**
 * The smallest edit: one value at one path set to something else. Everything that happens to a book is a
 * list of these; the inverse swaps `to` and `was`. Paths:
 * `title` · `settings/ID` · `sheets/S` (whole sheet) · `sheets/S/title` · `sheets/S/columns/C` (whole) ·
 * `sheets/S/columns/C/FIELD` · `sheets/S/rows/R` (whole) · `sheets/S/rows/R/order` ·
 * `sheets/S/rows/R/cells/C` · `sheets/S/rows/R/allotted` · `sheets/S/rows/R/note:C` ·
 * `sheets/S/rows/R/colour:C` · `sheets/S/group` · `sheets/S/order`.
 */
export interface Change {
  readonly path: readonly string[];
  /** Undefined removes. */
  readonly to: Json | undefined;
  /** Undefined = it was not there. */
  readonly was: Json | undefined;
}

export interface CellAddress {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** A formula or cell error as data. */
export interface CellError {
  /** `#NAME?`, `#VALUE!`, `#REF!`, `#DIV/0!`, `#N/A`, `#NUM!`, `#CYCLE!` or `#ERROR!`. */
  readonly error: string;
  readonly message: string;
}

/** What a cell shows: dates are ISO text; null is blank. */
export type CellValue = number | string | boolean | null | CellError;

export const isCellError = (value: CellValue): value is CellError =>
  typeof value === 'object' && value !== null;

/** What came of a command: the changes made, and anything left out with the reason. */
export type Outcome =
  | { readonly ok: true; readonly changes: readonly Change[]; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problem: Problem };
