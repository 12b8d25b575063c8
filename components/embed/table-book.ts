/** A page's own table as a book of one sheet; loaded only when a reader tries something in it. */
import { placedTree } from '../../src/book/formula/placed-tree.js';
import {
  type BookDoc,
  blankBook,
  type ColumnLook,
  isFormula,
  type NewRow,
  type Raw,
} from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { Frame } from './frame.js';
import { readColumn } from './read-column.js';
import { sheetTitle } from './sheet-title.js';
import { speakAs } from './speak-as.js';
import type { PageTable, PageTableDoc } from './written-cells.js';

const wordsOf = (cell: HTMLElement | undefined): string => cell?.textContent?.trim() ?? '';
const dayOf = (cell: HTMLElement | undefined): string | undefined =>
  cell?.querySelector('time')?.getAttribute('datetime') ?? undefined;

/** What is asked of a table besides the table itself. */
export interface TableOptions {
  /** Id of the sheet that the table becomes. */
  readonly sheet: string;
  /** Language to speak, as a BCP 47 tag. */
  readonly tag: string;
  /** Language in which its numbers are written, likewise. */
  readonly written: string;
}

interface ReadTable {
  readonly id: string;
  readonly title: string;
  readonly as: ColumnLook;
  /** By row; none where the column is worked out. */
  readonly cells: ReadonlyMap<string, Raw>;
}

/** The longest that a book takes for a column. */
const LONGEST_TITLE = 200;

/** A column that is numbers, or days, throughout is one of those; one of both words and numbers says nothing of it. */
function readOne(frame: Frame, id: string, options: TableOptions, unread: ReadonlySet<string>): ReadTable {
  const title = frame.title(id).slice(0, LONGEST_TITLE);
  const formula = frame.formula(id);
  if (formula !== undefined && !unread.has(id)) return { id, title, as: { formula }, cells: new Map() };
  const filled = frame.rows.filter((row) => wordsOf(frame.cell(row, id)) !== '');
  const days = filled.map((row) => dayOf(frame.cell(row, id)));
  if (filled.length > 0 && !days.includes(undefined) && frame.type(id) !== 'tick')
    return { id, title, as: { type: 'date' }, cells: new Map(filled.map((row, i) => [row, days[i] ?? ''])) };
  const texts = filled.map((row, i) => days[i] ?? wordsOf(frame.cell(row, id)));
  const { type, cells } =
    frame.type(id) === 'tick' ? { type: 'tick' as const, cells: texts } : readColumn(texts, options.written);
  return {
    id,
    title,
    as: type ? { type } : {},
    cells: new Map(filled.map((row, i) => [row, cells[i] ?? ''])),
  };
}

/**
 * The book as JSON text, with what the page wrote. Columns and rows keep the ids that the table gives them, or are
 * called `c1`, `r1` by where they stand; a column whose header has `data-formula` is worked out from the others,
 * called by their titles, unless that cannot be read: then it stays as it is written.
 */
export async function tableBookText(table: HTMLTableElement, options: TableOptions): Promise<string> {
  await speakAs(options.tag);
  const frame = new Frame(table);
  const asked = frame.columns.filter((id) => frame.formula(id) !== undefined);
  const unread = new Set(asked.filter((id) => !isFormula(frame.formula(id))));
  const first = bookOf(frame, options, unread);
  for (const id of asked) if (!isRead(first.sheets[options.sheet]?.columns[id]?.formula)) unread.add(id);
  for (const id of unread) warnOfFormula(frame.formula(id) ?? '');
  const doc = unread.size > 0 ? bookOf(frame, options, unread) : first;
  return JSON.stringify({ ...doc, page_table: pageTable(frame, doc, options) } satisfies PageTableDoc);
}

function bookOf(frame: Frame, options: TableOptions, unread: ReadonlySet<string>): BookDoc {
  const { sheet } = options;
  const title = wordsOf(frame.table.caption ?? undefined) || say`Table`;
  const live = openBook(blankBook(title, sheet));
  const taken = live.sheets().map((each) => each.title);
  const called = sheetTitle(title, taken);
  const columns = frame.columns.map((id) => readOne(frame, id, options, unread));
  const rows: NewRow[] = frame.rows.map((id) => ({
    id,
    cells: Object.fromEntries(
      columns.flatMap(({ id: of, cells }) => (cells.has(id) ? [[of, cells.get(id)!]] : [])),
    ),
  }));
  const done = live.apply({ do: 'add sheet', sheet, title: called, columns, rows });
  if (!done.ok) throw new Error(`${done.problem.message} ${done.problem.mend}`.trim());
  const doc = live.toJSON();
  live.close();
  return doc;
}

/** Says that a column cannot be worked out, and stays as it is written. */
const warnOfFormula = (formula: string): void =>
  console.warn(
    `<croft-embed>: data-formula="${formula}" cannot be read, so its column stays as it is written. It begins with =, and calls a column by its title with _ for each space, as in =How_many/4.`,
  );

/** Whether all names in a stored formula were found; an argument that is left out is no fault. */
const isRead = (stored: unknown): boolean =>
  isFormula(stored) && (placedTree(stored) !== undefined || /[(,]\s*[,)]/.test(stored));

function pageTable(frame: Frame, { sheets }: BookDoc, { sheet, written }: TableOptions): PageTable {
  const { rows = {}, columns = {} } = sheets[sheet] ?? {};
  const formulas = Object.entries(columns).flatMap(([id, { formula }]) => (formula ? [[id, formula]] : []));
  const texts = frame.rows.map((row) => [
    row,
    Object.fromEntries(
      frame.columns.flatMap((column) => {
        const text = wordsOf(frame.cell(row, column));
        return text === rows[row]?.cells[column] || (text === '' && frame.type(column) === 'tick')
          ? []
          : [[column, text]];
      }),
    ),
  ]);
  return {
    sheet,
    language: written,
    cells: Object.fromEntries(Object.entries(rows).map(([id, { cells }]) => [id, cells])),
    formulas: Object.fromEntries(formulas),
    texts: Object.fromEntries(texts),
  };
}
