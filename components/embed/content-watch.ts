import { checkEmpty, checkTable } from './page-check.js';
import { contentOf } from './page-content.js';

const HEEDED = [
  'data-column',
  'data-open',
  'data-planning',
  'data-type',
  'data-row',
  'data-formula',
  'data-total',
  'datetime',
];

/** Milliseconds until what was read is looked at: by then a page has been painted. */
const LOOK_AFTER = 200;
/** Milliseconds until an element into which nothing came is one with nothing inside. */
const EMPTY_AFTER = 3000;

/**
 * Hears when what the page wrote inside the element changes: as it arrives, or as a framework puts other nodes in
 * its place. The element itself never changes any of it, so that a framework finds on the page what it sent.
 */
export class ContentWatch {
  readonly #host: HTMLElement;
  readonly #changed: () => void;
  readonly #observer: MutationObserver | undefined;
  #soon: ReturnType<typeof setTimeout> | undefined;
  #known: string | null = null;
  /** Waits to look at what was read, until the page has been painted with it. */
  #looking: ReturnType<typeof setTimeout> | undefined;
  /** Waits for what a page may put inside later. */
  #waiting: ReturnType<typeof setTimeout> | undefined;

  /** `changed` is called once for changes that come together, and only where something else stands there now. */
  constructor(host: HTMLElement, changed: () => void) {
    this.#host = host;
    this.#changed = changed;
    if (typeof MutationObserver === 'undefined') return;
    this.#observer = new MutationObserver(() => {
      if (this.#looking !== undefined) this.#forget();
      this.#soon ??= setTimeout(() => {
        this.#soon = undefined;
        if (host.isConnected) this.#compare();
      });
    });
  }

  start(): void {
    this.#await();
    this.#observer?.observe(this.#host, {
      childList: true,
      subtree: true,
      characterData: true,
      attributeFilter: HEEDED,
    });
  }

  stop(): void {
    clearTimeout(this.#waiting);
    this.#observer?.disconnect();
    clearTimeout(this.#soon);
    this.#soon = undefined;
    if (this.#looking === undefined) return;
    this.#forget();
    this.#known = contentOf(this.#host);
  }

  /** Calls back where something else stands inside than what was read before it was stopped. */
  lookAgain(): void {
    if (this.#known !== null) this.#compare();
  }

  #compare(): void {
    if (contentOf(this.#host) !== this.#known) this.#changed();
  }

  /** What stands inside now has been read. */
  read(): void {
    this.#forget();
    this.#looking = setTimeout(() => {
      this.#looking = undefined;
      this.#known = contentOf(this.#host);
      checkTable(this.#host);
    }, LOOK_AFTER);
  }

  #await(): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => {
      if (document.readyState === 'complete') checkEmpty(this.#host);
      else this.#await();
    }, EMPTY_AFTER);
  }

  /** What was read is not known: whatever stands inside next counts as something else. */
  #forget(): void {
    clearTimeout(this.#looking);
    this.#looking = undefined;
    this.#known = null;
  }
}
