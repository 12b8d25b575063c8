import type { BookDoc } from '../../src/book/types.js';
import type { FirstColumn, FirstTable } from '../grid/first/first-table.js';
import type { Frame } from './frame.js';
import { HERE, say, typedText } from './said.js';

type SheetDoc = BookDoc['sheets'][string];

/** A sheet of a book that has not been opened, by its id, its kind or its title. */
export function sheetIn(doc: BookDoc, called: string): [id: string, sheet: SheetDoc] | undefined {
  const all = Object.entries(doc.sheets);
  const lower = called.toLowerCase();
  return (
    all.find(([id]) => id === called) ??
    all.find(([, { kind }]) => kind === lower) ??
    all.find(([, { title }]) => title.toLowerCase() === lower)
  );
}

/**
 * The table as a grid may show it at once; undefined where the grid would look another way than the table:
 * where it would have other rows, have them in groups, or figures under its columns.
 */
export function firstTable(frame: Frame, { rows, columns, ...rest }: SheetDoc): FirstTable | undefined {
  const ids = frame.rows;
  const same = ids.length === Object.keys(rows).length && ids.every((id) => Object.hasOwn(rows, id));
  const plain = !('group' in rest) && Object.values(columns).every((column) => !('summary' in column));
  if (!same || !plain || ids.length === 0 || frame.columns.length === 0) return undefined;
  return {
    label: frame.table.caption?.textContent?.trim() ?? '',
    columns: frame.columns.map((id) => columnOf(frame, id)),
    rows: ids,
    text: (row, column) => textOf(frame.cell(row, column)),
    typed: (row, column) => typedText(rows[row]?.cells[column] ?? ''),
  };
}

function columnOf(frame: Frame, id: string): FirstColumn {
  const header = frame.table.tHead?.querySelector<HTMLElement>(`[data-column="${CSS.escape(id)}"]`);
  return {
    id,
    title: frame.title(id),
    unit: header?.querySelector('small')?.textContent?.trim() ?? '',
    type: frame.type(id),
    planning: header?.dataset.planning !== undefined,
  };
}

/** What a cell shows; of one that readers may write into, what stands in its field. */
function textOf(cell: HTMLElement | undefined): string {
  const field = cell?.querySelector('input');
  if (!field) return cell?.textContent?.trim() ?? '';
  if (field.type === 'checkbox') return field.checked ? say`yes${HERE}` : '';
  return field.value;
}
