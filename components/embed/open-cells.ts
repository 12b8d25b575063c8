import { selectWhole } from '../look/select-whole.js';
import { make } from './draw-table.js';
import type { Frame } from './frame.js';

/** What an open cell needs of the element around it. */
export interface OpenCellsHost {
  /** What editing the cell begins with; null where it is not known yet, so that what is shown is edited. */
  typed(row: string, column: string): string | null;
  /** The reader is about to try something; in this cell, where the keyboard is in one. */
  near(row?: string, column?: string): void;
  /** The reader wrote something else into a cell. */
  wrote(row: string, column: string, text: string): void;
}

const isTick = ({ type }: HTMLInputElement): boolean => type === 'checkbox';

/** So many rows, a screen of them, have their fields from the start; others get theirs once the page is painted. */
const ROWS_AT_ONCE = 40;

const afterPaint = (then: () => void): void => {
  requestAnimationFrame(() => setTimeout(then));
};

type CellToOpen = ReturnType<Frame['open']>[number];

interface OpenCell {
  readonly row: string;
  readonly column: string;
  readonly input: HTMLInputElement;
  /** As shown while nobody edits it. */
  shown: string;
}

/** The cells of a table that readers may write into: native fields that read as the table's own text. */
export class OpenCells {
  readonly #cells = new Map<HTMLInputElement, OpenCell>();
  readonly #frame: Frame;
  readonly #host: OpenCellsHost;
  /** Open cells that show their text still, and become fields after the first paint. */
  #ahead: readonly CellToOpen[];

  constructor(frame: Frame, also: readonly string[], host: OpenCellsHost) {
    this.#frame = frame;
    this.#host = host;
    const all = frame.open(also);
    const first = new Set(frame.rows.slice(0, ROWS_AT_ONCE));
    for (const each of all) if (first.has(each.row)) this.#fill(each);
    this.#ahead = all.filter(({ row }) => !first.has(row));
    for (const { cell } of this.#ahead) cell.classList.add('open', 'ahead');
    if (this.#ahead.length > 0) afterPaint(() => this.#fillAhead());
    const { table } = frame;
    table.addEventListener('click', this.#beside);
    table.addEventListener('pointerover', (event) => this.#at(event.target) && host.near());
    table.addEventListener('focusin', this.#focused);
    table.addEventListener('focusout', this.#left);
    table.addEventListener('change', this.#changed);
    table.addEventListener('keydown', this.#key);
  }

  get size(): number {
    return this.#cells.size + this.#ahead.length;
  }

  /** Shows another text in an open cell; answers false where the cell is none. What is being typed stays. */
  show(row: string, column: string, text: string): boolean {
    this.#fillAhead();
    const input = this.#frame.cell(row, column)?.querySelector('input');
    const cell = input && this.#cells.get(input);
    if (!cell) return false;
    cell.shown = text;
    if (isTick(input)) input.checked = text !== '';
    else {
      if (input !== this.#focusedInput()) input.value = text;
      input.size = Math.max(3, text.length);
    }
    return true;
  }

  /** Puts the keyboard into a cell again, where it was in one that is drawn anew. */
  focus(row: string, column: string): void {
    this.#fillAhead();
    this.#frame.cell(row, column)?.querySelector('input')?.focus({ preventScroll: true });
  }

  /** The cell that the keyboard is in. */
  get focused(): { readonly row: string; readonly column: string } | null {
    const input = this.#focusedInput();
    return (input instanceof HTMLInputElement && this.#cells.get(input)) || null;
  }

  /** Marks a cell whose content cannot be read, or no longer. */
  complain(row: string, column: string, wrong: boolean): void {
    const input = this.#frame.cell(row, column)?.querySelector('input');
    if (wrong) input?.setAttribute('aria-invalid', 'true');
    else input?.removeAttribute('aria-invalid');
  }

  #fillAhead(): void {
    const ahead = this.#ahead;
    this.#ahead = [];
    for (const each of ahead) {
      each.cell.classList.remove('ahead');
      this.#fill(each);
    }
  }

  #fill({ row, column, cell }: CellToOpen): void {
    const shown = cell.textContent?.trim() ?? '';
    const type = this.#frame.type(column);
    const input = make('input', '', {
      type: type === 'tick' ? 'checkbox' : 'text',
      autocomplete: 'off',
      'aria-label': `${this.#frame.title(column)}, ${this.#frame.rowTitle(row)}`,
      inputmode: type === 'number' ? 'decimal' : undefined,
    });
    cell.classList.add('open');
    if (isTick(input)) {
      input.checked = shown !== '';
      // The whole cell is there to be hit.
      const around = make('label');
      around.append(input);
      cell.replaceChildren(around);
    } else {
      input.value = shown;
      input.size = Math.max(3, shown.length);
      cell.replaceChildren(input);
    }
    this.#cells.set(input, { row, column, input, shown });
  }

  #at(target: EventTarget | null): OpenCell | undefined {
    return target instanceof HTMLInputElement ? this.#cells.get(target) : undefined;
  }

  #focusedInput(): Element | null {
    const root = this.#frame.table.getRootNode();
    return root instanceof ShadowRoot ? root.activeElement : document.activeElement;
  }

  /** A cell may be higher than its field, where another one of its row takes more lines. */
  readonly #beside = ({ target }: Event): void => {
    if (target instanceof HTMLTableCellElement) target.querySelector<HTMLElement>(':scope > input')?.focus();
  };

  readonly #focused = (event: Event): void => {
    const cell = this.#at(event.target);
    if (!cell) return;
    this.#fillAhead();
    this.#host.near(cell.row, cell.column);
    if (isTick(cell.input)) return;
    const typed = this.#host.typed(cell.row, cell.column);
    if (typed !== null && cell.input.value === cell.shown) cell.input.value = typed;
    selectWhole(cell.input);
  };

  readonly #left = (event: Event): void => {
    const cell = this.#at(event.target);
    // Nothing was written: what is shown comes back. What was written stays until the figures have followed.
    if (!cell || isTick(cell.input)) return;
    if (cell.input.value === this.#host.typed(cell.row, cell.column)) cell.input.value = cell.shown;
  };

  readonly #changed = (event: Event): void => {
    const cell = this.#at(event.target);
    if (!cell) return;
    const { row, column, input } = cell;
    this.#host.wrote(row, column, isTick(input) ? (input.checked ? 'yes' : '') : input.value);
  };

  readonly #key = (event: KeyboardEvent): void => {
    const cell = this.#at(event.target);
    if (!cell || event.isComposing) return;
    if (event.key === 'Escape' && !isTick(cell.input)) {
      const before = this.#host.typed(cell.row, cell.column) ?? cell.shown;
      // Where nothing was written it is not for us.
      if (![before, cell.shown].includes(cell.input.value)) event.preventDefault();
      cell.input.value = before;
      selectWhole(cell.input);
      return;
    }
    const by = { ArrowDown: 1, Enter: event.shiftKey ? -1 : 1, ArrowUp: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const column = [...this.#cells.values()].filter((each) => each.column === cell.column);
    const next = column[column.indexOf(cell) + by];
    if (next) next.input.focus();
    else if (event.key === 'Enter') cell.input.blur();
  };
}
