import { html, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';

/** Problems in words, one a line: what is wrong, how to mend it, and where in the file. */
export const problemList = (problems: readonly Problem[]): TemplateResult => html`
  <ul class="stack problems" part="problems">
    ${problems.map(
      ({ message, mend, where }) => html`<li>
        <strong class="problem">${message}</strong> ${mend}
        ${where?.path ? html`<br /><span class="quiet small">In the file at <code>${where.path}</code></span>` : ''}
      </li>`,
    )}
  </ul>
`;

export const inWords = (problem: Problem | string): string =>
  typeof problem === 'string' ? problem : `${problem.message} ${problem.mend}`.trim();
