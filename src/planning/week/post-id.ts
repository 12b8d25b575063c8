/** 32-bit FNV-1a of a text (Fowler, Noll and Vo), in base 36: seven characters at most. */
export function shortHash(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(36).padStart(7, '0');
}

/** Ids longer than this would not fit with the rest into the id of a row. */
const LONGEST = 50;
const MARK = /^w-([A-Za-z0-9_-]{1,50})-[0-9a-z]{7}$/;

const markOf = (meal: string): string => (meal.length <= LONGEST ? meal : `h${shortHash(meal)}`);

/**
 * The id of the draw that a meal makes of a food line: the same whenever and wherever it is marked done, so that
 * marking twice, or on two copies of a book, is one draw.
 */
export const drawIdOf = (meal: string, line: string): string => `w-${markOf(meal)}-${shortHash(line)}`;

/** Ids of the meals that have draws among these: what stands in the ledger is done, whatever the tick says. */
export function postedMeals(drawIds: Iterable<string>, meals: Iterable<string>): Set<string> {
  const marks = new Set<string>();
  for (const id of drawIds) {
    const mark = MARK.exec(id)?.[1];
    if (mark !== undefined) marks.add(mark);
  }
  const posted = new Set<string>();
  if (marks.size > 0) for (const meal of meals) if (marks.has(markOf(meal))) posted.add(meal);
  return posted;
}
