/**
 * Hostile entries in cells, each with what the cell then shows or says: it is kept as typed, no other row
 * shows anything else, and undo brings everything back.
 */
import { afterEach, describe, expect, it } from 'vitest';
import { isCellError } from '../../src/core.js';
import { changedRows, closeAll, contentOf, expectWhole, open, SAVED } from '../support/hostile-book.js';
import { shown } from '../support/random-book.js';

afterEach(closeAll);

describe('what is typed into a cell is kept, and costs no other row', () => {
  /** In a cell of Notes that nothing refers to: what it shows, or the words of its error. */
  const inNotes: readonly (readonly [typed: string, shows: unknown])[] = [
    ['=[x@y]', /not there any more/],
    ['="[x@y]"', '[x@y]'],
    ['=B3', /depends on itself/],
    ['=SUM(B:B)', /depends on itself/],
    ['=INDIRECT("A1")', /no function called INDIRECT/],
    ['=OFFSET(A1,1,0)', 2],
    ['=OFFSET(A1,RAND(),0)', /cannot be read/],
    ['=A99999', null],
    ['=XFD1048576', /far beyond the sheet/],
    ['=Nowhere!A1', /no sheet called “Nowhere”/],
    ['=1e308*10', /out of range/],
    ['=0/0', /Division by zero/],
    ['="12%"*1', 0.12],
    ['="$5"+1', 6],
    [`=${'IF(1,'.repeat(30)}7${')'.repeat(30)}`, 7],
    ['=HYPERLINK("javascript:alert(1)","x")', 'x'],
    ['=LAMBDA(x,x)(1)', /“x” is neither a column/],
    ['=START_ON("__proto__","2026-06-01")', /no crop called/],
    ['=WEEKS_OF_SUPPLY(1e308,1e-308)', /from 0 to 1000000000/],
    [`=NONE${'E'.repeat(5000)}(1)`, /no function called NONE/],
    ['=DATE(9999,12,31)+1', 2_958_466],
    ["'=1+1", '=1+1'],
    ['=', '='],
    ['2024-13-45', '2024-13-45'],
    ['1e999', '1e999'],
    ['__proto__', '__proto__'],
    ['<script>alert(1)</script>', '<script>alert(1)</script>'],
    ['שלום\u202e🫙', 'שלום\u202e🫙'],
  ];

  it.each(inNotes.map(([typed, shows]) => [typed.slice(0, 40), typed, shows] as const))(
    'Notes: %s',
    (_name, typed, shows) => {
      const live = open(SAVED);
      expect(live.set('snotes', 'n3', 'cb', typed).ok).toBe(true);
      const value = live.value('snotes', 'n3', 'cb');
      if (shows instanceof RegExp) {
        expect(isCellError(value) && value.message).toMatch(shows);
        expect(live.problem('snotes', 'n3', 'cb')?.message.length).toBeLessThan(610);
      } else expect(value).toEqual(shows);
      expect(changedRows(live).filter((row) => row !== 'snotes/n3')).toEqual([]);
      live.undo();
      expect(contentOf(live)).toEqual(JSON.parse(SAVED));
      expect(changedRows(live)).toEqual([]);
    },
  );

  /** In kept cells: what the problem there says. */
  const kept: readonly (readonly [place: string, typed: string | number, words: RegExp | null])[] = [
    ['shelf/l3/count', -3, /below 0/],
    ['shelf/l3/count', 1e308, /thousand million/],
    ['shelf/l3/count', '=1/0', /Division by zero/],
    ['shelf/l3/count', '=1E-300', /too small/],
    ['shelf/l3/count', '١٢', /takes a number/],
    ['shelf/l3/put_up_on', '0000-01-01', /1900/],
    ['shelf/l3/put_up_on', '+275760-09-13', /date/],
    ['shelf/l3/put_up_on', '2026-02-30', /2026-02|day|date/],
    ['shelf/l3/container', 'constructor', /no container called/],
    ['shelf/l3/way', '__proto__', /no choice/],
    ['shelf/l3/food', 'toString', /Foods/],
    ['foods/f2/crops', `a${' '.repeat(15_000)}!`, null],
    ['foods/f2/own_use', '--5', /takes a number/],
    ['foods/f2/fresh_from', '13-45', /month/],
    ['draws/new/lot', 'hasOwnProperty', null],
    ['draws/new/corrects', '__proto__', null],
    ['facts/k1/figure', 'tomato, constructor', /No plan uses a figure/],
    ['facts/k1/figure', 'tomato, toString', /No plan uses a figure/],
    ['beds/b1/crop', '__proto__', /no crop called/],
  ];

  it.each(kept.map(([place, typed, words]) => [place, String(typed).slice(0, 40), typed, words] as const))(
    '%s: %s',
    (place, _name, typed, words) => {
      const live = open(SAVED);
      const [sheet, named, column] = place.split('/') as [string, string, string];
      const row = named === 'new' ? live.insertRows(sheet, [{ food: 'rice' }]).rows[0]! : named;
      expect(live.set(sheet, row, column, typed).ok).toBe(true);
      const problems = live.columns(sheet).map(({ id }) => live.problem(sheet, row, id));
      const said = problems.map((problem) => `${problem?.message ?? ''} ${problem?.mend ?? ''}`);
      if (words) expect(said.join('\n')).toMatch(words);
      expectWhole(live);
      // What stands on the shelf of another food is as it was.
      expect([live.value('shelf', 'l1', 'left'), live.value('shelf', 'l2', 'left')]).toEqual([20, 9]);
      const again = open(JSON.stringify(live.toJSON()));
      expect(shown(again)).toEqual(shown(live));
      while (live.undo());
      expect(contentOf(live)).toEqual(JSON.parse(SAVED));
    },
  );
});
