import { likeliest } from '../likeliest.js';
import { excerpt } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';

const PLAIN: Readonly<Record<string, string>> = {
  '#DIV/0!': phrase(
    'Division by zero or by a blank cell. Put the division inside IFERROR(…, "") if that can happen.',
  ),
  '#CYCLE!': phrase(
    'This formula depends on itself, directly or through other cells. Point it at other cells.',
  ),
  '#REF!': phrase(
    'The formula refers to a row, column or sheet that is not there any more. Write the reference again.',
  ),
  '#NAME?': phrase(
    'The formula names something that is not there, such as a cell far beyond the sheet. Check its names and addresses.',
  ),
  '#NUM!': phrase('A number in the formula is out of range for this function. Check its arguments.'),
  '#N/A': phrase('Nothing was found. Check what is looked for, or put it inside IFERROR(…, "").'),
  '#ERROR!': phrase('The formula cannot be read: look for a missing bracket, quotation mark or comma.'),
  '#VALUE!': phrase(
    'A value in the formula is of another kind than the function takes: text where a number belongs, say.',
  ),
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
    const name = excerpt(unknownFunction[1]!);
    return near
      ? say`There is no function called ${name}: did you mean ${near}?`
      : say`There is no function called ${name}. See the list of functions.`;
  }
  const unknownName = /^Named expression (.+) not recognized/.exec(detail);
  if (unknownName) {
    return say`“${excerpt(unknownName[1]!)}” is neither a column of this sheet nor a function. Text goes in quotation marks; a column is named by its title with _ for spaces.`;
  }
  if (/Cell range not allowed/.test(detail)) {
    return say`Many values stand where one belongs. Give a single cell, a column of this sheet to count row by row, or put them inside a function that makes one of them, such as SUM(…) or INDEX(…, 1).`;
  }
  if (/Value too large|Array/i.test(detail) && error === '#VALUE!') {
    return say`The answer has more cells than a sheet can hold. Ask for fewer rows or columns.`;
  }
  if (/Wrong number of arguments/.test(detail)) {
    return say`The function has too many or too few arguments. See its help for what it takes.`;
  }
  return spoken(PLAIN[error] ?? (detail || phrase('The formula gives an error.')));
}

const NAME = '\u0000';

/** Whether an error says, in the language spoken now, that a formula calls a function that there is not. */
export const saysUnknownFunction = (message: string): boolean =>
  [
    say`There is no function called ${NAME}: did you mean ${NAME}?`,
    say`There is no function called ${NAME}. See the list of functions.`,
  ].some((text) => message.startsWith(text.slice(0, text.indexOf(NAME))));
