/** Where a problem is: in a sheet's cell, or at a path of a file. Every part is optional. */
export interface Where {
  readonly sheet?: string;
  readonly row?: string;
  readonly column?: string;
  /** Path inside a book file, as in `sheets.shelf.rows.r1.order`. */
  readonly path?: string;
}

/**
 * Something that could not be done or read. A value, never thrown across a public boundary:
 * what is wrong (`message`), how to put it right (`mend`), and where it is.
 */
export interface Problem {
  /** Stable, hyphenated; each code has its line in `problem-codes.ts`. */
  readonly code: string;
  readonly message: string;
  readonly mend: string;
  readonly where?: Where;
}

/** Either a value or the problem that stands in its way. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

export const refuse = (
  code: string,
  message: string,
  mend: string,
  where?: Where,
): { readonly ok: false; readonly problem: Problem } => ({
  ok: false,
  problem: where ? { code, message, mend, where } : { code, message, mend },
});

/** A problem that stands for a while: told in the language that is spoken when it is read. */
export const standing = (code: string, message: () => string, mend: () => string): Problem => ({
  code,
  get message() {
    return message();
  },
  get mend() {
    return mend();
  },
});

/** At most so many characters of a text; a sign that takes two of them is not cut in half. */
export const cut = (text: string, most: number): string =>
  text.slice(0, most).replace(text.length > most ? /[\uD800-\uDBFF]$/ : /$^/, '');

/** What somebody wrote, as a message quotes it: trimmed, and cut where it is long. */
export const excerpt = (text: string, most = 60): string => {
  const trimmed = text.trim();
  return trimmed.length > most ? `${cut(trimmed, most)}…` : trimmed;
};

/** Longer than any name of a crop, food, unit or container: not worth comparing with one for a slip. */
export const MAX_NAME = 80;
