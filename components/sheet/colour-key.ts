import { css, html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';
import { say } from '../../src/words/index.js';

/** What the colours of the columns mean, for the kinds of column that are there. */
export function colourKey(columns: readonly ColumnView[]): TemplateResult {
  const has = (role: string) => columns.some((column) => column.role === role && !column.hidden);
  return html`<ul class="key" aria-label=${say`What the columns are`}>
    ${has('kept') ? html`<li><span class="swatch"></span>${say`written by the household`}</li>` : nothing}
    ${has('planning') ? html`<li><span class="swatch planning"></span>${say`worked out from it`}</li>` : nothing}
    ${has('own') ? html`<li><span class="swatch own"></span>${say`own columns`}</li>` : nothing}
  </ul>`;
}

export const colourKeyStyles = css`
  .key {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 1.125rem;
  }
  .key li {
    display: flex;
    align-items: center;
    gap: 0.375rem;
  }
  .swatch {
    width: 1rem;
    height: 1rem;
    border: 1px solid var(--line);
    border-radius: 3px;
    background: var(--paper);
  }
  .swatch.planning {
    background: var(--plan);
    box-shadow: inset 0 3px 0 var(--plan-line);
  }
  .swatch.own {
    box-shadow: inset 0 3px 0 var(--own);
  }
  /* Shadows and tints go: the mark becomes a line of its own kind. */
  @media (forced-colors: active) {
    .swatch.planning {
      border-top: 4px double;
    }
    .swatch.own {
      border-top: 3px dashed;
    }
  }
`;
