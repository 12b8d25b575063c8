import { parseA1Ref } from '@borgar/fx';
import type { Layout } from './layout.js';
import { mapParts, mapReferences, type StoredReference } from './stored.js';
import { mapTokens } from './typed.js';

/** Something that a formula refers to and that is not there: removed since (by its id), or never there (by its name). */
export type Missing =
  | { readonly what: 'sheet'; readonly sheet: string }
  | { readonly what: 'column'; readonly sheet: string; readonly id: string }
  | { readonly what: 'row'; readonly sheet: string; readonly id: string }
  /** A name as typed that no column of `sheet` has. */
  | { readonly what: 'name'; readonly sheet: string; readonly name: string }
  /** The title of a sheet, as typed. */
  | { readonly what: 'sheet title'; readonly name: string }
  | { readonly what: 'function'; readonly name: string };

/** The same for the same missing thing, whichever formula misses it. */
export const missingKey = (missing: Missing): string =>
  'id' in missing
    ? `${missing.what}/${missing.sheet}/${missing.id}`
    : missing.what === 'sheet'
      ? `sheet/${missing.sheet}`
      : `${missing.what}/${missing.what === 'name' ? missing.sheet : ''}/${missing.name.toLowerCase()}`;

function missingOf(r: StoredReference, home: string, layout: Layout): Missing[] {
  const sheet = r.sheet ?? home;
  if (layout.titleOf(sheet) === undefined) return [{ what: 'sheet', sheet }];
  const missing: Missing[] = [];
  if (r.column !== undefined && layout.columnIndex(sheet, r.column) < 0)
    missing.push({ what: 'column', sheet, id: r.column });
  if (r.row !== undefined && layout.rowIndex(sheet, r.row) < 0)
    missing.push({ what: 'row', sheet, id: r.row });
  return missing;
}

function missingToken(text: string, home: string, layout: Layout): Missing | undefined {
  const parsed = parseA1Ref(text);
  if (!parsed) return undefined;
  const title = parsed.context?.[0];
  const sheet = title === undefined ? home : layout.sheetByTitle(title);
  if (sheet === undefined) return { what: 'sheet title', name: title! };
  return 'name' in parsed ? { what: 'name', sheet, name: parsed.name } : undefined;
}

/**
 * What a stored formula of the sheet `home` refers to and does not find, each once.
 *
 * @param isFunction knows a function by its name in capitals; left out, no function counts as missing
 */
export function missingIn(
  stored: string,
  home: string,
  layout: Layout,
  isFunction: (name: string) => boolean = () => true,
): Missing[] {
  const found = new Map<string, Missing>();
  const note = (missing: Missing | undefined): void => {
    if (missing && !found.has(missingKey(missing))) found.set(missingKey(missing), missing);
  };
  mapParts(stored, ({ from, to, text }) => {
    for (const end of to ? [from, to] : [from]) missingOf(end, home, layout).forEach(note);
    return text;
  });
  mapTokens(stored, ({ kind, text }) => {
    if (kind === 'reference') note(missingToken(text, home, layout));
    else if (kind === 'function' && !isFunction(text.toUpperCase())) note({ what: 'function', name: text });
    return text;
  });
  return [...found.values()];
}

/** Takes the place of what is missing: the id of a sheet, column or row, or the name of a function. */
export type Replacement =
  | { readonly id: string }
  /** In place of a whole sheet: what stands there for the columns and rows of the one that is gone. */
  | { readonly id: string; readonly column: (id: string) => string; readonly row: (id: string) => string };

const inSheet = (
  r: StoredReference,
  id: string,
  column: (id: string) => string,
  row: (id: string) => string,
): StoredReference => ({
  ...r,
  sheet: id,
  column: r.column === undefined ? undefined : column(r.column),
  row: r.row === undefined ? undefined : row(r.row),
});

const same = (id: string): string => id;

/** The stored formula with something else in the place of what is missing. */
export function withReplacement(
  stored: string,
  home: string,
  missing: Missing,
  by: Replacement,
  layout: Layout,
): string {
  switch (missing.what) {
    case 'column':
    case 'row': {
      const { what } = missing;
      return mapReferences(stored, (r) =>
        (r.sheet ?? home) === missing.sheet && r[what] === missing.id ? { ...r, [what]: by.id } : r,
      );
    }
    case 'sheet': {
      const { column, row } = 'column' in by ? by : { column: same, row: same };
      return mapReferences(stored, (r) => (r.sheet === missing.sheet ? inSheet(r, by.id, column, row) : r));
    }
    case 'function':
      return mapTokens(stored, ({ kind, text }) =>
        kind === 'function' && text.toUpperCase() === missing.name.toUpperCase() ? by.id : text,
      );
    case 'name':
    case 'sheet title': {
      const key = missingKey(missing);
      return mapTokens(stored, ({ kind, text }) => {
        if (kind !== 'reference') return text;
        const found = missingToken(text, home, layout);
        if (!found || missingKey(found) !== key) return text;
        if (found.what === 'name') return `[${found.sheet === home ? '' : `${found.sheet}.`}${by.id}]`;
        const title = layout.titleOf(by.id) ?? '';
        // What follows the sheet's name, as typed; it is read when the formula is written to its cell.
        return `'${title.replaceAll("'", "''")}'${text.slice(text.lastIndexOf('!'))}`;
      });
    }
  }
}
