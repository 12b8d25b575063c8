import { css, html, LitElement, type PropertyValues } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { CellMark, GridCell, GridLook, GridRequest, GridView } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { SchemeController } from '../look/scheme.js';
import { loadedGrid, loadGrid } from './load-grid.js';
import { TypedAhead } from './typed-ahead.js';

/** What the pane needs of the sheet around it. */
export interface PaneHost {
  licenceKey(): string;
  ensureEngine(): Promise<void>;
  say(message: Problem | string | null): void;
  selected(cell: GridCell | null): void;
  lookChanged(): void;
  ask(what: GridRequest): void;
  markOf?(cell: GridCell): CellMark | null;
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
        /* Header, rows and a scroll bar; no more than the page allows a sheet. */
        height: clamp(15rem, calc(7rem + var(--rows, 30) * var(--line-height)), max(15rem, var(--height)));
        --line-height: 2rem;
        border: 1px solid var(--line);
        border-top: 4px solid var(--accent);
        border-radius: var(--radius);
        overflow: hidden;
        background: var(--paper);
      }
      .grid {
        height: 100%;
      }
      @media (pointer: coarse) {
        :host {
          --line-height: 2.875rem;
        }
      }
      /* Where a window is as low as two hands are high, the sheet leaves room to scroll past it. */
      @media (max-height: 26rem) {
        :host {
          height: min(15rem, 85dvh);
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() label = '';
  /** How many rows the sheet has, for its height. */
  @property({ type: Number }) rows = 0;
  @property({ attribute: false }) host!: PaneHost;
  @property({ attribute: false }) start: GridStart = { cell: null, text: null, focus: false };
  @query('.grid') private into!: HTMLElement;
  readonly #scheme = new SchemeController(this);
  #view: GridView | null = null;
  #sizes: ResizeObserver | undefined;
  /** Stands for the grid that is mounted or being loaded. */
  #mounting: object = {};
  #shownScheme: 'light' | 'dark' | null = null;
  #shownDirection: 'ltr' | 'rtl' | null = null;

  get view(): GridView | null {
    return this.#view;
  }

  /** Where the selected cell is in the window. */
  get selectedBox(): DOMRect | undefined {
    return this.into?.querySelector('.ht_master td.current')?.getBoundingClientRect();
  }

  get look(): GridLook | null {
    return this.#view?.look ?? null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Moved within the page is not removed.
    queueMicrotask(() => {
      if (!this.isConnected) this.#unmount();
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated && !this.#view) void this.#mount();
  }

  protected override updated(changed: PropertyValues<GridPane>): void {
    const { direction } = this.#scheme;
    // A grid keeps the direction that it was made in.
    const turned = this.#shownDirection !== null && direction !== this.#shownDirection;
    this.#shownDirection = direction;
    if (changed.has('live') || changed.has('sheet') || turned) void this.#mount();
    if (changed.has('rows')) this.style.setProperty('--rows', String(this.rows));
    if (!this.#view) return;
    const { scheme } = this.#scheme;
    if (scheme !== this.#shownScheme) this.#view.setColourScheme(scheme);
    this.#shownScheme = scheme;
  }

  protected override render() {
    return html`<div class="grid" part="grid"></div>`;
  }

  #unmount(): void {
    this.#mounting = {};
    this.#sizes?.disconnect();
    this.#view?.destroy();
    this.#view = null;
  }

  get #size(): string {
    return `${this.clientWidth} ${this.clientHeight}`;
  }

  /** An observer calls back at once, as a rule with the size for which the grid was drawn. */
  #watchSize(view: GridView, drawn: string): void {
    let last = drawn;
    this.#sizes = new ResizeObserver(() => {
      const size = this.#size;
      if (size !== last) view.layOut();
      last = size;
    });
    this.#sizes.observe(this);
  }

  async #mount(): Promise<void> {
    this.#unmount();
    const mine = this.#mounting;
    const { live, sheet, label, host } = this;
    const ahead = this.start.text === null ? null : new TypedAhead(this.start.text);
    let view: GridView;
    let drawn: string;
    try {
      const mountGrid = loadedGrid() ?? (await loadGrid());
      if (mine !== this.#mounting) return void ahead?.end();
      const { scheme } = this.#scheme;
      this.#shownScheme = scheme;
      drawn = this.#size;
      view = await mountGrid(this.into, {
        live,
        sheet,
        label,
        licenceKey: host.licenceKey(),
        colourScheme: scheme,
        ensureEngine: () => host.ensureEngine(),
        say: (message) => host.say(message),
        selected: (cell) => host.selected(cell),
        lookChanged: () => host.lookChanged(),
        ask: (what) => host.ask(what),
        markOf: (cell) => host.markOf?.(cell) ?? null,
      });
    } catch (error) {
      ahead?.end();
      console.error(error);
      this.dispatchEvent(new CustomEvent('failed'));
      return;
    }
    const text = ahead?.end();
    if (mine !== this.#mounting) {
      view.destroy();
      return;
    }
    this.#view = view;
    this.#watchSize(view, drawn);
    this.dispatchEvent(new CustomEvent('mounted'));
    const { cell, focus } = this.start;
    if (!focus) return;
    view.focus(cell ?? undefined);
    if (text !== undefined) view.type(text);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-grid-pane': GridPane;
  }
}
