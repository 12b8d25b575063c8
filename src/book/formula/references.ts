/** Stored formulas (see `stored.ts`) as the person sees them (`=B2*2`) and as the engine reads them. */
import { columnLetters, type Layout } from './layout.js';
import { oneValueAt, standardOneValue, type TakesOneValue } from './one-value.js';
import { BROKEN, mapParts, mapReferences, type StoredReference, written } from './stored.js';

export { isFormula, referencesOf } from './stored.js';
export { toStored } from './typed.js';

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

/** A cell or a range by position, with its sheet's name before it. */
function byPosition(
  from: StoredReference,
  to: StoredReference | undefined,
  prefix: string,
  home: string,
  layout: Layout,
): string {
  const ends = [from, ...(to ? [to] : [])].map((r) => a1(r, r.sheet ?? home, layout));
  return ends.includes(BROKEN) ? BROKEN : prefix + ends.join(':');
}

/**
 * The name of a sheet in the engine, which does not tell capitals from small letters as ids do: capitals are
 * written `_a`, and `_` itself `__`.
 */
export const sheetInEngine = (id: string): string =>
  id.replace(/[A-Z_]/g, (letter) => `_${letter.toLowerCase()}`);

/** A stored formula as the person sees it. `sheet` is the sheet that it stands in. */
export const toShown = (stored: string, sheet: string, layout: Layout): string =>
  mapParts(stored, ({ from, to }) => {
    const title = from.sheet === undefined ? '' : layout.titleOf(from.sheet);
    if (title === undefined) return BROKEN;
    const prefix = title === '' ? '' : `${quoted(title)}!`;
    if (!from.byName) return byPosition(from, to, prefix, sheet, layout);
    const name = from.column === undefined ? undefined : layout.nameOf(from.sheet ?? sheet, from.column);
    return name === undefined ? BROKEN : prefix + name;
  });

/**
 * A text literal as the engine can read it. It ends a text at the first `"` even where that is doubled, and
 * takes `\` as standing for what follows, yet keeps it: so neither can be written inside its quotes.
 */
function literalInEngine(literal: string): string {
  if (/^'|^"[^"\\]*"$/.test(literal)) return literal;
  const text = literal.slice(1, -1).replaceAll('""', '"');
  const parts = text.split(/(["\\])/).filter((part) => part !== '');
  return `(${parts.map((part) => CHARACTERS[part] ?? `"${part}"`).join('&')})`;
}

const CHARACTERS: Readonly<Record<string, string>> = { '"': 'CHAR(34)', '\\': 'CHAR(92)' };

/** Text literals, and names of sheets in their quotes. */
const LITERALS = /"(?:[^"]|"")*"|'(?:[^']|'')*'/g;

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
  const text = mapParts(stored, ({ from, to, text, at }) => {
    const target = from.sheet ?? sheet;
    if (layout.titleOf(target) === undefined) return BROKEN;
    const prefix = from.sheet === undefined ? '' : `'${sheetInEngine(from.sheet)}'!`;
    if (!from.byName) return byPosition(from, to, prefix, sheet, layout);
    const column = from.column === undefined ? -1 : layout.columnIndex(target, from.column);
    if (column < 0) return BROKEN;
    const letters = columnLetters(column);
    if (target === sheet && rowNumber > 0) {
      oneValue ??= oneValueAt(stored, takesOne);
      if (oneValue(at, text.length)) return `${letters}${rowNumber}`;
    }
    return `${prefix}$${letters}:$${letters}`;
  });
  return stored.includes('""') || stored.includes('\\') ? text.replace(LITERALS, literalInEngine) : text;
}

/** The same formula `rows` down and `columns` to the right, as filling and copying do; `$` holds a part still. */
export function shifted(
  stored: string,
  sheet: string,
  rows: number,
  columns: number,
  layout: Layout,
): string {
  return mapReferences(stored, (r) => {
    if (r.byName) return r;
    const target = r.sheet ?? sheet;
    let { row, column } = r;
    if (row !== undefined && !r.fixedRow && rows !== 0)
      row = layout.rowAt(target, layout.rowIndex(target, row) + rows);
    if (column !== undefined && !r.fixedColumn && columns !== 0)
      column = layout.columnAt(target, layout.columnIndex(target, column) + columns);
    if ((r.row !== undefined && row === undefined) || (r.column !== undefined && column === undefined))
      return undefined;
    return { ...r, row, column };
  });
}

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
  return mapParts(stored, ({ from, to, text }) => {
    const { sheet } = from;
    const [first, last] = [from[part], to?.[part]];
    if (!to || first === undefined || last === undefined) return text;
    const inward = (id: string, until: string): string =>
      going(sheet, id) ? (neighbour(sheet, id, until) ?? id) : id;
    const ends = [
      { ...from, [part]: inward(first, last) },
      { ...to, [part]: inward(last, first) },
    ];
    return ends.map(written).join(':');
  });
}
