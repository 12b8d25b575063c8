import { parseA1Ref, tokenize } from '@borgar/fx';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import type { ColumnPlan } from './plan.js';
import { isSourceFormula, type RowProblem, rowProblem, type SourceRow } from './types.js';
import { functionIn } from './workbook-functions.js';

/** What is brought in of a worksheet, by its places there (from 0). */
export interface Area {
  readonly worksheet: string;
  column(index: number): string | undefined;
  row(index: number): string | undefined;
  /** The last row brought in: ranges that run past it end there. */
  readonly lastRow: number;
}

const OPERATORS: ReadonlySet<string> = new Set('+ - * / ^ & = <> <= >= < > ( ) , %'.split(' '));

const cannot = (message: string) =>
  refuse('formula-as-value', message, say`Write it anew in the book if it should go on being worked out.`);

/** A workbook's formula in the book's stored form, by ids; refused where it reaches past what is brought in. */
export function storedFormula(formula: string, area: Area): Result<string> {
  let stored = '';
  for (const { type, value } of tokenize(formula)) {
    switch (type) {
      case 'fx_prefix':
      case 'string':
      case 'whitespace':
      case 'newline':
        stored += value;
        break;
      case 'number':
        stored += value.toLowerCase();
        break;
      case 'bool':
        stored += `${value.toUpperCase()}()`;
        break;
      case 'operator':
        if (!OPERATORS.has(value))
          return cannot(say`This formula uses “${value}”, so its value came instead.`);
        stored += value;
        break;
      case 'func': {
        const name = functionIn(value);
        if (name === undefined)
          return cannot(
            say`This formula uses ${value.slice(0, 40)}, which the book does not have, so its value came instead.`,
          );
        stored += name;
        break;
      }
      case 'range':
      case 'range_beam': {
        const reference = storedReference(value, area);
        if (reference === undefined)
          return cannot(
            say`This formula refers to ${value.slice(0, 60)}, which is not brought in, so its value came instead.`,
          );
        stored += reference;
        break;
      }
      default:
        return cannot(say`This formula has “${value.slice(0, 40)}” in it, so its value came instead.`);
    }
  }
  return ok(stored);
}

function storedReference(text: string, area: Area): string | undefined {
  const parsed = parseA1Ref(text);
  if (!parsed || !('range' in parsed)) return undefined;
  const [context, ...others] = parsed.context ?? [];
  if (others.length > 0 || (context !== undefined && context.toLowerCase() !== area.worksheet.toLowerCase()))
    return undefined;
  const { top, left, bottom, right, $top, $left, $bottom, $right } = parsed.range;
  const from = area.column(left ?? -1);
  const to = area.column(right ?? -1);
  if (from === undefined || to === undefined) return undefined;
  const first = `${$left ? '$' : ''}${from}`;
  const last = `${$right ? '$' : ''}${to}`;
  if (top == null && bottom == null) return `[${first}@]:[${last}@]`;
  const upper = top == null ? undefined : area.row(top);
  const lower =
    bottom == null ? undefined : area.row(top === bottom ? bottom : Math.min(bottom, area.lastRow));
  if (upper === undefined || lower === undefined) return undefined;
  const corner = `[${first}@${$top ? '$' : ''}${upper}]`;
  return top === bottom && left === right ? corner : `${corner}:[${last}@${$bottom ? '$' : ''}${lower}]`;
}

/** The formulas of a table that can go on being formulas, and why the others come as values. */
export function readFormulas(
  body: readonly SourceRow[],
  columns: readonly ColumnPlan[],
  columnIds: ReadonlyMap<number, string>,
  rowIds: ReadonlyMap<number, string>,
  worksheet: string,
): { formulas: { row: string; column: string; typed: string }[]; refused: RowProblem[] } {
  const formulas: { row: string; column: string; typed: string }[] = [];
  const refused: RowProblem[] = [];
  const lines = [...rowIds.keys()];
  const area: Area = {
    worksheet,
    column: (index) => columnIds.get(index),
    row: (index) => rowIds.get(index + 1),
    lastRow: (lines.at(-1) ?? 0) - 1,
  };
  for (const { line, cells } of body) {
    const row = rowIds.get(line);
    if (row === undefined) continue;
    for (const { index, heading } of columns) {
      const cell = cells[index];
      if (cell === undefined || !isSourceFormula(cell)) continue;
      const stored = storedFormula(cell.formula, area);
      if (stored.ok) formulas.push({ row, column: columnIds.get(index)!, typed: stored.value });
      else {
        const { code, message, mend } = stored.problem;
        refused.push(rowProblem(line, heading, code, message, mend));
      }
    }
  }
  return { formulas, refused };
}
