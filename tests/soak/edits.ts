import type { COLOURS, ColumnLook, Typed } from '../../src/book/index.js';

/**
 * A thing that a person might do to a book, as plain data. Places are numbers that are fitted to the book
 * when it is done, so that every edit has a meaning whatever came before it.
 */
export type Edit =
  | {
      readonly edit: 'type';
      readonly sheet: number;
      readonly row: number;
      readonly column: number;
      readonly typed: Typed;
    }
  /** `sorted`: the rows are those that stand under one another once sorted by a column. */
  | {
      readonly edit: 'paste';
      readonly sheet: number;
      readonly row: number;
      readonly column: number;
      readonly block: readonly (readonly Typed[])[];
      readonly sorted: number | null;
    }
  | { readonly edit: 'paste over everything'; readonly sheet: number; readonly typed: Typed }
  | {
      readonly edit: 'fill';
      readonly sheet: number;
      readonly row: number;
      readonly column: number;
      readonly count: number;
    }
  | {
      readonly edit: 'insert';
      readonly sheet: number;
      readonly row: number;
      readonly cells: readonly (readonly Typed[])[];
    }
  | {
      readonly edit: 'draw';
      readonly food: string;
      readonly amount: number;
      readonly container: string;
      readonly day: number;
      readonly purpose: string;
    }
  | { readonly edit: 'remove'; readonly sheet: number; readonly row: number; readonly count: number }
  | {
      readonly edit: 'move';
      readonly sheet: number;
      readonly row: number;
      readonly count: number;
      readonly to: number;
    }
  | {
      readonly edit: 'add column';
      readonly sheet: number;
      readonly before: number;
      readonly title: string;
      readonly formula: string | null;
      readonly as: ColumnLook;
    }
  | { readonly edit: 'remove column'; readonly sheet: number; readonly column: number }
  | { readonly edit: 'move column'; readonly sheet: number; readonly column: number; readonly to: number }
  | {
      readonly edit: 'describe';
      readonly sheet: number;
      readonly column: number;
      readonly as: ColumnLook;
    }
  /** A planning column taken onto an own sheet: as a new column, or in place of one that is there. */
  | {
      readonly edit: 'take column';
      readonly sheet: number;
      readonly kind: number;
      readonly column: number;
      readonly by: number;
      readonly over: number | null;
    }
  | {
      readonly edit: 'mark';
      readonly sheet: number;
      readonly row: number;
      readonly column: number;
      readonly colour?: (typeof COLOURS)[number] | null;
      readonly note?: string | null;
    }
  | { readonly edit: 'group'; readonly sheet: number; readonly by: number | null }
  | { readonly edit: 'move sheet'; readonly sheet: number; readonly to: number }
  | {
      readonly edit: 'add sheet';
      readonly title: string;
      readonly columns: readonly string[];
      readonly cells: readonly (readonly Typed[])[];
    }
  | { readonly edit: 'remove sheet'; readonly sheet: number }
  | { readonly edit: 'copy sheet'; readonly sheet: number; readonly title: string }
  /** A table from a file: onto a sheet, its headings being titles of that, or as a sheet of its own. */
  | {
      readonly edit: 'bring in';
      readonly sheet: number | null;
      readonly from: number;
      readonly cells: readonly (readonly Typed[])[];
    }
  | { readonly edit: 'rename sheet'; readonly sheet: number; readonly title: string }
  | { readonly edit: 'rename book'; readonly title: string }
  | { readonly edit: 'setting'; readonly setting: string; readonly typed: Typed }
  | { readonly edit: 'mark done'; readonly row: number }
  | { readonly edit: 'post batch'; readonly row: number }
  | { readonly edit: 'several'; readonly of: readonly Edit[] };
