import { make } from './draw-table.js';

export interface Tool {
  readonly label: string;
  /** What it does, in a sentence. */
  readonly title: string;
  run(): void;
  /** Called when someone seems about to choose it. */
  near?(): void;
}

/** The line under the table: the day of the figures, what is to be said, and what can be done. */
export class Bar {
  readonly element = make('div', '', { class: 'bar', part: 'bar' });
  readonly #words = make('p', '', { class: 'words', role: 'status' });
  readonly #tools = make('span', '', { class: 'tools' });

  constructor(day: Element | null) {
    if (day) this.element.append(day);
    this.element.append(this.#words, this.#tools);
  }

  say(words: string, wrong = false): void {
    this.#words.classList.toggle('problem', wrong);
    if (this.#words.textContent !== words) this.#words.textContent = words;
  }

  offer(tools: readonly Tool[]): void {
    // Buttons that stay keep the keyboard where it is.
    const there = new Map([...this.#tools.children].map((each) => [each.textContent, each]));
    const buttons = tools.map(({ label, title, run, near }) => {
      const button = there.get(label) ?? make('button', label, { type: 'button', title });
      const on = button as HTMLButtonElement;
      on.onclick = run;
      on.onpointerenter = on.onfocus = near ?? null;
      return button;
    });
    const same = buttons.length === this.#tools.children.length && buttons.every((b) => b.isConnected);
    if (!same) this.#tools.replaceChildren(...buttons);
  }

  busy(label: string, busy: boolean): void {
    for (const each of this.#tools.children)
      if (each.textContent === label) each.setAttribute('aria-busy', String(busy));
  }
}
