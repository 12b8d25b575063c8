import Papa from 'papaparse';
import type { CellValue } from '../book/types.js';
import { harmless } from './harmless.js';
import type { OutTable } from './out-table.js';

export interface DelimitedOptions {
  readonly separator: ',' | '\t';
  /** A mark at the beginning by which some programs know UTF-8. */
  readonly mark: boolean;
}

/** A cell as a file of separated values has it: numbers with a point, dates by ISO 8601, ticks as true and false. */
export function fieldOf(value: CellValue): string {
  if (value === null) return '';
  if (typeof value === 'string') return harmless(value);
  if (typeof value === 'object') return value.error;
  return String(value);
}

/** A table as RFC 4180 has it: quotes where they are needed, lines ended by CR LF, titles first. */
export function writeDelimited(table: OutTable, { separator, mark }: DelimitedOptions): string {
  const fields = [
    table.columns.map(({ title }) => harmless(title)),
    ...table.rows.map(({ values }) => values.map(fieldOf)),
  ];
  const text = Papa.unparse(fields, { delimiter: separator, newline: '\r\n', header: false });
  return `${mark ? '\ufeff' : ''}${text}\r\n`;
}

/** The name of a file from a title: letters and digits of any script, with lines between. */
export const fileName = (title: string): string =>
  title
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'table';
