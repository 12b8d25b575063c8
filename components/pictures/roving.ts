import type { ReactiveController, ReactiveControllerHost } from 'lit';

type Host = ReactiveControllerHost & HTMLElement & { readonly renderRoot: ParentNode };

const PAGE = 10;

/**
 * Of all marks of a picture (elements with `data-mark`) one takes the Tab key; arrow keys, Home, End, Page Up
 * and Page Down move on from there, in the order of the page. A mark that takes another place keeps the keyboard.
 */
export class Roving implements ReactiveController {
  readonly #host: Host;
  #at: string | null = null;
  #held: HTMLElement | null = null;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostUpdate(): void {
    const { activeElement = null } = this.#host.shadowRoot ?? {};
    this.#held =
      activeElement instanceof HTMLElement && markOf(activeElement) !== null ? activeElement : null;
  }

  hostUpdated(): void {
    // An element that is moved within the page loses the keyboard.
    if (this.#held?.isConnected && this.#host.shadowRoot?.activeElement !== this.#held) this.#held.focus();
    this.#held = null;
  }

  /** The mark that takes Tab: where the person last was, else the first. */
  among(marks: readonly string[]): string | undefined {
    return this.#at !== null && marks.includes(this.#at) ? this.#at : marks[0];
  }

  readonly focused = (event: FocusEvent): void => {
    const mark = markOf(event.target);
    if (mark === null || mark === this.#at) return;
    this.#at = mark;
    this.#host.requestUpdate();
  };

  readonly pressed = (event: KeyboardEvent): void => {
    const mark = markOf(event.target);
    if (mark === null || event.altKey || event.ctrlKey || event.metaKey) return;
    const all = [...this.#host.renderRoot.querySelectorAll<HTMLElement>('[data-mark]')];
    const at = all.findIndex((each) => each.dataset.mark === mark);
    const to = {
      ArrowDown: at + 1,
      ArrowRight: at + 1,
      ArrowUp: at - 1,
      ArrowLeft: at - 1,
      PageDown: at + PAGE,
      PageUp: at - PAGE,
      Home: 0,
      End: all.length - 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = all[Math.min(Math.max(to, 0), all.length - 1)];
    next?.focus();
    next?.scrollIntoView({ block: 'nearest' });
  };
}

const markOf = (target: EventTarget | null): string | null =>
  target instanceof HTMLElement ? (target.closest<HTMLElement>('[data-mark]')?.dataset.mark ?? null) : null;
