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

/** The few questions that start a household's book. None must be answered. */
export const startDialog = (use: (form: FormData) => void): TemplateResult => html`
  <dialog id="start" aria-labelledby="start-title">
    <form @submit=${sent(use)}>
      <h2 id="start-title">Start your own book</h2>
      <p>
        Answer what you know; every answer can be changed later on the Household sheet. This book stays as it
        is, beside yours.
      </p>
      <div class="field">
        <label for="own-title">What shall the book be called?</label>
        <input id="own-title" name="title" maxlength="200" placeholder="Our book" autocomplete="off" />
      </div>
      <div class="field">
        <label for="own-people">Who eats at the table?</label>
        <input id="own-people" name="people" placeholder="Ada, Tom, little Jo 0.5" autocomplete="off" aria-describedby="own-people-help" />
        <small id="own-people-help">Names with commas between. A number is a share: 1 is a grown appetite, 0.5 half of that.</small>
      </div>
      <div class="pair">
        <div class="field">
          <label for="own-last">Last spring frost</label>
          <input id="own-last" name="lastFrost" placeholder="05-24" autocomplete="off" aria-describedby="own-frost-help" />
        </div>
        <div class="field">
          <label for="own-first">First fall frost</label>
          <input id="own-first" name="firstFrost" placeholder="09-18" autocomplete="off" aria-describedby="own-frost-help" />
        </div>
        <div class="field">
          <label for="own-altitude">Altitude in feet</label>
          <input id="own-altitude" name="altitudeFt" inputmode="decimal" placeholder="2300" autocomplete="off" />
        </div>
      </div>
      <small id="own-frost-help" hidden>A month and a day.</small>
      <div class="field">
        <label for="own-standing">What stands where?</label>
        <textarea
          id="own-standing"
          name="standing"
          rows="4"
          aria-describedby="own-standing-help"
          placeholder="Cellar, top shelf: tomatoes 24, green beans 18&#10;Chest freezer"
        ></textarea>
        <small id="own-standing-help">A line for each place; after a colon, a few foods with how many. The rest can follow later.</small>
      </div>
      <div class="ends">
        <button type="button" @click=${close}>Cancel</button>
        <button class="first">Start the book</button>
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
