import { isSameUnit, type WrittenNumber, writtenNumber } from './written-number.js';

/** What a column of a table holds, read together: what one cell means may hang on the others. */
export interface ReadColumn {
  /** Undefined where it holds words and numbers. */
  readonly type: 'number' | 'text' | undefined;
  /** Its cells as a book takes them. */
  readonly cells: readonly (number | string)[];
}

/**
 * Numbers where cells hold them. A word behind one is its unit where all that have one have the same, so that
 * `28 jars` above `3 bags` stay words: an amount of one is none of the other.
 *
 * @param texts cells that are not empty.
 * @param tag language in which they are written, as a BCP 47 tag.
 */
export function readColumn(texts: readonly string[], tag: string): ReadColumn {
  const read = texts.map((text) => writtenNumber(text, tag));
  const units = read.flatMap((each) => (each?.unit ? [each.unit] : []));
  const isOneUnit = units.every((unit) => isSameUnit(unit, units[0] ?? ''));
  const counts = (each: WrittenNumber | undefined): each is WrittenNumber =>
    each !== undefined && (each.unit === '' || isOneUnit);
  if (!read.some(counts)) return { type: 'text', cells: texts };
  const type = read.every(counts) ? 'number' : undefined;
  return { type, cells: texts.map((text, i) => asEntry(text, read[i], counts(read[i]))) };
}

/** Behind an apostrophe, what begins as a number or a formula does is words. */
function asEntry(text: string, read: WrittenNumber | undefined, counts: boolean): number | string {
  if (counts && read) return read.value;
  return /^[-+=.\d']|^(?:true|false)$/i.test(text) ? `'${text}` : text;
}
