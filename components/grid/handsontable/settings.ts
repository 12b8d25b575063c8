import type Handsontable from 'handsontable/base';
import type { GridHost } from '../grid-view.js';
import type { SheetBinding } from './binding.js';
import { columnSettings, frozenColumns, paintHeader } from './columns.js';
import { contextOf } from './context.js';
import type { Hot } from './registry.js';
import { type CellPainter, paintLineHeader } from './renderer.js';
import { sortSettings } from './views.js';
import { LANGUAGE } from './words.js';

const HEADER_HEIGHT = 56;

/** Where the library would parse text as HTML it gets this instead: the same text, escaped. */
const asText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** What needs the instance, and so comes after it is made. */
export interface Later {
  /** Where Enter goes. */
  enter(event: KeyboardEvent): { row: number; col: number };
  /** Items of the menus: filled once the parts that they call are there. */
  readonly cellMenu: { items: unknown };
  readonly columnMenu: { items: unknown };
}

/**
 * How the grid library is set up. It draws nothing before `resumeRender`: by then everything that has a say in
 * how cells look is there, and they are drawn once.
 */
export function settings(
  binding: SheetBinding,
  painter: CellPainter,
  host: GridHost,
  width: number,
  later: Later,
): Handsontable.GridSettings {
  return {
    init(this: Hot) {
      this.suspendRender();
    },
    enterMoves: (event: KeyboardEvent) => later.enter(event),
    contextMenu: later.cellMenu,
    dropdownMenu: later.columnMenu,
    data: [...binding.lines] as never,
    dataSchema: { id: null },
    columns: columnSettings(binding, painter),
    licenseKey: host.licenceKey,
    language: LANGUAGE,
    themeName: 'ht-theme-main',
    injectCoreCss: false,
    sanitizer: asText,
    width: '100%',
    height: '100%',
    colHeaders: () => '',
    columnHeaderHeight: HEADER_HEIGHT,
    rowHeaders: true,
    rowHeaderWidth: 46,
    colWidths: (index: number) => binding.widths.of(binding.columns[index]!),
    fixedColumnsStart: frozenColumns(binding, width),
    autoColumnSize: false,
    autoRowSize: false,
    wordWrap: false,
    trimWhitespace: false,
    undo: false,
    formulas: undefined,
    copyPaste: true,
    fillHandle: { autoInsertRow: false },
    columnSorting: sortSettings(binding) as never,
    filters: true,
    manualColumnMove: true,
    manualColumnResize: true,
    manualRowMove: true,
    allowInsertRow: false,
    allowRemoveRow: false,
    allowInsertColumn: false,
    allowRemoveColumn: false,
    tabNavigation: false,
    navigableHeaders: true,
    outsideClickDeselects: false,
    minSpareRows: 0,
    afterGetRowHeader(this: Hot, row: number, th: HTMLTableCellElement) {
      if (row >= 0) paintLineHeader(this, binding, row, th);
    },
    afterGetColHeader(this: Hot, index: number, th: HTMLTableCellElement) {
      if (index >= 0) paintHeader(binding, index, th, contextOf(this)?.views);
    },
  } as unknown as Handsontable.GridSettings;
}
