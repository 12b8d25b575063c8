import {
  type CellAddress,
  type Change,
  COLOURS,
  type Colour,
  colourField,
  noteField,
} from '../book/index.js';
import { findMeasure } from '../units/index.js';
import { BookReading } from './book-reading.js';
import { choiceShown, textShown } from './choice-words.js';
import { countedInColumn } from './counted-in.js';
import { Doubles } from './doubles.js';
import { type RowGroup, rowsInGroups } from './groups.js';
import { hangsOnTheDay, holds } from './marking.js';
import { type SummaryFigure, summaryOver } from './summary.js';

/** How an open book is looked at: colours, notes, groups and what stands under columns. */
export class BookLooks extends BookReading {
  readonly #doubles = new Doubles(
    (sheet, row, column) => this.value(sheet, row, column),
    (sheet) => this.rowIds(sheet),
  );
  #today = this.day;

  /** The colour of a cell: that with which the person marked it, else that of its column's first rule that holds. */
  colourOf(sheet: string, row: string, column: string): Colour | undefined {
    const own = this.state.sheets.get(sheet)?.rows.get(row)?.[colourField(column)];
    const said = COLOURS.find((each) => each === own);
    if (said) return said;
    const view = this.column(sheet, column);
    if (!view || view.markings.length === 0) return undefined;
    const value = this.value(sheet, row, column);
    return view.markings.find((rule) =>
      holds(rule, value, {
        today: this.day,
        isDouble: (shown) => this.#doubles.isDouble(sheet, column, shown),
        shown: (text) => textShown(text, view),
      }),
    )?.colour;
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
    if (by === undefined) return undefined;
    const declaration = this.column(sheet, by)?.declaration;
    return rowsInGroups(
      rows,
      (row) => this.value(sheet, row, by),
      (text) => choiceShown(text, declaration),
    );
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
      unit: (row) => this.#countedIn(sheet, row, column),
    });
  }

  /** What an amount is counted in: by its plan, or by the column beside it that says so. */
  #countedIn(sheet: string, row: string, column: string): string | undefined {
    const by = countedInColumn(this.state.sheets.get(sheet)?.kind, column);
    const said = by === undefined ? null : this.value(sheet, row, by);
    if (typeof said === 'string' && said.trim() !== '') return measureId(said) ?? said.trim().toLowerCase();
    return this.unit(sheet, row, column);
  }

  /** To be called after every change: cells that look another way though what they show is the same. */
  protected lookedAnew(changes: readonly Change[], shown: readonly CellAddress[]): CellAddress[] {
    const touched = new Set(shown.map(({ sheet, column }) => `${sheet}/${column}`));
    // Rows, columns and sheets that came or went.
    for (const { path } of changes) if (path.length !== 6 && path.length !== 5) touched.add(path[1] ?? '');
    const cells = changes.flatMap(({ path: [head, sheet, part, row, field] }) => {
      const column = /^(?:note|colour):(.+)$/.exec(field ?? '')?.[1];
      return head === 'sheets' && part === 'rows' && column !== undefined
        ? [{ sheet: sheet!, row: row!, column }]
        : [];
    });
    const { day } = this;
    if (this.#today !== day) cells.push(...this.#cellsByDay());
    this.#today = day;
    const isAsked = (sheet: string, column: string): boolean =>
      this.column(sheet, column)?.markings.some(({ when }) => when === 'double') ?? false;
    const isTouched = (sheet: string, column: string): boolean =>
      touched.has(sheet) || touched.has(`${sheet}/${column}`);
    return [...cells, ...this.#doubles.forget(isTouched, isAsked)];
  }

  /** Cells whose colour hangs on what day it is. */
  #cellsByDay(): CellAddress[] {
    return this.sheets().flatMap(({ id: sheet }) =>
      this.columns(sheet)
        .filter(({ markings }) => markings.some((rule) => hangsOnTheDay(rule)))
        .flatMap(({ id: column }) => this.rowIds(sheet).map((row) => ({ sheet, row, column }))),
    );
  }
}

const measureId = (name: string): string | undefined => {
  const found = findMeasure(name);
  if (!found.ok) return undefined;
  return found.value.kind === 'unit' ? found.value.unit.id : found.value.container.id;
};
