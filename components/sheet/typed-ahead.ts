/** Gathers what is typed while something is still loading, from a first text on. */
export class TypedAhead {
  #text: string;

  constructor(text: string) {
    this.#text = text;
    window.addEventListener('keydown', this.#take, { capture: true });
  }

  /** Ends the gathering and answers all of it. */
  end(): string {
    window.removeEventListener('keydown', this.#take, { capture: true });
    return this.#text;
  }

  readonly #take = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key.length === 1) this.#text += event.key;
    else if (event.key === 'Backspace') this.#text = this.#text.slice(0, -1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
}
