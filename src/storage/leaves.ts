import type { Json } from '../book/types.js';
import { isObject } from './plain.js';

/**
 * The shared maps of the mirror and what their keys are:
 * `book` FIELD · `settings` ID · `sheets` S or S/FIELD · `columns` S/C or S/C/FIELD · `rows` S/R or S/R/FIELD
 * · `cells` S/R/C. A key that ends at a sheet, column or row holds its mark.
 */
export const LEAF_MAPS = ['book', 'settings', 'sheets', 'columns', 'rows', 'cells'] as const;
export type LeafMap = (typeof LEAF_MAPS)[number];

/** `true`: it is there. Text: it was removed when this was its digest. */
export type Mark = true | string;

const UNSAFE = /[~/\p{Surrogate}]/gu;

/** Ids joined by `/`; inside an id `~` and `/` (and halves of characters, which do not survive UTF-8) are escaped. */
export const keyOf = (...ids: readonly string[]): string =>
  ids.map((id) => id.replace(UNSAFE, (c) => `~${c.charCodeAt(0).toString(16)}~`)).join('/');

export const idsOf = (key: string): string[] =>
  key
    .split('/')
    .map((id) =>
      !id.includes('~')
        ? id
        : id.replace(/~([0-9a-f]+)~/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
    );

/** What the shared map holds for a leaf. */
export type Stored = string | number | boolean | null | readonly [string];

/**
 * Scalars as they are. Lists and objects as a list of one JSON text: the library would rebuild an object key
 * by key, which loses a key named `__proto__`; and it would replace halves of characters in a text.
 */
export function store(value: Json): Stored {
  if (typeof value === 'string') return /\p{Surrogate}/u.test(value) ? [JSON.stringify(value)] : value;
  if (Array.isArray(value) || isObject(value)) return [JSON.stringify(value)];
  return value as number | boolean | null;
}

/** The leaf that a shared map holds, or undefined when it is nothing that `store` wrote. */
export function unstore(stored: unknown): Json | undefined {
  if (Array.isArray(stored)) {
    try {
      return stored.length === 1 && typeof stored[0] === 'string'
        ? (JSON.parse(stored[0]) as Json)
        : undefined;
    } catch {
      return undefined;
    }
  }
  const scalar = stored === null || ['string', 'number', 'boolean'].includes(typeof stored);
  return scalar ? (stored as Json) : undefined;
}
