import { harmless } from './harmless.js';
import type { OutColumn, OutTable } from './out-table.js';

const DATATYPES = { text: 'string', number: 'number', date: 'date', tick: 'boolean' } as const;

/** A name as the recommendation has it: letters, digits and underscores, none before the first letter. */
function names(columns: readonly OutColumn[]): string[] {
  const taken = new Set<string>();
  return columns.map(({ id }) => {
    const base = id.replace(/[^A-Za-z0-9_]/g, '_');
    let name = base;
    for (let n = 2; taken.has(name); n++) name = `${base}_${n}`;
    taken.add(name);
    return name;
  });
}

/**
 * Metadata for a table by the W3C recommendation 'Metadata Vocabulary for Tabular Data': titles, what each column
 * holds, and its unit, so that whoever reads the file need not guess.
 *
 * @param file name of the file that it describes, beside which it lies as `FILE-metadata.json`.
 */
export function csvwMetadata(table: OutTable, file: string, separator: ',' | '\t'): string {
  const columnNames = names(table.columns);
  const metadata = {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    url: encodeURIComponent(file),
    'dc:title': table.title,
    dialect: {
      encoding: 'utf-8',
      delimiter: separator,
      lineTerminators: ['\r\n'],
      quoteChar: '"',
      doubleQuote: true,
      header: true,
    },
    notes: [
      {
        'dc:description':
          'A text that begins with an apostrophe and one of = + - @, a tab or a return is meant without that apostrophe.',
      },
    ],
    tableSchema: {
      columns: table.columns.map(({ title, holds, unit, help, role }, i) => ({
        name: columnNames[i],
        titles: harmless(title),
        datatype: DATATYPES[holds],
        ...(help !== '' && { 'dc:description': help }),
        ...(unit !== undefined && { 'schema:unitText': unit }),
        ...(role === 'planning' && { 'schema:additionalType': 'planning column: worked out, not entered' }),
      })),
    },
  };
  return `${JSON.stringify(metadata, null, 2)}\n`;
}
