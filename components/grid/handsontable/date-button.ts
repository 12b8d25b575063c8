import { say } from '../../../src/words/index.js';

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** A button beside an open editor that opens the browser's own date picker. */
export class DateButton {
  readonly #field: HTMLTextAreaElement;
  readonly #button: HTMLButtonElement;
  readonly #input: HTMLInputElement;

  private constructor(field: HTMLTextAreaElement, home: HTMLElement, picked: (iso: string) => void) {
    const { ownerDocument: document } = field;
    this.#field = field;
    this.#button = document.createElement('button');
    this.#button.type = 'button';
    this.#button.className = 'croft-date-button';
    this.#button.tabIndex = -1;
    this.#button.setAttribute('aria-label', say`Choose a date`);
    this.#input = document.createElement('input');
    this.#input.type = 'date';
    this.#input.className = 'croft-date-input';
    this.#input.tabIndex = -1;
    this.#input.setAttribute('aria-hidden', 'true');
    // The editor keeps the keyboard, and the press stays inside the grid.
    this.#button.addEventListener('mousedown', (event) => {
      event.preventDefault();
      event.stopPropagation();
    });
    this.#button.addEventListener('click', () => this.open());
    this.#input.addEventListener('change', () => {
      if (this.#input.value !== '') picked(this.#input.value);
    });
    home.append(this.#button, this.#input);
  }

  static beside(field: HTMLTextAreaElement, home: HTMLElement, picked: (iso: string) => void): DateButton {
    return new DateButton(field, home, picked);
  }

  open(): void {
    const { value } = this.#field;
    this.#input.value = ISO_DAY.test(value) ? value : '';
    try {
      this.#input.showPicker();
    } catch {
      // Only after a press or key of the person's own may a picker open; typing works all the same.
    }
  }

  remove(): void {
    this.#button.remove();
    this.#input.remove();
  }
}
