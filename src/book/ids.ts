const ALPHABET = '0123456789abcdefghijklmnopqrstuvwxyz';
const LENGTH = 11;

/**
 * A new id for a sheet, row or column: a letter first, then 10 of 36 characters (about 51 random bits), so
 * that two copies of a book edited apart do not choose the same one.
 */
export function newId(prefix: 'r' | 'c' | 's' | 'b'): string {
  const bytes = crypto.getRandomValues(new Uint8Array(LENGTH - 1));
  let id: string = prefix;
  for (const byte of bytes) id += ALPHABET[byte % ALPHABET.length];
  return id;
}

/**
 * Ids that a file may use: they become keys of records and parts of stored formulas. Names that every object
 * has (`toString`, `constructor`) would be found in records that do not hold them.
 */
export const isUsableId = (id: string): boolean =>
  /^[A-Za-z][A-Za-z0-9_-]{0,63}$/.test(id) && !(id in {}) && id !== 'prototype';
