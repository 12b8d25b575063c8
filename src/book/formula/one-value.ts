/**
 * Standard functions that take one value at a time. A column's name standing alone in one of their arguments
 * means the cell of the same row. (Any other function gets the whole column, and works out the cell itself
 * where it needs one: the same answer, only slower.)
 */
const ONE_AT_A_TIME = new Set(
  `IF IFS IFERROR IFNA SWITCH NOT ABS INT TRUNC SIGN SQRT POWER EXP LN LOG LOG10 MOD QUOTIENT ROUND ROUNDUP
  ROUNDDOWN CEILING FLOOR MROUND EVEN ODD TEXT VALUE LEN LEFT RIGHT MID UPPER LOWER PROPER TRIM SUBSTITUTE
  REPLACE SEARCH FIND REPT EXACT DATE DATEVALUE YEAR MONTH DAY DAYS DAYS360 EDATE EOMONTH WEEKDAY WEEKNUM
  ISOWEEKNUM DATEDIF YEARFRAC ISBLANK ISNUMBER ISTEXT ISERROR ISNA ISLOGICAL ISNONTEXT N T`.split(/\s+/),
);

/** Does this argument of this function take one value (rather than a range)? */
export type TakesOneValue = (functionName: string, argument: number) => boolean;

export const standardOneValue: TakesOneValue = (name) => ONE_AT_A_TIME.has(name);

interface Open {
  readonly name: string;
  argument: number;
}

/**
 * For each place where a match of `find` begins in a formula: does one value belong there? True outside
 * functions, beside an operator, and alone in an argument that takes one value.
 */
export function oneValueAt(
  formula: string,
  takesOne: TakesOneValue,
): (at: number, length: number) => boolean {
  const opens: { at: number; stack: readonly Open[] }[] = [];
  const stack: Open[] = [];
  const note = (at: number) => opens.push({ at, stack: stack.map((open) => ({ ...open })) });
  note(0);
  for (const match of formula.matchAll(/"(?:[^"]|"")*"|\[[^\]]*\]|([A-Za-z_][\w.]*)?\(|\)|,/g)) {
    const [text, name = ''] = match;
    if (text.startsWith('"') || text.startsWith('[')) continue;
    if (text.endsWith('(')) stack.push({ name: name.toUpperCase(), argument: 0 });
    else if (text === ')') stack.pop();
    else if (stack.length > 0) stack[stack.length - 1]!.argument++;
    note(match.index + text.length);
  }
  return (at, length) => {
    let inside: Open | undefined;
    for (const open of opens) {
      if (open.at > at) break;
      inside = open.stack.at(-1);
    }
    if (!inside || inside.name === '') return true;
    const alone = /[(,]\s*$/.test(formula.slice(0, at)) && /^\s*[,)]/.test(formula.slice(at + length));
    return !alone || takesOne(inside.name, inside.argument);
  };
}
