import { css, html, nothing, type TemplateResult } from 'lit';
import type { ColumnView } from '../../src/live/columns.js';

/** What the colours of the columns mean, for the kinds of column that are there. */
export function colourKey(columns: readonly ColumnView[]): TemplateResult {
  const has = (role: string) => columns.some((column) => column.role === role && !column.hidden);
  return html`<ul class="key" aria-label="What the columns are">
    ${has('kept') ? html`<li><span class="swatch"></span>written by the household</li>` : nothing}
    ${has('planning') ? html`<li><span class="swatch planning"></span>worked out from it</li>` : nothing}
    ${has('own') ? html`<li><span class="swatch own"></span>own columns</li>` : nothing}
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
`;
