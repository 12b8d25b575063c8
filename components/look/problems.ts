import { html, type TemplateResult } from 'lit';
import type { Problem } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';

/** Problems in words, one a line: what is wrong, how to mend it, and where in the file. */
export const problemList = (problems: readonly Problem[]): TemplateResult => html`
  <ul class="stack problems" part="problems">
    ${problems.map(
      ({ message, mend, where }) => html`<li>
        <strong class="problem">${spoken(message)}</strong> ${spoken(mend)}
        ${where?.path ? html`<br /><span class="quiet small">${say`In the file at`} <code>${where.path}</code></span>` : ''}
      </li>`,
    )}
  </ul>
`;

export const inWords = (problem: Problem | string): string =>
  typeof problem === 'string' ? spoken(problem) : `${spoken(problem.message)} ${spoken(problem.mend)}`.trim();

/** A part of the page that is fetched when it is asked for did not come. */
export const NOT_LOADED: Problem = {
  code: 'not-loaded',
  message: phrase('This could not be loaded.'),
  mend: phrase('Check the connection and try again.'),
};

/** Codes of what is only worth knowing: nothing is wrong, and nothing must be mended. */
const NOTES: Readonly<Record<string, string>> = {
  'published-suggestion': phrase('suggested'),
  'food-not-listed': phrase('not in Foods'),
  'later-than-as-of': phrase('later'),
  'unlike-units': phrase('units differ'),
  'convert-units': phrase('units differ'),
};

/** True of what is said at a cell for information only: it gets a quiet mark of its own. */
export const isNote = ({ code }: Problem): boolean => Object.hasOwn(NOTES, code);

/** The few words of a cell's mark: what kind of note it is, or that something is to be looked at. */
export const markWords = ({ code }: Problem): string => spoken(NOTES[code] ?? phrase('look here'));
