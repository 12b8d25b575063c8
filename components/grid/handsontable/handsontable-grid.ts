import type { BookChange } from '../../../src/live/live-book.js';
import { marksChanged } from '../../sheet/looks/in-words.js';
import type { GridCell, GridHost, GridLook, GridView } from '../grid-view.js';
import { alignHeadings } from './aligned-headings.js';
import { SheetBinding } from './binding.js';
import { bridge } from './bridge.js';
import { CellPopup } from './cell-popup.js';
import { listenToClipboard } from './clipboard.js';
import { type GridContext, setContext } from './context.js';
import { Edits } from './edits.js';
import { showMoreValues } from './filter-values.js';
import { Foot } from './foot.js';
import { GroupBands } from './group-bands.js';
import { Groups } from './groups.js';
import { addHooks } from './hooks.js';
import { addKeys, toggleFocused } from './keys.js';
import { chosenCells } from './menu-looks.js';
import { cellMenu, columnMenu } from './menus.js';
import { cellAt, focusedPlace } from './places.js';
import { Portal } from './portal.js';
import { gridClass, type Hot } from './registry.js';
import { CellPainter } from './renderer.js';
import { settings } from './settings.js';
import { placeOf, regroup, reshape } from './shape.js';
import { adoptSheets, keepHeadClean } from './sheets.js';
import { TypingRun } from './typing-run.js';
import { Views } from './views.js';

interface OpenMenu {
  readonly container: HTMLElement;
  updateMenuDimensions(): void;
}

/** The grid of one sheet, by Handsontable, bound to an open book. */
export class HandsontableGrid implements GridView {
  readonly #wrapper: HTMLElement;
  readonly #portal: Portal;
  readonly #hot: Hot;
  readonly #context: GridContext;
  readonly #stop = new AbortController();
  readonly #ends: (() => void)[] = [];
  #reshapeWaits = false;
  /** It was drawn without figures. */
  #waits: boolean;
  #last: GridCell | null = null;

  constructor(
    readonly into: HTMLElement,
    readonly host: GridHost,
  ) {
    const { ownerDocument: document } = into;
    this.#waits = !host.live.isPlanned;
    const root = into.getRootNode();
    adoptSheets(root instanceof ShadowRoot ? root : document);
    keepHeadClean(document);
    this.#wrapper = document.createElement('div');
    this.#wrapper.className = 'croft-grid';
    const table = document.createElement('div');
    table.className = 'croft-table';
    this.#wrapper.append(table);
    into.append(this.#wrapper);
    this.#portal = new Portal(document, this.#wrapper);

    const binding = new SheetBinding(host.live, host.sheet);
    const painter = new CellPainter(binding, (cell) => host.markOf?.(cell) ?? null);
    const GridClass = gridClass();
    const run = new TypingRun();
    const later = {
      cellMenu: { items: {} as unknown },
      columnMenu: { items: {} as unknown },
      enter: (event: KeyboardEvent) => {
        const place = event.shiftKey ? null : focusedPlace(hot);
        return place ? run.enter(place.row, place.col) : { row: 1, col: 0 };
      },
    };
    const hot = new GridClass(table, settings(binding, painter, host, into.clientWidth, later)) as Hot;
    this.#hot = hot;
    this.#portal.adopt(hot.rootPortalElement!);
    const edits = new Edits(binding, host);
    const views = new Views(hot, binding, () => host.lookChanged?.());
    const popup = new CellPopup(this.#wrapper);
    const groups = new Groups(hot, binding, views);
    painter.bandsAbove = (row) => groups.above(row).length;
    const bands = new GroupBands(hot, binding, groups, this.#wrapper);
    const foot = new Foot(hot, binding, views, this.#wrapper, this.#stop.signal);
    const editorClosed = (): void => {
      if (this.#reshapeWaits) queueMicrotask(() => this.#reshape());
    };
    this.#context = {
      hot,
      host,
      binding,
      edits,
      views,
      groups,
      bands,
      foot,
      popup,
      painter,
      run,
      editorClosed,
    };
    setContext(hot, this.#context);
    addHooks(this.#context);
    alignHeadings(hot.rootElement);
    addKeys(this.#context);
    later.cellMenu.items = cellMenu(this.#context);
    later.columnMenu.items = columnMenu(this.#context);
    hot.getPlugin('dropdownMenu').updatePlugin();
    // Rows are put in order, left out and listed by the figures themselves.
    for (const hook of ['beforeColumnSort', 'beforeFilter', 'beforeDropdownMenuShow'] as const)
      hot.addHook(hook, () => host.live.workOut());
    for (const hook of ['beforeContextMenuShow', 'beforeDropdownMenuShow'] as const)
      hot.addHook(hook, () => this.#portal.takeOver());
    // The library places a menu only after it has told that it is open.
    const place = ({ menu }: { menu: OpenMenu | null }, beside?: Element | null): void =>
      queueMicrotask(() => this.#portal.fit(menu?.container, beside));
    hot.addHook('afterContextMenuShow', place);
    hot.addHook('afterDropdownMenuShow', (plugin: { menu: OpenMenu | null }) => {
      showMoreValues(hot);
      plugin.menu?.updateMenuDimensions();
      const column = focusedPlace(hot)?.col ?? -1;
      place(plugin, column < 0 ? null : hot.getCell(-1, column, true));
    });
    groups.apply();
    hot.rootElement.setAttribute('aria-label', host.label);
    hot.rootElement.setAttribute('aria-rowcount', String(binding.lines.length + 1));
    this.setColourScheme(host.colourScheme);
    this.#listen();
    hot.resumeRender();
  }

  get selection(): GridCell | null {
    const place = focusedPlace(this.#hot);
    return place && cellAt(this.#hot, this.#context.binding, place.row, place.col);
  }

  get chosenCells(): readonly GridCell[] {
    return chosenCells(this.#context);
  }

  get look(): GridLook {
    return this.#context.views.look;
  }

  focus(cell?: GridCell): void {
    if (cell) this.#context.groups.reveal(cell.row);
    const place = cell ? placeOf(this.#context, cell) : null;
    const now = focusedPlace(this.#hot);
    const [row, column] = place ?? (now ? [now.row, now.col] : [0, 0]);
    this.#hot.listen();
    this.#hot.selectCell(Math.max(0, row), Math.max(0, column), undefined, undefined, true);
  }

  show(cell: GridCell, at?: 'top'): void {
    this.#context.groups.reveal(cell.row);
    const place = placeOf(this.#context, cell);
    if (place) this.#hot.scrollViewportTo({ row: place[0], col: place[1], ...(at && { verticalSnap: at }) });
  }

  get scroll(): { readonly left: number; readonly top: number } {
    const { scrollLeft: left = 0, scrollTop: top = 0 } = this.#holder ?? {};
    return { left, top };
  }

  set scroll({ left, top }) {
    const holder = this.#holder;
    if (!holder) return;
    holder.scrollLeft = left;
    holder.scrollTop = top;
  }

  get #holder(): Element | null {
    return this.#wrapper.querySelector('.ht_master .wtHolder');
  }

  hides(row: string): boolean {
    return this.#context.views.isFilteredOut(row);
  }

  type(text: string): void {
    if (!focusedPlace(this.#hot)) this.focus();
    this.#hot.listen();
    const column = this.#context.binding.columns[focusedPlace(this.#hot)?.col ?? -1];
    if (column?.role === 'planning') {
      this.#context.edits.refuse(column.id);
      return;
    }
    const editor = this.#hot.getActiveEditor();
    if (!editor || editor.isOpened()) return;
    editor.enableFullEditMode();
    editor.beginEditing(text);
  }

  sort(column: string, ascending: boolean | null): void {
    this.#context.views.sort(column, ascending);
  }

  clearFilters(): void {
    this.#context.views.clearFilters();
  }

  leaveOut(column: string, value: number | null): void {
    this.#context.views.leaveOut(column, value);
  }

  setColourScheme(scheme: 'light' | 'dark'): void {
    this.#wrapper.style.setProperty('color-scheme', scheme);
    this.#portal.setScheme(scheme);
  }

  remark(): void {
    this.#context.painter.repaint();
  }

  layOut(): void {
    if (this.#hot.isDestroyed || this.#wrapper.clientWidth === 0) return;
    if (!this.#reshape()) this.#hot.refreshDimensions();
  }

  destroy(): void {
    if (this.#hot.isDestroyed) return;
    this.#stop.abort();
    for (const end of this.#ends) end();
    this.#hot.destroy();
    this.#portal.remove();
    this.#wrapper.remove();
  }

  #listen(): void {
    const { binding, edits } = this.#context;
    const { signal } = this.#stop;
    this.#ends.push(
      this.host.live.on('change', (change) => this.#follow(change)),
      bridge(this.#hot, this.#wrapper, this.#portal),
    );
    listenToClipboard(this.#context, this.#wrapper, signal);
    for (const hook of ['afterSelectionEnd', 'afterDeselect'] as const)
      this.#hot.addHook(hook, () => this.#tellSelected());
    if (this.host.live.needsEngine) void this.host.ensureEngine();
    this.#wrapper.addEventListener(
      'click',
      (event) => {
        if (event.target instanceof Element && event.target.matches('.croft-box'))
          toggleFocused(this.#context);
      },
      { signal },
    );
    this.#wrapper.addEventListener(
      'dblclick',
      (event) => {
        const cell = event.target instanceof Element ? event.target.closest('td') : null;
        const column = cell && binding.columns[this.#hot.getCoords(cell)?.col ?? -1];
        if (column?.role !== 'planning') return;
        const at = this.selection;
        // A finger has no other quick way to it, and brings no keyboard to type with.
        if (at && matchMedia('(pointer: coarse)').matches) this.host.ask({ ask: 'working', cell: at });
        else edits.refuse(column.id, at?.row);
      },
      { signal },
    );
  }

  /** Paints what a change of the book alters here: once, and only where it touches this sheet. */
  #follow(change: BookChange): void {
    const { cells, sheets } = change;
    const { sheet } = this.host;
    const { painter, foot, bands } = this.#context;
    painter.forget();
    foot.forget();
    bands.forget();
    if (!this.host.live.sheets().some(({ id }) => id === sheet)) return;
    const here = sheets.has(sheet);
    if (here && this.#hot.getActiveEditor()?.isOpened()) {
      this.#reshapeWaits = true;
      return;
    }
    if (here && this.#reshape()) return;
    // Titles and widths stand in the headers, which only the library draws.
    if (here || (this.#waits && this.#widthsChanged())) this.#hot.render();
    else if (cells.some((cell) => cell.sheet === sheet) || marksChanged(change, sheet)) {
      const { by } = this.#context.groups;
      const moves = by !== undefined && cells.some((cell) => cell.sheet === sheet && cell.column === by);
      if (moves) this.#regroup();
      this.#context.painter.repaint();
      this.#context.bands.paint();
      this.#context.foot.paint();
    }
  }

  /** Figures that came after the grid may need more room than was kept for them. */
  #widthsChanged(): boolean {
    const { binding } = this.#context;
    this.#waits = !this.host.live.isPlanned;
    return !this.#waits && binding.widths.haveChanged(binding.columns);
  }

  /** Rows whose group column shows something else go to their group; the selection goes with them. */
  #regroup(): void {
    if (this.#hot.getActiveEditor()?.isOpened()) {
      this.#reshapeWaits = true;
      return;
    }
    regroup(this.#context);
  }

  #reshape(): boolean {
    if (this.#hot.isDestroyed) return false;
    if (this.#hot.getActiveEditor()?.isOpened()) {
      this.#reshapeWaits = true;
      return false;
    }
    const waited = this.#reshapeWaits;
    this.#reshapeWaits = false;
    const painted = reshape(this.#context);
    if (waited && !painted) {
      regroup(this.#context);
      this.#hot.render();
    }
    return painted;
  }

  #tellSelected(): void {
    const cell = this.selection;
    if (cell?.row === this.#last?.row && cell?.column === this.#last?.column) return;
    this.#last = cell;
    this.host.selected(cell);
  }
}
