import type { GridCell } from '../grid/grid-view.js';
import { cellAt } from './cell-at.js';
import type { ReadingView } from './reading-view.js';

const PAGE = 10;

/** An arrow to the left or right as the one that leads the same way in a table read from left to right. */
const withDirection = (key: string, view: HTMLElement): string =>
  /^Arrow(Left|Right)$/.test(key) && getComputedStyle(view).direction === 'rtl'
    ? key === 'ArrowLeft'
      ? 'ArrowRight'
      : 'ArrowLeft'
    : key;

/** Moving about the reading view by keys: one cell takes Tab, the arrow keys go on from it. */
export class ArrowKeys {
  readonly #view: ReadingView;
  #cell: GridCell | null = null;

  constructor(view: ReadingView) {
    this.#view = view;
  }

  /** The cell that takes Tab: where the reader last was, else the first. */
  at(rows: readonly string[], columns: readonly string[]): GridCell | null {
    const { row, column } = this.#cell ?? {};
    const [firstRow, firstColumn] = [rows[0], columns[0]];
    if (firstRow === undefined || firstColumn === undefined) return null;
    return {
      row: row !== undefined && rows.includes(row) ? row : firstRow,
      column: column !== undefined && columns.includes(column) ? column : firstColumn,
    };
  }

  /** Without moving the keyboard, which a click has put there already. */
  stay(cell: GridCell): void {
    this.#cell = cell;
    this.#view.requestUpdate();
  }

  elementOf({ row, column }: GridCell): HTMLElement | null {
    return this.#view.renderRoot.querySelector(
      `[data-row="${CSS.escape(row)}"][data-column="${CSS.escape(column)}"]`,
    );
  }

  async moveTo(cell: GridCell): Promise<void> {
    this.stay(cell);
    await this.#view.updateComplete;
    const at = this.elementOf(cell);
    (at?.querySelector<HTMLElement>('button') ?? at)?.focus();
    at?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  readonly pressed = (event: KeyboardEvent): void => {
    const cell = cellAt(event.target as HTMLElement);
    if (!cell || event.altKey || event.defaultPrevented) return;
    const to = this.#target(event, cell);
    if (to) {
      event.preventDefault();
      void this.moveTo(to);
      return;
    }
    if (!this.#view.editable || event.ctrlKey || event.metaKey) return;
    const onFigure = (event.target as HTMLElement).localName === 'button';
    const typed = event.key.length === 1 && !(onFigure && event.key === ' ') ? event.key : null;
    if (typed !== null || event.key === 'F2' || (event.key === 'Enter' && !onFigure)) {
      event.preventDefault();
      this.#view.editFrom(cell, typed);
    }
  };

  #target(event: KeyboardEvent, { row, column }: GridCell): GridCell | null {
    const { shownRows: rows, shownColumns: columns } = this.#view;
    const at = { row: rows.indexOf(row), column: columns.indexOf(column) };
    const last = { row: rows.length - 1, column: columns.length - 1 };
    const jump = event.ctrlKey || event.metaKey;
    // The arrow's way on the screen, not the book's: in a table from right to left the next column is to the left.
    switch (withDirection(event.key, this.#view)) {
      case 'ArrowDown':
        at.row = jump ? last.row : at.row + 1;
        break;
      case 'ArrowUp':
        at.row = jump ? 0 : at.row - 1;
        break;
      case 'ArrowRight':
        at.column = jump ? last.column : at.column + 1;
        break;
      case 'ArrowLeft':
        at.column = jump ? 0 : at.column - 1;
        break;
      case 'PageDown':
        at.row += PAGE;
        break;
      case 'PageUp':
        at.row -= PAGE;
        break;
      case 'Home':
        at.column = 0;
        if (jump) at.row = 0;
        break;
      case 'End':
        at.column = last.column;
        if (jump) at.row = last.row;
        break;
      default:
        return null;
    }
    const within = (n: number, most: number) => Math.min(Math.max(n, 0), most);
    return { row: rows[within(at.row, last.row)]!, column: columns[within(at.column, last.column)]! };
  }
}
