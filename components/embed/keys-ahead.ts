/** Keys that end what is being written; others are written, or left to whoever has the keyboard. */
const ENDS = ['Enter', 'Tab'];

/**
 * Gathers what is pressed in an element before that which is to take it is there; also what is pressed nowhere, as
 * after a click on a button where that takes no focus.
 */
export class KeysAhead {
  readonly #host: HTMLElement;
  #keys: string[] = [];

  constructor(host: HTMLElement) {
    this.#host = host;
    document.addEventListener('keydown', this.#take, true);
  }

  /** Ends the gathering, and presses all of it again, once: text by `type`, and what ends it where the keyboard is. */
  replay(type: (text: string) => void): void {
    const keys = this.#keys;
    this.stop();
    let text = '';
    const write = (): void => {
      if (text !== '') type(text);
      text = '';
    };
    for (const key of keys) {
      if (!ENDS.includes(key)) text = key === 'Backspace' ? text.slice(0, -1) : text + key;
      else {
        write();
        press(key);
      }
    }
    write();
  }

  /** Ends the gathering, and forgets what was gathered. */
  stop(): void {
    document.removeEventListener('keydown', this.#take, true);
    this.#keys = [];
  }

  /** Before anything is written, other keys than characters are the page’s: Tab leaves, Enter presses a button. */
  #takes(key: string): boolean {
    if (this.#keys.length > 0) return key.length === 1 || key === 'Backspace' || ENDS.includes(key);
    return key.length === 1 && key !== ' ';
  }

  readonly #take = (event: KeyboardEvent): void => {
    const { key } = event;
    const path = event.composedPath();
    const nowhere = path[0] === document.body || path[0] === document.documentElement;
    if (
      !(nowhere || path.includes(this.#host)) ||
      event.ctrlKey ||
      event.metaKey ||
      event.altKey ||
      !this.#takes(key)
    )
      return;
    this.#keys.push(key);
    event.preventDefault();
    event.stopPropagation();
  };
}

/** Presses a key where the keyboard is, within shadow roots too. */
function press(key: string): void {
  let at: Element | null = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  const stroke = { key, code: key, bubbles: true, cancelable: true, composed: true };
  (at ?? document.body).dispatchEvent(new KeyboardEvent('keydown', stroke));
}
