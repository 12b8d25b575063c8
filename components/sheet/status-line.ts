import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';
import type { KeepStatus } from '../../src/storage/status.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';

export const GRID_NOT_LOADED: Problem = {
  code: 'grid-not-loaded',
  message: 'The grid could not be loaded.',
  mend: 'Check the connection and try again. Reading works as before.',
};

const SHORT: Readonly<Record<KeepStatus['state'], string>> = {
  opening: 'Opening…',
  saving: 'Saving…',
  saved: 'Saved',
  'could not save': 'Could not save',
  'not kept': 'Not kept',
};

/** How the book stands with storage; what to do is said in full where there is something to do. */
export const keptWords = (status: KeepStatus): TemplateResult => {
  const bad = status.state === 'could not save';
  const said = status.problem ? status.message : '';
  return html`<span class="kept ${bad ? 'problem' : 'quiet'}" role="status" title=${status.message}>
    ${status.state === 'saved' ? icons.check : bad ? icons.care : nothing}
    <span>${SHORT[status.state]}${said ? html`. ${said}` : nothing}</span>
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
        : html`<button class="button plain" type="button" aria-label="Dismiss" @click=${dismiss}>
            ${icons.close}
          </button>`
    }
    ${status ? keptWords(status) : nothing}
  </div>
`;
