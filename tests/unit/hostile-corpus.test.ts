/**
 * Broken and hostile input, each with what must come of it: a refusal that says how to mend it, or a book in
 * which every other cell goes on working, nothing else is lost, and nothing reaches other objects.
 */
import { afterEach, describe, expect, it } from 'vitest';
import { parseBook } from '../../src/core.js';
import { closeAll, edited, SAVED } from '../support/hostile-book.js';

afterEach(closeAll);

const put = (json: string, where = '"settings":{') => SAVED.replace(where, `${where}${json},`);

describe('files that cannot be opened say why and what to do', () => {
  const refused: readonly (readonly [name: string, text: string, code: string, words: string])[] = [
    ['empty', '', 'truncated', 'copy it again'],
    ['cut off', SAVED.slice(0, 900), 'truncated', 'copy it again'],
    ['200,000 brackets', '['.repeat(200_000), 'truncated', 'copy it again'],
    ['a web page', '<html><script>alert(1)</script>', 'not-json', 'Save a copy'],
    ['a spreadsheet file', 'PK\u0003\u0004\u0000', 'not-json', 'Save a copy'],
    ['a list', '[]', 'not-a-book', 'Save a copy'],
    ['null', 'null', 'not-a-book', 'Save a copy'],
    ['a word', '"book"', 'not-a-book', 'Save a copy'],
    ['other JSON', '{"format":"something"}', 'not-a-book', 'Save a copy'],
    ['no version', SAVED.replace(/"version":\d+,/, ''), 'no-version', 'Write "version"'],
    ['version as text', SAVED.replace(/"version":(\d+)/, '"version":"$1"'), 'no-version', 'Write "version"'],
    [
      'version 999',
      SAVED.replace(/"version":\d+/, '"version":999'),
      'newer-version',
      'newer copy of this page',
    ],
    [
      '__proto__ at the top',
      put('', '{').replace('{,', '{"__proto__":{"polluted":1},'),
      'hostile-key',
      'Remove that part',
    ],
    [
      '__proto__ as a row',
      put('"__proto__":{"order":"a0","cells":{}}', '"rows":{'),
      'hostile-key',
      'Remove that part',
    ],
    ['__proto__ as a setting', put('"__proto__":{"polluted":1}'), 'hostile-key', 'Remove that part'],
    [
      '5,000 lists in one another',
      put(`"x":${'['.repeat(5000)}${']'.repeat(5000)}`),
      'hostile-key',
      'Remove that part',
    ],
    [
      'constructor as a row',
      edited(({ sheets }) => {
        sheets.shelf!.rows.constructor = { order: 'a1', cells: {} } as never;
      }),
      'file-invalid-key',
      'Rename the key',
    ],
    [
      'toString as a column',
      edited(({ sheets }) => {
        sheets.shelf!.columns.toString = { own: true, order: 'a1' } as never;
      }),
      'file-invalid-key',
      'Rename the key',
    ],
    [
      'valueOf as a sheet',
      edited(({ sheets }) => {
        sheets.valueOf = { ...sheets.snotes! } as never;
      }),
      'file-invalid-key',
      'Rename the key',
    ],
    [
      'a path as an id',
      edited(({ sheets }) => {
        sheets.shelf!.rows['a/b'] = { order: 'a1', cells: {} };
      }),
      'file-invalid-key',
      'Rename the key',
    ],
    [
      'an id of 65 letters',
      edited(({ sheets }) => {
        sheets.shelf!.rows['r'.repeat(65)] = { order: 'a1', cells: {} };
      }),
      'file-invalid-key',
      'Rename the key',
    ],
    [
      'a number beyond all',
      SAVED.replace('"count":20', '"count":1e400'),
      'file-invalid-union',
      'Correct that part',
    ],
    [
      'a list in a cell',
      edited(({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.food = ['tomato'];
      }),
      'file-invalid-union',
      'Correct that part',
    ],
    [
      'null in a cell',
      edited(({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.food = null;
      }),
      'file-invalid-union',
      'Correct that part',
    ],
    [
      'cells as a list',
      edited(({ sheets }) => {
        sheets.shelf!.rows.l1!.cells = [] as never;
      }),
      'file-invalid-type',
      'Put a value of that type',
    ],
    [
      'no sheets',
      edited((book) => {
        book.sheets = null as never;
      }),
      'file-invalid-type',
      'Put a value of that type',
    ],
    [
      'a kind that is none',
      edited(({ sheets }) => {
        sheets.snotes!.kind = '__proto__';
      }),
      'file-invalid-value',
      'Use one of the values',
    ],
    [
      'an order that is none',
      edited(({ sheets }) => {
        sheets.shelf!.rows.l1!.order = 'a00';
      }),
      'file-custom',
      'Correct it',
    ],
    [
      'a megabyte in a cell',
      edited(({ sheets }) => {
        sheets.shelf!.rows.l1!.cells.note = 'x'.repeat(1_000_000);
      }),
      'file-too-big',
      'Shorten it',
    ],
    [
      'a title of 5,000 letters',
      edited((book) => {
        book.title = 'x'.repeat(5000);
      }),
      'file-too-big',
      'Shorten it',
    ],
    [
      'version 1 with sheets as numbers',
      edited((book) => {
        book.version = 1;
        book.sheets = { a: 5, b: null } as never;
      }),
      'file-invalid-type',
      'Put a value of that type',
    ],
    [
      'version 1 whose orders are objects',
      edited((book) => {
        book.version = 1;
        book.sheets = { a: { order: { toString: 1, valueOf: 1 } } } as never;
      }),
      'file-invalid-value',
      'Use one of the values',
    ],
  ];

  it.each(refused)('%s', (_name, text, code, words) => {
    const parsed = parseBook(text);
    if (parsed.ok) throw new Error('was opened');
    expect(parsed.problems[0]!.code).toBe(code);
    expect(parsed.problems[0]!.mend).toContain(words);
    expect(parsed.problems.length).toBeLessThanOrEqual(50);
  });
});
