import Papa from 'papaparse';
import { MAX_COLUMNS, MAX_ROWS } from '../book/commands.js';
import { say } from '../words/index.js';
import type { Separator } from './separator.js';
import { type RowProblem, rowProblem, type SourceRow, type SourceTable } from './types.js';

/** Rows read between two breaths. */
const ROWS = 1_000;
/** Lines with broken quotes that are mended one by one; past that quotes count as plain signs. */
const MOST_BROKEN = 20;

/**
 * Reads a file of separated values as RFC 4180 has it, and what is not quite by it as well as can be: line ends
 * of all three kinds, broken quotes, rows that are too short. Yields how far it is, for `inSlices`.
 */
export function* readDelimited(
  text: string,
  separator: Separator,
  name: string,
): Generator<number, SourceTable, void> {
  const problems: RowProblem[] = [];
  const notes: string[] = [];
  const rows: SourceRow[] = [];
  const { clean, nulls } = withoutNulls(text);
  if (nulls > 0) {
    problems.push(
      rowProblem(
        null,
        null,
        'nul-characters',
        nulls === 1
          ? say`The file has 1 NUL character, which no text holds; it is left out.`
          : say`The file has ${nulls} NUL characters, which no text holds; they are left out.`,
        say`Look whether letters are missing; if so, save the file again as plain text.`,
      ),
    );
  }
  const { even, mixed } = evenLineEnds(clean, separator);
  if (mixed) notes.push(say`Lines end in more than one way; each counts as an end of line.`);
  // Its fast way through text without quotes answers a place one row too far when it reads a part.
  const parse = (part: string, preview = 0) =>
    Papa.parse<string[]>(part, { delimiter: separator, newline: '\n', preview, fastMode: false });

  let at = 0;
  let line = 1;
  let broken = 0;
  const take = (cells: string[]): void => {
    if (cells.some((cell) => cell.trim() !== '')) rows.push({ line, cells });
    line += 1 + cells.reduce((sum, cell) => sum + lineEndsIn(cell), 0);
  };
  while (at < even.length && rows.length <= MAX_ROWS) {
    yield at / even.length;
    if (broken >= MOST_BROKEN) {
      const end = endOfLines(even, at, ROWS);
      for (const each of even.slice(at, end).split('\n')) take(each.split(separator));
      at = end + 1;
      continue;
    }
    const { end, part, parsed } = partFrom(even, at, parse);
    const bad = parsed.errors.find(({ type }) => type === 'Quotes')?.row;
    if (bad === undefined) {
      for (const cells of parsed.data) take(cells);
      at = end + 1;
      continue;
    }
    // The line with the broken quote is taken as it stands, and reading goes on below it.
    for (const cells of parsed.data.slice(0, bad)) take(cells);
    if (bad > 0) at += parse(part, bad).meta.cursor;
    const lineEnd = endOfLines(even, at, 1);
    problems.push(
      rowProblem(
        line,
        null,
        'broken-quotes',
        say`A quotation mark on this line is not closed where its field ends, so the line was taken as it stands.`,
        say`Look at its cells below; in the file, write a quotation mark inside quotes twice.`,
      ),
    );
    take(even.slice(at, lineEnd).split(separator));
    at = lineEnd + 1;
    broken++;
  }
  return finished(name, rows, problems, notes, at < even.length);
}

/** Where the `count`th line from `at` ends: at its LF, or where the text does. */
function endOfLines(text: string, at: number, count: number): number {
  let end = at - 1;
  for (let i = 0; i < count; i++) {
    end = text.indexOf('\n', end + 1);
    if (end < 0) return text.length;
  }
  return end;
}

/**
 * Some lines, parsed. Only a part of the text is handed over at a time, as the parser looks ahead to the next
 * quotation mark at every field; the part grows while a quotation is open at its end.
 */
function partFrom(text: string, at: number, parse: (part: string) => Papa.ParseResult<string[]>) {
  for (let lines = ROWS; ; lines *= 8) {
    const end = endOfLines(text, at, lines);
    const part = text.slice(at, end);
    const parsed = parse(part);
    const isOpen = parsed.errors.some(({ code }) => code === 'MissingQuotes');
    if (!isOpen || end >= text.length) return { end, part, parsed };
  }
}

/** What holds for any table as a whole: its width and its length. */
export function finished(
  name: string,
  rows: SourceRow[],
  problems: RowProblem[],
  notes: readonly string[],
  isLonger: boolean,
): SourceTable {
  const widest = rows.reduce((most, row) => (row.cells.length > most.cells.length ? row : most), {
    line: 1,
    cells: [],
  } as SourceRow);
  if (widest.cells.length > MAX_COLUMNS) {
    problems.push(
      rowProblem(
        widest.line,
        null,
        'too-many-columns',
        say`This row has ${widest.cells.length} fields; a sheet holds ${MAX_COLUMNS} columns. Those past it are left out.`,
        say`Choose another separator if this one is wrong, or split the file.`,
      ),
    );
  }
  if (rows.length > MAX_ROWS + 1 || isLonger) {
    problems.push(
      rowProblem(
        rows[MAX_ROWS]?.line ?? null,
        null,
        'too-many-rows',
        say`A sheet holds ${MAX_ROWS} rows; what comes after this line is left out.`,
        say`Split the file, and bring in each part.`,
      ),
    );
  }
  const kept = rows
    .slice(0, MAX_ROWS + 1)
    .map((row) =>
      row.cells.length > MAX_COLUMNS ? { ...row, cells: row.cells.slice(0, MAX_COLUMNS) } : row,
    );
  return { name, rows: kept, problems, notes };
}

const lineEndsIn = (cell: string): number =>
  cell.includes('\n') || cell.includes('\r') ? cell.split(/\r\n?|\n/).length - 1 : 0;

function withoutNulls(text: string): { clean: string; nulls: number } {
  if (!text.includes('\0')) return { clean: text, nulls: 0 };
  const clean = text.replaceAll('\0', '');
  return { clean, nulls: text.length - clean.length };
}

/** Ends every row with LF, and leaves line ends inside quotes as they are. */
function evenLineEnds(text: string, separator: Separator): { even: string; mixed: boolean } {
  if (!text.includes('\r')) return { even: text, mixed: false };
  const edge = separator === '|' ? '\\|' : separator;
  const parts = new RegExp(`(?<=^|[${edge}\\r\\n])"[^"]*(?:""[^"]*)*"|\\r\\n?|\\n`, 'g');
  const kinds = new Set<string>();
  const even = text.replace(parts, (part) => {
    if (part.startsWith('"')) return part;
    kinds.add(part);
    return '\n';
  });
  return { even, mixed: kinds.size > 1 };
}
