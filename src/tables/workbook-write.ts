import type { Cell, CellStyle, CellValue as OutValue, WriteSheet } from 'hucre/xlsx';
import { type CellValue, isCellError, type Layout } from '../book/index.js';
import { cut } from '../problem.js';
import { say } from '../words/index.js';
import { FormulasOut, type Worksheet } from './formula-out.js';
import type { OutColumn, OutTable, StoredCells } from './out-table.js';

/** The most characters of a worksheet's name, by ECMA-376. */
const LONGEST_NAME = 31;

/** Formulas that went out as what they come to, by sheet, for the person to know. */
export interface WorkbookOut {
  readonly bytes: Uint8Array;
  readonly formulas: number;
  readonly asValues: readonly { readonly sheet: string; readonly column: string; readonly cells: number }[];
}

const DATE: CellStyle = { numFmt: 'yyyy-mm-dd' };
const TITLE: CellStyle = { font: { bold: true }, alignment: { wrapText: true, vertical: 'top' } };

/** Names for worksheets: short enough, without the signs that they may not have, none twice. */
export function worksheetNames(titles: readonly string[]): string[] {
  const taken = new Set<string>();
  return titles.map((title) => {
    const base =
      title
        .replace(/[[\]*?:/\\]/g, ' ')
        .replace(/^'+|'+$/g, '')
        .trim() || say`Sheet`;
    let name = cut(base, LONGEST_NAME);
    for (let n = 2; taken.has(name.toLowerCase()); n++) {
      const end = ` (${n})`;
      name = cut(base, LONGEST_NAME - end.length) + end;
    }
    taken.add(name.toLowerCase());
    return name;
  });
}

/** `_x0041_` would be read as a letter written by its number. */
const plainText = (text: string): string => text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');

function outValue(value: CellValue, { holds }: OutColumn): OutValue {
  if (value === null) return null;
  if (isCellError(value)) return value.error;
  if (typeof value !== 'string') return value;
  return holds === 'date' ? new Date(`${value}T00:00:00Z`) : plainText(value);
}

/** Width in characters, as a workbook has it, from pixels. */
const widthOf = ({ width, title }: OutColumn): number =>
  Math.min(60, Math.max(8, Math.round((width ?? Math.max(90, title.length * 8)) / 7)));

/** A workbook (ECMA-376) of one or more sheets, a worksheet each. Loads the library on first use. */
export async function writeWorkbook(
  tables: readonly OutTable[],
  cells: StoredCells,
  title: string,
): Promise<WorkbookOut> {
  const names = worksheetNames(tables.map((table) => table.title));
  const worksheets = tables.map((table, i): Worksheet => ({ name: names[i]!, table }));
  const formulas = new FormulasOut(cells.layout as Layout, worksheets);
  const asValues: { sheet: string; column: string; cells: number }[] = [];
  let count = 0;
  const sheets = worksheets.map(({ name, table }): WriteSheet => {
    const details = new Map<string, Partial<Cell>>();
    const missed = new Map<string, number>();
    for (const [c, column] of table.columns.entries()) {
      details.set(`0,${c}`, { style: TITLE });
      if (column.role === 'planning') continue;
      for (const [r, row] of table.rows.entries()) {
        const stored = cells.formula(table.sheet, row.id, column.id);
        if (stored === undefined) continue;
        const formula = formulas.write(stored, table.sheet, row.id);
        if (formula === undefined) missed.set(column.title, (missed.get(column.title) ?? 0) + 1);
        else {
          count++;
          const value = outValue(row.values[c]!, column);
          details.set(`${r + 1},${c}`, {
            formula,
            ...(value !== null && { value, formulaResult: value }),
            ...(column.holds === 'date' && { style: DATE }),
          });
        }
      }
    }
    for (const [column, missing] of missed) asValues.push({ sheet: table.title, column, cells: missing });
    return {
      name,
      freezePane: { rows: 1 },
      columns: table.columns.map((column) => ({
        width: widthOf(column),
        ...(column.holds === 'date' && { numFmt: DATE.numFmt! }),
      })),
      rows: [
        table.columns.map((column) => plainText(column.title)),
        ...table.rows.map(({ values }) => values.map((value, c) => outValue(value, table.columns[c]!))),
      ],
      cells: details,
    };
  });
  const { writeXlsx } = await import('hucre/xlsx');
  const bytes = await writeXlsx({ sheets, properties: { title, creator: 'Croftsheet' } });
  return { bytes, formulas: count, asValues };
}
