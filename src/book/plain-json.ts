import type { Json } from './types.js';

export type PlainObject = { readonly [key: string]: Json | undefined };

export const isObject = (value: unknown): value is PlainObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The object's own value at `key`: an id such as `__proto__` or `toString` finds nothing inherited. */
export const own = (object: PlainObject, key: string): Json | undefined =>
  Object.hasOwn(object, key) ? object[key] : undefined;

/** Sets an own property whatever the key is called. */
export function put(object: Record<string, Json>, key: string, value: Json): void {
  if (key === '__proto__')
    Object.defineProperty(object, key, { value, enumerable: true, configurable: true, writable: true });
  else object[key] = value;
}

/** Own entries that hold something, by key: the same content gives the same order everywhere. */
export const entriesOf = (object: PlainObject): [string, Json][] =>
  (Object.entries(object) as [string, Json | undefined][])
    .filter((entry): entry is [string, Json] => entry[1] !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));

/** Keys of both, each once, in an order that depends on nothing else. */
export const keysOfBoth = (a: PlainObject, b: PlainObject): string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();

/** JSON text that is the same for the same content, in whatever order its keys were set. */
export function canonical(value: Json): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item as Json)).join(',')}]`;
  if (isObject(value))
    return `{${entriesOf(value)
      .map(([key, item]) => `${JSON.stringify(key)}:${canonical(item)}`)
      .join(',')}}`;
  return JSON.stringify(value);
}

export const sameJson = (a: Json | undefined, b: Json | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && typeof a === 'object' && canonical(a) === canonical(b));
