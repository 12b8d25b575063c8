import type { EmbedCell } from '../../src/live/embed/index.js';
import { keepKeys } from '../look/keep-keys.js';
import { Bar } from './bar.js';
import { cautions, fillCell, make } from './draw-table.js';
import { embedStyles } from './embed-styles.js';
import { Frame } from './frame.js';
import { OpenCells, type OpenCellsHost } from './open-cells.js';
import { HERE, say, spoken } from './said.js';
import { HOW_TO_START, START_OWN } from './words.js';

/** What an embedded sheet shows: its table, the cells that are open, and the line under it. */
export class EmbedView {
  readonly root = make('div', '', { class: 'root' });
  readonly #host: OpenCellsHost;
  #frame: Frame | null = null;
  #cells: OpenCells | null = null;
  #bar: Bar | null = null;

  constructor(shadow: ShadowRoot, host: OpenCellsHost) {
    this.#host = host;
    shadow.adoptedStyleSheets = [embedStyles(document)];
    const page = make('div', '', { class: 'page' });
    page.append(this.root);
    shadow.replaceChildren(page);
    keepKeys(shadow);
  }

  get frame(): Frame | null {
    return this.#frame;
  }

  get cells(): OpenCells | null {
    return this.#cells;
  }

  get bar(): Bar | null {
    return this.#bar;
  }

  /** What scrolls the table. */
  get stand(): HTMLElement | null {
    return this.root.querySelector<HTMLElement>('.frame');
  }

  /** Shows a table and what stands around it; false where there is none in it. */
  draw(content: DocumentFragment, open: readonly string[]): boolean {
    const table = content.querySelector('table');
    if (!table) return false;
    const focused = this.#cells?.focused;
    this.#frame = new Frame(table);
    this.#bar = new Bar(content.querySelector('[data-day]'));
    const stand = make('div', '', {
      class: 'frame',
      part: 'frame',
      role: 'region',
      tabindex: '0',
      'aria-label': table.caption?.textContent?.trim() || say`Table${HERE}`,
    });
    table.before(stand);
    stand.append(table);
    stand.after(this.#bar.element);
    this.root.replaceChildren(content);
    this.#cells = new OpenCells(this.#frame, open, this.#host);
    if (focused) this.#cells.focus(focused.row, focused.column);
    return true;
  }

  /** Says in place of the table that it is on its way. */
  opening(words: string): void {
    this.#instead(make('p', words, { class: 'opening', role: 'status' }));
  }

  /** Says in place of the table why there is none. */
  fail(words: string): void {
    this.#instead(make('p', words, { class: 'problem', role: 'alert' }));
  }

  /** Says in place of the table that the reader keeps no book yet, and where one is started. */
  empty(words: string, startAt: string | null): void {
    const said = make('p', `${words} `, { class: 'empty', role: 'status' });
    // An address that runs script is none.
    if (startAt && !/^\s*javascript:/i.test(startAt))
      said.append(make('a', spoken(START_OWN), { href: startAt }));
    else said.append(spoken(HOW_TO_START));
    this.#instead(said);
  }

  /** Shows something else in a cell, for a moment so that it is seen. */
  show(row: string, column: string, shown: EmbedCell): void {
    const at = this.#frame?.cell(row, column);
    const text = typeof shown === 'string' ? shown : shown.text;
    if (!at || this.#cells?.show(row, column, text)) return;
    const before = at.textContent;
    fillCell(at, shown);
    if (at.textContent === before) return;
    at.classList.remove('changed');
    requestAnimationFrame(() => at.classList.add('changed'));
  }

  /** Says food-safety words that do not stand under the table yet; those that stand there stay. */
  caution(texts: readonly string[]): void {
    const there = this.root.querySelector('[data-cautions]');
    if (!there && texts.length > 0) this.root.append(cautions(texts));
    if (!there) return;
    const unsaid = texts.filter((text) => !there.textContent?.includes(text));
    const list = there.querySelector('ul') ?? there.appendChild(make('ul'));
    list.append(...unsaid.map((text) => make('li', text)));
  }

  #instead(element: HTMLElement): void {
    this.#frame = null;
    this.#cells = null;
    this.#bar = null;
    this.root.replaceChildren(element);
  }
}
