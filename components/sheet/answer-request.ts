import type { TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { removalDialog } from '../formulas/ask-removal.js';
import type { GridCell, GridRequest } from '../grid/grid-view.js';
import type { ColumnDialog } from './column-dialog.js';
import { lookDialog } from './looks/look-dialog.js';

export type ColumnTask = Parameters<ColumnDialog['ask']>[0];

/** What a sheet opens to answer a request. */
export interface Answering {
  show(load: () => Promise<TemplateResult>): void;
  askColumn(task: ColumnTask): void;
  /** Opens the working of a figure, with the keyboard in it. */
  explain(cell: GridCell): void;
}

/** Answers what the grid asks for and does not do itself: a dialog opens, or the working of a figure. */
export function answerRequest(what: GridRequest, live: LiveBook, sheet: string, by: Answering): void {
  switch (what.ask) {
    case 'add column':
      by.askColumn({ task: 'add', before: what.before });
      break;
    case 'rename column':
      by.askColumn({ task: 'rename', column: what.column });
      break;
    case 'column formula':
      by.askColumn({ task: 'formula', column: what.column });
      break;
    case 'describe column':
      by.askColumn({ task: what.field, column: what.column });
      break;
    case 'colour':
    case 'note':
    case 'colour rules':
    case 'summary':
      by.show(() => lookDialog(sheet, what));
      break;
    case 'removal': {
      const dialog = removalDialog(live, what.command, what.note);
      if (dialog) by.show(dialog);
      break;
    }
    case 'working':
      by.explain(what.cell);
  }
}
