import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { DayNumber } from '../../src/planning/types.js';
import { type DayLine, rules } from '../pictures/axis-view.js';
import type { TimeAxis } from '../pictures/time-axis.js';
import type { Beginning, SeasonRow, Span } from './season-model.js';

/** The pattern of putting up; once for each picture. */
export const patterns: TemplateResult = html`<svg class="defs" aria-hidden="true" focusable="false">
  <defs>
    <pattern id="jars" width="5" height="8" patternUnits="userSpaceOnUse">
      <rect class="jar" x="0.5" width="3.5" height="8" />
    </pattern>
  </defs>
</svg>`;

/** Drawings of each beginning, around the middle of their place. Filled where it is on record. */
const BEGINNINGS: Readonly<Record<Beginning, SVGTemplateResult>> = {
  // A roof: under cover.
  'start indoors': svg`<path d="M-5.5 5V-1L0-6.500 5.500-1V5z"/>`,
  'sow under cover': svg`<path d="M-6 5A6 8 0 0 1 6 5z"/>`,
  // A seed.
  sow: svg`<path d="M0-6C4.500-2.500 4.500 2.500 0 6-4.500 2.500-4.500-2.500 0-6z"/>`,
  // A bulb or root.
  plant: svg`<path d="M-5.500-4H5.500L0 6z"/>`,
};

export const beginMark = (what: Beginning, done: boolean): SVGTemplateResult =>
  svg`<g class="begin ${done ? 'done' : ''}">${BEGINNINGS[what]}</g>`;

/** A seedling: a stem with two leaves. */
export const setOutMark = svg`<g class="set-out">
  <path class="stem" d="M0 7V-2"/>
  <path d="M0-1C-1-6-5-6.500-7-6-6.500-2.500-4-.500 0-1z"/><path d="M0-2C1-7 5-7.500 7-7 6.500-3.500 4-1.500 0-2z"/>
</g>`;

const at = (x: number, drawing: SVGTemplateResult): SVGTemplateResult =>
  svg`<svg x="${x}%" y="50%" overflow="visible">${drawing}</svg>`;

const width = (axis: TimeAxis, from: DayNumber, to: DayNumber): string =>
  Math.max(0, axis.at(to) - axis.at(from)).toFixed(3);

function band(kind: string, span: Span | null, axis: TimeAxis, y: number, height: number) {
  if (!span || span.to < axis.from || span.from > axis.to) return nothing;
  // Both days count, so that one day of harvest is seen, too.
  return svg`<rect class=${kind} fill=${kind === 'put-up' ? 'url(#jars)' : nothing} x="${axis.at(span.from)}%"
    width="${width(axis, span.from, span.to + 1)}%" y=${y} height=${height}/>`;
}

function line(kind: string, from: DayNumber | null, to: DayNumber | null, axis: TimeAxis) {
  if (from === null || to === null || to <= from) return nothing;
  return svg`<line class=${kind} x1="${axis.at(from)}%" x2="${axis.at(to)}%" y1="0" y2="0"/>`;
}

/** The drawing of one planting over the year. */
export function seasonMarks(
  row: SeasonRow,
  axis: TimeAxis,
  days: readonly DayLine[],
  free: readonly Span[],
): TemplateResult {
  const { begin, setOut, harvest, putUp, what, done } = row;
  const outdoors = setOut ?? (what === 'start indoors' ? null : begin);
  const until = harvest?.from ?? null;
  return html`<svg class="plot" aria-hidden="true" focusable="false">
    ${free.map(
      ({ from, to }) =>
        svg`<rect class="free" x="${axis.at(from)}%" width="${width(axis, from, to)}%" height="100%"/>`,
    )}
    ${rules(axis, days)}
    <svg y="50%" width="100%" overflow="visible">
      ${line('cover', begin, setOut ?? (outdoors === null ? until : null), axis)}
      ${line('growing', outdoors, until, axis)} ${band('reap', harvest, axis, -7, 10)}
      ${band('put-up', putUp, axis, 4, 6)}
    </svg>
    ${begin !== null && axis.within(begin) ? at(axis.at(begin), beginMark(what, done)) : nothing}
    ${setOut !== null && axis.within(setOut) ? at(axis.at(setOut), setOutMark) : nothing}
  </svg>`;
}
