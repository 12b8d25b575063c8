import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BookDoc, parseBook } from '../../src/book/index.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { openCheckCopy, readsOtherSheets } from '../../src/lessons/check-copy.js';
import { FormulaCheck } from '../../src/lessons/formula-task.js';
import { rowsOf } from '../../src/lessons/formula-task-rows.js';
import { FORMULA_TASKS, tasksNamed } from '../../src/lessons/formula-tasks.js';
import { LessonBook } from '../../src/lessons/lesson-book.js';
import { columnAsked } from '../../src/lessons/lesson-columns.js';
import { type Entries, lessonDoc } from '../../src/lessons/lesson-doc.js';
import { openWithEngine } from '../../src/live/evaluate.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

function bookOf(name: 'school-garden' | 'tamarack-bench'): BookDoc {
  const read = parseBook(readFileSync(`demo/data/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.book;
}
const GARDEN = bookOf('school-garden');

function lessonOn(live: LiveBook, ids: string, entries: Entries = {}): LessonBook {
  const tasks = tasksNamed(ids)!;
  const sheet = live.sheetOfKind(tasks[0]!.kind as 'foods')!;
  const { asOf, basis } = live.household;
  const rows = Object.fromEntries(tasks.map((task) => [task.column, rowsOf(live, task)]));
  const engine = new HyperFormulaEngine({ asOf, basis }, 'gpl-v3');
  return new LessonBook(
    lessonDoc(live, { tasks, sheet, entries }),
    { tasks, sheet, rows },
    { engine, today: () => asOf },
  );
}

const WEEKS = columnAsked('weeks_of_supply');
const shownColumns = (book: LiveBook, sheet: string): string[] =>
  book
    .columns(sheet)
    .filter(({ hidden }) => !hidden)
    .map(({ title }) => title);

describe('a copy of a book to write formulas into', () => {
  const live = openWithEngine(GARDEN);
  const before = JSON.stringify(live.toJSON());

  it('has the planning column blank in its place, and only what it takes beside it', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    expect(shownColumns(lesson, 'foods')).toEqual([
      'Food',
      'Way kept',
      'On hand',
      'Use a week',
      'Weeks of supply',
    ]);
    for (const row of lesson.rowIds('foods')) expect(lesson.value('foods', row, WEEKS)).toBeNull();
  });

  it('fills the column from the first formula, as one step that undo takes back', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    expect(lesson.set('foods', 'f02', WEEKS, '=On hand/Use a week').ok).toBe(true);
    const asked = rowsOf(live, tasksNamed('foods/weeks_of_supply')![0]!);
    expect(asked.length).toBeGreaterThan(2);
    for (const row of asked)
      expect(lesson.value('foods', row, WEEKS)).toBeCloseTo(
        live.value('foods', row, 'weeks_of_supply') as number,
        6,
      );
    expect(lesson.undo()).toBe(true);
    for (const row of asked) expect(lesson.value('foods', row, WEEKS)).toBeNull();
    expect(lesson.undoLabel).toBeUndefined();
    expect(lesson.redo()).toBe(true);
    expect(lesson.value('foods', asked[0]!, WEEKS)).toBeGreaterThan(0);
  });

  it('shifts cells called by letter and number along the rows', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    const letter = (column: string): string =>
      String.fromCharCode(65 + lesson.columns('foods').findIndex(({ id }) => id === column));
    const at = lesson.rowIds('foods').indexOf('f01') + 1;
    lesson.set('foods', 'f01', WEEKS, `=${letter('on_hand')}${at}/${letter('use_per_week')}${at}`);
    for (const row of rowsOf(live, tasksNamed('foods/weeks_of_supply')![0]!))
      expect(lesson.value('foods', row, WEEKS)).toBeCloseTo(
        live.value('foods', row, 'weeks_of_supply') as number,
        6,
      );
  });

  it('changes a row by itself once rows differ, and all of them while they are one formula', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    const [one, two, three] = rowsOf(live, tasksNamed('foods/weeks_of_supply')![0]!) as [
      string,
      string,
      string,
    ];
    lesson.set('foods', one, WEEKS, '=On hand+Use a week');
    lesson.set('foods', two, WEEKS, '=On hand/Use a week');
    expect(lesson.typed('foods', three, WEEKS)).toBe('=On_hand/Use_a_week');
    lesson.set('foods', one, WEEKS, 7);
    lesson.set('foods', two, WEEKS, '=On hand');
    expect(lesson.typed('foods', three, WEEKS)).toBe('=On_hand/Use_a_week');
  });

  it('takes nothing else: no numbers, rows or columns, and the answer stays hidden', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    const rows = lesson.rowIds('foods').length;
    for (const done of [
      lesson.set('foods', 'f01', 'own_use', 3),
      lesson.removeRows('foods', ['f01']),
      lesson.insertRows('foods', [{ food: 'Peas' }]),
      lesson.removeColumns('foods', [WEEKS]),
      lesson.apply({
        do: 'describe column',
        sheet: 'foods',
        column: 'weeks_of_supply',
        as: { hidden: false },
      }),
      lesson.apply({ do: 'rename book', title: 'Ours' }),
    ])
      expect(done.ok ? 'done' : done.problem.message).toBe(
        'In this lesson only “Weeks of supply” is written.',
      );
    expect(lesson.rowIds('foods')).toHaveLength(rows);
    const all = lesson.columns('foods').filter(({ hidden }) => hidden);
    lesson.apply({
      do: 'all',
      of: all.map(({ id }) => ({ do: 'describe column', sheet: 'foods', column: id, as: { hidden: false } })),
    });
    const shown = shownColumns(lesson, 'foods');
    expect(shown).toContain('Next harvest');
    expect(shown.filter((title) => /weeks of supply|months of supply/i.test(title))).toEqual([
      'Weeks of supply',
    ]);
  });

  it('is written again as it was from what was kept, with nothing to undo', () => {
    const lesson = lessonOn(live, 'foods/weeks_of_supply');
    lesson.set('foods', 'f01', WEEKS, '=On hand/Use a week');
    const again = lessonOn(
      live,
      'foods/weeks_of_supply',
      JSON.parse(JSON.stringify(lesson.entries)) as Entries,
    );
    expect(again.entries).toEqual(lesson.entries);
    expect(again.value('foods', 'f01', WEEKS)).toBe(lesson.value('foods', 'f01', WEEKS));
    expect(again.undoLabel).toBeUndefined();
  });

  it('never changes the book itself', () => {
    expect(JSON.stringify(live.toJSON())).toBe(before);
    expect(live.undoLabel).toBeUndefined();
  });
});

describe('cells checked each by itself', () => {
  it('are right or wrong by their own figures, over other numbers too', async () => {
    const live = openWithEngine(GARDEN);
    const [task] = tasksNamed('foods/weeks_of_supply')!;
    const [one, two, three, four] = rowsOf(live, task!) as [string, string, string, string];
    const check = new FormulaCheck(live, task!, { only: [one, two, three, four] });
    const onHand = live.value('foods', two, 'on_hand') as number;
    const use = live.value('foods', two, 'use_per_week') as number;
    const found = await check.checkCells(
      new Map([
        [one, '=[On hand]/[Use a week]'],
        [two, `=${onHand / use}`],
        [three, '=[On hand]'],
        [four, '12'],
      ]),
    );
    expect(found?.get(one)?.kind).toBe('right');
    expect(found?.get(two)).toMatchObject({
      kind: 'not always',
      message: expect.stringMatching(/^Right for this row as it stands, but not always: with On hand /),
    });
    expect(found?.get(three)).toMatchObject({
      kind: 'wrong',
      message: expect.stringMatching(/^Not yet: with /),
    });
    expect(found?.get(four)).toMatchObject({
      kind: 'unreadable',
      message: expect.stringMatching(/one number/),
    });
    check.close();
  });

  it('of two columns, the second is judged as if the first were right', async () => {
    const live = openWithEngine(GARDEN);
    const tasks = tasksNamed('beds/expected_pounds, beds/short_or_over')!;
    const lesson = lessonOn(live, 'beds/expected_pounds beds/short_or_over');
    const { asOf, basis } = live.household;
    const open = (doc: BookDoc): LiveBook =>
      openBook(doc, { engine: new HyperFormulaEngine({ asOf, basis }, 'gpl-v3'), today: () => asOf });
    const { copy } = openCheckCopy(lesson, tasks[1]!, open);
    const check = new FormulaCheck(copy, tasks[1]!, { beside: tasks });
    const rows = check.rows;
    const found = await check.checkCells(new Map(rows.map((row) => [row, '=Expected - Pounds wanted'])));
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.map((row) => found?.get(row)?.kind)).toEqual(rows.map(() => 'right'));
    const own = await check.checkCells(new Map([[rows[0]!, '=[Short or over]']]));
    expect(own?.get(rows[0]!)?.kind).toBe('own answer');
    check.close();
  });
});

describe('the copy on which formulas are checked', () => {
  const live = openWithEngine(bookOf('tamarack-bench'));
  const open = (doc: BookDoc): LiveBook => openBook(doc, { today: () => live.household.asOf });

  it.each(FORMULA_TASKS.map((task) => [task.id, task] as const))(
    '%s: has fewer rows than the book, and the same figures where they are asked about',
    (_, task) => {
      const only = rowsOf(live, task).slice(0, 12);
      const { copy, isWhole } = openCheckCopy(live, task, open, { only });
      const count = (book: LiveBook): number =>
        book.sheets().reduce((sum, { id }) => sum + book.rowIds(id).length, 0);
      expect(isWhole).toBe(false);
      expect(count(copy)).toBeLessThan(count(live));
      const sheet = live.sheetOfKind(task.kind as 'foods')!;
      for (const row of only)
        for (const column of [...task.from, task.column])
          expect(copy.value(sheet, row, column)).toEqual(live.value(sheet, row, column));
      copy.close();
    },
  );

  it('is whole for a formula that reads another sheet', () => {
    const [task] = tasksNamed('household/part_of_table')!;
    expect(readsOtherSheets(live, task!, '=[Share at the table]/SUM([Share at the table])')).toBe(false);
    expect(readsOtherSheets(live, task!, '=Shelf!A1')).toBe(true);
  });
});
