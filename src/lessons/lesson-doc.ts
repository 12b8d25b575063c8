import { type BookDoc, BookState, type Command, perform, StateLayout } from '../book/index.js';
import type { BookReading } from '../live/book-reading.js';
import { NAMING } from '../live/row-name.js';
import { say } from '../words/index.js';
import { readsColumn } from './formula-task-columns.js';
import type { FormulaTask } from './formula-tasks.js';
import { columnAsked } from './lesson-columns.js';

/** What pupils wrote: by planning column and row, as typed. */
export type Entries = Readonly<Record<string, Readonly<Record<string, string>>>>;

export interface LessonDocAsked {
  /** All of one kind of sheet. */
  readonly tasks: readonly FormulaTask[];
  readonly sheet: string;
  /** What was written before. */
  readonly entries?: Entries;
}

const WIDTH = 150;

/**
 * A copy of a book in which planning columns are blank: each is hidden, and in its place stands a column of the
 * same title to write into. Columns from which no figure comes are hidden, too. Nothing goes back to the book.
 */
export function lessonDoc(book: BookReading, asked: LessonDocAsked): BookDoc {
  const state = new BookState(book.toJSON());
  const bench = { state, layout: new StateLayout(state) };
  const { tasks, sheet, entries = {} } = asked;
  perform({ do: 'all', of: hiding(book, asked) }, bench);
  for (const task of tasks) perform({ do: 'all', of: blanking(book, sheet, task) }, bench);
  for (const [column, cells] of Object.entries(entries)) {
    for (const [row, typed] of Object.entries(cells))
      perform({ do: 'set cells', sheet, cells: [{ row, column: columnAsked(column), typed }] }, bench);
  }
  return state.toJSON();
}

function blanking(book: BookReading, sheet: string, { column }: FormulaTask): Command[] {
  const { title = column, decimals } = book.column(sheet, column) ?? {};
  return [
    { do: 'describe column', sheet, column, as: { title: say`Plan: ${title}`, hidden: true } },
    {
      do: 'add column',
      sheet,
      column: columnAsked(column),
      before: column,
      title,
      as: { width: WIDTH, decimals: decimals ?? null, note: say`To be written: a formula in each row.` },
    },
  ];
}

/** Only what names a row and what the figures come from stays in sight. */
function hiding(book: BookReading, { tasks, sheet }: LessonDocAsked): Command[] {
  const columns = book.columns(sheet);
  const kind = tasks[0]?.kind;
  const shown = new Set([
    columns[0]?.id,
    ...((kind && NAMING[kind]) ?? []).slice(0, 2),
    ...tasks.flatMap(({ from }) => from),
  ]);
  return columns.map(({ id }) => ({
    do: 'describe column',
    sheet,
    column: id,
    as: { hidden: !shown.has(id) },
  }));
}

/** Columns that show what is asked in other words: they stay hidden. */
export const tellingColumns = (
  book: BookReading,
  sheet: string,
  tasks: readonly FormulaTask[],
): ReadonlySet<string> =>
  new Set([
    ...tasks.map(({ column }) => column),
    ...book
      .columns(sheet)
      .filter(
        ({ formula }) =>
          formula !== undefined && tasks.some(({ column }) => readsColumn(book, formula, { sheet, column })),
      )
      .map(({ id }) => id),
  ]);
