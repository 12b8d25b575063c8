import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseBook } from '../../src/book/index.js';
import { isCellError, type LiveBook, openBook } from '../../src/core.js';
import { type FormulaLine, formulaLines } from '../../src/live/doings/formula-lines.js';
import { mendReferences, mendsFor } from '../../src/live/doings/mend-references.js';
import { AS_OF, startingBook } from '../support/random-book.js';

let live: LiveBook;
const NOTES = 'snotes';

beforeEach(() => {
  live = startingBook();
  live.apply({ do: 'add column', sheet: NOTES, column: 'cprice', before: null, title: 'Price' });
  live.apply({ do: 'add column', sheet: NOTES, column: 'cper', before: null, title: 'Price per jar' });
  live.apply({
    do: 'set cells',
    sheet: NOTES,
    cells: [
      { row: 'n1', column: 'cprice', typed: 3 },
      { row: 'n1', column: 'cper', typed: 4 },
      { row: 'n2', column: 'cper', typed: 5 },
    ],
  });
  live.apply({
    do: 'add column',
    sheet: NOTES,
    column: 'cworth',
    before: null,
    title: 'Worth',
    formula: '=Price*A',
  });
});
afterEach(() => live.close());

const message = (row: string, column: string, sheet = NOTES): string => {
  const shown = live.value(sheet, row, column);
  return isCellError(shown) ? `${shown.error} ${shown.message}` : `no error but ${shown}`;
};
const lineAt = (sheet: string, column: string, row?: string): FormulaLine =>
  formulaLines(live).find(
    (line) =>
      line.sheet === sheet && line.column === column && (row === undefined || line.rows.includes(row)),
  )!;

describe('a formula that misses something', () => {
  it('names the column that is gone, also after the book was saved and opened again', () => {
    live.removeColumns(NOTES, ['cprice']);
    expect(message('n1', 'cworth')).toMatch(/^#REF! The formula uses the column “Price”/);
    const parsed = parseBook(JSON.stringify(live.toJSON()));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    live.close();
    live = openBook(parsed.book, { asOf: AS_OF });
    expect(message('n1', 'cworth')).toContain('the column “Price”');
  });

  it('names the row and the sheet that are gone, with what they were called', () => {
    live.set(NOTES, 'n3', 'ca', 'Carrots');
    live.set(NOTES, 'n1', 'cb', '=A3');
    live.removeRows(NOTES, ['n3']);
    expect(message('n1', 'cb')).toContain('uses row 3 (Carrots)');
    live.set('shelf', 'l1', 'cown', '=SUM(Notes!A)');
    live.apply({ do: 'remove sheet', sheet: NOTES });
    expect(message('l1', 'cown', 'shelf')).toContain('the sheet “Notes”');
    live.undo();
    expect(live.value('shelf', 'l1', 'cown')).toBe(3);
  });

  it('keeps no names of what nothing refers to, and none after undo', () => {
    live.removeColumns(NOTES, ['cper']);
    expect(live.toJSON().sheets[NOTES]).not.toHaveProperty('gone');
    live.removeColumns(NOTES, ['cprice']);
    expect(live.toJSON().sheets[NOTES]).toHaveProperty('gone');
    live.undo();
    expect(live.toJSON().sheets[NOTES]).not.toHaveProperty('gone');
    expect(live.value(NOTES, 'n1', 'cworth')).toBe(3);
  });

  it('says so where only something that it uses is broken', () => {
    live.set(NOTES, 'n2', 'cb', '=E1');
    live.removeColumns(NOTES, ['cprice']);
    expect(message('n2', 'cb')).toBe('#REF! Something that the formula uses shows #REF!. Mend it there.');
  });

  it('suggests a column, a sheet or a function for a name that there is not', () => {
    live.set(NOTES, 'n1', 'cb', '=Wort*2');
    expect(message('n1', 'cb')).toMatch(/^#NAME\? “Wort” is neither .* Did you mean “Worth”\?/);
    live.set(NOTES, 'n1', 'cb', '=SUM(Shelf!Lefft)');
    expect(message('n1', 'cb')).toMatch(/^#NAME\? “Lefft” is no column of “Shelf”. Did you mean “Left”\?/);
    live.set(NOTES, 'n1', 'cb', '=Shelv!A1');
    expect(message('n1', 'cb')).toMatch(/^#REF! There is no sheet called “Shelv”. Did you mean “Shelf”\?/);
    live.set(NOTES, 'n1', 'cb', '=SUMM(A1)');
    expect(message('n1', 'cb')).toContain('did you mean SUM?');
    live.set(NOTES, 'n1', 'cb', '=Qqqqqq*2');
    expect(message('n1', 'cb')).not.toContain('Did you mean');
  });
});

describe('mending', () => {
  it('puts a likely column in the place of one that is gone, in every formula that misses it, as one step', () => {
    live.set(NOTES, 'n2', 'cb', '=C1+SUM(C:C)');
    live.set('shelf', 'l1', 'cown', '=SUM(Notes!Price)');
    live.removeColumns(NOTES, ['cprice']);
    const before = JSON.stringify(live.toJSON());
    const [offer, ...more] = mendsFor(live, lineAt(NOTES, 'cworth'));
    expect(more).toEqual([]);
    expect(offer).toMatchObject({ words: 'the column “Price”', formulas: 3 });
    expect(offer!.likely.map(({ label }) => label)).toEqual(['Price per jar']);
    const done = live.apply(mendReferences(live, offer!, offer!.likely[0]!.id, null));
    expect(done.ok).toBe(true);
    expect(live.value(NOTES, 'n1', 'cworth')).toBe(4);
    expect(live.value(NOTES, 'n2', 'cb')).toBe(13);
    expect(live.value('shelf', 'l1', 'cown')).toBe(9);
    expect(live.undoLabel).toBe('another in place of the column “Price”');
    live.undo();
    expect(JSON.stringify(live.toJSON())).toBe(before);
  });

  it('mends one formula alone', () => {
    live.set('shelf', 'l1', 'cown', '=SUM(Notes!Price)');
    live.removeColumns(NOTES, ['cprice']);
    const line = lineAt(NOTES, 'cworth');
    const [offer] = mendsFor(live, line);
    live.apply(mendReferences(live, offer!, 'cper', line));
    expect(live.value(NOTES, 'n1', 'cworth')).toBe(4);
    expect(message('l1', 'cown', 'shelf')).toContain('#REF!');
  });

  it('puts another row, and another sheet with columns of the same titles, in their places', () => {
    live.set(NOTES, 'n1', 'cb', '=A2*100');
    live.removeRows(NOTES, ['n2']);
    const row = lineAt(NOTES, 'cb', 'n1');
    live.apply(mendReferences(live, mendsFor(live, row)[0]!, 'n3', row));
    expect(live.value(NOTES, 'n1', 'cb')).toBe(300);

    live.set('shelf', 'l1', 'cown', '=Notes!A1+SUM(Notes!A)');
    live.apply({
      do: 'add sheet',
      sheet: 'sother',
      title: 'Other notes',
      columns: [
        { id: 'zz', title: 'Z' },
        { id: 'za', title: 'A' },
      ],
      rows: [{ id: 'o1', cells: { za: 7 } }],
    });
    live.apply({ do: 'remove sheet', sheet: NOTES });
    const line = lineAt('shelf', 'cown', 'l1');
    const [offer] = mendsFor(live, line);
    expect(offer!.likely.map(({ label }) => label)).toEqual(['Other notes']);
    live.apply(mendReferences(live, offer!, 'sother', line));
    expect(live.typed('shelf', 'l1', 'cown')).toBe("='Other notes'!B1+SUM('Other notes'!A)");
    expect(live.value('shelf', 'l1', 'cown')).toBe(14);
  });

  it('corrects a name, the title of a sheet and a function', () => {
    for (const [typed, id, value] of [
      ['=Wort*2', 'cworth', 6],
      ['=SUM(Shelv!Put_up)', 'shelf', 59],
      ['=SUMM(A1,A2)', 'SUM', 3],
      ['=SUM(Notes!Prise)', 'cprice', 3],
    ] as const) {
      live.set(NOTES, 'n1', 'cb', typed);
      const line = lineAt(NOTES, 'cb', 'n1');
      const [offer] = mendsFor(live, line, true);
      expect([typed, offer!.likely.some((each) => each.id === id)]).toEqual([typed, true]);
      live.apply(mendReferences(live, offer!, id, line));
      expect([typed, live.value(NOTES, 'n1', 'cb')]).toEqual([typed, value]);
    }
  });
});
