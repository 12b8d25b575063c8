import type { CellValue, ColumnType, Summary } from '../book/index.js';
import type { Problem } from '../problem.js';

/** What stands under a column. */
export interface SummaryFigure {
  readonly summary: Summary;
  /** A number, an ISO date (least and most of dates), or null where there is nothing to say. */
  readonly value: number | string | null;
  /** Unit that all of them have in common. */
  readonly unit: string | undefined;
  /** How many cells it is made from. */
  readonly of: number;
  /** Filled cells that are errors or of another type, and so left out. */
  readonly leftOut: number;
  /** Why it cannot be worked out, as when quarts and pounds would be added. */
  readonly problem?: Problem;
}

/** How the cells of one column are read. */
export interface SummaryCells {
  readonly value: (row: string) => CellValue;
  readonly unit: (row: string) => string | undefined;
}

export function summaryOver(
  summary: Summary,
  _type: ColumnType,
  _rows: readonly string[],
  _cells: SummaryCells,
): SummaryFigure {
  return { summary, value: null, unit: undefined, of: 0, leftOut: 0 };
}
