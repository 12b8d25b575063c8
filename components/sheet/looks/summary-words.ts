import type { Summary } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { SummaryFigure } from '../../../src/live/summary.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { fixedNumber, shownDay, shownNumber, unitOfColumn, unitWord } from '../shown.js';

/** A summary's name where there is little room. */
export const SUMMARY_NAMES: Readonly<Record<Summary, string>> = {
  sum: phrase('sum'),
  mean: phrase('mean'),
  count: phrase('filled'),
  least: phrase('least'),
  most: phrase('most'),
};

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The figure itself with its unit: '124 quart jars', '3 Aug 2026', or that there is none. */
export function summaryWords(
  { summary, value, unit, problem }: SummaryFigure,
  column: Pick<ColumnView, 'role' | 'decimals' | 'unit' | 'measure' | 'type'>,
): string {
  if (problem) return say`cannot be given`;
  if (value === null) return '–';
  if (typeof value === 'string') return ISO_DAY.test(value) ? shownDay(value) : value;
  if (summary === 'count') return shownNumber(value, 0);
  const fixed = column.role === 'own' && column.decimals !== undefined;
  const digits = summary === phrase('mean') ? Math.max(2, column.decimals ?? 2) : column.decimals;
  const text = fixed ? fixedNumber(value, column.decimals!) : shownNumber(value, digits);
  const word = unitWord(unit ?? unitOfColumn(column), value);
  return word ? `${text} ${word}` : text;
}

/** In full, for screen readers and on hovering. `some`: of the rows shown only. */
export function summaryInWords(figure: SummaryFigure, column: ColumnView, some: boolean): string {
  const { summary, problem, of, leftOut } = figure;
  const what = `${column.title}: ${spoken(SUMMARY_NAMES[summary])}${some ? ` ${say`of the rows shown`}` : ''}`;
  if (problem) return `${what}: ${spoken(problem.message)} ${spoken(problem.mend)}`.trim();
  if (figure.value === null) return say`${what}: nothing to count yet.`;
  const from = of === 1 ? say`of one cell` : say`of ${of} cells`;
  const out = leftOut === 0 ? '' : leftOut === 1 ? say`; one was left out` : say`; ${leftOut} were left out`;
  return `${what}: ${summaryWords(figure, column)} (${from}${out})`;
}
