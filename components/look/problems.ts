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

/** A part of the page that is fetched when it is asked for did not come. */
export const NOT_LOADED: Problem = {
  code: 'not-loaded',
  message: 'This could not be loaded.',
  mend: 'Check the connection and try again.',
};

/** Codes of what is only worth knowing: nothing is wrong, and nothing must be mended. */
const NOTES: Readonly<Record<string, string>> = {
  'published-suggestion': 'suggested',
  'food-not-listed': 'not in Foods',
  'later-than-as-of': 'later',
  'unlike-units': 'units differ',
  'convert-units': 'units differ',
};

/** True of what is said at a cell for information only: it gets a quiet mark of its own. */
export const isNote = ({ code }: Problem): boolean => Object.hasOwn(NOTES, code);

/** The few words of a cell's mark: what kind of note it is, or that something is to be looked at. */
export const markWords = ({ code }: Problem): string => NOTES[code] ?? 'look here';
