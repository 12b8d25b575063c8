import { css, html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';
import type { Conflict, Decision } from '../../src/storage/index.js';
import { say } from '../../src/words/index.js';
import { valueWords } from '../history/shown-difference.js';

export const conflictStyles = css`
  .conflicts {
    display: grid;
    gap: 0.75rem;
  }
  .conflict {
    display: grid;
    gap: 0.5rem;
    padding: 0.625rem;
    border: 1px solid var(--line);
    border-inline-start: 4px solid var(--problem);
    border-radius: var(--radius);
    background: var(--raised);
    min-width: 0;
  }
  .conflict.decided {
    border-inline-start-color: var(--accent);
  }
  .conflict legend {
    font-weight: 600;
    padding: 0;
    float: inline-start;
    overflow-wrap: anywhere;
  }
  .conflict legend + * {
    clear: both;
  }
  .sides {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
    gap: 0.5rem;
  }
  .side {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 0 0.5rem;
    align-items: start;
    padding: 0.5rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--paper);
    font-weight: 400;
    cursor: pointer;
  }
  .side:has(:checked) {
    border-color: var(--accent);
    box-shadow: inset 0 0 0 1px var(--accent);
  }
  .side b {
    display: block;
    overflow-wrap: anywhere;
    font-size: 0.9375rem;
  }
  @media print {
    .conflicts {
      display: block;
    }
    .conflict {
      break-inside: avoid;
      margin-block-end: 6pt;
    }
  }
`;

export interface ConflictHost {
  readonly where: (conflict: Conflict) => string;
  readonly column: (sheet: string, column: string) => ColumnView | undefined;
  readonly both: (conflict: Conflict) => string | undefined;
  readonly decision: (conflict: Conflict) => Decision | undefined;
  readonly choose: (conflict: Conflict, decision: Decision) => void;
  /** Shown below the choice: buttons of a conflict that stands on the list. */
  readonly foot?: (conflict: Conflict) => TemplateResult;
}

/** What a side holds, in words: a row by its entries. */
function sideWords(value: Conflict['mine'], { path }: Conflict, { column }: ConflictHost): string {
  const [, sheet = '', , , field, id = ''] = path;
  if (value === undefined) return say`removed`;
  if (typeof value === 'object' && value !== null) {
    const cells = 'cells' in value ? (value.cells as object) : value;
    const entries = Object.entries(cells)
      .slice(0, 5)
      .map(([of, cell]) => valueWords(cell as string, column(sheet, of)));
    return say`kept: ${entries.join(', ')}`;
  }
  if (typeof value === 'string' && value.startsWith('=')) return say`the formula ${value}`;
  return valueWords(value, field === 'cells' ? column(sheet, id) : undefined);
}

/** What two copies set each its own way, side by side, to choose from. */
export const conflictView = (conflict: Conflict, index: number, host: ConflictHost): TemplateResult => {
  const decision = host.decision(conflict);
  const both = host.both(conflict);
  const side = (choice: Decision, label: string, words: string) =>
    html`<label class="side">
      <input
        type="radio"
        name=${`conflict-${index}`}
        .checked=${isChosen(decision, choice)}
        @change=${() => host.choose(conflict, choice)}
      />
      <span><span class="quiet small">${label}</span><b>${words}</b></span>
    </label>`;
  return html`<fieldset class="conflict ${decision === undefined ? '' : 'decided'}">
    <legend>${host.where(conflict)}</legend>
    <div class="sides">
      ${side('mine', say`Mine, in this book`, sideWords(conflict.mine, conflict, host))}
      ${side('theirs', say`Theirs, in the copy`, sideWords(conflict.theirs, conflict, host))}
      ${both === undefined ? nothing : side({ value: both }, say`Both`, both)}
    </div>
    ${host.foot?.(conflict) ?? nothing}
  </fieldset>`;
};

const isChosen = (decision: Decision | undefined, choice: Decision): boolean =>
  typeof decision === 'object' ? typeof choice === 'object' : decision === choice;
