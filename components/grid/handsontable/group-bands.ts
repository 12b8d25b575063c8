import { spoken } from '../../../src/words/index.js';
import { SUMMARY_NAMES, summaryWords } from '../../sheet/looks/summary-words.js';
import type { SheetBinding } from './binding.js';
import { BAND, type Band, type Groups, rowsInWords } from './groups.js';
import type { Hot } from './registry.js';

/**
 * The bands at the beginnings of groups, over the grid: what the group is, how many rows it has, what stands
 * under its columns. A press folds the group; by keys the cell's menu does.
 */
export class GroupBands {
  readonly #home: HTMLElement;
  /** Figures of groups, by their keys, until something changes: scrolling must not count anew. */
  readonly #figures = new Map<string, readonly string[]>();

  constructor(
    readonly hot: Hot,
    readonly binding: SheetBinding,
    readonly groups: Groups,
    readonly wrapper: HTMLElement,
  ) {
    this.#home = wrapper.ownerDocument.createElement('div');
    this.#home.className = 'croft-bands';
    wrapper.append(this.#home);
    hot.addHook('afterRender', () => this.paint());
    hot.addHook('afterFilter', () => this.forget());
    for (const hook of ['afterScrollVertically', 'afterScrollHorizontally'] as const)
      hot.addHook(hook, () => this.paint());
    this.#home.addEventListener('wheel', (event) => {
      const holder = this.#holder;
      if (holder) holder.scrollTop += event.deltaY;
    });
    this.paint();
  }

  paint(): void {
    const { hot, groups } = this;
    if (hot.isDestroyed) return;
    if (groups.by === undefined) {
      this.#home.replaceChildren();
      return;
    }
    const box = this.wrapper.getBoundingClientRect();
    const head = hot.getCell(-1, -1, true)?.getBoundingClientRect();
    const holder = this.#holder;
    if (!head || !holder) return;
    this.#home.style.setProperty('inset-block-start', `${head.bottom - box.top}px`);
    this.#home.style.setProperty('block-size', `${Math.max(0, holder.clientHeight - head.height)}px`);
    this.#home.style.setProperty('inline-size', `${holder.clientWidth}px`);
    const first = hot.getFirstRenderedVisibleRow() ?? 0;
    const last = hot.getLastRenderedVisibleRow() ?? -1;
    const bands: HTMLElement[] = [];
    for (let row = first; row <= last; row++) {
      const above = groups.above(row);
      const top = above.length === 0 ? undefined : hot.getCell(row, -1, true)?.getBoundingClientRect().top;
      if (top === undefined) continue;
      for (const [i, band] of above.entries()) bands.push(this.#band(band, top - head.bottom + i * BAND));
    }
    this.#home.replaceChildren(...bands);
  }

  /** To be called after every change of the book. */
  forget(): void {
    this.#figures.clear();
  }

  #figuresOf(key: string, { rows }: Band['group']): readonly string[] {
    let figures = this.#figures.get(key);
    if (!figures) {
      const { columns, live, sheet } = this.binding;
      figures = columns.flatMap((column) => {
        const figure = live.summaryAt(sheet, column.id, rows);
        if (!figure || figure.value === null) return [];
        return [`${column.title}: ${spoken(SUMMARY_NAMES[figure.summary])} ${summaryWords(figure, column)}`];
      });
      this.#figures.set(key, figures);
    }
    return figures;
  }

  get #holder(): HTMLElement | null {
    return this.wrapper.querySelector('.ht_master .wtHolder');
  }

  #band({ key, group, folded }: Band, top: number): HTMLElement {
    const { ownerDocument: document } = this.wrapper;
    const el = (name: string, className: string, text: string): HTMLElement => {
      const element = document.createElement(name);
      element.className = className;
      element.textContent = text;
      return element;
    };
    const band = el('button', folded ? 'croft-band croft-folded' : 'croft-band', '') as HTMLButtonElement;
    band.type = 'button';
    band.tabIndex = -1;
    band.setAttribute('aria-expanded', String(!folded));
    band.style.setProperty('inset-block-start', `${top}px`);
    band.append(
      el('span', 'croft-band-label', group.label),
      el('span', 'croft-band-count', rowsInWords(group)),
      ...this.#figuresOf(key, group).map((text) => el('span', 'croft-band-figure', text)),
    );
    // The grid keeps the keyboard, and must not take the press for one outside it.
    band.addEventListener('mousedown', (event) => {
      event.preventDefault();
      event.stopPropagation();
    });
    band.addEventListener('click', () => this.groups.fold(key, !folded));
    return band;
  }
}
