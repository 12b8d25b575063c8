import { type CellValue, losesDigits } from '../book/index.js';
import { parseDay } from '../planning/parse-date.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import type { ColumnView } from './columns.js';

const short = (value: unknown): string => String(value).slice(0, 40);

/** What is wrong with a cell of a column that the person gave a type: an entry or a formula's answer that is none of it. */
export function ownProblem(
  { title, type, listed, formula }: Pick<ColumnView, 'title' | 'type' | 'listed' | 'formula'>,
  value: CellValue,
  isFormula: boolean,
): Problem | undefined {
  if (value === null || value === '' || typeof value === 'object') return undefined;
  const mend = (typed: string): string =>
    isFormula
      ? formula === undefined
        ? say`The formula gives it: correct that, or give the column another type.`
        : say`The formula of this column gives it: correct that, or give the column another type.`
      : typed;
  switch (type) {
    case 'number':
      if (typeof value === 'number') return undefined;
      if (typeof value === 'string' && losesDigits(value.trim()))
        return {
          code: 'too-many-digits',
          message: say`“${short(value)}” has more digits than a number holds, so it stays text.`,
          mend: mend(say`Round it; if it is a code, give the column the type “text”.`),
        };
      return {
        code: 'not-a-number',
        message: say`“${title}” takes a number, not “${short(value)}”.`,
        mend: mend(say`Write it in digits, as in 12 or 2.5.`),
      };
    case 'date':
      if (typeof value === 'string' && parseDay(value).ok) return undefined;
      return {
        code: 'not-a-date',
        message: say`“${title}” takes a date; “${short(value)}” is none.`,
        mend: mend(say`Write it year first, as in 2026-05-24.`),
      };
    case 'tick':
      if (typeof value === 'boolean') return undefined;
      return {
        code: 'not-a-tick',
        message: say`“${title}” takes a tick, not “${short(value)}”.`,
        mend: mend(say`Write yes or no.`),
      };
    case 'choice': {
      const said = String(value).trim().toLowerCase();
      if (listed.length === 0 || listed.some((each) => each.toLowerCase() === said)) return undefined;
      return {
        code: 'not-a-choice',
        message: say`“${title}” has no choice “${short(value)}”.`,
        mend: mend(
          `${say`Choose one of: `}${listed.slice(0, 12).join(', ')}${listed.length > 12 ? '…' : ''}.`,
        ),
      };
    }
    default:
      return undefined;
  }
}
