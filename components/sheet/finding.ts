import type { BookChange } from '../../src/live/live-book.js';
import type { GridCell, GridView } from '../grid/grid-view.js';
import type { FindEvents, FindRows } from './find-rows.js';

interface FindingHost {
  /** Draws the sheet anew, and waits until it is drawn. */
  drawn(): Promise<unknown>;
  line(): FindRows | null;
  view(): GridView | null | undefined;
  /** Puts the keyboard back onto the grid. */
  back(): void;
  goTo(cell: GridCell): void;
}

/** The line above a grid to find rows by their words: whether it is open, and what comes of it. */
export class Finding {
  isOpen = false;
  readonly #host: FindingHost;

  constructor(host: FindingHost) {
    this.#host = host;
  }

  /** Opens it, with the keyboard on it, or closes it and goes back to the grid. */
  readonly toggle = async (): Promise<void> => {
    this.isOpen = !this.isOpen;
    await this.#host.drawn();
    if (!this.isOpen) {
      this.#host.back();
      return;
    }
    const line = this.#host.line();
    await line?.updateComplete;
    line?.focus();
  };

  /** Rows that a filter leaves out are not looked through. */
  readonly leavesOut = (row: string): boolean => this.#host.view()?.hides(row) ?? false;

  readonly found = ({ detail: { cell, take, first } }: FindEvents['found']): void => {
    const view = this.#host.view();
    // A column that stays in place is in sight however far to the side the row before was found.
    if (view && first) view.scroll = { left: 0, top: view.scroll.top };
    view?.show(cell, 'top');
    if (take) this.#host.goTo(cell);
  };

  heed(change: BookChange): void {
    this.#host.line()?.heed(change);
  }
}
