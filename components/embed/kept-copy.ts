import type { BookDoc } from '../../src/book/types.js';
import type { ShownTable } from '../../src/live/embed/index.js';

/** A reader's own copy of an embedded sheet. */
export interface KeptCopy {
  /** Of the page's own data when the reader began. */
  readonly digest: string;
  readonly book: BookDoc;
  /** What it comes to, so that nothing has to be worked out to show it. */
  readonly table: ShownTable;
  /** Path of the page on which the reader began. */
  readonly page?: string;
  /** It was kept before all of it had been worked out. */
  readonly unfinished?: boolean;
}

const PREFIX = 'croft-embed ';

/** A short text that differs where two texts do (not meant to withstand anyone who wants them to agree). */
export function digestOf(text: string): string {
  let [one, two] = [0x811c9dc5, 0x1000193];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    one = Math.imul(one ^ code, 0x01000193);
    two = Math.imul(two ^ code, 0x85ebca6b) + one;
  }
  return `${(one >>> 0).toString(36)}-${(two >>> 0).toString(36)}-${text.length.toString(36)}`;
}

function copyAt(key: string): KeptCopy | null {
  try {
    const text = localStorage.getItem(key);
    const kept: unknown = text === null ? null : JSON.parse(text);
    return isKept(kept) ? kept : null;
  } catch {
    return null;
  }
}

const isOf = (page: string, copy: KeptCopy | null): boolean => (copy?.page ?? page) === page;

/** Two pages of a site may give one name to tables of their own: then the later copy stands under its page, too. */
const keyOn = (name: string, page: string): string =>
  isOf(page, copyAt(PREFIX + name)) ? PREFIX + name : `${PREFIX + name} @${page}`;

/** The reader's copy of this page, if there is one that can be read and the browser lets the page ask. */
export const readKept = (name: string, page: string): KeptCopy | null =>
  copyAt(keyOn(name, page)) ?? earlierCopy(name, page);

/** Names that are proposed end in the day of the figures. */
const DAY = /\d{4}-\d\d-\d\d$/;

/**
 * The reader's copy of figures of another day that were pasted into this page before, under a name that is the same
 * but for that day. It goes on under the new name.
 */
function earlierCopy(name: string, page: string): KeptCopy | null {
  if (!DAY.test(name)) return null;
  try {
    for (const key of Object.keys(localStorage)) {
      const other = key.slice(PREFIX.length).replace(` @${page}`, '');
      const copy = other.replace(DAY, '') === name.replace(DAY, '') && copyAt(key);
      if (!copy || copy.page !== page) continue;
      // It may be that of another element still.
      if (document.querySelector(`croft-embed[keep-as="${CSS.escape(other)}"]`)) continue;
      if (writeKept(name, copy)) localStorage.removeItem(key);
      return copy;
    }
  } catch {
    // As where nothing can be kept.
  }
  return null;
}

/** A copy under this name that was begun on another page: of the same table, or of another one. */
export function readElsewhere(name: string, page: string): KeptCopy | null {
  const copy = copyAt(PREFIX + name);
  return isOf(page, copy) ? null : copy;
}

function isKept(value: unknown): value is KeptCopy {
  if (typeof value !== 'object' || value === null) return false;
  const { digest, book, table } = value as Partial<KeptCopy>;
  return (
    typeof digest === 'string' &&
    typeof book === 'object' &&
    book !== null &&
    Array.isArray(table?.columns) &&
    Array.isArray(table?.rows) &&
    Array.isArray(table?.cautions)
  );
}

/** Keeps the reader's copy; false where the browser keeps nothing for this page, or no more. */
export function writeKept(name: string, copy: KeptCopy): boolean {
  try {
    localStorage.setItem(keyOn(name, copy.page ?? ''), JSON.stringify(copy));
    return true;
  } catch {
    return false;
  }
}

export function dropKept(name: string, page: string): void {
  try {
    localStorage.removeItem(keyOn(name, page));
  } catch {
    // Where nothing can be kept there is nothing to drop.
  }
}
