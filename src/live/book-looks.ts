import { COLOURS, type Colour, colourField, noteField } from '../book/index.js';
import { BookReading } from './book-reading.js';
import { type RowGroup, rowsInGroups } from './groups.js';
import { type SummaryFigure, summaryOver } from './summary.js';

/** How an open book is looked at: colours, notes, groups and what stands under columns. */
export class BookLooks extends BookReading {
  /** The colour of a cell: that with which the person marked it, else that of its column's first rule that holds. */
  colourOf(sheet: string, row: string, column: string): Colour | undefined {
    const own = this.state.sheets.get(sheet)?.rows.get(row)?.[colourField(column)];
    return COLOURS.find((each) => each === own);
  }

  /** The person's note on a cell. */
  noteOf(sheet: string, row: string, column: string): string | undefined {
    const note = this.state.sheets.get(sheet)?.rows.get(row)?.[noteField(column)];
    return typeof note === 'string' && note !== '' ? note : undefined;
  }

  /** The column by whose values the rows are shown in groups; undefined when in none, or when it is gone. */
  groupOf(sheet: string): string | undefined {
    const found = this.state.sheets.get(sheet);
    const by = found?.rest.group;
    return typeof by === 'string' && found?.columnOrder.has(by) ? by : undefined;
  }

  /** Rows (of a view: those shown, in its order) in groups by what the group column shows; undefined when in none. */
  groupsOf(sheet: string, rows: readonly string[] = this.rowIds(sheet)): readonly RowGroup[] | undefined {
    const by = this.groupOf(sheet);
    return by === undefined ? undefined : rowsInGroups(rows, (row) => this.value(sheet, row, by));
  }

  /** What stands under a column, over these rows (of a view: those shown); undefined where nothing is to stand there. */
  summaryAt(
    sheet: string,
    column: string,
    rows: readonly string[] = this.rowIds(sheet),
  ): SummaryFigure | undefined {
    const view = this.column(sheet, column);
    if (!view?.summary) return undefined;
    return summaryOver(view.summary, view.type, rows, {
      value: (row) => this.value(sheet, row, column),
      unit: (row) => this.unit(sheet, row, column),
    });
  }
}
