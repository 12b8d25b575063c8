import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { isSpoken, onLanguage, speak } from '../../src/words/index.js';
import { languageAround } from '../look/language-around.js';

type Host = ReactiveControllerHost & HTMLElement;

/** Elements that say which language the page speaks, in the order in which they came into it. */
const said = new Set<PageLanguage>();
let watcher: MutationObserver | undefined;

/**
 * A page speaks one language: that of the last element of ours that came into it and stands in an element with
 * `lang` (the page’s own counts too). Changing the attribute changes the language.
 */
export class PageLanguage implements ReactiveController {
  readonly #host: Host;
  #loading: Promise<unknown> | null = null;
  #unheed: (() => void) | undefined;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  /** Resolves when the words of the language are there; null where none have to be loaded. */
  get loading(): Promise<unknown> | null {
    return this.#loading;
  }

  hostConnected(): void {
    said.add(this);
    this.#unheed = onLanguage(() => this.#host.requestUpdate());
    watcher ??= new MutationObserver(() => [...said].at(-1)?.look());
    watcher.observe(document.documentElement, { attributes: true, attributeFilter: ['lang'], subtree: true });
    this.look();
  }

  hostDisconnected(): void {
    said.delete(this);
    this.#unheed?.();
    if (said.size === 0) watcher?.disconnect();
  }

  /** Speaks what is said around the host now. */
  look(): void {
    const tag = languageAround(this.#host) || 'en';
    const loaded = isSpoken(tag);
    const spoken = speak(tag);
    this.#loading = loaded ? null : spoken;
  }
}
