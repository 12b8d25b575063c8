import { readFileSync } from 'node:fs';
import { Workbook } from '@cj-tech-master/excelts';
import { describe, expect, it } from 'vitest';
import { isCellError } from '../../src/book/index.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { storedFormula } from '../../src/tables/formula-in.js';
import { StoredCells, tableOut } from '../../src/tables/out-table.js';
import { atOnce } from '../../src/tables/slices.js';
import { openWorkbook } from '../../src/tables/workbook-read.js';
import { worksheetNames, writeWorkbook } from '../../src/tables/workbook-write.js';
import { ownSheet } from './tables-make.js';
import { bring, codes, tableFrom } from './tables-support.js';
import { unzipped } from './tables-zip.js';

/** Another library's eyes. */
async function readByOther(bytes: Uint8Array): Promise<Workbook> {
  const book = new Workbook();
  await book.xlsx.load(bytes as Uint8Array<ArrayBuffer>);
  return book;
}

async function writtenByOther(fill: (book: Workbook) => void): Promise<Uint8Array> {
  const book = new Workbook();
  fill(book);
  return new Uint8Array((await book.xlsx.writeBuffer()) as unknown as ArrayBuffer);
}

const day = (iso: string) => new Date(`${iso}T00:00:00Z`);

describe('a workbook that we write', () => {
  const { live, sheet } = ownSheet();
  const make = () => writeWorkbook([atOnce(tableOut(live, sheet, false))], new StoredCells(live), live.title);

  it('is read by another library with the same values, types, widths and a title row that stands still', async () => {
    const { bytes } = await make();
    const worksheet = (await readByOther(bytes)).getWorksheet('Seed swaps')!;
    expect(worksheet.getRow(1).values).toEqual([
      undefined,
      'What',
      'Packets',
      'On',
      'Sent',
      'Twice',
      'So far',
    ]);
    expect(worksheet.getCell('A2').value).toBe('=1+1');
    expect(worksheet.getCell('A3').value).toBe('Peas, "tall"');
    expect(worksheet.getCell('A4').value).toBe('_x0041_ < & ü');
    expect(worksheet.getCell('A5').value).toBe("'tis");
    expect(worksheet.getCell('B3').value).toBe(-5);
    expect(worksheet.getCell('C2').value).toEqual(day('2026-05-24'));
    expect(worksheet.getCell('D2').value).toBe(true);
    expect(worksheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
    expect(worksheet.getColumn(1).width).toBeGreaterThan(7);
  });

  it('has formulas where they translate, with what they come to, and says which did not', async () => {
    const { bytes, formulas, asValues } = await make();
    const worksheet = (await readByOther(bytes)).getWorksheet('Seed swaps')!;
    const at = (cell: string) => worksheet.getCell(cell).value;
    // A column's name is the cell of the same row where one value belongs, and else what stands below its title.
    expect(at('E2')).toMatchObject({ formula: 'B2*2', result: 6 });
    expect(at('F2')).toMatchObject({ formula: 'SUM(B$2:B2)', result: 3 });
    expect(at('F3')).toMatchObject({ formula: 'SUM($B$2:$B$5)', result: -1.75 });
    expect(at('F4')).toBe(live.value(sheet, 'rc', 'csum'));
    expect(at('F5')).toMatchObject({ formula: '_xlfn.IFS(B2>2,"many",TRUE(),"few")', result: 'many' });
    expect(formulas).toBe(7);
    expect(asValues).toEqual([{ sheet: 'Seed swaps', column: 'So far', cells: 1 }]);
  });

  it('has the parts that ECMA-376 asks for, each of them well formed', async () => {
    const parts = await unzipped((await make()).bytes);
    for (const name of [
      '[Content_Types].xml',
      '_rels/.rels',
      'xl/workbook.xml',
      'xl/_rels/workbook.xml.rels',
      'xl/styles.xml',
      'xl/worksheets/sheet1.xml',
    ])
      expect([...parts.keys()]).toContain(name);
    expect(parts.get('xl/workbook.xml')).toContain(
      'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
    );
    expect(parts.get('xl/worksheets/sheet1.xml')).toMatch(/<pane [^>]*state="frozen"/);
    expect(parts.get('xl/worksheets/sheet1.xml')).toMatch(/<c r="D2" t="b"><v>1<\/v>/);
  });

  it('comes back as it was: values, and formulas that work', async () => {
    const { bytes } = await make();
    const { live: other, shown, settled, sheet: brought } = await bring(await tableFrom(bytes, 'seed.xlsx'));
    const { asOf, basis } = other.household;
    other.attachEngine(new HyperFormulaEngine({ asOf, basis }, 'gpl-v3'));
    expect(shown.map((row) => row.slice(0, 4))).toEqual([
      ['=1+1', 3, '2026-05-24', true],
      ['Peas, "tall"', -5, '1999-12-31', false],
      ['_x0041_ < & ü', 0.25, null, null],
      ["'tis", null, null, null],
    ]);
    const columns = [...settled.columnIds.values()];
    const [first, second] = settled.rows;
    expect(other.isFormula(brought, first!.id, columns[4]!)).toBe(true);
    expect(other.value(brought, first!.id, columns[4]!)).toBe(6);
    expect(other.value(brought, second!.id, columns[5]!)).toBe(-1.75);
    expect(other.isFormula(brought, first!.id, columns[0]!)).toBe(false);
    other.set(brought, first!.id, columns[1]!, 10);
    expect(other.value(brought, first!.id, columns[4]!)).toBe(20);
    other.undo();
    other.undo();
    expect(other.sheets().some(({ id }) => id === brought)).toBe(false);
  });

  it('a whole book has a worksheet for each sheet, and formulas between them', async () => {
    const { live: book, sheet: from } = ownSheet();
    book.apply({
      do: 'add sheet',
      sheet: 'sother',
      title: 'A sheet with a name much longer than 31',
      columns: [{ id: 'ctotal', title: 'Total' }],
      rows: [{ id: 'rt', cells: { ctotal: `=SUM([${from}.cpackets])+[${from}.cpackets@ra]` } }],
    });
    const tables = book.sheets().map(({ id }) => atOnce(tableOut(book, id, true)));
    const { bytes } = await writeWorkbook(tables, new StoredCells(book), book.title);
    const other = await readByOther(bytes);
    expect(other.worksheets.map(({ name }) => name)).toEqual(
      worksheetNames(book.sheets().map(({ title }) => title)),
    );
    expect(other.worksheets.at(-1)!.name).toHaveLength(31);
    expect(other.worksheets.at(-1)!.getCell('A2').value).toMatchObject({
      formula: "SUM('Seed swaps'!$B$2:$B$5)+'Seed swaps'!B2",
      result: 1.25,
    });
  });
});

describe('a workbook that another library wrote', () => {
  it('comes in with values, dates, truths, and formulas that stay inside the table', async () => {
    const bytes = await writtenByOther((book) => {
      const lots = book.addWorksheet('Lots');
      lots.addRow(['Food', 'Jars', 'Put up', 'Twice', 'Sealed', 'Far', 'Old way']);
      lots.addRow([
        'Peas',
        3,
        day('2026-06-01'),
        { formula: 'B2*2', result: 6 },
        true,
        { formula: 'Other!A1', result: 5 },
        { formula: 'CUBESET(1)', result: 1 },
      ]);
      lots.addRow([
        '=Corn',
        4,
        day('2026-07-01'),
        { sharedFormula: 'D2', result: 8 },
        false,
        { formula: 'SUM(B2:B99)', result: 7 },
        { formula: 'D3', result: 8 },
      ]);
      lots.getColumn(3).numFmt = 'dd/mm/yyyy';
      book.addWorksheet('Other').addRow([5]);
    });
    const opened = await openWorkbook(bytes);
    expect(opened.ok && opened.value.worksheets.map(({ name }) => name)).toEqual(['Lots', 'Other']);
    const { live, settled, sheet, shown, plan } = await bring(await tableFrom(bytes, 'lots.xlsx'));
    expect(plan.columns.map(({ reading }) => reading.type)).toEqual([
      'text',
      'number',
      'date',
      'number',
      'tick',
      'number',
      'number',
    ]);
    expect(shown.map((row) => row.slice(0, 3))).toEqual([
      ['Peas', 3, '2026-06-01'],
      ['=Corn', 4, '2026-07-01'],
    ]);
    const { asOf, basis } = live.household;
    live.attachEngine(new HyperFormulaEngine({ asOf, basis }, 'gpl-v3'));
    const ids = [...settled.columnIds.values()];
    const at = (r: number, c: number) => live.value(sheet, settled.rows[r]!.id, ids[c]!);
    // The second follows the first, from where it stands; the range that runs on ends with the table.
    expect([at(0, 3), at(1, 3), at(1, 5), at(1, 6)]).toEqual([6, 8, 7, 8]);
    expect(live.typed(sheet, settled.rows[1]!.id, ids[3]!)).toBe('=B2*2');
    // Reaching out of the table, or what the book does not have: the value, and a word about it.
    expect([at(0, 5), at(0, 6)]).toEqual([5, 1]);
    expect(settled.problems.map(({ code, line, heading }) => [code, line, heading])).toEqual([
      ['formula-as-value', 2, 'Far'],
      ['formula-as-value', 2, 'Old way'],
    ]);
  });

  it('formulas that go round in a ring come in and say so', async () => {
    const bytes = await writtenByOther((book) => {
      const sheet = book.addWorksheet('Ring');
      sheet.addRow(['A', 'B']);
      sheet.addRow([
        { formula: 'B2+1', result: 0 },
        { formula: 'A2+1', result: 0 },
      ]);
    });
    const { live, settled, sheet } = await bring(await tableFrom(bytes, 'ring.xlsx'));
    const { asOf, basis } = live.household;
    live.attachEngine(new HyperFormulaEngine({ asOf, basis }, 'gpl-v3'));
    const value = live.value(sheet, settled.rows[0]!.id, [...settled.columnIds.values()][0]!);
    expect(isCellError(value) && value.error).toBe('#CYCLE!');
  });

  it('errors in it are listed with their place', async () => {
    const bytes = await writtenByOther((book) => {
      book.addWorksheet('E').addRows([['What'], [{ error: '#N/A' }], ['x']]);
    });
    const { settled, shown } = await bring(await tableFrom(bytes, 'e.xlsx'));
    expect(codes(settled)).toEqual(['error-in-file']);
    expect(settled.problems[0]!.message).toContain('A2');
    expect(shown).toEqual([['#N/A'], ['x']]);
  });

  it('a fixture on disk, made elsewhere, reads the same for ever', async () => {
    const bytes = new Uint8Array(readFileSync('tests/fixtures/tables/made-by-another-library.xlsx'));
    const { shown } = await bring(await tableFrom(bytes, 'fixture.xlsx'));
    expect(shown).toEqual([
      ['Snap beans', 42, '2026-08-14', true],
      ['Sauerkraut', 6.5, '2025-10-02', false],
    ]);
  });
});

describe('formulas from a workbook, one by one', () => {
  const area = {
    worksheet: 'Lots',
    column: (index: number) => ['ca', 'cb'][index],
    row: (index: number) => ({ 1: 'r1', 2: 'r2' })[index],
    lastRow: 2,
  };
  it.each([
    ['=A2', '=[ca@r1]'],
    ['=$A$2+A$3', '=[$ca@$r1]+[ca@$r2]'],
    ['=SUM(A2:B3)', '=SUM([ca@r1]:[cb@r2])'],
    ['=SUM(A2:A100)', '=SUM([ca@r1]:[ca@r2])'],
    ['=SUM(A:A)', '=SUM([ca@]:[ca@])'],
    ['=Lots!B2', '=[cb@r1]'],
    ['=_xlfn.TEXTJOIN(", ",TRUE,A2:A3)', '=TEXTJOIN(", ",TRUE(),[ca@r1]:[ca@r2])'],
    ['="A1"&"[x]"', '="A1"&"[x]"'],
  ])('%s', (formula, stored) => {
    expect(storedFormula(formula, area)).toEqual({ ok: true, value: stored });
  });

  it.each([
    '=A1',
    '=C2',
    '=Other!A2',
    '=[1]Lots!A2',
    '=rate*2',
    '=T[x]',
    '={1,2}',
    '=WEBSERVICE("http://x.example")',
    '=A2:INDEX(A:A,2)',
    '=#REF!',
    '=A2#',
    '=1:1',
  ])('%s comes as its value', (formula) => {
    const stored = storedFormula(formula, area);
    expect(stored.ok ? stored.value : stored.problem.code).toBe('formula-as-value');
  });
});
