/**
 * Formulas are stored with references by id, so that inserting, moving and removing rows or columns, and
 * merging two copies of a book, leave them pointing at the same things. Stored forms, which can carry `$`
 * before the column or the row:
 *
 * - `[column@row]` a cell of the same sheet; `[sheet.column@row]` of another
 * - `[column@]` a whole column, `[@row]` a whole row (each written `[a]:[b]` like any range; both ends name
 *   the sheet where it is another)
 * - `[column]` a whole column by its name, as in `=Left*2`
 *
 * What the person sees and types (`=B2*2`) and what the engine gets are both made from that.
 */
import { parseA1Ref, tokenize } from '@borgar/fx';
import { columnLetters, type Layout } from './layout.js';
import { oneValueAt, standardOneValue, type TakesOneValue } from './one-value.js';

const STORED =
  /"(?:[^"]|"")*"|\[(?:([A-Za-z][\w-]*)\.)?(\$?)([A-Za-z][\w-]*)?(?:(@)(\$?)([A-Za-z][\w-]*)?)?\]/g;

interface StoredReference {
  readonly sheet: string | undefined;
  readonly column: string | undefined;
  readonly row: string | undefined;
  readonly byName: boolean;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

const reference = (m: readonly (string | undefined)[]): StoredReference => ({
  sheet: m[1],
  fixedColumn: m[2] === '$',
  column: m[3],
  byName: m[4] === undefined,
  fixedRow: m[5] === '$',
  row: m[6],
});

/** Replaces every stored reference of a formula, leaving its text literals alone. */
function mapReferences(
  stored: string,
  to: (reference: StoredReference, asStored: string, endsRange: boolean, at: number) => string,
): string {
  return stored.replace(STORED, (...match: unknown[]) => {
    const [whole, ...parts] = match.slice(0, 7) as string[];
    const [at, text] = match.slice(7) as [number, string];
    return whole!.startsWith('"')
      ? whole!
      : to(reference([whole, ...parts]), whole!, text[at - 1] === ':', at);
  });
}

export const isFormula = (raw: unknown): raw is `=${string}` =>
  typeof raw === 'string' && raw.length > 1 && raw.startsWith('=');

/** What a formula refers to, for finding the formulas that a removal would break. */
export function referencesOf(
  stored: string,
  sheet: string,
): { sheet: string; column?: string; row?: string }[] {
  const found: { sheet: string; column?: string; row?: string }[] = [];
  mapReferences(stored, (r, text) => {
    found.push({
      sheet: r.sheet ?? sheet,
      ...(r.column && { column: r.column }),
      ...(r.row && { row: r.row }),
    });
    return text;
  });
  return found;
}

const BROKEN = '#REF!';
const quoted = (title: string): string =>
  /^[\p{L}_][\p{L}\p{N}_]*$/u.test(title) && !/^(?:[A-Za-z]{1,3}\d+|true|false)$/i.test(title)
    ? title
    : `'${title.replaceAll("'", "''")}'`;

function a1(r: StoredReference, sheet: string, layout: Layout): string {
  let text = '';
  if (r.column !== undefined) {
    const column = layout.columnIndex(sheet, r.column);
    if (column < 0) return BROKEN;
    text = (r.fixedColumn ? '$' : '') + columnLetters(column);
  }
  if (r.row !== undefined) {
    const row = layout.rowIndex(sheet, r.row);
    if (row < 0) return BROKEN;
    text += (r.fixedRow ? '$' : '') + String(row + 1);
  }
  return text === '' ? BROKEN : text;
}

/**
 * The name of a sheet in the engine, which does not tell capitals from small letters as ids do: capitals are
 * written `_a`, and `_` itself `__`.
 */
export const sheetInEngine = (id: string): string =>
  id.replace(/[A-Z_]/g, (letter) => `_${letter.toLowerCase()}`);

/** Broken ends make a broken range, not half of one. */
const tidyRanges = (formula: string): string =>
  // A run without separators is taken whole and looked at once: searching its end from each of its letters
  // would take seconds on a long one.
  formula.replace(/"(?:[^"]|"")*"|[^\s,;()+\-*/^&=<>"]+/g, (run) =>
    run.startsWith(`${BROKEN}:`) || run.endsWith(`:${BROKEN}`) ? BROKEN : run,
  );

/** A stored formula as the person sees it. `sheet` is the sheet that it stands in. */
export function toShown(stored: string, sheet: string, layout: Layout): string {
  const shown = mapReferences(stored, (r, _text, endsRange) => {
    const target = r.sheet ?? sheet;
    const title = r.sheet === undefined || endsRange ? '' : layout.titleOf(r.sheet);
    if (title === undefined) return BROKEN;
    const prefix = title === '' ? '' : `${quoted(title)}!`;
    if (!r.byName) return prefix + a1(r, target, layout);
    const name = r.column === undefined ? undefined : layout.nameOf(target, r.column);
    return name === undefined ? BROKEN : prefix + name;
  });
  return shown.includes(BROKEN) ? tidyRanges(shown) : shown;
}

/**
 * A stored formula as the engine reads it: sheets by id, and a column's name as the cell of the same `row`
 * where one value belongs, else as the whole column.
 */
export function toEngine(
  stored: string,
  sheet: string,
  layout: Layout,
  row?: string,
  takesOne: TakesOneValue = standardOneValue,
): string {
  const rowNumber = row === undefined ? 0 : layout.rowIndex(sheet, row) + 1;
  let oneValue: ReturnType<typeof oneValueAt> | undefined;
  const text = mapReferences(stored, (r, asStored, endsRange, at) => {
    const target = r.sheet ?? sheet;
    if (layout.titleOf(target) === undefined) return BROKEN;
    const prefix = r.sheet === undefined || endsRange ? '' : `'${sheetInEngine(r.sheet)}'!`;
    if (!r.byName) return prefix + a1(r, target, layout);
    const column = r.column === undefined ? -1 : layout.columnIndex(target, r.column);
    if (column < 0) return BROKEN;
    const letters = columnLetters(column);
    if (target === sheet && rowNumber > 0) {
      oneValue ??= oneValueAt(stored, takesOne);
      if (oneValue(at, asStored.length)) return `${letters}${rowNumber}`;
    }
    return `${prefix}$${letters}:$${letters}`;
  });
  return text.includes(BROKEN) ? tidyRanges(text) : text;
}

interface Corner {
  readonly column: number | null;
  readonly row: number | null;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

/** The stored form of one corner, or null where the sheet has no such row or column (yet). */
function storedCorner(corner: Corner, sheet: string, prefix: string, layout: Layout): string | null {
  const column = corner.column === null ? undefined : layout.columnAt(sheet, corner.column);
  const row = corner.row === null ? undefined : layout.rowAt(sheet, corner.row);
  if ((corner.column !== null && !column) || (corner.row !== null && !row)) return null;
  const columnPart = column ? `${corner.fixedColumn ? '$' : ''}${column}` : '';
  const rowPart = row ? `${corner.fixedRow ? '$' : ''}${row}` : '';
  return `[${prefix}${columnPart}@${rowPart}]`;
}

function storedToken(text: string, sheet: string, layout: Layout): string {
  const parsed = parseA1Ref(text);
  if (!parsed) return text;
  const title = parsed.context?.[0];
  const target = title === undefined ? sheet : layout.sheetByTitle(title);
  if (target === undefined) return text;
  const prefix = title === undefined ? '' : `${target}.`;
  if ('name' in parsed) {
    const column = layout.columnByName(target, parsed.name);
    return column === undefined ? text : `[${prefix}${column}]`;
  }
  const { top, left, bottom, right, $top, $left, $bottom, $right } = parsed.range;
  const from = storedCorner(
    { column: left ?? null, row: top ?? null, fixedColumn: Boolean($left), fixedRow: Boolean($top) },
    target,
    prefix,
    layout,
  );
  const single = top === bottom && left === right && top != null && left != null;
  if (single) return from ?? text;
  const to = storedCorner(
    { column: right ?? null, row: bottom ?? null, fixedColumn: Boolean($right), fixedRow: Boolean($bottom) },
    target,
    prefix,
    layout,
  );
  return from === null || to === null ? text : `${from}:${to}`;
}

/**
 * What a person typed, made ready to store: references by id, `;` between arguments as `,`, function names in
 * capitals. What names nothing stays as typed and shows its own error. Text that is already in stored form
 * passes through unchanged.
 */
export function toStored(typed: string, sheet: string, layout: Layout): string {
  let braces = 0;
  // Stored references are put aside first: to the tokenizer they would be something else.
  const aside: string[] = [];
  let mark = '_ref_';
  while (typed.includes(mark)) mark += '_';
  const placed = new RegExp(`${mark}(\\d+)_`, 'g');
  const safe = mapReferences(typed, (_r, text) => {
    aside.push(text);
    return `${mark}${aside.length - 1}_`;
  });
  const stored = tokenize(safe)
    .map(({ type, value }) => {
      if (value === '{') braces++;
      if (value === '}') braces--;
      if (value === ';' && braces === 0) return ',';
      if (type === 'func') return value.toUpperCase();
      // The engine reads `1e3`, and not `1E3`.
      if (type === 'number') return value.toLowerCase();
      if (value.startsWith(mark)) return value;
      return type === 'range' || type === 'range_beam' || type === 'range_named'
        ? storedToken(value, sheet, layout)
        : value;
    })
    .join('');
  return stored.replaceAll(placed, (whole, n: string) => aside[Number(n)] ?? whole);
}

/** The same formula `rows` down and `columns` to the right, as filling and copying do; `$` holds a part still. */
export function shifted(
  stored: string,
  sheet: string,
  rows: number,
  columns: number,
  layout: Layout,
): string {
  return mapReferences(stored, (r, text) => {
    if (r.byName) return text;
    const target = r.sheet ?? sheet;
    let { row, column } = r;
    if (row !== undefined && !r.fixedRow && rows !== 0)
      row = layout.rowAt(target, layout.rowIndex(target, row) + rows);
    if (column !== undefined && !r.fixedColumn && columns !== 0) {
      column = layout.columnAt(target, layout.columnIndex(target, column) + columns);
    }
    if ((r.row !== undefined && row === undefined) || (r.column !== undefined && column === undefined))
      return BROKEN;
    const prefix = r.sheet === undefined ? '' : `${r.sheet}.`;
    return `[${prefix}${r.fixedColumn ? '$' : ''}${column ?? ''}@${r.fixedRow ? '$' : ''}${row ?? ''}]`;
  });
}

const RANGE = /"(?:[^"]|"")*"|(\[[^\]]*\]):(\[[^\]]*\])/g;

/**
 * The formula after rows or columns go: a range that ended on one of them ends on its nearest neighbour that
 * stays, inside the range; a range all of which goes stays broken.
 *
 * @param neighbour the nearest row or column that stays, from `id` in the given direction, up to `until`.
 */
export function withoutEnds(
  stored: string,
  part: 'row' | 'column',
  going: (sheet: string | undefined, id: string) => boolean,
  neighbour: (sheet: string | undefined, id: string, until: string) => string | undefined,
): string {
  const idOf = (r: StoredReference) => (part === 'row' ? r.row : r.column);
  return stored.replace(RANGE, (whole, a?: string, b?: string) => {
    if (!a || !b) return whole;
    const [from, to] = [a, b].map((text) => reference([...new RegExp(STORED).exec(text)!])) as [
      StoredReference,
      StoredReference,
    ];
    const sheet = from.sheet;
    const [fromId, toId] = [idOf(from), idOf(to)];
    if (fromId === undefined || toId === undefined) return whole;
    const inward = (text: string, id: string, until: string): string => {
      if (!going(sheet, id)) return text;
      const next = neighbour(sheet, id, until);
      if (next === undefined) return text;
      return part === 'row'
        ? text.replace(`${id}]`, `${next}]`)
        : text.replace(new RegExp(`([\\[.$])${id}([@\\]])`), `$1${next}$2`);
    };
    return `${inward(a, fromId, toId)}:${inward(b, toId, fromId)}`;
  });
}
