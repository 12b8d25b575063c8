import { isObject, keysOfBoth, own, type PlainObject, sameJson } from './plain-json.js';
import type { BookDoc, Change, Json } from './types.js';

/** Parts that hold things by id, below a path; everything else is one value. */
const PARTS: { readonly [place: string]: readonly string[] } = {
  '': ['settings', 'sheets'],
  sheets: ['columns', 'rows'],
  rows: ['cells'],
};

/**
 * Appends what makes `after` of `before`, both at `path`. `place` says what stands there: `''` the book,
 * `sheets` one sheet, `rows` one row, `columns` one column.
 */
export function differencesAt(
  path: readonly string[],
  place: '' | 'sheets' | 'columns' | 'rows',
  before: Json | undefined,
  after: Json | undefined,
  found: Change[],
): void {
  if (!isObject(before) || !isObject(after)) {
    if (!sameJson(before, after)) found.push({ path, to: after, was: before });
    return;
  }
  for (const key of keysOfBoth(before, after)) {
    if (PARTS[place]?.includes(key)) partDifferences([...path, key], key, before, after, found);
    else leafDifference([...path, key], own(before, key), own(after, key), found);
  }
}

function partDifferences(
  path: readonly string[],
  key: string,
  before: PlainObject,
  after: PlainObject,
  found: Change[],
): void {
  const [had, has] = [own(before, key) ?? {}, own(after, key) ?? {}];
  if (!isObject(had) || !isObject(has)) {
    leafDifference(path, had, has, found);
    return;
  }
  for (const id of keysOfBoth(had, has)) {
    const place = [...path, id];
    if (key === 'sheets' || key === 'columns' || key === 'rows')
      differencesAt(place, key, own(had, id), own(has, id), found);
    else leafDifference(place, own(had, id), own(has, id), found);
  }
}

function leafDifference(
  path: readonly string[],
  before: Json | undefined,
  after: Json | undefined,
  found: Change[],
): void {
  if (!sameJson(before, after)) found.push({ path, to: after, was: before });
}

/** The changes that make `after` of `before`: whole sheets, columns and rows come and go, the rest leaf by leaf. */
export function differences(before: BookDoc, after: BookDoc): Change[] {
  const found: Change[] = [];
  differencesAt([], '', before as Json, after as Json, found);
  return found;
}
