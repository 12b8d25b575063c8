import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';
import type { KeepStatus } from '../../src/storage/status.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';

export const GRID_NOT_LOADED: Problem = {
  code: 'grid-not-loaded',
  message: phrase('The grid could not be loaded.'),
  mend: phrase('Check the connection and try again. Reading works as before.'),
};

const SHORT: Readonly<Record<KeepStatus['state'], string>> = {
  opening: phrase('Opening…'),
  saving: phrase('Saving…'),
  saved: phrase('Saved'),
  'could not save': phrase('Could not save'),
  'not kept': phrase('Not kept'),
};

/** How the book stands with storage; what to do is said in full where there is something to do. */
export const keptWords = (status: KeepStatus): TemplateResult => {
  const bad = status.state === 'could not save';
  const said = status.problem ? spoken(status.message) : '';
  return html`<span class="kept ${bad ? 'problem' : 'quiet'}" role="status" title=${spoken(status.message)}>
    ${status.state === 'saved' ? icons.check : bad ? icons.care : nothing}
    <span>${spoken(SHORT[status.state])}${said ? html`. ${said}` : nothing}</span>
  </span>`;
};

/** The line under a sheet: what was refused or noted, read out as it comes, and whether all is saved. */
export const statusLine = (
  said: Problem | string | null,
  status: KeepStatus | null,
  dismiss: () => void,
): TemplateResult => html`
  <div class="status small" part="status">
    <div class="said" role="status" aria-live="polite">
      ${
        said === null
          ? nothing
          : html`<span class="note ${typeof said === 'string' ? '' : 'problem'}">
              ${typeof said === 'string' ? nothing : icons.care}<span>${inWords(said)}</span>
            </span>`
      }
    </div>
    ${
      said === null
        ? nothing
        : html`<button class="button plain" type="button" aria-label=${say`Dismiss`} @click=${dismiss}>
            ${icons.close}
          </button>`
    }
    ${status ? keptWords(status) : nothing}
  </div>
`;
