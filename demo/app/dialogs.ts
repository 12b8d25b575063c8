import { html, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from './said.js';

export const problemsDialog = (problems: readonly Problem[]): TemplateResult => html`
  <dialog id="problems" aria-labelledby="problems-title">
    <form method="dialog">
      <h2 id="problems-title">${say`That could not be opened`}</h2>
      <p>${say`Your books are as they were.`}</p>
      <ul>
        ${problems.map(
          ({ message, mend, where }) =>
            html`<li>
              <strong class="problem">${spoken(message)}</strong> ${spoken(mend)}
              ${where?.path ? html`<br /><small>${say`In the file at`} <code>${where.path}</code></small>` : ''}
            </li>`,
        )}
      </ul>
      <div class="ends"><button class="first">${say`Close`}</button></div>
    </form>
  </dialog>
`;
