/** Longest title that is made of a page's words: shorter than a book takes, so that a number has room behind it. */
const LONGEST = 54;

/**
 * A title that a book takes for its sheet, of what a page says over its table: some signs stand in no title, and
 * every book has sheets called `Beds` or `Shelf`; then `Beds 2`.
 *
 * @param taken titles of the sheets that there are.
 */
export function sheetTitle(words: string, taken: readonly string[]): string {
  const signless = words
    .replace(/[[\]*?:/\\]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const title = signless.length > LONGEST ? `${signless.slice(0, LONGEST).trim()}…` : signless;
  const lower = new Set(taken.map((each) => each.toLowerCase()));
  if (title !== '' && !lower.has(title.toLowerCase())) return title;
  let n = 2;
  while (lower.has(`${title} ${n}`.trim().toLowerCase())) n++;
  return `${title} ${n}`.trim();
}
