import { css, html, nothing, type TemplateResult } from 'lit';
import type { BringBack } from '../../src/live/doings/bring-back.js';
import type { BookComparison } from '../../src/live/doings/compare-books.js';
import type { VersionEntry } from '../../src/storage/index.js';
import { HERE } from '../../src/words/here.js';
import { say } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { comparisonView } from './comparison-view.js';
import { versionCalled } from './versions-list.js';

/** Which two are compared. */
export interface Compared {
  readonly entry: VersionEntry;
  /** What it can be compared with beside the book as it is now. */
  readonly others: readonly VersionEntry[];
  /** Null: the book as it is now. */
  readonly other: VersionEntry | null;
}

/** How far comparing is, and what of it is listed. */
export interface ComparingState {
  /** Null until it is compared. */
  readonly found: BookComparison | null;
  /** From 0 to 1. */
  readonly progress: number;
  /** The sheet that is listed; all, when null. */
  readonly sheet: string | null;
  /** Planning figures are listed too. */
  readonly figures: boolean;
  readonly unfolded: ReadonlySet<string>;
}

export interface ComparingHost {
  /** Null: with the book as it is now. */
  compareWith(version: number | null): void;
  onlySheet(sheet: string | null): void;
  withFigures(wanted: boolean): void;
  unfold(sheet: string): void;
  bringBack(what: BringBack, called: string): void;
}

export const comparingStyles = css`
  .chosen {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(12rem, 1fr));
    gap: 0.625rem 1rem;
    align-items: end;
  }
  .tick {
    display: flex;
    gap: 0.5rem;
    align-items: center;
    min-height: 2.125rem;
  }
  /* What was chosen, as words. */
  @media print {
    .chosen .field,
    .tick {
      min-height: 0;
    }
    .chosen select {
      appearance: none;
      border: 0;
      padding: 0;
      min-height: 0;
      background: none;
      color: inherit;
      opacity: 1;
    }
  }
`;

/** A version beside another one, or beside the book as it is now. */
export const comparingView = (
  compared: Compared,
  state: ComparingState,
  host: ComparingHost,
): TemplateResult => html`
  ${choices(compared, state, host)}
  ${
    state.found
      ? foundView(state.found, compared.other === null, state, host)
      : html`<div>
          <label for="progress">${say`Comparing…`}</label>
          <progress id="progress" max="1" .value=${state.progress}></progress>
        </div>`
  }
`;

const chosenIn = (event: Event): string => (event.target as HTMLSelectElement).value;

function choices(
  { entry, others, other }: Compared,
  { found, sheet: only, figures }: ComparingState,
  host: ComparingHost,
): TemplateResult {
  return html`<div class="chosen">
    <div class="field">
      <span class="small"><strong>${say`Was:`}</strong> ${versionCalled(entry)}</span>
      <label for="other">${say`Compared with`}</label>
      <select
        id="other"
        @change=${(event: Event) => host.compareWith(chosenIn(event) === '' ? null : Number(chosenIn(event)))}
      >
        <option value="" ?selected=${other === null}>${say`the book as it is now`}</option>
        ${others.map(
          (each) =>
            html`<option value=${each.id} ?selected=${other?.id === each.id}>${versionCalled(each)}</option>`,
        )}
      </select>
    </div>
    <div class="field">
      <label for="only">${say`Sheet`}</label>
      <select
        id="only"
        ?disabled=${!found}
        @change=${(event: Event) => host.onlySheet(chosenIn(event) || null)}
      >
        <option value="">${say`all sheets${HERE}`}</option>
        ${(found?.sheets ?? []).map(
          ({ sheet, title }) => html`<option value=${sheet} ?selected=${sheet === only}>${title}</option>`,
        )}
      </select>
    </div>
    <label class="tick"
      ><input
        type="checkbox"
        .checked=${figures}
        @change=${(event: Event) => host.withFigures((event.target as HTMLInputElement).checked)}
      />${say`Planning figures too`}</label
    >
  </div>`;
}

/** What differs; only from the book as it is now can something be brought back. */
function foundView(
  found: BookComparison,
  withNow: boolean,
  { figures, sheet, unfolded }: ComparingState,
  { unfold, bringBack }: ComparingHost,
): TemplateResult {
  return html`<p class="small quiet">
      ${say`Figures of both are worked out for the day that each is set to, else for today. The greatest differences come first; what is tinted is worked out.`}
    </p>
    ${
      withNow
        ? html`<div>
            <button
              class="button"
              type="button"
              @click=${() => bringBack({ part: 'book' }, say`the whole book`)}
            >
              ${icons.undo}${say`Bring back the whole book…`}
            </button>
          </div>`
        : nothing
    }
    ${comparisonView(found, { figures, sheet, unfolded, unfold, ...(withNow && { bringBack }) })}`;
}
