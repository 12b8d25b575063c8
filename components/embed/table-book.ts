/** A page's own table as a book of one sheet; loaded only when a reader tries something in it. */
import {
  blankBook,
  type ColumnLook,
  type NewRow,
  readTypedNumber,
  type Typed,
} from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { Frame } from './frame.js';
import { speakAs } from './speak-as.js';

const wordsOf = (cell: HTMLElement | undefined): string => cell?.textContent?.trim() ?? '';
const dayOf = (cell: HTMLElement | undefined): string | undefined =>
  cell?.querySelector('time')?.getAttribute('datetime') ?? undefined;

/** A column that is numbers, or days, throughout is one of those; any other holds its words. */
function lookOf(frame: Frame, column: string): ColumnLook {
  const formula = frame.formula(column);
  if (formula !== undefined) return { formula };
  const cells = frame.rows.map((row) => frame.cell(row, column)).filter((cell) => wordsOf(cell) !== '');
  if (cells.length === 0) return {};
  if (frame.type(column) === 'tick') return { type: 'tick' };
  if (cells.every((cell) => dayOf(cell) !== undefined)) return { type: 'date' };
  return cells.every((cell) => readTypedNumber(wordsOf(cell)) !== undefined)
    ? { type: 'number' }
    : { type: 'text' };
}

function typedIn(frame: Frame, row: string, column: string): Typed {
  const cell = frame.cell(row, column);
  return dayOf(cell) ?? wordsOf(cell);
}

/**
 * The book as JSON text. Columns and rows keep the ids that the table gives them, or are called `c1`, `r1` by where
 * they stand; a column whose header has `data-formula` is worked out from the others, called by their titles.
 *
 * @param sheet id of the sheet that the table becomes.
 * @param tag language in which its numbers are written, as a BCP 47 tag.
 */
export async function tableBookText(table: HTMLTableElement, sheet: string, tag: string): Promise<string> {
  await speakAs(tag);
  const frame = new Frame(table);
  const title = wordsOf(table.caption ?? undefined) || say`Table`;
  const live = openBook(blankBook(title, sheet));
  const columns = frame.columns.map((id) => ({ id, title: frame.title(id), as: lookOf(frame, id) }));
  const written = columns.filter(({ as }) => as.formula === undefined);
  const rows: NewRow[] = frame.rows.map((id) => ({
    id,
    cells: Object.fromEntries(written.map((column) => [column.id, typedIn(frame, id, column.id)])),
  }));
  const done = live.apply({ do: 'add sheet', sheet, title, columns, rows });
  if (!done.ok) throw new Error(`${done.problem.message} ${done.problem.mend}`.trim());
  const text = JSON.stringify(live.toJSON());
  live.close();
  return text;
}
