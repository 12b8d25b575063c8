import { html, type TemplateResult } from 'lit';

/** A mark beside its meaning; `one`: a single mark, drawn about its middle. */
export const sample = (drawing: unknown, one = false): TemplateResult =>
  html`<svg class=${one ? 'one' : ''} aria-hidden="true" focusable="false">
    <svg x=${one ? '50%' : '0'} y="50%" overflow="visible">${drawing}</svg>
  </svg>`;
