import { make } from './draw-table.js';

export interface Tool {
  readonly label: string;
  /** What it does, in a sentence. */
  readonly title: string;
  run(): void;
  /** Called when someone seems about to choose it. */
  near?(): void;
}

/** A pointer that is let go of within so many pixels of where it pressed has not moved. */
const STILL = 8;

/** The line under the table: the day of the figures, what is to be said, and what can be done. */
export class Bar {
  readonly element = make('div', '', { class: 'bar', part: 'bar' });
  readonly #words = make('p', '', { class: 'words', role: 'status' });
  /** Only on paper, where what is said and offered stays off. */
  readonly #paper = make('p', '', { class: 'paper' });
  readonly #tools = make('span', '', { class: 'tools' });
  #isPressed = false;
  readonly #held = new Map<string, () => void>();

  constructor(day: Element | null) {
    if (day) this.element.append(day);
    this.element.append(this.#words, this.#paper, this.#tools);
    this.#tools.addEventListener('pointerdown', this.#pressed);
  }

  /**
   * To press here ends the writing in a cell, and what is said and offered changes with it. None of it does before
   * the button is let go of: it would not be there, or another would, and nothing would come of the press. What is
   * above may grow meanwhile, and move the button from under the pointer: it was pressed all the same.
   */
  readonly #pressed = ({ target, clientX, clientY }: PointerEvent): void => {
    if (this.#isPressed) return;
    this.#isPressed = true;
    const end = new AbortController();
    const { signal } = end;
    const released = (event: PointerEvent): void => {
      end.abort();
      const isStill = Math.hypot(event.clientX - clientX, event.clientY - clientY) < STILL;
      const isMissed = isStill && target !== null && !event.composedPath().includes(target);
      if (event.type === 'pointerup' && isMissed) (target as HTMLElement).click();
      // After the click.
      setTimeout(() => {
        this.#isPressed = false;
        const held = [...this.#held.values()];
        this.#held.clear();
        for (const change of held) change();
      });
    };
    for (const type of ['pointerup', 'pointercancel'] as const)
      addEventListener(type, released, { signal, capture: true });
  };

  #change(what: string, change: () => void): void {
    if (this.#isPressed) this.#held.set(what, change);
    else change();
  }

  say(words: string, wrong = false): void {
    this.#change('words', () => this.#sayNow(words, wrong));
  }

  #sayNow(words: string, wrong: boolean): void {
    this.#words.classList.toggle('problem', wrong);
    if (this.#words.textContent !== words) this.#words.textContent = words;
  }

  /** What is said of the table on paper; nothing where it is empty. */
  sayOnPaper(words: string): void {
    this.#paper.textContent = words;
  }

  offer(tools: readonly Tool[]): void {
    this.#change('tools', () => this.#offerNow(tools));
  }

  #offerNow(tools: readonly Tool[]): void {
    const there = new Map([...this.#tools.children].map((each) => [each.textContent, each]));
    const buttons = tools.map(({ label, title, run, near }) => {
      const button = there.get(label) ?? make('button', label, { type: 'button', title });
      const on = button as HTMLButtonElement;
      on.onclick = run;
      on.onpointerenter = on.onfocus = near ?? null;
      return button;
    });
    for (const each of there.values()) if (!buttons.includes(each)) each.remove();
    // Buttons that stay are not touched: they keep the keyboard.
    buttons.forEach((button, at) => {
      const now = this.#tools.children[at];
      if (now !== button) this.#tools.insertBefore(button, now ?? null);
    });
  }

  busy(label: string, busy: boolean): void {
    for (const each of this.#tools.children)
      if (each.textContent === label) each.setAttribute('aria-busy', String(busy));
  }
}
