/**
 * The grammar of formulas as they are stored: with references by id, so that inserting, moving and removing
 * rows or columns, and merging two copies of a book, leave them pointing at the same things. Stored forms,
 * which can carry `$` before the column or the row:
 *
 * - `[column@row]` a cell of the same sheet; `[sheet.column@row]` of another
 * - `[column@]` a whole column, `[@row]` a whole row (each written `[a]:[b]` like any range; both ends name
 *   the sheet where it is another)
 * - `[column]` a whole column by its name, as in `=Left*2`
 */
const ID = '[A-Za-z][\\w-]*';
const ONE = new RegExp(`^\\[(?:(${ID})\\.)?(\\$?)(${ID})?(?:(@)(\\$?)(${ID})?)?\\]$`);
export const BROKEN = '#REF!';
const END = `(\\[(?:${ID}\\.)?\\$?(?:${ID})?(?:@\\$?(?:${ID})?)?\\]|${BROKEN})`;
const PARTS = new RegExp(`"(?:[^"]|"")*"|${END}(?::${END})?`, 'g');

export interface StoredReference {
  readonly sheet: string | undefined;
  readonly column: string | undefined;
  readonly row: string | undefined;
  readonly byName: boolean;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

/** One reference of a stored formula: a cell or a column by name, or a range with both of its ends. */
export interface ReferencePart {
  readonly from: StoredReference;
  /** The other end of a range. */
  readonly to: StoredReference | undefined;
  /** As stored. */
  readonly text: string;
  /** Where it begins in the stored formula. */
  readonly at: number;
}

const read = (text: string): StoredReference | undefined => {
  const m = ONE.exec(text);
  return m
    ? {
        sheet: m[1],
        fixedColumn: m[2] === '$',
        column: m[3],
        byName: m[4] === undefined,
        fixedRow: m[5] === '$',
        row: m[6],
      }
    : undefined;
};

/** As stored again. */
export function written(r: StoredReference): string {
  const sheet = r.sheet === undefined ? '' : `${r.sheet}.`;
  const column = `${r.fixedColumn ? '$' : ''}${r.column ?? ''}`;
  return `[${sheet}${column}${r.byName ? '' : `@${r.fixedRow ? '$' : ''}${r.row ?? ''}`}]`;
}

/** Replaces every reference of a stored formula, leaving its text literals alone. A range one end of which is broken is broken. */
export function mapParts(stored: string, to: (part: ReferencePart) => string): string {
  return stored.replace(
    PARTS,
    (text: string, first: string | undefined, second: string | undefined, at: number) => {
      if (first === undefined) return text;
      const from = read(first);
      const end = second === undefined ? undefined : read(second);
      if (!from || (second !== undefined && !end)) return BROKEN;
      return to({ from, to: end, text, at });
    },
  );
}

/** Replaces single references, the ends of ranges one by one. */
export const mapReferences = (
  stored: string,
  to: (reference: StoredReference) => StoredReference | undefined,
): string =>
  mapParts(stored, ({ from, to: end }) => {
    const [a, b] = [to(from), end && to(end)];
    if (!a || (end && !b)) return BROKEN;
    return b ? `${written(a)}:${written(b)}` : written(a);
  });

export const isFormula = (raw: unknown): raw is `=${string}` =>
  typeof raw === 'string' && raw.length > 1 && raw.startsWith('=');

/** What a formula uses: a cell (both corners the same), a range, or whole rows or columns where a side is left out. */
export interface Use {
  readonly sheet: string;
  readonly from: { readonly column?: string; readonly row?: string };
  readonly to: { readonly column?: string; readonly row?: string };
  /** A column by its name, as in `=Left*2`. */
  readonly byName: boolean;
  /** As stored, and where it begins. */
  readonly text: string;
  readonly at: number;
}

const corner = ({ column, row }: StoredReference) => ({ ...(column && { column }), ...(row && { row }) });

/** What a formula that stands in the sheet `home` uses, in its order. */
export function usesOf(stored: string, home: string): Use[] {
  const uses: Use[] = [];
  mapParts(stored, ({ from, to, text, at }) => {
    const { byName, sheet = home } = from;
    uses.push({ sheet, from: corner(from), to: corner(to ?? from), byName, text, at });
    return text;
  });
  return uses;
}

/** The rows and columns that a formula names, for finding the formulas that a removal would break. */
export const referencesOf = (
  stored: string,
  home: string,
): { sheet: string; column?: string; row?: string }[] =>
  usesOf(stored, home).flatMap(({ sheet, from, to, text }) =>
    text.includes(':')
      ? [
          { sheet, ...from },
          { sheet, ...to },
        ]
      : [{ sheet, ...from }],
  );
