import { customElement } from 'lit/decorators.js';
import { CroftBook } from '../book/croft-book.js';

/** What an element inside of `<croft-what-if>` takes for its book: a copy in which values are tried. */
export interface BookGiver extends HTMLElement {
  readonly bookInside: CroftBook;
}

/** A copy of a book that is open beside it, and kept nowhere. */
@customElement('croft-book-copy')
export class BookCopy extends CroftBook {
  /** The book that it is a copy of: undo belongs there. */
  original: CroftBook | null = null;
  /** Formulas are worked out; without it their cells stay as they are when no engine is there. */
  followsFormulas = false;

  override undo(): boolean {
    return this.original?.undo() ?? false;
  }

  override redo(): boolean {
    return this.original?.redo() ?? false;
  }

  override ensureEngine(): Promise<void> {
    return this.followsFormulas ? super.ensureEngine() : Promise.resolve();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-book-copy': BookCopy;
  }
}
