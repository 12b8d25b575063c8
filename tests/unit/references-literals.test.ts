import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LiveBook } from '../../src/core.js';
import { startingBook } from '../support/random-book.js';

let live: LiveBook;

beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

/** OpenFormula 1.2, 5.4: a quotation mark within a text is written twice; nothing else stands for something else. */
describe('text within a formula', () => {
  it.each([
    ['="a""b"', 'a"b'],
    ['=""""', '"'],
    ['="6"" deep"&" "&"2\\3"', '6" deep 2\\3'],
    ['="ends with \\"', 'ends with \\'],
    ['=LEN("\\\\")', 2],
    ['=IF(""="","it\'s","no")', "it's"],
    ['=SUBSTITUTE("6"" jar","""","-inch")', '6-inch jar'],
    ['="[ca@n1]"', '[ca@n1]'],
  ])('%s gives %s, and is shown as it was typed', (typed, value) => {
    expect(live.set('snotes', 'n3', 'cb', typed).ok).toBe(true);
    expect([live.value('snotes', 'n3', 'cb'), live.typed('snotes', 'n3', 'cb')]).toEqual([value, typed]);
  });
});

describe('a reference that is gone', () => {
  it('is #REF! in another sheet too, and leaves the rest of the formula readable', () => {
    live.set('shelf', 'l1', 'cown', '=IFERROR(Notes!A2,7)+SUM(Notes!A1:A3)');
    live.removeRows('snotes', ['n2']);
    expect(live.value('shelf', 'l1', 'cown')).toBe(11);
    live.set('shelf', 'l1', 'cown', '=Notes!A1');
    live.apply({ do: 'rename sheet', sheet: 'snotes', title: 'My notes' });
    live.set('shelf', 'l2', 'cown', "=SUM('My notes'!A1:A2)");
    live.removeRows('snotes', ['n1', 'n3']);
    expect([live.typed('shelf', 'l1', 'cown'), live.typed('shelf', 'l2', 'cown')]).toEqual([
      '=#REF!',
      '=SUM(#REF!)',
    ]);
  });
});
