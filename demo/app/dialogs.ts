import { html, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';

const close = (event: Event): void => (event.target as HTMLElement).closest('dialog')?.close();

/** A form in a dialog whose answers go to `use` when it is sent. */
const sent = (use: (form: FormData) => void) => (event: SubmitEvent) => {
  event.preventDefault();
  const form = event.target as HTMLFormElement;
  use(new FormData(form));
  form.closest('dialog')?.close();
  form.reset();
};

/** Asks for the title of a sheet: a new one's, or another for one that is there. */
export const nameDialog = (title: string | null, use: (title: string) => void): TemplateResult => html`
  <dialog id="name" aria-labelledby="name-title">
    <form @submit=${sent((form) => use(String(form.get('title')).trim() || title || 'New sheet'))}>
      <h2 id="name-title">${title === null ? 'A sheet of your own' : 'Rename this sheet'}</h2>
      ${
        title === null
          ? html`<p>Any text, numbers, dates and formulas: seed orders, hens and eggs, who owes whom a jar.</p>`
          : ''
      }
      <div class="field">
        <label for="sheet-title">Title</label>
        <input id="sheet-title" name="title" maxlength="200" autocomplete="off" .value=${title ?? ''} />
      </div>
      <div class="ends">
        <button type="button" @click=${close}>Cancel</button>
        <button class="first">${title === null ? 'Add the sheet' : 'Rename'}</button>
      </div>
    </form>
  </dialog>
`;

export const problemsDialog = (problems: readonly Problem[]): TemplateResult => html`
  <dialog id="problems" aria-labelledby="problems-title">
    <form method="dialog">
      <h2 id="problems-title">That could not be opened</h2>
      <p>Your books are as they were.</p>
      <ul>
        ${problems.map(
          ({ message, mend, where }) =>
            html`<li>
              <strong class="problem">${message}</strong> ${mend}
              ${where?.path ? html`<br /><small>In the file at <code>${where.path}</code></small>` : ''}
            </li>`,
        )}
      </ul>
      <div class="ends"><button class="first">Close</button></div>
    </form>
  </dialog>
`;
