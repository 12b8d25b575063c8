import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/** Our own drawings of the week's doings, on a square of 20, beside words. */
const icon = (paths: SVGTemplateResult): TemplateResult =>
  html`<svg class="icon" viewBox="0 0 20 20" aria-hidden="true" focusable="false">${paths}</svg>`;

export const weekIcons = {
  list: icon(
    svg`<path d="M8.5 5.500h8M8.5 10h8M8.5 14.500h8"/><path d="m3.5 5.500 1 1 2-2M3.500 10l1 1 2-2M3.500 14.500l1 1 2-2"/>`,
  ),
  pot: icon(
    svg`<path d="M4.500 8.500h11v5a2.500 2.500 0 0 1-2.500 2.500H7a2.500 2.500 0 0 1-2.500-2.500z"/><path d="M2.500 8.500h15M8 5.750c0-1 1-1 1-2M11 5.750c0-1 1-1 1-2"/>`,
  ),
  count: icon(
    svg`<path d="M3.500 16.500h13M3.500 10h13"/><path d="M5 10V5.500h2.500V10M9 10V5.500h2.500V10M5 16.500V12h2.500v4.500"/><path d="m12 14 1.500 1.500 3-3.250"/>`,
  ),
  take: icon(svg`<path d="M3.500 13.500v3h13v-3"/><path d="M10 13V4M6.500 7.250 10 3.750l3.500 3.500"/>`),
  label: icon(svg`<path d="M3.500 5.500h9l4 4.500-4 4.500h-9z"/><path d="M6.500 8.500h4M6.500 11.500h4"/>`),
  wish: icon(
    svg`<path d="M10 16.500c-4-2.750-6.500-5-6.500-8a3.250 3.250 0 0 1 6.500-1.250A3.250 3.250 0 0 1 16.500 8.500c0 3-2.500 5.250-6.500 8z"/>`,
  ),
} as const;
