import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Whether an element is shown light or dark, whatever decides it (the page's `color-scheme`, the system, the
 * element's `theme`), and which way it is read. Asks for an update when that may have changed.
 */
export class SchemeController implements ReactiveController {
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #media = globalThis.matchMedia?.('(prefers-color-scheme: dark)');
  #watcher: MutationObserver | undefined;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.#host = host;
    host.addController(this);
  }

  get scheme(): 'light' | 'dark' {
    const probe = document.createElement('span');
    probe.style.color = 'light-dark(rgb(1, 1, 1), rgb(2, 2, 2))';
    const into = this.#host.shadowRoot ?? this.#host;
    into.append(probe);
    const { color } = getComputedStyle(probe);
    probe.remove();
    return color === 'rgb(2, 2, 2)' ? 'dark' : 'light';
  }

  get direction(): 'ltr' | 'rtl' {
    return getComputedStyle(this.#host).direction === 'rtl' ? 'rtl' : 'ltr';
  }

  hostConnected(): void {
    this.#media?.addEventListener('change', this.#changed);
    this.#watcher = new MutationObserver(this.#changed);
    for (const each of [document.documentElement, document.body]) {
      this.#watcher.observe(each, {
        attributes: true,
        attributeFilter: ['class', 'style', 'data-theme', 'theme', 'dir'],
      });
    }
  }

  hostDisconnected(): void {
    this.#media?.removeEventListener('change', this.#changed);
    this.#watcher?.disconnect();
  }

  readonly #changed = (): void => this.#host.requestUpdate();
}
