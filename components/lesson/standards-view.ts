import { html, nothing, type TemplateResult } from 'lit';
import {
  STANDARDS,
  STANDARDS_NAME,
  type StandardCode,
  standardPage,
  standardShown,
  topicWithId,
} from '../../src/lessons/index.js';
import { asWritten, say, spoken } from '../../src/words/index.js';

const standardsOf = (topics: readonly string[]): readonly StandardCode[] =>
  [...new Set(topics.flatMap((id) => topicWithId(id)?.standards ?? []))].sort();

const asked = (code: StandardCode): string => asWritten(() => spoken(STANDARDS[code].asks));

/** School standards that a sheet exercises, with the published page of each. */
export function standardsView(topics: readonly string[]): TemplateResult | typeof nothing {
  const codes = standardsOf(topics);
  return codes.length === 0
    ? nothing
    : html`<details class="small">
        <summary>${say`School standards that it exercises`}</summary>
        <p>${say`${STANDARDS_NAME}, said in our words:`}</p>
        <ul>
          ${codes.map(
            (code) => html`<li>
              <a href=${standardPage(code)} target="_blank" rel="noopener noreferrer">${standardShown(code)}</a>:
              ${asked(code)}
            </li>`,
          )}
        </ul>
      </details>`;
}

/** The same on paper. */
export function standardsOnPaper(topics: readonly string[]): TemplateResult | typeof nothing {
  const codes = standardsOf(topics);
  return codes.length === 0
    ? nothing
    : html`<h2>${say`School standards that it exercises`}</h2>
        <p class="small">${say`${STANDARDS_NAME} (thecorestandards.org/Math), said in our words:`}</p>
        <ul class="small">
          ${codes.map((code) => html`<li>${standardShown(code)}: ${asked(code)}</li>`)}
        </ul>`;
}
