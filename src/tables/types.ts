import type { DateOrder } from '../planning/parse-date.js';
import type { Problem } from '../problem.js';

/** A day as a workbook holds one. */
export interface SourceDay {
  /** ISO 8601, as in `2026-05-24`. */
  readonly day: string;
}

/** A formula as a workbook holds one: as written there, with `=`, and what it last came to. */
export interface SourceFormula {
  readonly formula: string;
  readonly value: string | number | boolean | SourceDay | null;
}

/** What a file says in one place. In files of text everything is a string; null is blank. */
export type SourceCell = string | number | boolean | SourceDay | SourceFormula | null;

/** One row of a file. */
export interface SourceRow {
  /** Line of the file on which it begins, or row of the worksheet, from 1. */
  readonly line: number;
  readonly cells: readonly SourceCell[];
}

/** Something in a file that could not be taken as it stands: where it is, what is wrong, how to mend it. */
export interface RowProblem extends Problem {
  /** Line or row of the file, from 1; null where it is the file as a whole. */
  readonly line: number | null;
  /** Heading of the column; null where it is the whole row. */
  readonly heading: string | null;
}

/** What a file or a worksheet holds, before anything is decided about it. */
export interface SourceTable {
  /** Of the file or the worksheet, without its ending. */
  readonly name: string;
  readonly rows: readonly SourceRow[];
  readonly problems: readonly RowProblem[];
  /** Worth knowing, and nothing to mend: line ends mixed, for one. */
  readonly notes: readonly string[];
}

/** What a column of a file is read as. `month-day` only for columns of the book that hold one. */
export const READ_TYPES = ['text', 'number', 'date', 'tick', 'choice'] as const;
export type ReadType = (typeof READ_TYPES)[number] | 'any' | 'month-day';

/** How the cells of one column of a file are read: the column as a whole, never cell by cell. */
export interface Reading {
  readonly type: ReadType;
  /** How numbers with the year last are meant. */
  readonly dateOrder: DateOrder;
  /** `1.234,5` rather than `1,234.5`. */
  readonly decimalComma: boolean;
  /** Of a column of choices: what may stand in it. Empty: anything. */
  readonly choices: readonly string[];
}

export const isSourceDay = (cell: SourceCell): cell is SourceDay =>
  typeof cell === 'object' && cell !== null && 'day' in cell;

export const isSourceFormula = (cell: SourceCell): cell is SourceFormula =>
  typeof cell === 'object' && cell !== null && 'formula' in cell;

export const isBlank = (cell: SourceCell | undefined): boolean =>
  cell === undefined || cell === null || (typeof cell === 'string' && cell.trim() === '');

/** A cell of a file as a person reads it. */
export function asText(cell: SourceCell | undefined): string {
  if (cell === undefined || cell === null) return '';
  if (isSourceDay(cell)) return cell.day;
  if (isSourceFormula(cell)) return asText(cell.value);
  return String(cell);
}

export const rowProblem = (
  line: number | null,
  heading: string | null,
  code: string,
  message: string,
  mend: string,
): RowProblem => ({ code, message, mend, line, heading });
