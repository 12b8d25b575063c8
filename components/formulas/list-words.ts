import type { ListedSheet } from '../../src/live/doings/formulas-of-book.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { counted, say } from '../../src/words/index.js';

/** How much there is: '4 formulas, 1 with an error, 2 entries to look at.' */
export function summary(live: LiveBook, listed: readonly ListedSheet[]): string {
  if (live.needsEngine) return say`Formulas are being loaded.`;
  const formulas = listed.flatMap((sheet) => sheet.formulas);
  const wrong = formulas.filter(({ errors }) => errors.length > 0).length;
  const entries = listed.flatMap((sheet) => sheet.entries).reduce((sum, { rows }) => sum + rows.length, 0);
  const parts = [
    counted(formulas.length, String(formulas.length), 'formula'),
    wrong === 0 ? say`none with an error` : say`${wrong} with an error`,
    ...(entries === 0 ? [] : [counted(entries, String(entries), 'entry to look at', 'entries to look at')]),
  ];
  return `${parts.join(', ')}.`;
}

/** What an empty list says. */
export function nothingListed(search: string, errors: boolean): string {
  if (search.trim() !== '') return say`Nothing here holds those words.`;
  if (errors) return say`No errors: every formula gives an answer, and every entry can be read.`;
  return say`No formulas yet. A cell that begins with = is one, and a column of your own can have one for every row.`;
}
