import type { GridCell, GridView } from '../grid/grid-view.js';
import type { AddLots } from './add-lots.js';

interface AddingHost {
  /** Draws the sheet anew, as a grid, and waits until it is drawn. */
  drawn(): Promise<unknown>;
  requestUpdate(): void;
  panel(): AddLots | null;
  view(): GridView | null | undefined;
  goTo(cell: GridCell): Promise<void>;
  lastRow(): string | undefined;
}

/** The lines above the Shelf's grid to write whole lots into: whether they are open, and what comes of them. */
export class AddingLots {
  isOpen = false;
  readonly #host: AddingHost;

  constructor(host: AddingHost) {
    this.#host = host;
  }

  readonly toggle = async (): Promise<void> => {
    this.isOpen = !this.isOpen;
    await this.#host.drawn();
    const panel = this.#host.panel();
    await panel?.updateComplete;
    panel?.focus();
  };

  /** A lot was written: it is scrolled into sight. */
  readonly added = ({ detail: row }: CustomEvent<string>): void => this.#show(row);

  readonly done = async ({ detail: first }: CustomEvent<string | null>): Promise<void> => {
    this.isOpen = false;
    this.#host.requestUpdate();
    if (first === null) {
      this.#host.view()?.focus();
      return;
    }
    await this.#host.goTo({ row: first, column: 'food' });
    // The first takes the keyboard; as many as fit are seen with it.
    const last = this.#host.lastRow();
    if (last !== undefined) this.#show(last);
  };

  #show(row: string): void {
    const view = this.#host.view();
    view?.layOut();
    view?.show({ row, column: 'food' });
  }
}
