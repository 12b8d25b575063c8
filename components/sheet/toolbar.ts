import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { say, spoken } from '../../src/words/index.js';
import type { GridLook } from '../grid/grid-view.js';
import { icons } from '../look/icons.js';
import type { SheetAction } from './actions/action.js';
import { actionsOf } from './actions/actions.js';

/** What the editing view's toolbar asks of the sheet. */
export interface ToolbarActions {
  undo(): void;
  redo(): void;
  readonly finding: { toggle(): Promise<void> };
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
  /** The line to find rows by words stands open; null where there are few rows. */
  readonly finding: boolean | null;
  readonly workingOpen: boolean;
  readonly hideUsedUp: boolean;
  /** There is a page to read behind the grid. */
  readonly canRead: boolean;
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
  return html`<div class="tools" part="toolbar" role="group" aria-label=${say`Tools`}>
    ${tool(icons.undo, say`Undo`, actions.undo, {
      title: live.undoLabel ? say`Undo: ${live.undoLabel} (Ctrl+Z)` : say`Nothing to undo`,
      disabled: !live.undoLabel,
    })}
    ${tool(icons.redo, say`Redo`, actions.redo, {
      title: live.redoLabel ? say`Redo: ${live.redoLabel} (Ctrl+Y)` : say`Nothing to redo`,
      disabled: !live.redoLabel,
    })}
    ${
      state.finding === null
        ? nothing
        : tool(icons.search, say`Find`, () => void actions.finding.toggle(), {
            title: say`Find rows by words that stand in them`,
            pressed: state.finding,
          })
    }
    <span class="gap"></span>
    ${
      kind === 'shelf'
        ? tool(icons.jar, say`Add lots`, () => void actions.addLots(), {
            title: say`Write many lots quickly, line after line`,
            pressed: state.addingLots,
          })
        : tool(icons.addRow, say`Add row`, actions.addRow, { title: say`A new ${state.row} at the end` })
    }
    ${
      // What is done with this kind of sheet first: a telephone shows the beginning of the line.
      actionsOf(kind).map((action) =>
        tool(action.icon, spoken(action.label), () => actions.run(action), { title: spoken(action.title) }),
      )
    }
    ${tool(icons.working, say`Working`, actions.working, {
      title: say`How the chosen figure is worked out`,
      pressed: state.workingOpen,
    })}
    ${
      kind === 'shelf'
        ? tool(icons.usedUp, say`Hide used-up`, actions.toggleUsedUp, {
            title: say`Leave out lots of which nothing is left`,
            pressed: state.hideUsedUp,
          })
        : nothing
    }
    <span class="gap"></span>
    ${
      kind === 'shelf'
        ? tool(icons.addRow, say`Add row`, actions.addRow, { title: say`A new ${state.row} at the end` })
        : nothing
    }
    ${tool(icons.addColumn, say`Add column`, actions.addColumn, { title: say`A column of your own` })}
    ${tool(icons.columns, say`Columns`, actions.columns, { title: say`Show or hide columns` })}
    <span class="gap"></span>
    ${tool(icons.colour, say`Colour`, actions.colour, { title: say`Mark the chosen cells with a colour` })}
    ${tool(icons.note, say`Note`, actions.note, { title: say`Write a note on the chosen cells` })}
    ${state.canRead ? tool(icons.page, say`Read`, actions.read, { title: say`Back to the page to read` }) : nothing}
    ${
      look?.sort || look?.filteredOut || state.groupedBy
        ? html`<span class="look small">
            ${
              state.groupedBy
                ? html`${say`In groups by ${state.groupedBy}:`}
                    <button class="link" type="button" @click=${actions.ungroup}>${say`no groups`}</button>`
                : nothing
            }
            ${
              look?.sort
                ? html`${
                    look.sort.ascending
                      ? say`Sorted by ${state.sortedBy}, low to high:`
                      : say`Sorted by ${state.sortedBy}, high to low:`
                  }
                    <button class="link" type="button" @click=${actions.unsort}>${say`as written`}</button>`
                : nothing
            }
            ${
              look && look.filteredOut > 0
                ? html`${
                    look.filteredOut === 1
                      ? say`1 row hidden by a filter:`
                      : say`${look.filteredOut} rows hidden by a filter:`
                  }
                    <button class="link" type="button" @click=${actions.showAllRows}>${say`show all`}</button>`
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
          ${icons.care}<span>${spoken(why)}</span>
          <button class="button" type="button" @click=${() => actions.run(action)}>${spoken(action.label)}</button>
        </p>`;
  })}`;
};
