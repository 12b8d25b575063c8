import fc from 'fast-check';
import type { BookDoc, Change, Json } from '../../src/book/types.js';

/** Ids that would reach into prototypes or split a key, beside ordinary ones. */
export const IDS = ['r1', 'r2', 'r3', 'toString', '__proto__', 'a/b', 'a~b'];
const id = fc.constantFrom(...IDS);
const raw = fc.oneof(
  fc.constantFrom('quart', '=[count]*2', '', 'ð\ud800', '🫙'),
  fc.integer({ min: 0, max: 40 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (n === 0 ? 0 : n)),
  fc.boolean(),
);
const own = <T>(value: fc.Arbitrary<T>) => fc.dictionary(id, value, { maxKeys: 4, noNullPrototype: true });
const extra = fc.constantFrom<Json>(
  null,
  [1, 'two', null],
  JSON.parse('{"__proto__":{"polluted":true},"x":[{}]}') as Json,
);
const row = fc.record(
  { order: fc.constantFrom('a0', 'a1', 'a1V'), cells: own(raw), allotted: own(fc.integer()), later: extra },
  { requiredKeys: ['order', 'cells'] },
);
const column = fc.record(
  { order: fc.constantFrom('a0', 'a1'), width: fc.integer({ min: 40, max: 400 }), later: extra },
  { requiredKeys: [] },
);
const sheet = fc.record(
  {
    kind: fc.constantFrom('shelf', 'own'),
    title: fc.string(),
    order: fc.constantFrom('a0', 'a1'),
    columns: own(column),
    rows: own(row),
    later: extra,
  },
  { requiredKeys: ['kind', 'title', 'order', 'columns', 'rows'] },
);

/** A book as `parseBook` could let it through, hostile ids and unknown fields among its content. */
export const anyBook = fc.record(
  {
    format: fc.constant('croftsheet-book'),
    version: fc.constant(1),
    id: fc.constant('b1'),
    title: fc.string(),
    settings: own(raw),
    sheets: own(sheet),
    later: extra,
  },
  { requiredKeys: ['format', 'version', 'id', 'title', 'settings', 'sheets'] },
) as unknown as fc.Arbitrary<BookDoc>;

const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 3 });

/** One edit; what it edits need not be there. */
export const anyEdit: fc.Arbitrary<Change> = fc
  .oneof(
    fc.tuple(fc.tuple(fc.constant('title')), fc.string()),
    fc.tuple(fc.tuple(fc.constant('settings'), id), maybe(raw)),
    fc.tuple(fc.tuple(fc.constant('sheets'), id), maybe(sheet)),
    fc.tuple(fc.tuple(fc.constant('sheets'), id, fc.constant('title')), fc.string()),
    fc.tuple(fc.tuple(fc.constant('sheets'), id, fc.constant('columns'), id), maybe(column)),
    fc.tuple(
      fc.tuple(fc.constant('sheets'), id, fc.constant('columns'), id, fc.constant('width')),
      fc.integer(),
    ),
    fc.tuple(fc.tuple(fc.constant('sheets'), id, fc.constant('rows'), id), maybe(row)),
    fc.tuple(
      fc.tuple(fc.constant('sheets'), id, fc.constant('rows'), id, fc.constant('cells'), id),
      maybe(raw),
    ),
    fc.tuple(
      fc.tuple(fc.constant('sheets'), id, fc.constant('rows'), id, fc.constant('allotted')),
      maybe(own(fc.integer())),
    ),
  )
  .map(([path, to]) => ({ path, to: to as Json | undefined, was: undefined }));

/** What a merged change does to a plain book, written the slow, plain way. */
export function changed(book: BookDoc, changes: readonly Change[]): BookDoc {
  const copy = structuredClone(book) as unknown as Record<string, Json>;
  for (const { path, to } of changes) {
    let at = copy as Record<string, unknown>;
    for (const key of path.slice(0, -1)) {
      if (!Object.hasOwn(at, key)) throw new Error(`nothing at ${path.join(' / ')}`);
      at = at[key] as Record<string, unknown>;
    }
    const last = path.at(-1)!;
    if (to === undefined) delete at[last];
    else Object.defineProperty(at, last, { value: to, enumerable: true, configurable: true, writable: true });
  }
  return copy as unknown as BookDoc;
}
