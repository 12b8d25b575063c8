import { describe, expect, it } from 'vitest';
import { readMetadata } from '../../src/tables/csvw-read.js';
import { csvwMetadata } from '../../src/tables/csvw-write.js';
import { tableOut } from '../../src/tables/out-table.js';
import { atOnce } from '../../src/tables/slices.js';
import { writeDelimited } from '../../src/tables/write-delimited.js';
import { ownSheet } from './tables-make.js';
import { bring, newLive, tableFrom } from './tables-support.js';

const csv = { separator: ',', mark: false } as const;

describe('taking a sheet out as separated values', () => {
  const { live, sheet } = ownSheet();
  const table = atOnce(tableOut(live, sheet, false));

  it('quotes as RFC 4180 has it, ends lines with CR LF, and takes the harm out of text', () => {
    expect(writeDelimited(table, csv).split('\r\n')).toEqual([
      'What,Packets,On,Sent,Twice,So far',
      "'=1+1,3,2026-05-24,true,6,3",
      '"Peas, ""tall""",-5,1999-12-31,false,-10,-1.75',
      `_x0041_ < & ü,0.25,,,0.5,${live.value(sheet, 'rc', 'csum')}`,
      "'tis,,,,0,many",
      '',
    ]);
  });

  it('a mark and tabs where they are wanted', () => {
    const text = writeDelimited(table, { separator: '\t', mark: true });
    expect(text.startsWith('\ufeffWhat\tPackets\t')).toBe(true);
  });

  it.each(['=cmd()', '+1', '-1', '@SUM(1)', '\tx', '\rx', "'=x", "''=x"])(
    'text %j comes back as it was',
    async (text) => {
      const out = writeDelimited(
        { ...table, columns: [table.columns[0]!], rows: [{ id: 'r', values: [text] }] },
        csv,
      );
      expect(out.split('\r\n')[1]!.replace(/^"/, '')).toMatch(/^'/);
      const { shown, settled } = await bring(await tableFrom(out, 'x.csv', { separator: ',' }), {
        header: true,
      });
      expect(shown).toEqual([[text]]);
      expect(settled.likeFormulas).toBe(text.startsWith('=') ? 1 : 0);
    },
  );

  it('numbers below nothing stay numbers', () => {
    expect(writeDelimited(table, csv)).toContain(',-5,');
  });

  it('planning columns go along only where they are wanted', () => {
    const shelf = newLive();
    shelf.insertRows('shelf', [
      { food: 'Peas', way: 'canned', container: 'pint', count: 3, put_up_on: '2026-07-04' },
    ]);
    const plain = atOnce(tableOut(shelf, 'shelf', false)).columns.map(({ title }) => title);
    const all = atOnce(tableOut(shelf, 'shelf', true)).columns.map(({ title }) => title);
    expect(plain).toContain('Put up');
    expect(plain).not.toContain('Left');
    expect(all).toContain('Left');
  });
});

describe('metadata by the W3C recommendation (Metadata Vocabulary for Tabular Data)', () => {
  const { live, sheet } = ownSheet();
  const table = atOnce(tableOut(live, sheet, false));
  const text = csvwMetadata(table, 'seed-swaps.csv', ',');
  const metadata = JSON.parse(text);

  it('has the context, the table and the description that the rules ask for', () => {
    // 5.2: the context is the namespace, or an array of it and an object with @base or @language alone.
    expect(metadata['@context'][0]).toBe('http://www.w3.org/ns/csvw');
    expect(Object.keys(metadata['@context'][1]).every((key) => ['@base', '@language'].includes(key))).toBe(
      true,
    );
    // 5.4: a table needs its url; 5.4.3: properties that are not of the vocabulary are prefixed names.
    expect(metadata.url).toBe('seed-swaps.csv');
    const known = [
      '@context',
      '@id',
      '@type',
      'url',
      'dialect',
      'notes',
      'suppressOutput',
      'tableDirection',
      'tableSchema',
      'transformations',
    ];
    for (const key of Object.keys(metadata))
      expect(known.includes(key) || /^(dc|schema):[a-zA-Z]+$/.test(key), key).toBe(true);
    expect(metadata['dc:title']).toBe('Seed swaps');
    // No key is asked of the rows: nothing in a sheet must be there or be the only one.
    expect(metadata.tableSchema.primaryKey).toBeUndefined();
  });

  it('names every column once, by the rules for names, with titles as they stand in the file', () => {
    const names = metadata.tableSchema.columns.map(({ name }: { name: string }) => name);
    expect(new Set(names).size).toBe(names.length);
    // 5.6: a name is a variable name of a URI template and does not begin with `_`.
    for (const name of names) expect(name).toMatch(/^[A-Za-z0-9](?:[A-Za-z0-9_.]|%[0-9A-F]{2})*$/);
    const header = writeDelimited(table, csv).split('\r\n')[0]!.split(',');
    expect(metadata.tableSchema.columns.map(({ titles }: { titles: string }) => titles)).toEqual(header);
  });

  it('says of each column what all of its cells are', () => {
    // 5.11.1: the built-in datatypes that we use.
    expect(metadata.tableSchema.columns.map(({ datatype }: { datatype: string }) => datatype)).toEqual([
      'string',
      'number',
      'date',
      'boolean',
      'number',
      'string',
    ]);
  });

  it('is read again: titles and types come from it', async () => {
    const read = readMetadata(text, 'seed-swaps.csv');
    if (!read.ok) throw new Error(read.problem.message);
    const file = writeDelimited(table, csv);
    const { shown, plan } = await bring(await tableFrom(file, 'seed-swaps.csv', {}, read.value), {
      metadata: read.value,
    });
    expect(plan.columns.map(({ reading }) => reading.type)).toEqual([
      'text',
      'number',
      'date',
      'tick',
      'number',
      'text',
    ]);
    expect(shown[0]).toEqual(['=1+1', 3, '2026-05-24', true, 6, '3']);
    expect(shown[1]).toEqual(['Peas, "tall"', -5, '1999-12-31', false, -10, '-1.75']);
  });

  it('of others is understood: several tables, formats, decimal commas', () => {
    const read = readMetadata(
      JSON.stringify({
        '@context': 'http://www.w3.org/ns/csvw',
        dialect: { delimiter: ';', header: false },
        tables: [
          { url: 'other.csv', tableSchema: { columns: [] } },
          {
            url: 'https://farm.example/seed%20list.csv',
            tableSchema: {
              columns: [
                { titles: { en: ['Name', 'Sort'] } },
                { name: 'kg', datatype: { base: 'decimal', format: { decimalChar: ',' } } },
                { titles: ['Sown'], datatype: { base: 'date', format: 'dd/MM/yyyy' } },
                { name: 'virt', virtual: true },
              ],
            },
          },
        ],
      }),
      'seed list.csv',
    );
    expect(read.ok && read.value).toEqual({
      separator: ';',
      header: false,
      columns: [
        { title: 'Name', reading: {} },
        { title: 'kg', reading: { type: 'number', decimalComma: true } },
        { title: 'Sown', reading: { type: 'date', dateOrder: 'day first' } },
      ],
    });
  });

  it.each(['{', '[]', '{"tableSchema":{"columns":7}}'])('what is none is refused: %s', (bad) => {
    const read = readMetadata(bad, 'x.csv');
    expect(read.ok ? '' : read.problem.code).toBe('bad-metadata');
  });
});
