import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import type { GridLook } from '../grid/grid-view.js';
import { icons } from '../look/icons.js';
import type { SheetAction } from './actions/action.js';
import { actionsOf } from './actions/actions.js';

/** What the editing view's toolbar asks of the sheet. */
export interface ToolbarActions {
  undo(): void;
  redo(): void;
  addRow(): void;
  addColumn(): void;
  addLots(): void | Promise<void>;
  columns(): void;
  colour(): void;
  note(): void;
  working(): void;
  unsort(): void;
  ungroup(): void;
  showAllRows(): void;
  toggleUsedUp(): void;
  read(): void;
  run(action: SheetAction): void;
}

interface ToolbarState {
  readonly live: LiveBook;
  readonly kind: string;
  readonly row: string;
  readonly sheet: string;
  /** Id of the row that is chosen. */
  readonly chosen: string | null;
  readonly look: GridLook | null;
  readonly sortedBy: string;
  /** Title of the column by which rows are shown in groups; '' in none. */
  readonly groupedBy: string;
  readonly addingLots: boolean;
  readonly workingOpen: boolean;
  readonly hideUsedUp: boolean;
}

const tool = (
  icon: TemplateResult,
  label: string,
  act: () => void,
  {
    title = label,
    disabled = false,
    pressed,
  }: { title?: string; disabled?: boolean; pressed?: boolean } = {},
): TemplateResult => html`
  <button
    class="button plain tool"
    type="button"
    title=${title}
    ?disabled=${disabled}
    aria-pressed=${pressed === undefined ? nothing : String(pressed)}
    @click=${act}
  >
    ${icon}<span class="words">${label}</span>
  </button>
`;

export const toolbar = (state: ToolbarState, actions: ToolbarActions): TemplateResult => {
  const { live, kind, look } = state;
  return html`<div class="tools" part="toolbar" role="group" aria-label="Tools">
    ${tool(icons.undo, 'Undo', actions.undo, {
      title: live.undoLabel ? `Undo: ${live.undoLabel} (Ctrl+Z)` : 'Nothing to undo',
      disabled: !live.undoLabel,
    })}
    ${tool(icons.redo, 'Redo', actions.redo, {
      title: live.redoLabel ? `Redo: ${live.redoLabel} (Ctrl+Y)` : 'Nothing to redo',
      disabled: !live.redoLabel,
    })}
    <span class="gap"></span>
    ${
      kind === 'shelf'
        ? tool(icons.jar, 'Add lots', () => void actions.addLots(), {
            title: 'Write many lots quickly, line after line',
            pressed: state.addingLots,
          })
        : nothing
    }
    ${tool(icons.addRow, 'Add row', actions.addRow, { title: `A new ${state.row} at the end` })}
    ${tool(icons.addColumn, 'Add column', actions.addColumn, { title: 'A column of your own' })}
    ${tool(icons.columns, 'Columns', actions.columns, { title: 'Show or hide columns' })}
    <span class="gap"></span>
    ${tool(icons.colour, 'Colour', actions.colour, { title: 'Mark the chosen cells with a colour' })}
    ${tool(icons.note, 'Note', actions.note, { title: 'Write a note on the chosen cells' })}
    <span class="gap"></span>
    ${actionsOf(kind).map((action) =>
      tool(action.icon, action.label, () => actions.run(action), { title: action.title }),
    )}
    ${
      kind === 'shelf'
        ? tool(icons.usedUp, 'Hide used-up', actions.toggleUsedUp, {
            title: 'Leave out lots of which nothing is left',
            pressed: state.hideUsedUp,
          })
        : nothing
    }
    ${tool(icons.working, 'Working', actions.working, {
      title: 'How the chosen figure is worked out',
      pressed: state.workingOpen,
    })}
    ${tool(icons.page, 'Read', actions.read, { title: 'Back to the page to read' })}
    ${
      look?.sort || look?.filteredOut || state.groupedBy
        ? html`<span class="look small">
            ${
              state.groupedBy
                ? html`In groups by ${state.groupedBy}:
                    <button class="link" type="button" @click=${actions.ungroup}>no groups</button>`
                : nothing
            }
            ${
              look?.sort
                ? html`Sorted by ${state.sortedBy}, ${look.sort.ascending ? 'low to high' : 'high to low'}:
                    <button class="link" type="button" @click=${actions.unsort}>as written</button>`
                : nothing
            }
            ${
              look && look.filteredOut > 0
                ? html`${look.filteredOut === 1 ? '1 row' : `${look.filteredOut} rows`} hidden by a filter:
                    <button class="link" type="button" @click=${actions.showAllRows}>show all</button>`
                : nothing
            }
          </span>`
        : nothing
    }
  </div>
  ${actionsOf(kind).map((action) => {
    const why = action.urged?.({ live, sheet: state.sheet, row: state.chosen }) ?? null;
    return why === null
      ? nothing
      : html`<p class="urged small" role="status">
          ${icons.care}<span>${why}</span>
          <button class="button" type="button" @click=${() => actions.run(action)}>${action.label}</button>
        </p>`;
  })}`;
};
