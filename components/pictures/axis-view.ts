import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { styled } from '../look/styled.js';
import type { TimeAxis } from './time-axis.js';

/** A day drawn as a line through every row. */
export interface DayLine {
  readonly x: number;
  readonly kind: 'as-of' | 'last-frost' | 'first-frost';
}

/** Lines down through one row: months, years, and days of note. They meet those of the rows beside it. */
export const rules = (axis: TimeAxis, days: readonly DayLine[]): SVGTemplateResult => svg`<g class="rules">
  ${axis.months.map(
    ({ x, year }) =>
      svg`<line class=${year === null ? 'month' : 'year'} x1="${x}%" x2="${x}%" y1="0" y2="100%"/>`,
  )}
  ${days.map(({ x, kind }) => svg`<line class=${kind} x1="${x}%" x2="${x}%" y1="0" y2="100%"/>`)}
</g>`;

/**
 * Names of the months, with years; each begins at its own first day. Plain text, not drawn: so it prints again
 * at the head of each page.
 */
export const monthNames = (axis: TimeAxis): TemplateResult[] =>
  axis.months.flatMap(({ x, text, year, narrow, wide }) => {
    // A name that would run over the right edge.
    if (x > 97) return [];
    return [
      html`<span class="tick ${narrow ? 'narrow' : ''} ${wide ? 'wide' : ''} ${year === null ? '' : 'year'}" ${styled({ left: `${x}%` })}
        >${year === null ? nothing : html`<b>${year}</b>`}${text}</span
      >`,
    ];
  });

/** A day named above the line through it; at the right end the name stands before the line. */
export const dayName = (x: number, text: string, kind = ''): TemplateResult =>
  html`<span class="day ${kind} ${x > 70 ? 'before' : ''}" ${styled({ left: `${x}%` })}>${text}</span>`;
