import { html, nothing, type TemplateResult } from 'lit';
import { KINDS, type SheetKind } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import type { CroftBook } from '../book/croft-book.js';
import type { GridCell } from '../grid/grid-view.js';
import { icons } from '../look/icons.js';
import { problemList } from '../look/problems.js';
import { emptyState, type FirstStep } from './empty-state.js';
import type { GridStart, PaneHost } from './grid-pane.js';
import type { ReadingEvents } from './reading-view.js';
import type { Sheet } from './sheet-called.js';

/** What stands in place of a sheet while no book is open. */
export function withoutBook(book: CroftBook | null): TemplateResult {
  if (!book || book.problems.length === 0) {
    return html`<p class="opening quiet" aria-busy="true">${say`Opening the book…`}</p>`;
  }
  return html`<div class="no-book" role="alert">
    <h2>${say`The book could not be opened`}</h2>
    ${problemList(book.problems)}
  </div>`;
}

export interface StageState {
  readonly live: LiveBook;
  readonly sheet: Sheet;
  /** The grid is wanted. */
  readonly editing: boolean;
  /** The grid is there. */
  readonly mounted: boolean;
  /** The page is being printed: all rows, as a table. */
  readonly printing: boolean;
  readonly readOnly: boolean;
  readonly pending: boolean;
  readonly columns: readonly string[];
  /** Something outside stands in the sheet's place until the grid is there. */
  readonly standIn: boolean;
  readonly cell: GridCell | null;
  readonly start: GridStart;
  readonly firstSteps: (hasColumns: boolean) => readonly FirstStep[];
}

export interface StageDoings {
  readonly paneHost: PaneHost;
  openGrid(): void;
  chosen(event: ReadingEvents['choose']): void;
  edit(event: ReadingEvents['edit']): void;
  gridOpen(): void;
  gridFailed(): void;
}

const NO_ROWS = phrase('Its columns are there, and no row yet.');

/** The sheet itself: to read, to edit, or what an empty one says. The table stays until the grid is there. */
export function stage(state: StageState, doings: StageDoings): TemplateResult {
  const { live, sheet, editing, mounted } = state;
  const hasColumns = live.columns(sheet.id).some(({ hidden }) => !hidden);
  const rows = live.rowIds(sheet.id).length;
  if (rows === 0 || !hasColumns) {
    const words = sheet.kind === 'own' && hasColumns ? NO_ROWS : KINDS[sheet.kind as SheetKind].empty;
    return emptyState(spoken(words), state.firstSteps(hasColumns));
  }
  const label = sheet.title === live.title ? sheet.title : `${sheet.title}, ${live.title}`;
  return html`
    ${editing && (mounted || state.standIn) && !state.printing ? nothing : reading(state, doings, label)}
    ${
      editing
        ? html`<croft-grid-pane
            exportparts="grid"
            class=${mounted || state.standIn ? '' : 'waiting'}
            .live=${live}
            .sheet=${sheet.id}
            .label=${label}
            .rows=${rows + extraLines(live, sheet.id)}
            .host=${doings.paneHost}
            .start=${state.start}
            @mounted=${doings.gridOpen}
            @failed=${doings.gridFailed}
          ></croft-grid-pane>`
        : nothing
    }
  `;
}

/** Room that the foot and the beginnings of groups take, in lines. */
function extraLines(live: LiveBook, sheet: string): number {
  const foot = live.columns(sheet).some(({ summary, hidden }) => summary && !hidden) ? 1.5 : 0;
  return foot + (live.groupsOf(sheet)?.length ?? 0);
}

const reading = (state: StageState, doings: StageDoings, label: string): TemplateResult => html`
  <croft-reading-view
    exportparts="frame, table"
    .live=${state.live}
    .sheet=${state.sheet.id}
    .caption=${label}
    .pending=${state.pending}
    .editable=${!state.readOnly}
    ?everything=${state.printing}
    ?paper=${state.printing}
    .only=${state.columns}
    .chosen=${state.cell}
    ?inert=${state.editing}
    @choose=${doings.chosen}
    @edit=${doings.edit}
    >${
      state.readOnly || state.editing
        ? nothing
        : html`<button class="button" type="button" @click=${doings.openGrid}>
            ${icons.grid}${say`Open as a grid`}
          </button>`
    }</croft-reading-view
  >
`;
