import { say, spoken } from '../../../src/words/index.js';
import { SUMMARY_NAMES, summaryInWords, summaryWords } from '../../sheet/looks/summary-words.js';
import type { SheetBinding } from './binding.js';
import type { Hot } from './registry.js';
import type { Views } from './views.js';

/**
 * What stands under the columns: a strip below the rows, in line with the columns and scrolling with them. It
 * is no row, so nothing in it can be edited, sorted or copied by mistake.
 */
export class Foot {
  readonly #strip: HTMLElement;
  readonly #track: HTMLElement;
  readonly #still: HTMLElement;
  #key = '';
  /** Figures by column, until something changes: scrolling must not count anew. */
  #figures = new Map<string, ReturnType<SheetBinding['live']['summaryAt']>>();
  #rows: readonly string[] | undefined;
  #fresh = false;

  constructor(
    readonly hot: Hot,
    readonly binding: SheetBinding,
    readonly views: Views,
    readonly wrapper: HTMLElement,
    signal: AbortSignal,
  ) {
    const { ownerDocument: document } = wrapper;
    const list = (className: string): HTMLElement => {
      const element = document.createElement('div');
      element.className = className;
      return element;
    };
    this.#strip = list('croft-foot');
    this.#strip.setAttribute('role', 'list');
    const window = list('croft-foot-track');
    window.setAttribute('role', 'presentation');
    this.#track = list('croft-foot-moving');
    this.#track.setAttribute('role', 'presentation');
    this.#still = list('croft-foot-still');
    this.#still.setAttribute('role', 'presentation');
    window.append(this.#track);
    this.#strip.append(window, this.#still);
    hot.addHook('afterRender', () => this.paint());
    hot.addHook('afterFilter', () => this.forget());
    hot.addHook('afterScrollHorizontally', () => this.#scroll());
    wrapper.addEventListener('scroll', () => this.#scroll(), { signal, capture: true });
    this.paint();
  }

  /** To be called after every change of the book and of the rows shown. */
  forget(): void {
    this.#fresh = false;
  }

  #count(): void {
    const { binding, views } = this;
    this.#fresh = true;
    const { live, sheet } = binding;
    if (!live.isPlanned) live.showsSoFar();
    this.#rows = views.shownRows();
    this.#figures = new Map(
      binding.columns
        .filter(({ summary }) => summary !== undefined)
        .map(({ id }) => [id, live.isPlanned ? live.summaryAt(sheet, id, this.#rows) : undefined]),
    );
  }

  /** Brings the strip up to the columns and figures as they are now. */
  paint(): void {
    const { hot, binding, wrapper } = this;
    if (hot.isDestroyed) return;
    const some = binding.columns.some(({ summary }) => summary !== undefined);
    if (some !== this.#strip.isConnected) {
      wrapper.classList.toggle('croft-has-foot', some);
      if (some) wrapper.querySelector('.croft-table')?.after(this.#strip);
      else this.#strip.remove();
      this.#key = '';
      // The table has less room, or more, from here on; not while it is being drawn.
      queueMicrotask(() => !hot.isDestroyed && hot.refreshDimensions());
    }
    if (!some) return;
    this.#strip.setAttribute('aria-label', say`Under the columns`);
    if (!this.#fresh) this.#count();
    const rows = this.#rows;
    const fixed = Number(hot.getSettings().fixedColumnsStart ?? 0);
    let at = hot.getCell(-1, -1, true)?.offsetWidth ?? 0;
    const cells = binding.columns.map((column, index) => {
      const width = hot.getColWidth(index) ?? 0;
      const figure = this.#figures.get(column.id);
      const cell = { index, column, figure, width, at };
      at += width;
      return cell;
    });
    const key = JSON.stringify([
      fixed,
      rows?.length,
      cells.map(({ figure, at, width, column }) => [figure, at, width, column.id, column.title]),
    ]);
    if (key !== this.#key) {
      this.#key = key;
      const made = cells
        .filter(({ figure }) => figure !== undefined)
        .map(({ index, column, figure, width, at: start }) => {
          const cell = this.#cell(column, figure!, rows !== undefined);
          cell.style.setProperty('inset-inline-start', `${start}px`);
          cell.style.setProperty('inline-size', `${width}px`);
          return { cell, still: index < fixed };
        });
      this.#track.replaceChildren(...made.filter(({ still }) => !still).map(({ cell }) => cell));
      this.#still.replaceChildren(...made.filter(({ still }) => still).map(({ cell }) => cell));
      const [first] = cells.slice(fixed);
      const edge = first?.at ?? at;
      this.#still.style.setProperty('inline-size', `${edge}px`);
    }
    this.#scroll();
  }

  #cell(
    column: SheetBinding['columns'][number],
    figure: NonNullable<ReturnType<SheetBinding['live']['summaryAt']>>,
    some: boolean,
  ): HTMLElement {
    const { ownerDocument: document } = this.wrapper;
    const cell = document.createElement('div');
    cell.className = `croft-foot-cell${column.type === 'number' ? ' croft-number' : ''}`;
    cell.setAttribute('role', 'listitem');
    const words = summaryInWords(figure, column, some);
    cell.title = words;
    cell.setAttribute('aria-label', words);
    const part = (className: string, text: string): HTMLElement => {
      const element = document.createElement('span');
      element.className = className;
      element.textContent = text;
      return element;
    };
    cell.append(
      part(
        'croft-foot-name',
        some ? say`${SUMMARY_NAMES[figure.summary]}, rows shown` : spoken(SUMMARY_NAMES[figure.summary]),
      ),
      part(figure.problem ? 'croft-foot-value croft-why' : 'croft-foot-value', summaryWords(figure, column)),
    );
    return cell;
  }

  #scroll(): void {
    const holder = this.wrapper.querySelector<HTMLElement>('.ht_master .wtHolder');
    if (holder) this.#track.style.setProperty('translate', `${-holder.scrollLeft}px`);
  }
}
