import type { Command, Outcome, Typed } from '../book/index.js';
import { newId } from '../book/index.js';
import { BookLooks } from './book-looks.js';

/** The commands of everyday, each by a name of its own. */
export abstract class BookEditing extends BookLooks {
  /** Does what a command says, or refuses with the reason and changes nothing. */
  abstract apply(command: Command): Outcome;

  /** One cell, as typed. */
  set(sheet: string, row: string, column: string, typed: Typed): Outcome {
    return this.apply({ do: 'set cells', sheet, cells: [{ row, column, typed }] });
  }

  /** New rows before `before` (null: at the end), with their ids. */
  insertRows(
    sheet: string,
    rows: readonly { readonly [column: string]: Typed }[],
    before: string | null = null,
  ): Outcome & { rows: readonly string[] } {
    const made = rows.map((cells) => ({ id: newId('r'), cells }));
    return {
      ...this.apply({ do: 'insert rows', sheet, before, rows: made }),
      rows: made.map(({ id }) => id),
    };
  }

  removeRows(sheet: string, rows: readonly string[]): Outcome {
    return this.apply({ do: 'remove rows', sheet, rows });
  }

  moveRows(sheet: string, rows: readonly string[], before: string | null): Outcome {
    return this.apply({ do: 'move rows', sheet, rows, before });
  }

  addColumn(
    sheet: string,
    title: string,
    { before = null, formula }: { before?: string | null; formula?: string } = {},
  ): Outcome & { column: string } {
    const column = newId('c');
    return {
      ...this.apply({
        do: 'add column',
        sheet,
        column,
        before,
        title,
        ...(formula !== undefined && { formula }),
      }),
      column,
    };
  }

  removeColumns(sheet: string, columns: readonly string[]): Outcome {
    return this.apply({ do: 'remove columns', sheet, columns });
  }

  moveColumns(sheet: string, columns: readonly string[], before: string | null): Outcome {
    return this.apply({ do: 'move columns', sheet, columns, before });
  }
}
