import { say } from '../words/index.js';
import type { Colour, Marking, OwnType, Summary, TakenColumn } from './own-column.js';
import type { StoredEdit } from './stored-edit.js';
import type { Json, Raw } from './types.js';

/** What a person can do to a book, as plain data: the same command on the same book gives the same changes. */
export type Command =
  | { readonly do: 'set cells'; readonly sheet: string; readonly cells: readonly TypedCell[] }
  | {
      readonly do: 'insert rows';
      readonly sheet: string;
      readonly before: string | null;
      readonly rows: readonly NewRow[];
    }
  | { readonly do: 'remove rows'; readonly sheet: string; readonly rows: readonly string[] }
  | {
      readonly do: 'move rows';
      readonly sheet: string;
      readonly rows: readonly string[];
      readonly before: string | null;
    }
  | {
      readonly do: 'add column';
      readonly sheet: string;
      readonly column: string;
      readonly before: string | null;
      readonly title: string;
      readonly formula?: string;
      /** What else is said of it. */
      readonly as?: ColumnLook;
    }
  | { readonly do: 'remove columns'; readonly sheet: string; readonly columns: readonly string[] }
  | {
      readonly do: 'move columns';
      readonly sheet: string;
      readonly columns: readonly string[];
      readonly before: string | null;
    }
  | {
      readonly do: 'describe column';
      readonly sheet: string;
      readonly column: string;
      readonly as: ColumnLook;
    }
  /** A colour or a note on cells; null takes it away, absent leaves it. */
  | {
      readonly do: 'mark cells';
      readonly sheet: string;
      readonly cells: readonly { readonly row: string; readonly column: string }[];
      readonly colour?: Colour | null;
      readonly note?: string | null;
      /** Their formulas mean in the household’s measures what they should: somebody has looked. */
      readonly lookedAt?: true;
    }
  /** Rows in groups by a column's values; null: not in groups. */
  | { readonly do: 'group rows'; readonly sheet: string; readonly by: string | null }
  | { readonly do: 'move sheet'; readonly sheet: string; readonly before: string | null }
  | { readonly do: 'set setting'; readonly setting: string; readonly typed: Typed }
  /** A sheet of one's own, empty or with columns and rows. */
  | {
      readonly do: 'add sheet';
      readonly sheet: string;
      readonly title: string;
      readonly columns?: readonly NewColumn[];
      readonly rows?: readonly NewRow[];
    }
  | { readonly do: 'rename sheet'; readonly sheet: string; readonly title: string }
  | { readonly do: 'remove sheet'; readonly sheet: string }
  | { readonly do: 'rename book'; readonly title: string }
  /** Values as an earlier version or another copy stores them; see `perform-take-over.ts`. */
  | {
      readonly do: 'take over';
      readonly edits: readonly StoredEdit[];
      /** True where rows become all that they were: what was allotted then belongs to them, also where it is the same now. */
      readonly whole?: boolean;
      /** What it is called in 'Undo …'. */
      readonly called: string;
    }
  /** Several at once: all or none, and one step of undo. */
  | {
      readonly do: 'all';
      readonly of: readonly Command[];
      /** What it is called in 'Undo …'; else it is named after its first part. */
      readonly called?: string;
    };

/** As typed or pasted; null or empty text blanks the cell. */
export type Typed = Raw | null;

export interface TypedCell {
  readonly row: string;
  readonly column: string;
  readonly typed: Typed;
}

export interface NewRow {
  readonly id: string;
  readonly cells?: { readonly [column: string]: Typed };
}

/** How a column is called and shown. Null goes back to what is usual. */
export interface ColumnLook {
  readonly title?: string | null;
  readonly hidden?: boolean | null;
  readonly pinned?: boolean | null;
  readonly width?: number | null;
  /** Of an own column: fills every blank cell. As typed. */
  readonly formula?: string | null;
  /** Of an own column: how entries are read and shown. What is there already stays as it was typed. */
  readonly type?: OwnType | null;
  /** Of an own column of numbers: name or id of a unit or container. */
  readonly measure?: string | null;
  readonly choices?: readonly string[] | null;
  /** 0 to 6. */
  readonly decimals?: number | null;
  readonly note?: string | null;
  readonly summary?: Summary | null;
  readonly marks?: readonly Marking[] | null;
  /** Of a column on an own sheet: the planning column that it shows. */
  readonly plan?: TakenColumn | null;
}

/** A column of a new sheet. */
export interface NewColumn {
  readonly id: string;
  readonly title: string;
  readonly as?: ColumnLook;
}

/** Cells of one block that a formula may not be pasted past. */
export const MAX_CELLS_AT_ONCE = 500_000;

/** Rows of one sheet, columns of one sheet: beyond them a refusal with a message. */
export const MAX_ROWS = 100_000;
export const MAX_COLUMNS = 400;

/** In words, for 'Undo …' and the live region. */
export function describe(command: Command): string {
  switch (command.do) {
    case 'set cells':
      return command.cells.length === 1
        ? say`change of a cell`
        : say`change of ${command.cells.length} cells`;
    case 'insert rows':
      return command.rows.length === 1 ? say`new row` : say`${command.rows.length} new rows`;
    case 'remove rows':
      return command.rows.length === 1 ? say`removal of a row` : say`removal of ${command.rows.length} rows`;
    case 'move rows':
      return say`move of rows`;
    case 'add column':
      return say`new column “${command.title}”`;
    case 'remove columns':
      return say`removal of a column`;
    case 'move columns':
      return say`move of columns`;
    case 'describe column':
      return command.as.title !== undefined ? say`new title of a column` : say`change of a column`;
    case 'mark cells':
      if (command.lookedAt) return say`a formula that was looked at`;
      return command.note === undefined ? say`colour of cells` : say`note on a cell`;
    case 'group rows':
      return command.by === null ? say`rows without groups` : say`rows in groups`;
    case 'move sheet':
      return say`move of a sheet`;
    case 'set setting':
      return say`change of the household`;
    case 'add sheet':
      return say`new sheet “${command.title}”`;
    case 'rename sheet':
      return say`new title of a sheet`;
    case 'remove sheet':
      return say`removal of a sheet`;
    case 'rename book':
      return say`new title of the book`;
    case 'take over':
      return command.called;
    case 'all':
      if (command.called !== undefined) return command.called;
      return command.of.length === 1
        ? describe(command.of[0]!)
        : command.of[0]
          ? say`${describe(command.of[0])} and more`
          : say`nothing`;
  }
}

/** Narrowing helper for record-valued changes. */
export const json = (value: object): Json => value as Json;
