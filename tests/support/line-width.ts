/**
 * Widths of characters of a plain sans-serif in thousandths of its size, by the published metrics of
 * Helvetica (Adobe Font Metrics); Arial and Liberation Sans have the same. Others count as a wide one.
 */
const WIDTHS: Record<string, number> = {};
const give = (width: number, characters: string): void => {
  for (const each of characters) WIDTHS[each] = width;
};
give(556, '0123456789abdeghnopqu$_+L');
give(222, "ijl'’‘");
give(278, 'ft .,:;/!I[]\\·');
give(333, 'r()-“”`');
give(500, 'ckvxszyJ');
give(833, 'mM');
give(722, 'wCDHNRU');
give(667, 'ABEKPSVXY&');
give(778, 'GOQ');
give(611, 'FTZ');
give(944, 'W');
give(584, '=<>×÷+−~≈');
give(889, '%');
give(1000, '…—');
give(834, '½⅓⅔¼¾⅛⅜⅝⅞');

/** Width of a text in points, set in so many points. */
export const widthOf = (text: string, points: number): number =>
  ([...text].reduce((all, char) => all + (WIDTHS[char] ?? 833), 0) * points) / 1000;

/** Lines that a text takes in a column so many points wide, and the widest word of it. */
export function linesOf(text: string, points: number, column: number): { lines: number; widest: number } {
  let lines = 1;
  let at = 0;
  let widest = 0;
  const blank = widthOf(' ', points);
  for (const word of text.split(' ')) {
    const width = widthOf(word, points);
    widest = Math.max(widest, width);
    if (at > 0 && at + blank + width > column) {
      lines++;
      at = width;
    } else at += (at > 0 ? blank : 0) + width;
  }
  return { lines, widest };
}
