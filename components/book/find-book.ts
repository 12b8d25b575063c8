import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { BookGiver } from '../what-if/book-copy.js';
import type { CroftBook } from './croft-book.js';
import { isBook, isOurs, markOurs } from './known-elements.js';
import { sayWhatIsMissing } from './missing-book.js';

/**
 * The book that an element belongs to: the one it (or the element of ours that it stands inside) names by
 * `book="id"`, else the nearest one around it. Inside of a `<croft-what-if>` that is the copy in which it tries.
 */
export function bookAround(element: HTMLElement): CroftBook | null {
  let inside: Node | null = null;
  for (let at: Node | null = element; at; at = at.parentNode ?? (at instanceof ShadowRoot ? at.host : null)) {
    const from = inside;
    inside = at;
    if (!(at instanceof HTMLElement)) continue;
    if (isBook(at)) return at;
    if (!isOurs(at)) continue;
    // What it holds on the page sees the copy; it itself, and what it is made of, the book.
    if (from instanceof Element && 'bookInside' in at) return (at as BookGiver).bookInside;
    const named = at.getAttribute('book');
    if (named !== null) return bookNamed(named, at);
  }
  return null;
}

function bookNamed(id: string, from: HTMLElement): CroftBook | null {
  const root = from.getRootNode();
  const found = (root instanceof ShadowRoot ? root.getElementById(id) : null) ?? document.getElementById(id);
  return found && isBook(found) ? found : null;
}

type Host = ReactiveControllerHost & HTMLElement;

const finding = new Set<() => void>();
let naming: MutationObserver | undefined;

/** Has all elements look anew once one of them names another book: what it is made of belongs to that one, too. */
function heedNaming(host: Element): void {
  naming ??= new MutationObserver(() => {
    for (const find of finding) find();
  });
  naming.observe(host, { attributes: true, attributeFilter: ['book'] });
}

/** Ties an element to its book: asks for an update when a book opens, changes or says something. */
export class BookController implements ReactiveController {
  readonly #host: Host;
  readonly #changed: ((change: BookChange) => void) | undefined;
  #book: CroftBook | null = null;

  constructor(host: Host, changed?: (change: BookChange) => void) {
    this.#host = host;
    this.#changed = changed;
    markOurs(host);
    host.addController(this);
  }

  get book(): CroftBook | null {
    return this.#book;
  }

  get live(): LiveBook | null {
    return this.#book?.live ?? null;
  }

  hostConnected(): void {
    this.find();
    finding.add(this.find);
    heedNaming(this.#host);
    // A book that comes into the page later, or is named before it is there.
    document.addEventListener('croft-ready', this.find);
    document.addEventListener('croft-what-if-ready', this.find);
    sayWhatIsMissing(this.#host, () => this.#book !== null);
  }

  hostDisconnected(): void {
    finding.delete(this.find);
    document.removeEventListener('croft-ready', this.find);
    document.removeEventListener('croft-what-if-ready', this.find);
    this.#tie(null);
  }

  /** Looks again for the book, as when an element’s `book` attribute changed. */
  readonly find = (): void => {
    const book = this.#host.isConnected ? bookAround(this.#host) : null;
    // Its script may come after the host's: until then it knows of nothing, not even of problems.
    const isThere = book === null || 'problems' in book;
    if (!isThere) void customElements.whenDefined('croft-book').then(this.find);
    this.#tie(isThere ? book : null);
  };

  #tie(book: CroftBook | null): void {
    if (book === this.#book) return;
    const names = ['croft-ready', 'croft-status', 'croft-problem', 'croft-select', 'croft-conflicts'];
    for (const name of names) this.#book?.removeEventListener(name, this.#update);
    this.#book?.removeEventListener('croft-change', this.#onChange as EventListener);
    this.#book = book;
    for (const name of names) book?.addEventListener(name, this.#update);
    book?.addEventListener('croft-change', this.#onChange as EventListener);
    this.#update();
  }

  readonly #update = (): void => this.#host.requestUpdate();

  readonly #onChange = (event: CustomEvent<BookChange>): void => {
    this.#changed?.(event.detail);
    this.#host.requestUpdate();
  };
}
