import type { PlacedPart } from './placed-tree.js';

/**
 * By how much what a part of a formula gives is multiplied once the household writes in other measures: 1 where it
 * stays, `any` for nought and for words, undefined where parts go different ways or it is not known.
 */
export type Turn = number | 'any' | undefined;

/** Of a reference, whose cells are turned like their columns. */
export type TurnOfReference = (part: Extract<PlacedPart, { is: 'reference' }>) => Turn;

const words = (list: string): ReadonlySet<string> => new Set(list.split(' '));
/** Answers follow arguments that all go one way. */
export const ALIKE = words('SUM AVERAGE MIN MAX MEDIAN IFERROR IFNA CEILING FLOOR MROUND');
/** Answers follow the first argument. */
const OF_FIRST = words('ROUND ROUNDUP ROUNDDOWN INT TRUNC ABS LARGE SMALL PERCENTILE STDEV INDEX');
/** Answers are the same whatever the numbers are. */
const COUNTS = words(
  'COUNT COUNTA COUNTBLANK ROW ROWS COLUMN COLUMNS ISBLANK ISNUMBER ISTEXT ISERROR ISNA ISLOGICAL ISNONTEXT SIGN',
);
const COMPARING = words('= <> < > <= >=');

export const same = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-9;

const joined = (turns: readonly Turn[]): Turn => {
  let found: Turn = 'any';
  for (const each of turns) {
    if (each === undefined) return undefined;
    if (each === 'any') continue;
    if (found !== 'any' && !same(found, each)) return undefined;
    found = each;
  }
  return found;
};

const stays = (turn: Turn): boolean => turn === 'any' || (turn !== undefined && same(turn, 1));

/** What becomes of a part that stays as it is written. */
export function turnOf(part: PlacedPart, ofReference: TurnOfReference): Turn {
  switch (part.is) {
    case 'number':
      return part.value === 0 ? 'any' : 1;
    case 'text':
      return 'any';
    case 'reference':
      return ofReference(part);
    case 'other':
      return undefined;
    case 'operator':
      return ofOperator(
        part.operator,
        part.parts.map((each) => turnOf(each, ofReference)),
      );
    case 'call':
      if (COUNTS.has(part.name)) return 1;
      return ofCall(
        part.name,
        part.parts.map((each) => turnOf(each, ofReference)),
      );
  }
}

function ofOperator(operator: string, turns: readonly Turn[]): Turn {
  if (turns.length === 1 || operator === '+' || operator === '-') return joined(turns);
  if (COMPARING.has(operator)) return joined(turns) === undefined ? undefined : 1;
  // A share of two alike stays; a number by which one multiplies or divides may have a measure in it (a sack of 50).
  if (turns.every(stays) || (operator === '/' && joined(turns) !== undefined)) return 1;
  return undefined;
}

function ofCall(name: string, turns: readonly Turn[]): Turn {
  if (ALIKE.has(name)) return joined(turns);
  if (name === 'IF') return turns[0] === undefined ? undefined : joined(turns.slice(1));
  if (OF_FIRST.has(name)) return turns.slice(1).every(stays) ? turns[0] : undefined;
  if (name === 'SUMIF' || name === 'AVERAGEIF')
    return turns.slice(0, 2).every(stays) ? turns[turns.length > 2 ? 2 : 0] : undefined;
  return turns.every(stays) ? 1 : undefined;
}
