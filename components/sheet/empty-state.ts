import { html, nothing, type TemplateResult } from 'lit';
import { icons } from '../look/icons.js';

export interface FirstStep {
  readonly label: string;
  readonly act: () => void;
}

/** What a sheet says while nothing is in it, with the first step to take. */
export const emptyState = (words: string, steps: readonly FirstStep[]): TemplateResult => html`
  <div class="empty" part="empty">
    <p>${words}</p>
    ${
      steps.length === 0
        ? nothing
        : html`<div class="row">
            ${steps.map(
              ({ label, act }, i) =>
                html`<button class="button ${i === 0 ? 'first' : ''}" type="button" @click=${act}>
                  ${i === 0 ? icons.addRow : nothing}${label}
                </button>`,
            )}
          </div>`
    }
  </div>
`;
