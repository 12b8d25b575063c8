import { KINDS } from './kinds/index.js';
import { isOrderKey, keysAfter } from './order.js';
import { BOOK_VERSION, type SheetKind } from './types.js';

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
  // Version 1 knew nothing of the garden: its sheets come in empty, after those that are there.
  1: (book) => ({ ...book, version: 2, sheets: withSheets((book.sheets ?? {}) as Unchecked) }),
};

const GARDEN: readonly SheetKind[] = ['beds', 'harvest', 'batches', 'supplies', 'facts'];

function withSheets(sheets: Unchecked): Unchecked {
  const kinds = Object.values(sheets).map((sheet) => (sheet as Unchecked | null)?.kind);
  const missing = GARDEN.filter((kind) => !kinds.includes(kind) && !Object.hasOwn(sheets, kind));
  const orders = Object.values(sheets).map((sheet) => String((sheet as Unchecked | null)?.order ?? ''));
  const last = orders.filter(isOrderKey).sort().at(-1) ?? null;
  const keys = keysAfter(last, missing.length);
  const added = missing.map((kind, i) => [
    kind,
    { kind, title: KINDS[kind].title, order: keys[i], columns: {}, rows: {} },
  ]);
  return { ...sheets, ...Object.fromEntries(added) };
}

/** Brings a book of an older version up to this one, a version at a time. */
export function migrated(book: Unchecked): Unchecked {
  let current = book;
  for (let version = Number(book.version); version < BOOK_VERSION; version++) {
    current = MIGRATIONS[version]?.(current) ?? { ...current, version: version + 1 };
  }
  return current;
}
