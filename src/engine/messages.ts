import { likeliest } from '../likeliest.js';
import { excerpt } from '../problem.js';

const PLAIN: Readonly<Record<string, string>> = {
  '#DIV/0!':
    'Division by zero or by a blank cell. Put the division inside IFERROR(…, "") if that can happen.',
  '#CYCLE!': 'This formula depends on itself, directly or through other cells. Point it at other cells.',
  '#REF!':
    'The formula refers to a row, column or sheet that is not there any more. Write the reference again.',
  '#NAME?':
    'The formula names something that is not there, such as a cell far beyond the sheet. Check its names and addresses.',
  '#NUM!': 'A number in the formula is out of range for this function. Check its arguments.',
  '#N/A': 'Nothing was found. Check what is looked for, or put it inside IFERROR(…, "").',
  '#ERROR!': 'The formula cannot be read: look for a missing bracket, quotation mark or comma.',
  '#VALUE!':
    'A value in the formula is of another kind than the function takes: text where a number belongs, say.',
};

/** Stands before messages of our own functions, to tell them from the engine's. */
export const OURS = '\u2060';

/** An engine error in words that say what to do. */
export function plainMessage(error: string, detail: string, functionNames: readonly string[]): string {
  if (detail.startsWith(OURS)) return detail.slice(OURS.length);
  const unknownFunction = /^Function name (\S+) not recognized/.exec(detail);
  if (unknownFunction) {
    const near = likeliest(
      unknownFunction[1]!.toUpperCase(),
      functionNames.map((name) => [name, name]),
    );
    return `There is no function called ${excerpt(unknownFunction[1]!)}${near ? `: did you mean ${near}?` : '. See the list of functions.'}`;
  }
  const unknownName = /^Named expression (.+) not recognized/.exec(detail);
  if (unknownName) {
    return `“${excerpt(unknownName[1]!)}” is neither a column of this sheet nor a function. Text goes in quotation marks; a column is named by its title with _ for spaces.`;
  }
  if (/Cell range not allowed/.test(detail)) {
    return 'Many values stand where one belongs. Give a single cell, a column of this sheet to count row by row, or put them inside a function that makes one of them, such as SUM(…) or INDEX(…, 1).';
  }
  if (/Value too large|Array/i.test(detail) && error === '#VALUE!') {
    return 'The answer has more cells than a sheet can hold. Ask for fewer rows or columns.';
  }
  if (/Wrong number of arguments/.test(detail)) {
    return 'The function has too many or too few arguments. See its help for what it takes.';
  }
  return PLAIN[error] ?? (detail || 'The formula gives an error.');
}
