import { contentOf } from './page-content.js';

const HEEDED = [
  'data-column',
  'data-open',
  'data-planning',
  'data-type',
  'data-row',
  'data-formula',
  'datetime',
];

/**
 * Hears when what the page wrote inside the element changes: as it arrives, or as a framework puts other nodes in
 * its place. The element itself never changes any of it, so that a framework finds on the page what it sent.
 */
export class ContentWatch {
  readonly #host: HTMLElement;
  readonly #observer: MutationObserver | undefined;
  #soon: ReturnType<typeof setTimeout> | undefined;
  #known: string | null = null;

  /** `changed` is called once for changes that come together, and only where something else stands there now. */
  constructor(host: HTMLElement, changed: () => void) {
    this.#host = host;
    if (typeof MutationObserver === 'undefined') return;
    this.#observer = new MutationObserver(() => {
      this.#soon ??= setTimeout(() => {
        this.#soon = undefined;
        if (host.isConnected && contentOf(host) !== this.#known) changed();
      });
    });
  }

  start(): void {
    this.#observer?.observe(this.#host, {
      childList: true,
      subtree: true,
      characterData: true,
      attributeFilter: HEEDED,
    });
  }

  stop(): void {
    this.#observer?.disconnect();
    clearTimeout(this.#soon);
    this.#soon = undefined;
  }

  /** What stands inside now has been read. */
  read(): void {
    this.#known = contentOf(this.#host);
  }
}
