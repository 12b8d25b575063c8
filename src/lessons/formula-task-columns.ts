import { takenOf, toStored, usesOf } from '../book/index.js';
import type { BookReading } from '../live/book-reading.js';
import { decimalSign } from '../words/index.js';

/** Numbers as children write them in their language, `0,5`, get the sign that formulas know. */
const withPoints = (part: string): string =>
  decimalSign() === ',' ? part.replace(/(?<=\d),(?=\d)/g, '.') : part;

/**
 * Columns written by their titles, as children write them (`On hand`, `[On hand]`), get the names that formulas know.
 */
export function titlesAsNames(book: BookReading, sheet: string, formula: string): string {
  const titled = book
    .columns(sheet)
    .filter(({ title, name }) => /\s/.test(title.trim()) && name !== title)
    .sort((a, b) => b.title.length - a.title.length);
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, at) =>
      at % 2 === 1
        ? part
        : titled.reduce((text, { title, name }) => {
            const words = title
              .trim()
              .split(/\s+/)
              .map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
            return text.replace(
              new RegExp(
                `\\[\\s*${words.join('\\s+')}\\s*\\]|(?<![\\w.])${words.join('\\s+')}(?![\\w(])`,
                'gi',
              ),
              name,
            );
          }, withPoints(part)),
    )
    .join('');
}

interface At {
  readonly sheet: string;
  readonly column: string;
}

/** Columns that a stored formula of a sheet reads. */
function columnsOf(book: BookReading, stored: string, home: string): At[] {
  return usesOf(stored, home).flatMap(({ sheet, from, to }) => {
    const order = book.inside.state.sheets.get(sheet)?.columnOrder;
    if (!order) return [];
    // A whole row takes in every column.
    const [a, b] = [from.column, to.column].map((id) => (id === undefined ? -1 : order.indexOf(id)));
    const ids = a! < 0 || b! < 0 ? order.ids : order.ids.slice(Math.min(a!, b!), Math.max(a!, b!) + 1);
    return ids.map((column) => ({ sheet, column }));
  });
}

/**
 * True where a formula, as typed, reads that column: itself, or by way of own columns and own cells that read it.
 */
export function readsColumn(book: BookReading, formula: string, target: At): boolean {
  const { state, layout } = book.inside;
  const seen = new Set<string>();
  const ahead = columnsOf(book, toStored(formula, target.sheet, layout), target.sheet);
  for (let at = ahead.pop(); at !== undefined; at = ahead.pop()) {
    if (at.sheet === target.sheet && at.column === target.column) return true;
    const key = `${at.sheet}/${at.column}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const sheet = state.sheets.get(at.sheet);
    const column = sheet?.columns.get(at.column);
    if (column && takenOf(column)?.column === target.column) return true;
    if (typeof column?.formula === 'string') ahead.push(...columnsOf(book, column.formula, at.sheet));
    for (const { cells } of sheet?.rows.values() ?? []) {
      const raw = cells[at.column];
      if (typeof raw === 'string' && raw.startsWith('=')) ahead.push(...columnsOf(book, raw, at.sheet));
    }
  }
  return false;
}
