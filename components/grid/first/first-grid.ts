/** A grid that stands at once: drawn from a table in the page, before the book under it is read. */
import Handsontable from 'handsontable/base';
import { registerCellType, TextCellType } from 'handsontable/cellTypes';
import { bridge } from '../handsontable/bridge.js';
import { Portal } from '../handsontable/portal.js';
import { adoptSheets, keepHeadClean } from '../handsontable/sheets.js';
import { paintFirstHeader } from './first-header.js';
import { type FirstTable, type FirstWrite, firstWidths } from './first-table.js';

interface Line {
  readonly id: string | null;
}

const HEADER_HEIGHT = 56;
const LINE_HEADER = 46;
/** Room for a bar to scroll with, and borders. */
const AT_THE_SIDE = 18;
/** The most of the grid's width that the first column may take to stand still. */
const MOST_FROZEN = 0.6;

/**
 * Shows the rows of a table as a grid and lets cells be written into; what is written waits for the whole grid,
 * which takes its place.
 */
export class FirstGrid {
  readonly widths: ReadonlyMap<string, number>;
  readonly #hot: Handsontable;
  readonly #wrapper: HTMLElement;
  readonly #portal: Portal;
  readonly #stop: () => void;
  readonly #lines: readonly Line[];
  readonly #written = new Map<string, FirstWrite>();

  constructor(
    into: HTMLElement,
    readonly table: FirstTable,
    licenceKey: string,
  ) {
    registerCellType(TextCellType);
    const root = into.getRootNode();
    adoptSheets(root instanceof ShadowRoot ? root : document);
    keepHeadClean(document);
    this.widths = firstWidths(table, into.clientWidth - LINE_HEADER - AT_THE_SIDE);
    this.#lines = [...table.rows.map((id) => ({ id })), { id: null }];
    this.#wrapper = document.createElement('div');
    this.#wrapper.className = 'croft-grid';
    const home = document.createElement('div');
    home.className = 'croft-table';
    this.#wrapper.append(home);
    into.append(this.#wrapper);
    this.#portal = new Portal(document, this.#wrapper);
    this.#hot = new Handsontable(home, this.#settings(licenceKey, into.clientWidth));
    if (this.#hot.rootPortalElement) this.#portal.adopt(this.#hot.rootPortalElement);
    this.#hot.rootElement.setAttribute('aria-label', table.label);
    this.#stop = bridge(this.#hot, this.#wrapper, this.#portal);
  }

  /** What was written, in its order: the last text of each cell. */
  get written(): readonly FirstWrite[] {
    return [...this.#written.values()];
  }

  /** Ends the writing into a cell, and keeps what stands there. */
  settle(): void {
    if (this.isBusy) this.#hot.getActiveEditor()?.finishEditing(false);
  }

  /** A cell is being written into. */
  get isBusy(): boolean {
    return this.#hot.getActiveEditor()?.isOpened() ?? false;
  }

  /** Resolves when no cell is being written into. */
  async rest(): Promise<void> {
    while (this.isBusy) await new Promise((done) => setTimeout(done, 50));
  }

  /** The selected cell; null where that is none of the table's rows. */
  get selection(): { readonly row: string; readonly column: string } | null {
    const { row, col } = this.#hot.getSelectedRangeActive()?.highlight ?? {};
    const id = this.#lines[row ?? -1]?.id;
    const column = this.table.columns[col ?? -1]?.id;
    return id === undefined || id === null || column === undefined ? null : { row: id, column };
  }

  /** How far it is scrolled, in pixels. */
  get scroll(): { readonly left: number; readonly top: number } {
    const holder = this.#wrapper.querySelector('.ht_master .wtHolder');
    return { left: holder?.scrollLeft ?? 0, top: holder?.scrollTop ?? 0 };
  }

  focus(cell: { readonly row: string; readonly column: string } | null): void {
    const row = this.table.rows.indexOf(cell?.row ?? '');
    const column = this.table.columns.findIndex(({ id }) => id === cell?.column);
    this.#hot.listen();
    this.#hot.selectCell(Math.max(0, row), Math.max(0, column), undefined, undefined, true);
  }

  /** Starts writing into the selected cell, as if typed. */
  type(text: string): void {
    const editor = this.#hot.getActiveEditor();
    if (!editor || editor.isOpened()) return;
    editor.enableFullEditMode();
    editor.beginEditing(text);
  }

  destroy(): void {
    if (this.#hot.isDestroyed) return;
    this.#stop();
    this.#hot.destroy();
    this.#portal.remove();
    this.#wrapper.remove();
  }

  #settings(licenseKey: string, width: number): Handsontable.GridSettings {
    const { columns } = this.table;
    const widths = columns.map(({ id }) => this.widths.get(id)!);
    return {
      data: [...this.#lines],
      dataSchema: { id: null },
      columns: columns.map(({ id, planning, type }) => ({
        data: (line: Line) => this.#typed(line, id),
        readOnly: planning || type === 'tick',
        renderer: this.#paint,
      })),
      // A formula is shown as people write it by the whole grid only.
      cells: (row: number, col: number) =>
        this.#typed(this.#lines[row] ?? { id: null }, columns[col]?.id ?? '').startsWith('=')
          ? { readOnly: true }
          : {},
      licenseKey,
      themeName: 'ht-theme-main',
      injectCoreCss: false,
      width: '100%',
      height: '100%',
      colHeaders: () => '',
      columnHeaderHeight: HEADER_HEIGHT,
      rowHeaders: (row: number) => (this.#lines[row]?.id === null ? '+' : String(row + 1)),
      rowHeaderWidth: LINE_HEADER,
      colWidths: widths,
      fixedColumnsStart: columns.length > 1 && widths[0]! <= width * MOST_FROZEN ? 1 : 0,
      wordWrap: false,
      trimWhitespace: false,
      undo: false,
      tabNavigation: false,
      navigableHeaders: true,
      outsideClickDeselects: false,
      minSpareRows: 0,
      afterGetColHeader: (index: number, th: HTMLTableCellElement) => {
        const column = columns[index];
        if (column) paintFirstHeader(th, column, widths[index]!);
      },
      beforeChange: (changes: readonly (readonly unknown[] | null)[]) => {
        for (const change of changes) if (change) this.#write(change);
        this.#hot.render();
        return false;
      },
    } as unknown as Handsontable.GridSettings;
  }

  #typed({ id }: Line, column: string): string {
    const written = this.#written.get(`${id ?? ''}/${column}`);
    return written?.text ?? (id === null ? '' : this.table.typed(id, column));
  }

  #write([row, at, was, text]: readonly unknown[]): void {
    const id = this.#lines[Number(row)]?.id ?? null;
    const index = this.#hot.propToCol(at as string);
    const column = this.table.columns[Number(index)]?.id;
    if (column === undefined || String(text ?? '') === String(was ?? '')) return;
    const key = `${id ?? ''}/${column}`;
    this.#written.delete(key);
    this.#written.set(key, { row: id, column, text: String(text ?? '') });
  }

  readonly #paint = (_hot: unknown, td: HTMLTableCellElement, row: number, col: number): void => {
    const column = this.table.columns[col]!;
    const id = this.#lines[row]?.id ?? null;
    const written = this.#written.get(`${id ?? ''}/${column.id}`);
    const text = written?.text ?? (id === null ? '' : this.table.text(id, column.id));
    td.classList.toggle('croft-planning', column.planning);
    td.classList.toggle('croft-number', column.type === 'number' && text !== '');
    td.classList.toggle('croft-quiet', column.planning && text === '0');
    td.textContent = text;
  };
}
