import { type CellValue, type ColumnType, isCellError, type Summary } from '../book/index.js';
import { fromIsoDay } from '../planning/dates.js';
import type { Problem } from '../problem.js';
import { containerWithId, unitWithId } from '../units/index.js';
import { say, spoken } from '../words/index.js';
import { exactMean, exactSum } from './exact-sum.js';

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
  /** What a number is counted in, where anything says it. */
  readonly unit: (row: string) => string | undefined;
}

/** What stands under a column of this type over these rows. Errors and what is of another type are left out, and counted. */
export function summaryOver(
  summary: Summary,
  type: ColumnType,
  rows: readonly string[],
  cells: SummaryCells,
): SummaryFigure {
  const filled = rows.flatMap((row) => {
    const value = cells.value(row);
    // A tick that is not set says no more than a blank cell.
    const isBlank = value === null || value === false || (typeof value === 'string' && value.trim() === '');
    return isBlank ? [] : [{ row, value }];
  });
  const none = { summary, value: null, unit: undefined, of: 0, leftOut: filled.length };
  if (summary === 'count') {
    const counted = filled.filter(({ value }) => !isCellError(value) && isOf(type, value)).length;
    return { summary, value: counted, unit: undefined, of: counted, leftOut: filled.length - counted };
  }
  const numbers = filled.filter(({ value }) => typeof value === 'number' && Number.isFinite(value));
  if (numbers.length === 0) return datesOver(summary, filled, none);
  const values = numbers.map(({ value }) => value as number);
  const leftOut = filled.length - numbers.length;
  const units = [...new Set(numbers.filter(({ value }) => value !== 0).map(({ row }) => cells.unit(row)))];
  if (units.length > 1) {
    return { ...none, of: numbers.length, leftOut, problem: unlike(summary, units) };
  }
  const value = reckon(summary, values);
  if (!Number.isFinite(value)) return { ...none, of: numbers.length, leftOut, problem: TOO_LARGE };
  return {
    summary,
    value,
    unit: units.length === 1 ? units[0] : cells.unit(numbers[0]!.row),
    of: numbers.length,
    leftOut,
  };
}

const TOO_LARGE: Problem = {
  code: 'sum-too-large',
  get message() {
    return say`That comes to more than a number holds.`;
  },
  get mend() {
    return say`Look for an entry that has too many digits.`;
  },
};

function reckon(summary: Exclude<Summary, 'count'>, values: readonly number[]): number {
  switch (summary) {
    case 'sum':
      return exactSum(values);
    case 'mean':
      return exactMean(values);
    case 'least':
      return values.reduce((least, each) => Math.min(least, each));
    case 'most':
      return values.reduce((most, each) => Math.max(most, each));
  }
}

function datesOver(
  summary: Summary,
  filled: readonly { readonly value: CellValue }[],
  none: SummaryFigure,
): SummaryFigure {
  if (summary !== 'least' && summary !== 'most') return none;
  const days = filled
    .flatMap(({ value }) => (typeof value === 'string' && isDay(value) ? [value] : []))
    .sort();
  if (days.length === 0) return none;
  const value = (summary === 'least' ? days[0] : days.at(-1))!;
  return { ...none, value, of: days.length, leftOut: filled.length - days.length };
}

const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text) && fromIsoDay(text).ok;

/** Whether a filled cell is what its column takes; words among planning figures ('no use') are not. */
function isOf(type: ColumnType, value: CellValue): boolean {
  if (type === 'number') return typeof value === 'number';
  if (type === 'date') return typeof value === 'string' && isDay(value);
  return type !== 'tick' || value === true;
}

const wordOf = (unit: string | undefined): string =>
  unit === undefined || unit === ''
    ? say`what says no unit`
    : spoken(containerWithId(unit)?.plural ?? unitWithId(unit)?.plural ?? unit);

function unlike(summary: Summary, units: readonly (string | undefined)[]): Problem {
  const words = units.map(wordOf);
  const said = `${words.slice(0, 3).join(say` and `)}${words.length > 3 ? say` and more` : ''}`;
  return {
    code: 'units-differ',
    message:
      summary === 'sum' || summary === 'mean'
        ? say`Adding ${said} makes no sense.`
        : say`${said.charAt(0).toUpperCase() + said.slice(1)} do not compare.`,
    mend: say`Show only rows that are counted in the same, or add a column that converts them.`,
  };
}
