import type { BookDoc } from '../../src/book/index.js';

/** A document as leaves by path: `sheets/S/rows/R/cells/C` and so on. A thing that is there has a leaf of its own. */
export type Flat = ReadonlyMap<string, unknown>;

const THERE = '(there)';
/** Parts of which each item is looked into, by the place where they stand. */
const LISTS: Readonly<Record<string, readonly string[]>> = {
  book: ['settings', 'sheets'],
  sheets: ['columns', 'rows'],
  columns: [],
  rows: ['cells'],
};

/** Written for the soak alone, and on purpose without any of the code that it is to check. */
export function flat(doc: BookDoc): Flat {
  const leaves = new Map<string, unknown>();
  const thing = (path: string, place: string, value: object): void => {
    // A column of the kind about which nothing is said may have an entry or none: both mean the same.
    const saysNothing = place === 'columns' && Object.keys(value).length === 0;
    if (path !== '' && !saysNothing) leaves.set(path, THERE);
    for (const [field, inside] of Object.entries(value)) {
      const here = path === '' ? field : `${path}/${field}`;
      if (!LISTS[place]?.includes(field)) {
        leaves.set(here, typeof inside === 'object' ? sorted(inside) : inside);
        continue;
      }
      for (const [id, item] of Object.entries(inside as object)) {
        if (field === 'settings' || field === 'cells') leaves.set(`${here}/${id}`, item);
        else thing(`${here}/${id}`, field, item as object);
      }
    }
  };
  thing('', 'book', doc);
  return leaves;
}

/** JSON text whose keys are in order, so that equal values have equal texts. */
function sorted(value: unknown): string {
  return JSON.stringify(value, (_key, each: unknown) =>
    typeof each === 'object' && each !== null && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
      : each,
  );
}

/** A leaf that is not the same in both. */
export interface Difference {
  readonly path: string;
  readonly was: unknown;
  readonly to: unknown;
}

export function differing(before: Flat, after: Flat): Difference[] {
  const found: Difference[] = [];
  for (const [path, was] of before)
    if (!Object.is(was, after.get(path))) found.push({ path, was, to: after.get(path) });
  for (const [path, to] of after) if (!before.has(path)) found.push({ path, was: undefined, to });
  return found;
}

/** Throws with the first differences where there are any. */
export function expectSame(before: Flat, after: Flat, what: string): void {
  const found = differing(before, after);
  if (found.length > 0)
    throw new Error(
      `${what}: ${found.length} differ, among them ${JSON.stringify(found.slice(0, 3), (_, each) => (each === undefined ? '(nothing)' : each))}`,
    );
}
