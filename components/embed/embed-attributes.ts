import { PageElement } from './define.js';
import { isPlain, PLAIN_SHEET } from './source-text.js';

/** Attributes whose change makes another sheet of it. */
const ANOTHER = ['sheet', 'src', 'source', 'which', 'database', 'columns', 'open', 'keep-as', 'id'];

const PROPERTIES = [
  'sheet',
  'src',
  'source',
  'which',
  'database',
  'columns',
  'open',
  'keepAs',
  'startAt',
  'gridLicenceKey',
  'engineLicenceKey',
  'theme',
  'book',
] as const;

/** What can be said of an embedded sheet, as attributes and as properties, before it is defined or later. */
export abstract class EmbedAttributes extends PageElement {
  static readonly observedAttributes = [...ANOTHER, 'grid-licence-key', 'start-at'];
  #book: unknown = null;
  #asked = false;

  /** Called once where what is shown comes from somewhere else now. */
  protected abstract showAnother(): void;
  /** Called where what can be done may be something else now. */
  protected abstract offerAnew(): void;

  attributeChangedCallback(name: string, before: string | null, now: string | null): void {
    if (before === now) return;
    if (!ANOTHER.includes(name)) this.offerAnew();
    else this.#another();
  }

  /** Properties that a page set before this was defined stand in the way of ours: they are set again. */
  protected takeProperties(): void {
    for (const name of PROPERTIES) {
      if (!Object.hasOwn(this, name)) continue;
      const value: unknown = Reflect.get(this, name);
      Reflect.deleteProperty(this, name);
      Reflect.set(this, name, value);
    }
  }

  /**
   * Id of the sheet for which the data was made: that one is meant where no attribute names another.
   *
   * @internal
   */
  sheetShown: string | undefined;

  /** Id, kind or title of the sheet. */
  get sheet(): string {
    return isPlain(this) ? PLAIN_SHEET : (this.getAttribute('sheet') ?? this.sheetShown ?? 'shelf');
  }
  set sheet(value: string | null) {
    this.#say('sheet', value);
  }

  get src(): string | null {
    return this.getAttribute('src');
  }
  set src(value: string | null) {
    this.#say('src', value);
  }

  /** `own`: the book that the reader keeps in this browser. */
  get source(): string | null {
    return this.getAttribute('source');
  }
  set source(value: string | null) {
    this.#say('source', value);
  }

  get which(): string | null {
    return this.getAttribute('which');
  }
  set which(value: string | null) {
    this.#say('which', value);
  }

  get database(): string | null {
    return this.getAttribute('database');
  }
  set database(value: string | null) {
    this.#say('database', value);
  }

  get columns(): string | null {
    return this.getAttribute('columns');
  }
  set columns(value: string | null) {
    this.#say('columns', value);
  }

  get open(): string | null {
    return this.getAttribute('open');
  }
  set open(value: string | null) {
    this.#say('open', value);
  }

  get keepAs(): string | null {
    return this.getAttribute('keep-as');
  }
  set keepAs(value: string | null) {
    this.#say('keep-as', value);
  }

  /** Name under which a reader's own numbers are kept; null where the page gives none. */
  get keepName(): string | null {
    return this.keepAs || this.id || null;
  }

  get startAt(): string | null {
    return this.getAttribute('start-at');
  }
  set startAt(value: string | null) {
    this.#say('start-at', value);
  }

  get gridLicenceKey(): string | null {
    return this.getAttribute('grid-licence-key');
  }
  set gridLicenceKey(value: string | null) {
    this.#say('grid-licence-key', value);
  }

  get engineLicenceKey(): string {
    return this.getAttribute('engine-licence-key') ?? 'gpl-v3';
  }
  set engineLicenceKey(value: string | null) {
    this.#say('engine-licence-key', value);
  }

  get theme(): string | null {
    return this.getAttribute('theme');
  }
  set theme(value: string | null) {
    this.#say('theme', value);
  }

  /** A book as data or JSON text; it goes before what stands inside and before `src`. */
  get book(): unknown {
    return this.#book;
  }
  set book(value: unknown) {
    if (this.#book === value) return;
    this.#book = value ?? null;
    this.#another();
  }

  #say(name: string, value: string | null): void {
    if (value === null || value === undefined) this.removeAttribute(name);
    else this.setAttribute(name, String(value));
  }

  /** Several that change together, as when a framework sets them, make one new beginning. */
  #another(): void {
    if (this.#asked) return;
    this.#asked = true;
    queueMicrotask(() => {
      this.#asked = false;
      this.showAnother();
    });
  }
}
