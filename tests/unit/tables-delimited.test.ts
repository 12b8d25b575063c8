import { describe, expect, it } from 'vitest';
import { detectEncoding } from '../../src/tables/encoding.js';
import { guessReading } from '../../src/tables/guess.js';
import { detectSeparator } from '../../src/tables/separator.js';
import { bring, bytesOf, codes, newLive, tableFrom, tablePasted } from './tables-support.js';

const cellsOf = (table: { rows: readonly { cells: readonly unknown[] }[] }) =>
  table.rows.map(({ cells }) => cells);

describe('RFC 4180, section 2, as printed there', () => {
  const expected = [
    ['aaa', 'bbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ];
  it.each([
    ['1: each record on a line of its own', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', expected],
    ['2: the last one need not end', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', expected],
    [
      '3: a header line',
      'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [['field_name', 'field_name', 'field_name'], ...expected],
    ],
    ['5: fields in quotes or not', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', expected],
    [
      '6: line ends inside quotes',
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [['aaa', 'b\r\nbb', 'ccc'], expected[1]],
    ],
    ['7: a quote inside quotes', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('%s', async (_rule, text, rows) => {
    const table = await tableFrom(text, 'rfc.csv', { separator: ',' });
    expect(cellsOf(table)).toEqual(rows);
    expect(table.problems).toEqual([]);
  });

  it('4: spaces are part of a field', async () => {
    expect(cellsOf(await tableFrom('aaa, bbb ,ccc', 'rfc.csv', { separator: ',' }))).toEqual([
      ['aaa', ' bbb ', 'ccc'],
    ]);
  });
});

describe('how a file of text is written', () => {
  const text = 'Food;Pounds\r\nKürbis – "sweet"…;1,5\r\n';
  const wide = (bigEnd: boolean, mark: boolean): Uint8Array => {
    const codes = [...(mark ? '\ufeff' : ''), ...text].map((sign) => sign.charCodeAt(0));
    return new Uint8Array(
      codes.flatMap((code) => (bigEnd ? [code >> 8, code & 255] : [code & 255, code >> 8])),
    );
  };
  it.each([
    ['UTF-8', bytesOf(text), 'utf-8'],
    ['UTF-8 with a mark', bytesOf(`\ufeff${text}`), 'utf-8'],
    ['UTF-16, little end first, marked', wide(false, true), 'utf-16le'],
    ['UTF-16, big end first, marked', wide(true, true), 'utf-16be'],
    ['UTF-16, little end first', wide(false, false), 'utf-16le'],
    ['UTF-16, big end first', wide(true, false), 'utf-16be'],
    [
      'Windows-1252',
      // ü, en dash and ellipsis stand at 0xFC, 0x96 and 0x85 there.
      new Uint8Array(
        [...text].map((sign) => ({ ü: 0xfc, '–': 0x96, '…': 0x85 })[sign] ?? sign.charCodeAt(0)),
      ),
      'windows-1252',
    ],
  ])('%s is told by its bytes, and read so', async (_name, bytes, encoding) => {
    expect(detectEncoding(bytes).encoding).toBe(encoding);
    const table = await tableFrom(bytes);
    expect(cellsOf(table)).toEqual([
      ['Food', 'Pounds'],
      ['Kürbis – "sweet"…', '1,5'],
    ]);
  });

  it.each([
    ['a,b\n1,2\n', ','],
    ['a;b\n1,5;2,5\n3,5;4,5\n', ';'],
    ['1,5;2,5\n3,5;4,5\n', ';'],
    ['a\tb, c\n1\t2, 3\n', '\t'],
    ['a|b\n1|2\n', '|'],
    ['"a;b",c\n"d;e",f\n', ','],
    ['one column\nonly\n', ','],
  ])('%j is divided by %j', (sample, separator) => {
    expect(detectSeparator(sample)).toBe(separator);
  });

  it('lines are counted as the file has them, line ends in quotes and blank lines too', async () => {
    const { rows } = await tableFrom('a,b\r\n"x\r\ny",1\r\n\r\nz,2');
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 5]);
  });

  it('what is pasted comes in the same way', async () => {
    const { shown } = await bring(await tablePasted('Food\tJars\nPeas\t3\nCorn\t14\n'));
    expect(shown).toEqual([
      ['Peas', 3],
      ['Corn', 14],
    ]);
  });
});

describe('what a column holds', () => {
  const guess = (cells: string[], semicolons = false) =>
    guessReading(
      cells.map((cell, i) => ({ line: i + 1, cells: [cell] })),
      0,
      { dateOrder: 'month first', semicolons },
    );
  it.each([
    [['1', '2.5', '1,200'], { type: 'number', decimalComma: false }],
    [['1,5', '2', '1.200,75'], { type: 'number', decimalComma: true }],
    [['3 1/2', '1/4'], { type: 'number' }],
    [['2026-05-24', '2026-06-01'], { type: 'date' }],
    [['24/05/2026', '01/06/2026'], { type: 'date', dateOrder: 'day first' }],
    [['05/24/2026', '06/01/2026'], { type: 'date', dateOrder: 'month first' }],
    [['01.06.2026', '02.06.2026'], { type: 'date', dateOrder: 'month first' }],
    [['yes', 'no', 'Yes'], { type: 'tick' }],
    [['00417', '00418'], { type: 'text' }],
    [['1234567890123456', '1234567890123457'], { type: 'text' }],
    [['', ''], { type: 'text' }],
    [['peas', '3'], { type: 'text' }],
  ])('%j', (cells, expected) => {
    expect(guess(cells)).toMatchObject(expected);
  });

  it('few words again and again are choices', () => {
    const cells = Array.from({ length: 40 }, (_, i) => ['cellar', 'freezer', 'pantry'][i % 3]!);
    expect(guess(cells)).toMatchObject({ type: 'choice', choices: ['cellar', 'freezer', 'pantry'] });
  });

  it('the order of day and month counts for the whole column', async () => {
    const { shown } = await bring(await tableFrom('Put up\n03/04/2026\n13/04/2026\n'));
    expect(shown).toEqual([['2026-04-03'], ['2026-04-13']]);
  });
});

describe('into the Shelf', () => {
  const file =
    'Food,Way kept,container,Put up,put-up on,Kept where,Left,Colour of lid\nPeas,canned,pint jar,12,2026-07-04,Cellar,9,red\n';

  it('columns are found by title, id and likeness; a planning column is never a target', async () => {
    const { plan, live, shown } = await bring(await tableFrom(file), { place: { sheet: 'shelf' } });
    expect(plan.columns.map(({ target }) => (target.to === 'column' ? target.column : target.to))).toEqual([
      'food',
      'way',
      'container',
      'count',
      'put_up_on',
      'place',
      'leave out',
      'leave out',
    ]);
    expect(shown).toEqual([['Peas', 'canned', 'pint jar', 12, '2026-07-04', 'Cellar']]);
    expect(live.undoLabel).toBe('import of beans');
    live.undo();
    expect(live.rowIds('shelf')).toEqual([]);
    expect(live.undoLabel).toBeUndefined();
  });

  it('what does not fit stays as it is written and is listed with its line', async () => {
    const table = await tableFrom(
      'Food,Way kept,Put up,Put up on\nPeas,pickled?,a dozen,31/02/2026\nCorn,Canned,3,2026-08-09\n',
    );
    const { settled, shown } = await bring(table, { place: { sheet: 'shelf' } });
    expect(shown).toEqual([
      ['Peas', 'pickled?', 'a dozen', '31/02/2026'],
      ['Corn', 'canned', 3, '2026-08-09'],
    ]);
    expect(settled.problems.map(({ line, heading }) => [line, heading])).toEqual([
      [2, 'Way kept'],
      [2, 'Put up'],
      [2, 'Put up on'],
    ]);
    expect(codes(settled)).toEqual(['not-a-choice', 'not-a-number', 'no-such-day']);
    for (const { mend } of settled.problems) expect(mend).not.toBe('');
  });
});

it('a large table can be stopped, and then nothing is changed', async () => {
  const { bringIn } = await import('../../src/tables/bring-in.js');
  const { planFor } = await import('../../src/tables/plan.js');
  const { settleImport } = await import('../../src/tables/settle.js');
  const { atOnce } = await import('../../src/tables/slices.js');
  const live = newLive();
  live.set('shelf', live.insertRows('shelf', [{ food: 'Peas' }]).rows[0]!, 'count', 2);
  const before = JSON.stringify(live.toJSON());
  const table = await tableFrom(`Food,Jars\n${'Peas,3\n'.repeat(9_000)}`);
  const plan = planFor(live, table, true, { newSheet: 'Large' });
  const settled = atOnce(settleImport(table, plan));
  const stop = new AbortController();
  const done = await bringIn(live, plan, settled, 'import of large', {
    signal: stop.signal,
    onProgress: (share) => share > 0.5 && stop.abort(),
  });
  expect(done).toBeNull();
  expect(JSON.stringify(live.toJSON())).toBe(before);
  expect(live.undoLabel).toBe('change of a cell');
  expect(live.redoLabel).toBeUndefined();
  // Not stopped, it is one step.
  const whole = await bringIn(live, plan, atOnce(settleImport(table, plan)), 'import of large');
  expect(whole?.ok && live.rowIds(whole.value.sheet).length).toBe(9_000);
  live.undo();
  expect(JSON.stringify(live.toJSON())).toBe(before);
  live.redo();
  expect(live.sheets().some(({ title }) => title === 'Large')).toBe(true);
});
