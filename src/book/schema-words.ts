import { say, spoken } from '../words/index.js';

/** How the schema library words what it finds, and the same in the language spoken. */
const WORDINGS: readonly (readonly [RegExp, (a: string, b: string) => string])[] = [
  [
    /^Invalid input: expected (.+), received (.+)$/,
    (a, b) => say`Invalid input: expected ${a}, received ${b}`,
  ],
  [/^Invalid input: expected (.+)$/, (a) => say`Invalid input: expected ${a}`],
  [/^Invalid option: expected one of (.+)$/, (a) => say`Invalid option: expected one of ${a}`],
  [/^Too small: expected (.+) to be (.+)$/, (a, b) => say`Too small: expected ${a} to be ${b}`],
  [/^Too small: expected (.+) to have (.+)$/, (a, b) => say`Too small: expected ${a} to have ${b}`],
  [/^Too big: expected (.+) to be (.+)$/, (a, b) => say`Too big: expected ${a} to be ${b}`],
  [/^Too big: expected (.+) to have (.+)$/, (a, b) => say`Too big: expected ${a} to have ${b}`],
];

/** What is wrong with a part of a file in the language spoken; as the library words it where that is not known here. */
export function schemaWords(message: string): string {
  for (const [wording, inWords] of WORDINGS) {
    const found = wording.exec(message);
    if (found) return inWords(found[1]!, found[2] ?? '');
  }
  return spoken(message);
}
