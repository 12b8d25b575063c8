import Handsontable from 'handsontable/base';
import { CheckboxCellType, DateCellType, NumericCellType, registerCellType } from 'handsontable/cellTypes';
import { registerLanguageDictionary } from 'handsontable/i18n';
import enUS from 'handsontable/i18n/languages/en-US';
import {
  AutoColumnSize,
  Autofill,
  ColumnSorting,
  ContextMenu,
  CopyPaste,
  DropdownMenu,
  Filters,
  HiddenRows,
  ManualColumnMove,
  ManualColumnResize,
  ManualRowMove,
  registerPlugin,
} from 'handsontable/plugins';
import { onLanguage } from '../../../src/words/index.js';
import { LANGUAGE, wordsNow } from './words.js';

/** What a grid instance is; the library's own name for it says less. */
export type Hot = Handsontable;

let done = false;

/** Makes the parts of the grid library known to it that are used; once for all grids. */
export function gridClass(): typeof Handsontable {
  if (!done) {
    done = true;
    for (const plugin of [
      // Menus and filters are grids themselves and need these.
      AutoColumnSize,
      HiddenRows,
      Autofill,
      ColumnSorting,
      ContextMenu,
      CopyPaste,
      DropdownMenu,
      Filters,
      ManualColumnMove,
      ManualColumnResize,
      ManualRowMove,
    ])
      registerPlugin(plugin);
    for (const type of [CheckboxCellType, DateCellType, NumericCellType]) registerCellType(type);
    const speak = (): void => {
      registerLanguageDictionary({ ...enUS, ...wordsNow(), languageCode: LANGUAGE });
    };
    speak();
    onLanguage(speak);
  }
  return Handsontable;
}
