import { writeXlsx } from 'hucre/xlsx';
import { afterEach, describe, expect, it } from 'vitest';
import type { LiveBook } from '../../src/live/live-book.js';
import { guessReading, headingsOf } from '../../src/tables/guess.js';
import { asMeant, harmless } from '../../src/tables/harmless.js';
import { freeTitle } from '../../src/tables/plan.js';
import { worksheetNames } from '../../src/tables/workbook-write.js';
import { bring, codes, newLive, tableFrom } from './tables-support.js';

const open: LiveBook[] = [];
afterEach(() => {
  for (const live of open.splice(0)) live.close();
});

const csvOf = (cells: readonly string[]): string =>
  `Lot,Other\n${cells.map((cell) => `"${cell}",z`).join('\n')}\n`;

/** What the cells of one column of a file show when it is brought in as guessed, and what is said of them. */
async function came(cells: readonly string[], live = newLive(), sheet?: string) {
  open.push(live);
  const { shown, settled, plan } = await bring(await tableFrom(csvOf(cells)), {
    live,
    header: true,
    ...(sheet !== undefined && { place: { sheet } }),
  });
  return {
    shown: shown.map(([first]) => first),
    notes: settled.notes.join(' '),
    codes: codes(settled),
    type: plan.columns[0]!.reading.type,
    live,
  };
}

describe('what is no amount stays as it is written', () => {
  it.each([
    [['007', '008', '010']],
    [['12345678901234567890', '1', '2']],
    [['9007199254740993', '1', '2']],
    [['1e5', '2e5', '3E7']],
    [['12', '13', '1e5', '4', '5', '6', '7', '8', '9', '10', '11']],
    [['+15551234567', '+4930123456']],
    [['5/4', '5/12', '6/1']],
    [['1/2', '3/4', '1/4']],
    [['1-2', '3-4', '5-6']],
    [['12-34-56', '12-11-10', '99-99-99']],
    [['12:30', '1:05', '23:59']],
    [['2026-W05', '2026-W06']],
    [['(5)', '$3.50', '7']],
    [['1e400', '1', '2']],
  ])('%j', async (cells) => {
    const { shown } = await came(cells);
    expect(shown).toEqual(cells);
  });

  it('amounts are amounts all the same', async () => {
    expect((await came(['1/2', '3 1/2', '2'])).shown).toEqual([0.5, 3.5, 2]);
    expect((await came(['1.5e-3', '2.5e4', '1'])).shown).toEqual([0.0015, 25_000, 1]);
    expect((await came(['0.30000000000000004', '1', '2'])).shown).toEqual([0.30000000000000004, 1, 2]);
  });
});

describe('what shows another way than it was written is said before it comes in', () => {
  it.each([
    [['1/2', '3 1/2', '2'], '2 cells are written as a fraction'],
    [['12%', '5 %', '1%'], '3 cells are written in per cent'],
    [['5/4/68', '6/7/69', '6/7/2026'], '2 cells are written with a year of two digits'],
    [['0.12345678901234567890', '1', '2'], '1 cell is written with more digits'],
  ])('%j', async (cells, note) => {
    expect((await came(cells)).notes).toContain(note);
  });

  it('years of two digits are those near by', async () => {
    expect((await came(['5/4/68', '5/4/69', '6/17/2026'])).shown).toEqual([
      '2068-05-04',
      '1969-05-04',
      '2026-06-17',
    ]);
  });

  it('codes that go into a column of numbers: zeros are said, lost digits stay text', async () => {
    const live = newLive();
    live.apply({
      do: 'add sheet',
      sheet: 'own',
      title: 'Own',
      columns: [{ id: 'lot', title: 'Lot', as: { type: 'number' } }],
    });
    const read = await came(['007', '12345678901234567890'], live, 'own');
    expect(read.shown).toEqual([7, '12345678901234567890']);
    expect(read.notes).toContain('1 cell is written with zeros');
    expect(read.codes).toEqual(['too-many-digits']);
    const [, row] = live.rowIds('own');
    expect(live.problem('own', row!, 'lot')?.code).toBe('too-many-digits');
  });

  it('codes that go into a column of any type stay text', async () => {
    const live = newLive();
    live.apply({ do: 'add sheet', sheet: 'own', title: 'Own', columns: [{ id: 'lot', title: 'Lot' }] });
    const cells = ['007', '12345678901234567890', '1e5', '12'];
    expect((await came(cells, live, 'own')).shown).toEqual(['007', '12345678901234567890', '1e5', 12]);
  });
});

describe('a column in which few texts come again and again', () => {
  const often = (...cells: string[]) => Array.from({ length: 40 }, (_, i) => cells[i % cells.length]!);

  it('makes no formula of text that looks like one', async () => {
    const cells = often('=1+1', '=HYPERLINK(A1)', 'Red');
    const { shown, live } = await came(cells);
    expect(shown).toEqual(cells);
    for (const sheet of Object.values(live.toJSON().sheets))
      for (const row of Object.values(sheet.rows))
        for (const raw of Object.values(row.cells)) expect(raw).not.toMatch(/^=/);
  });

  it('nor where the column of the book has it among its choices', async () => {
    const live = newLive();
    live.apply({
      do: 'add sheet',
      sheet: 'own',
      title: 'Own',
      columns: [{ id: 'lot', title: 'Lot', as: { type: 'choice', choices: ['=1+1', "'tis", 'red', 'Red'] } }],
    });
    const cells = ['=1+1', "'tis", 'Red', 'red'];
    expect((await came(cells, live, 'own')).shown).toEqual(cells);
  });

  it.each([[['Red', 'red', 'RED']], [["'tis", 'twas']], [['\u200bred', 'blue']]])(
    'keeps %j as they are',
    async (cells) => {
      const { shown, codes: found } = await came(often(...cells));
      expect(shown).toEqual(often(...cells));
      expect(found).toEqual([]);
    },
  );

  it('is no column of choices where half of it is numbers', () => {
    const rows = Array.from({ length: 40 }, (_, i) => ({ line: i, cells: [i % 2 === 0 ? i : true] }));
    const hints = { dateOrder: 'month first', semicolons: false } as const;
    expect(guessReading(rows, 0, hints).type).toBe('text');
  });
});

describe('workbooks', () => {
  it('times keep their seconds, and those longer than a day their hours', async () => {
    const times = ['2026-05-04T12:30:45Z', '2026-05-04T00:00:01Z'].map((iso) => [new Date(iso)]);
    const style = (numFmt: string) => ({ style: { numFmt } });
    const cells = new Map([
      ['3,0', style('hh:mm:ss')],
      ['4,0', style('[h]:mm')],
    ]);
    const rows = [['When'], ...times, [0.75], [1.25]];
    const table = await tableFrom(await writeXlsx({ sheets: [{ name: 'S', rows, cells }] }), 'a.xlsx');
    expect(table.rows.slice(1).map(({ cells: [first] }) => first)).toEqual([
      '2026-05-04 12:30:45',
      '2026-05-04 00:00:01',
      '18:00',
      '30:00',
    ]);
  });

  it('names of worksheets, of sheets and of columns never end in half of a sign', () => {
    const signs = '👩'.repeat(120);
    const halves = /[\uD800-\uDBFF]$/;
    expect(worksheetNames([`a${signs}`, signs])).not.toContainEqual(expect.stringMatching(halves));
    const live = newLive();
    open.push(live);
    expect(freeTitle(live, `a${signs}`)).not.toMatch(halves);
    expect(headingsOf([{ line: 1, cells: [`a${signs}`] }], true)[0]).not.toMatch(halves);
  });
});

describe('separated values', () => {
  it.each(['\n=1', '＝1+1', '＋1', '－1', '＠a'])(
    '%j is marked as text, and comes in without the mark',
    (text) => {
      expect(harmless(text)).toBe(`'${text}`);
      expect(asMeant(harmless(text))).toBe(text);
      expect(asMeant(text)).toBe(text);
    },
  );
});
