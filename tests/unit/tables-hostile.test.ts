import { Workbook } from '@cj-tech-master/excelts';
import { writeXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { openFile, openText } from '../../src/tables/open-file.js';
import { readWorksheet } from '../../src/tables/workbook-read.js';
import { bring, bytesOf, codes, newLive, tableFrom, tablePasted } from './tables-support.js';
import { zipped } from './tables-zip.js';

/** Why a file is refused; blank where it is not. */
async function refusal(file: Uint8Array | string, name = 'file.csv'): Promise<string> {
  try {
    await tableFrom(typeof file === 'string' ? bytesOf(file) : file, name);
    return '';
  } catch (error) {
    return (error as Error).message;
  }
}

/** Brought in whole: what the cells show, the codes of what was found, and the titles. */
async function came(text: string | Uint8Array, options: Parameters<typeof bring>[1] = {}) {
  const { shown, settled, plan } = await bring(await tableFrom(text), options);
  return { shown, codes: codes(settled), titles: plan.columns.map(({ heading }) => heading), settled };
}

const made = async (fill: (book: Workbook) => void): Promise<Uint8Array> => {
  const book = new Workbook();
  fill(book);
  return new Uint8Array((await book.xlsx.writeBuffer()) as unknown as ArrayBuffer);
};

describe('files that are no tables', () => {
  it.each<[string, Uint8Array | string, string]>([
    ['nothing at all', '', 'file-empty'],
    ['blank lines alone', '\r\n\r\n  \n', 'file-empty'],
    ['commas alone', ',,,\n,,,\n', 'file-empty'],
    ['a PDF called .csv', '%PDF-1.7\n1 0 obj\n', 'not-a-table'],
    [
      'a PNG called .csv',
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]),
      'not-a-table',
    ],
    ['a JPEG', new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16]), 'not-a-table'],
    ['a compressed file', new Uint8Array([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3]), 'not-a-table'],
    ['bytes of a program', new Uint8Array(4096).map((_, i) => (i * 7919) % 32), 'not-a-table'],
    ['NULs alone', new Uint8Array(5000), 'not-a-table'],
    ['a page of the web', '<!DOCTYPE html><html><table><tr><td>1</td></tr></table></html>', 'not-a-table'],
    [
      'an old workbook',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array(600).fill(0)]),
      'old-workbook',
    ],
    ['a whole book', '{\n  "format": "croftsheet-book",\n  "version": 2\n}', 'is-a-book'],
    [
      'a description without its table',
      '{"@context": "http://www.w3.org/ns/csvw", "url": "a.csv"}',
      'metadata-alone',
    ],
    [
      'an OpenDocument file',
      zipped({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<x/>' }),
      'not-a-table',
    ],
    ['a packed file with something else', zipped({ 'readme.txt': 'hello' }), 'not-a-table'],
    ['a workbook cut off', zipped({ 'xl/workbook.xml': '<workbook/>' }).slice(0, 60), 'broken-workbook'],
    [
      'a workbook with rubbish for parts',
      zipped({ 'xl/workbook.xml': '<<<', '[Content_Types].xml': 'no' }),
      'broken-workbook',
    ],
  ])('%s: %#', async (_what, file, code) => {
    expect(await refusal(file)).toBe(code);
  });

  it('what is refused says how to go on', async () => {
    for (const file of ['', '%PDF-1.4', '{"format": "croftsheet-book"}']) {
      const opened = await openFile(bytesOf(file), 'x.csv');
      expect(opened.ok ? '' : opened.problem.mend).toMatch(/\.$/);
    }
    expect(openText('  ').ok).toBe(false);
  });

  it('a workbook with a password', async () => {
    const locked = await writeXlsx({
      sheets: [{ name: 'A', rows: [['secret']] }],
      encryption: { password: 'tamarack', spinCount: 1000 },
    });
    expect(await refusal(locked, 'locked.xlsx')).toBe('locked-workbook');
  });
});

describe('packed files that unpack to too much', () => {
  const bomb = Buffer.alloc(300 * 1024 * 1024);
  it('are let go before they are read, whatever they say of their size', async () => {
    expect(await refusal(zipped({ 'xl/workbook.xml': bomb }), 'bomb.xlsx')).toBe('workbook-too-large');
    expect(await refusal(zipped({ 'xl/workbook.xml': bomb }, 12), 'bomb.xlsx')).toBe('workbook-too-large');
  }, 60_000);

  it('entities inside entities are not followed', async () => {
    const entities = Array.from(
      { length: 12 },
      (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`,
    ).join('');
    const xml = `<?xml version="1.0"?><!DOCTYPE w [<!ENTITY e0 "ha">${entities}]><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheets><sheet name="&e12;" sheetId="1"/></sheets></workbook>`;
    expect(['broken-workbook', 'no-worksheets', 'file-empty']).toContain(
      await refusal(zipped({ 'xl/workbook.xml': xml })),
    );
  });
});

describe('text that is awkward', () => {
  it.each<[string, string, unknown[][], string[]]>([
    [
      'line ends of every kind',
      'a,b\r\nc,1\rd,2\ne,3',
      [
        ['c', 1],
        ['d', 2],
        ['e', 3],
      ],
      [],
    ],
    [
      'returns alone',
      'a,b\rc,1\rd,2\r',
      [
        ['c', 1],
        ['d', 2],
      ],
      [],
    ],
    ['a quote in the middle', 'a,b\n5" pot,x\n', [['5" pot', 'x']], []],
    [
      'a quote never closed',
      'a,b\n"open,1\nnext,2\n',
      [
        ['"open', 1],
        ['next', 2],
      ],
      ['broken-quotes'],
    ],
    [
      'quotes closed too soon',
      'a,b\n"5" pot,x\ny,z\n',
      [
        ['"5" pot', 'x'],
        ['y', 'z'],
      ],
      ['broken-quotes'],
    ],
    [
      'too few fields',
      'a,b\nc\nd,2\n',
      [
        ['c', null],
        ['d', 2],
      ],
      ['too-few-fields'],
    ],
    ['too many fields', 'a,b\nc,1,extra\n', [['c', 1, 'extra']], ['too-many-fields']],
    ['NUL characters', 'a,b\nc\0d,1\n', [['cd', 1]], ['nul-characters']],
    ['markup is text', 'a\n<script>alert(1)</script>\n', [['<script>alert(1)</script>']], []],
    [
      '1e999 is no number',
      'a\n1\n1e999\n2\n3\n4\n5\n6\n7\n8\n9\n',
      [[1], ['1e999'], [2], [3], [4], [5], [6], [7], [8], [9]],
      ['not-a-number'],
    ],
    [
      'days that there are not',
      'a\n2026-02-30\n1492-10-12\n9999-01-01\n2026-01-01\n',
      [['2026-02-30'], ['1492-10-12'], ['9999-01-01'], ['2026-01-01']],
      [],
    ],
    [
      'marks for the direction of writing',
      'a,b\n\u200f12\u200e,\u202bpeas\u202c\n3,x\n',
      [
        [12, '\u202bpeas\u202c'],
        [3, 'x'],
      ],
      [],
    ],
    ['minus signs of typesetters', 'a\n−5\n7\n', [[-5], [7]], []],
  ])('%s', async (_what, text, shown, found) => {
    const got = await came(text, { header: true });
    expect(got.shown).toEqual(shown);
    expect(got.codes).toEqual(found);
  });

  it('days out of range in a column of days stay as written, each with its reason', async () => {
    const { settled, shown } = await bring(
      await tableFrom(
        'Food,Way kept,Put up on\nPeas,canned,1492-10-12\nCorn,canned,2026-02-30\nRye,canned,soon\n',
      ),
      {
        place: { sheet: 'shelf' },
      },
    );
    expect(shown.map((row) => row[2])).toEqual(['1492-10-12', '2026-02-30', 'soon']);
    expect(codes(settled)).toEqual(['year-out-of-range', 'no-such-day', 'not-a-date']);
  });

  it('formulas from a file of text are text: none is worked out', async () => {
    const { settled, live, sheet } = await bring(
      await tableFrom('a,b\n=1+1," =SUM(A1)"\n@SUM(1),+2+3\n=cmd|calc,-1\n', 'x.csv', { separator: ',' }),
      { header: true },
    );
    expect(settled.likeFormulas).toBe(3);
    for (const row of live.rowIds(sheet)) {
      for (const { id } of live.columns(sheet)) expect(live.isFormula(sheet, row, id)).toBe(false);
    }
    expect(live.value(sheet, live.rowIds(sheet)[0]!, live.columns(sheet)[0]!.id)).toBe('=1+1');
  });

  it('half signs, pasted, become a box and are said', async () => {
    const { shown, settled } = await bring(await tablePasted('a,b\nx\ud800y,\udc00\n🫛,z\n'), {
      header: true,
    });
    expect(shown).toEqual([
      ['x\ufffdy', '\ufffd'],
      ['🫛', 'z'],
    ]);
    expect(codes(settled)).toEqual(['broken-sign', 'broken-sign']);
  });

  it('titles that every object has are plain titles', async () => {
    const { titles, shown } = await came('__proto__,constructor,toString\n1,2,3\n4,5,6\n');
    expect(titles).toEqual(['__proto__', 'constructor', 'toString']);
    expect(shown).toEqual([
      [1, 2, 3],
      [4, 5, 6],
    ]);
    expect(({} as Record<string, unknown>)['1']).toBeUndefined();
  });

  it('titles that come twice, or are blank, are told apart', async () => {
    const { titles } = await came('Food,food,,"Very\nlong"\nx,y,z,w\nx,y,z,w\n', { header: true });
    expect(titles).toEqual(['Food', 'food (2)', 'Column 3', 'Very long']);
  });

  it('a title of a thousand letters is cut to what a book takes', async () => {
    const { titles, shown } = await came(`${'long '.repeat(200)},b\nx,y\n`, { header: true });
    expect(titles[0]!.length).toBeLessThanOrEqual(200);
    expect(shown).toEqual([['x', 'y']]);
  });

  it('ten million letters on one line: cut, and said', async () => {
    const { codes: found, shown } = await came(`a\n${'x'.repeat(10_000_000)}\n`, { header: true });
    expect(found).toEqual(['text-too-long']);
    expect(String(shown[0]![0]).length).toBe(19_999);
  });

  it('ten thousand lines, each with a quote that is never closed', async () => {
    const { shown, codes: found } = await came(`a,b\n${'"x,1\n'.repeat(10_000)}`, { header: true });
    expect(shown.length).toBe(10_000);
    expect(shown.at(-1)).toEqual(['"x', 1]);
    expect(new Set(found)).toEqual(new Set(['broken-quotes']));
  });

  it('more columns than a sheet holds', async () => {
    const wide = Array.from({ length: 500 }, (_, i) => `c${i}`).join(',');
    const { codes: found, titles } = await came(`${wide}\n${wide}\n`, { header: true });
    expect(found).toContain('too-many-columns');
    expect(titles.length).toBe(400);
  });

  it('more rows than a sheet holds', async () => {
    const table = await tableFrom(`a\n${'1\n'.repeat(100_500)}`);
    expect(table.rows.length).toBe(100_001);
    expect(table.problems.map(({ code }) => code)).toEqual(['too-many-rows']);
  });

  it('more than the sheet can take beside what it has: refused, and nothing is changed', async () => {
    const { bringIn } = await import('../../src/tables/bring-in.js');
    const { planFor } = await import('../../src/tables/plan.js');
    const { settleImport } = await import('../../src/tables/settle.js');
    const { atOnce } = await import('../../src/tables/slices.js');
    const live = newLive();
    live.apply({ do: 'add sheet', sheet: 'sfull', title: 'Full', columns: [{ id: 'ca', title: 'a' }] });
    live.insertRows(
      'sfull',
      Array.from({ length: 97_000 }, () => ({})),
    );
    const table = await tableFrom(`a\n${'x\n'.repeat(6_000)}`);
    const plan = planFor(live, table, true, { sheet: 'sfull' });
    const done = await bringIn(live, plan, atOnce(settleImport(table, plan)), 'import');
    expect(done?.ok === false && done.problem.code).toBe('too-many-rows');
    expect(live.rowIds('sfull').length).toBe(97_000);
  }, 60_000);
});

describe('workbooks that are awkward', () => {
  it('links to other files come as what they last showed, and nothing is fetched', async () => {
    const bytes = await made((book) => {
      const sheet = book.addWorksheet('Links');
      sheet.addRow(['What', 'Linked']);
      sheet.addRow(['x', { formula: "'[other.xlsx]Sheet1'!A1", result: 42 }]);
      sheet.addRow([
        { text: 'site', hyperlink: 'https://farm.example/' },
        { formula: 'WEBSERVICE("https://farm.example")', result: 'no' },
      ]);
    });
    const { shown, settled } = await bring(await tableFrom(bytes, 'links.xlsx'));
    expect(shown).toEqual([
      ['x', '42'],
      ['site', 'no'],
    ]);
    expect(codes(settled)).toEqual(['formula-as-value', 'formula-as-value']);
  });

  it('a far corner does not make millions of cells', async () => {
    const bytes = await made((book) => {
      const sheet = book.addWorksheet('Far');
      sheet.addRow(['a', 'b']);
      sheet.getCell('ZZ90000').value = 'there';
    });
    const opened = await openFile(bytes, 'far.xlsx');
    if (!opened.ok || opened.value.form !== 'workbook') throw new Error('not opened');
    const read = await readWorksheet(opened.value.workbook, 0);
    // Either it is refused in words, or it is cut to what a sheet holds.
    if (read.ok) {
      expect(read.value.rows.length).toBe(2);
      expect(read.value.problems.map(({ code }) => code)).toEqual(['too-many-columns']);
    } else expect(read.problem.code).toBe('broken-workbook');
  }, 60_000);

  it('times of day and moments stay as text where no day is meant', async () => {
    const bytes = await made((book) => {
      const sheet = book.addWorksheet('T');
      sheet.addRow(['When', 'Clock']);
      sheet.addRow([new Date(Date.UTC(2026, 4, 24, 7, 30)), new Date(Date.UTC(1899, 11, 30, 6, 15))]);
      sheet.getCell('B2').numFmt = 'hh:mm';
    });
    const { shown } = await bring(await tableFrom(bytes, 't.xlsx'));
    expect(shown[0]).toEqual(['2026-05-24 07:30', '06:15']);
  });

  it('worksheets that are empty say so', async () => {
    const bytes = await made((book) => void book.addWorksheet('Nothing'));
    const table = await tableFrom(bytes, 'nothing.xlsx');
    expect(table.rows).toEqual([]);
  });
});
