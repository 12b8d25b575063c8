import { css, html, LitElement } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { GridCell, GridLook, GridRequest, GridView } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { SchemeController } from '../look/scheme.js';

/** What the pane needs of the sheet around it. */
export interface PaneHost {
  readonly licenceKey: string;
  ensureEngine(): Promise<void>;
  say(message: Problem | string | null): void;
  selected(cell: GridCell | null): void;
  lookChanged(): void;
  ask(what: GridRequest): void;
}

/** Where a grid that opens puts its selection, and what was typed while it was loading. */
export interface GridStart {
  readonly cell: GridCell | null;
  readonly text: string | null;
  /** Takes the keyboard once it is open. */
  readonly focus: boolean;
}

/** Inside `<croft-sheet>`: the editing view. Loads the grid when it comes into the page. */
@customElement('croft-grid-pane')
export class GridPane extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        height: var(--height);
        min-height: 18rem;
        border: 1px solid var(--line);
        border-top: 4px solid var(--accent);
        border-radius: var(--radius);
        overflow: hidden;
        background: var(--paper);
      }
      .grid {
        height: 100%;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() label = '';
  @property({ attribute: false }) host!: PaneHost;
  @property({ attribute: false }) start: GridStart = { cell: null, text: null, focus: false };
  @query('.grid') private into!: HTMLElement;
  readonly #scheme = new SchemeController(this);
  #view: GridView | null = null;
  #sizes: ResizeObserver | undefined;
  #shownScheme: 'light' | 'dark' | null = null;

  get view(): GridView | null {
    return this.#view;
  }

  get look(): GridLook | null {
    return this.#view?.look ?? null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Moved within the page is not removed.
    queueMicrotask(() => {
      if (this.isConnected) return;
      this.#sizes?.disconnect();
      this.#view?.destroy();
      this.#view = null;
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated && !this.#view) void this.#mount();
  }

  protected override firstUpdated(): void {
    void this.#mount();
  }

  protected override updated(): void {
    const { scheme } = this.#scheme;
    if (this.#view && scheme !== this.#shownScheme) this.#view.setColourScheme(scheme);
    this.#shownScheme = scheme;
  }

  protected override render() {
    return html`<div class="grid" part="grid"></div>`;
  }

  async #mount(): Promise<void> {
    const { live, sheet, label, host } = this;
    try {
      const { mountGrid } = await import('../grid/mount.js');
      if (!this.isConnected) return;
      const view = await mountGrid(this.into, {
        live,
        sheet,
        label,
        licenceKey: host.licenceKey,
        colourScheme: this.#scheme.scheme,
        ensureEngine: () => host.ensureEngine(),
        say: (message) => host.say(message),
        selected: (cell) => host.selected(cell),
        lookChanged: () => host.lookChanged(),
        ask: (what) => host.ask(what),
      });
      if (!this.isConnected) return view.destroy();
      this.#view = view;
    } catch (error) {
      console.error(error);
      this.dispatchEvent(new CustomEvent('failed'));
      return;
    }
    this.#sizes = new ResizeObserver(() => this.#view?.layOut());
    this.#sizes.observe(this);
    this.dispatchEvent(new CustomEvent('mounted'));
    const { cell, text, focus } = this.start;
    if (!focus) return;
    this.#view.focus(cell ?? undefined);
    if (text !== null) this.#view.type(text);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-grid-pane': GridPane;
  }
}
