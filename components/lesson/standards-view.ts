import { html, nothing, type TemplateResult } from 'lit';
import {
  STANDARDS,
  STANDARDS_NAME,
  type StandardCode,
  standardPage,
  standardShown,
  topicWithId,
} from '../../src/lessons/index.js';

const standardsOf = (topics: readonly string[]): readonly StandardCode[] =>
  [...new Set(topics.flatMap((id) => topicWithId(id)?.standards ?? []))].sort();

/** School standards that a sheet exercises, with the published page of each. */
export function standardsView(topics: readonly string[]): TemplateResult | typeof nothing {
  const codes = standardsOf(topics);
  return codes.length === 0
    ? nothing
    : html`<details class="small">
        <summary>School standards that it exercises</summary>
        <p>${STANDARDS_NAME}, said in our words:</p>
        <ul>
          ${codes.map(
            (code) => html`<li>
              <a href=${standardPage(code)} target="_blank" rel="noopener noreferrer">${standardShown(code)}</a>:
              ${STANDARDS[code].asks}
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
    : html`<h2>School standards that it exercises</h2>
        <p class="small">${STANDARDS_NAME} (thecorestandards.org/Math), said in our words:</p>
        <ul class="small">
          ${codes.map((code) => html`<li>${standardShown(code)}: ${STANDARDS[code].asks}</li>`)}
        </ul>`;
}
