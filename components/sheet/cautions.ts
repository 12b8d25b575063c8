import { html, nothing, type TemplateResult } from 'lit';
import type { Caution } from '../../src/facts/index.js';
import { AUTHORITY } from '../../src/live/cautions-of.js';
import { say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';

export { cautionsOf } from '../../src/live/cautions-of.js';

const MOST_SHOWN = 3;

/** The cautions under a sheet: a few in sight, the others one step away. */
export function cautionsView(all: readonly Caution[]): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const items = (some: readonly Caution[]) => some.map(({ text }) => html`<li>${text}</li>`);
  return html`<aside class="cautions small" part="cautions" aria-label=${say`Food safety`}>
    ${icons.care}
    <div>
      <ul>
        ${items(all.slice(0, MOST_SHOWN))}
        ${all.some(({ id }) => id === 'tested-process') ? nothing : html`<li>${spoken(AUTHORITY)}</li>`}
      </ul>
      ${
        all.length > MOST_SHOWN
          ? html`<details>
              <summary>${say`More on food safety`}</summary>
              <ul>
                ${items(all.slice(MOST_SHOWN))}
              </ul>
            </details>`
          : nothing
      }
    </div>
  </aside>`;
}
