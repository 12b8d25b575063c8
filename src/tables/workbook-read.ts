import { translateFormulaToA1, translateFormulaToR1C1 } from '@borgar/fx';
import type { Cell, CellValue, Sheet } from 'hucre/xlsx';
import { MAX_ROWS } from '../book/commands.js';
import { columnLetters } from '../book/formula/layout.js';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { harmless, isMarked } from './harmless.js';
import { finished } from './read-delimited.js';
import {
  type RowProblem,
  rowProblem,
  type SourceCell,
  type SourceFormula,
  type SourceRow,
  type SourceTable,
} from './types.js';
import { checkedZip } from './zip.js';

export interface WorksheetName {
  readonly index: number;
  readonly name: string;
  /** Not shown where the workbook was made. */
  readonly hidden: boolean;
}

export interface WorkbookFile {
  readonly bytes: Uint8Array;
  readonly worksheets: readonly WorksheetName[];
}

/** Opens a workbook (ECMA-376) far enough to know its worksheets. */
export async function openWorkbook(bytes: Uint8Array): Promise<Result<WorkbookFile>> {
  const checked = await checkedZip(bytes);
  if (!checked.ok) return checked;
  try {
    const { readXlsx } = await import('hucre/xlsx');
    const worksheets: WorksheetName[] = [];
    await readXlsx(bytes, {
      sheets: (info, index) => {
        worksheets.push({ index, name: info.name, hidden: Boolean(info.hidden || info.veryHidden) });
        return false;
      },
    });
    if (worksheets.length === 0) {
      return refuse('no-worksheets', say`This workbook has no worksheet in it.`, say`Choose another file.`);
    }
    return ok({ bytes, worksheets });
  } catch (error) {
    return unreadable(error);
  }
}

/** Reads one worksheet: values with their types, and formulas with what they last came to. */
export async function readWorksheet(file: WorkbookFile, index: number): Promise<Result<SourceTable>> {
  try {
    const { readXlsx } = await import('hucre/xlsx');
    const { sheets } = await readXlsx(file.bytes, { sheets: [index], maxRows: MAX_ROWS + 2 });
    const [sheet] = sheets;
    if (!sheet) return unreadable(null);
    return ok(tableOf(sheet));
  } catch (error) {
    return unreadable(error);
  }
}

function unreadable(error: unknown): Result<never> {
  const name = error instanceof Error ? error.name : '';
  if (name === 'EncryptedFileError') {
    return refuse(
      'locked-workbook',
      say`This workbook is locked with a password.`,
      say`Open it where it was made, save it without the password, and bring in that copy.`,
    );
  }
  return refuse(
    'broken-workbook',
    say`This workbook cannot be read: something in it is damaged, or it is too large.`,
    say`Save it anew where it was made, or save the one worksheet as CSV.`,
  );
}

function tableOf(sheet: Sheet): SourceTable {
  const problems: RowProblem[] = [];
  const masters = new Map<number, { formula: string; at: string }>();
  const rows: SourceRow[] = [];
  for (const [r, values] of sheet.rows.entries()) {
    const cells = values.map((value, c) =>
      cellOf(value, sheet.cells?.get(`${r},${c}`), r, c, masters, problems),
    );
    while (cells.length > 0 && cells.at(-1) === null) cells.pop();
    if (cells.length > 0) rows.push({ line: r + 1, cells });
  }
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  // A worksheet is a rectangle: rows that end early have blank cells, and lack none.
  const even = rows.map(({ line, cells }) => ({
    line,
    cells: [...cells, ...Array.from({ length: width - cells.length }, () => null)],
  }));
  const merged = sheet.merges?.length ?? 0;
  const notes =
    merged > 0
      ? [say`${merged} joined cells: each has its value in the first place, and blanks after it.`]
      : [];
  return finished(sheet.name, even, problems, notes, false);
}

/** Hours and minutes, and seconds where there are some. */
function clockOf(milliseconds: number): string {
  const seconds = Math.round(milliseconds / 1000);
  const two = (n: number): string => String(n).padStart(2, '0');
  const clock = `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}`;
  return seconds % 60 === 0 ? clock : `${clock}:${two(seconds % 60)}`;
}

function plainValue(value: CellValue): SourceFormula['value'] {
  // An apostrophe in a workbook is meant as one, so it is not to be taken for a mark of ours.
  if (typeof value === 'string') return isMarked(value) ? harmless(value) : value;
  if (!(value instanceof Date)) return value;
  const iso = value.toISOString();
  if (iso.endsWith('T00:00:00.000Z')) return { day: iso.slice(0, 10) };
  // The first days that a workbook can hold stand for a time alone, which may be longer than a day.
  const span = value.getTime() - Date.UTC(1899, 11, 31);
  if (span >= 0 && value.getTime() < Date.UTC(1900, 2, 1)) return clockOf(span);
  return `${iso.slice(0, 10)} ${iso.slice(11, iso.endsWith(':00.000Z') ? 16 : 19)}`;
}

function cellOf(
  value: CellValue,
  cell: Cell | undefined,
  r: number,
  c: number,
  masters: Map<number, { formula: string; at: string }>,
  problems: RowProblem[],
): SourceCell {
  const at = `${columnLetters(c)}${r + 1}`;
  let plain = plainValue(value);
  if (
    cell?.type === 'error' ||
    (typeof plain === 'string' && /^#(?:N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!)$/.test(plain))
  ) {
    problems.push(
      rowProblem(
        r + 1,
        columnLetters(c),
        'error-in-file',
        say`The cell ${at} holds an error (${String(plain)}) in the workbook.`,
        say`Mend it there, or write the value here.`,
      ),
    );
  }
  const written = formulaAt(cell, at, masters);
  if (written === undefined) return plain;
  if (cell?.formulaResult !== undefined) plain = plainValue(cell.formulaResult);
  return { formula: written, value: plain };
}

/** The formula of a cell; cells that share one have it written once, and the others follow from where they stand. */
function formulaAt(
  cell: Cell | undefined,
  at: string,
  masters: Map<number, { formula: string; at: string }>,
): string | undefined {
  if (!cell || cell.formula === undefined) return undefined;
  const shared = cell.formulaSharedIndex;
  if (cell.formula !== '') {
    const formula = `=${cell.formula}`;
    if (shared !== undefined) masters.set(shared, { formula, at });
    // One formula that fills several cells has no like in the book; it shows as what it is and is refused later.
    return cell.formulaType === 'array' ? `={${cell.formula}}` : formula;
  }
  const master = shared === undefined ? undefined : masters.get(shared);
  if (!master) return undefined;
  return translateFormulaToA1(translateFormulaToR1C1(master.formula, master.at), at);
}
