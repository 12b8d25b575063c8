import { parseA1Ref, tokenize } from '@borgar/fx';
import type { Layout } from './layout.js';
import { mapParts, written } from './stored.js';

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

/** What stands between the references of a formula: kinds of the tokenizer, with its own for what is written by position. */
export interface Token {
  readonly kind: 'function' | 'reference' | 'number' | 'other';
  readonly text: string;
}

const KINDS: Readonly<Record<string, Token['kind']>> = {
  func: 'function',
  range: 'reference',
  range_beam: 'reference',
  range_named: 'reference',
  number: 'number',
};

/** Rewrites a formula token by token; references in stored form are left as they are, and not handed over. */
export function mapTokens(formula: string, to: (token: Token) => string): string {
  // Stored references are put aside first: to the tokenizer they would be something else.
  const aside: string[] = [];
  let mark = '_ref_';
  while (formula.includes(mark)) mark += '_';
  const placed = new RegExp(`${mark}(\\d+)_`, 'g');
  const safe = mapParts(formula, ({ text }) => {
    aside.push(text);
    return `${mark}${aside.length - 1}_`;
  });
  return tokenize(safe)
    .map(({ type, value }) =>
      value.startsWith(mark) ? value : to({ kind: KINDS[type] ?? 'other', text: value }),
    )
    .join('')
    .replaceAll(placed, (whole, n: string) => aside[Number(n)] ?? whole);
}

/** A column's name in brackets, as some are used to write it, means that column where no column has it for an id. */
const namesInBrackets = (typed: string, sheet: string, layout: Layout): string =>
  mapParts(typed, ({ from, to, text }) => {
    const { sheet: target = sheet, column, byName } = from;
    if (to || !byName || column === undefined || layout.columnIndex(target, column) >= 0) return text;
    const named = layout.columnByName(target, column);
    return named === undefined ? text : written({ ...from, column: named });
  });

/**
 * What a person typed, made ready to store: references by id, `;` between arguments as `,`, function names in
 * capitals. What names nothing stays as typed and shows its own error. Text that is already in stored form
 * passes through unchanged.
 */
export function toStored(typed: string, sheet: string, layout: Layout): string {
  let braces = 0;
  return mapTokens(namesInBrackets(typed, sheet, layout), ({ kind, text }) => {
    if (text === '{') braces++;
    if (text === '}') braces--;
    if (text === ';' && braces === 0) return ',';
    if (kind === 'function') return text.toUpperCase();
    // The engine reads `1e3`, and not `1E3`.
    if (kind === 'number') return text.toLowerCase();
    return kind === 'reference' ? storedToken(text, sheet, layout) : text;
  });
}
