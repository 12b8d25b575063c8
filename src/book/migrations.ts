import { BOOK_VERSION } from './types.js';

type Unchecked = Readonly<Record<string, unknown>>;

/** From version N to N + 1, by N. Each gets plain data that has passed no check, and must not fail on it. */
const MIGRATIONS: Readonly<Record<number, (book: Unchecked) => Unchecked>> = {
  // Version 0: drafts from before the first release kept sheets without a `columns` record.
  0: (book) => ({
    ...book,
    version: 1,
    sheets: Object.fromEntries(
      Object.entries((book.sheets ?? {}) as Unchecked).map(([id, sheet]) => [
        id,
        typeof sheet === 'object' && sheet !== null ? { columns: {}, ...sheet } : sheet,
      ]),
    ),
  }),
  // Version 1 knew nothing of the garden and the week's table: `complete` gives it their sheets, empty.
  1: (book) => ({ ...book, version: 2 }),
};

/** Brings a book of an older version up to this one, a version at a time. */
export function migrated(book: Unchecked): Unchecked {
  let current = book;
  for (let version = Number(book.version); version < BOOK_VERSION; version++) {
    current = MIGRATIONS[version]?.(current) ?? { ...current, version: version + 1 };
  }
  return current;
}
