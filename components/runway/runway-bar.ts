import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { DayNumber } from '../../src/planning/types.js';
import { type DayLine, rules } from '../pictures/axis-view.js';
import type { TimeAxis } from '../pictures/time-axis.js';
import { stretches } from './runway-layout.js';
import type { End, RunwayRow } from './runway-model.js';

/** Half the heights of a bar's parts, in pixels: eaten from, and resting in the fresh season. */
const [FULL, RESTING] = [6, 1.5];

/** The patterns that parts of a bar are filled with; once for each picture. */
export const patterns: TemplateResult = html`<svg class="defs" aria-hidden="true" focusable="false">
  <defs>
    <pattern id="short" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line class="hatch" x1="1" x2="1" y1="0" y2="6" />
    </pattern>
    <pattern id="over" width="5" height="5" patternUnits="userSpaceOnUse">
      <rect class="ground" width="5" height="5" />
      <circle class="dot" cx="1.5" cy="1.5" r="1.1" />
    </pattern>
  </defs>
</svg>`;

/** Where a harvest begins (a diamond) or a supply comes (a square), drawn around the middle of its place. */
export const harvestMark = (bought: boolean): SVGTemplateResult =>
  bought
    ? svg`<rect class="harvest" x="-4.5" y="-4.5" width="9" height="9"/>`
    : svg`<path class="harvest" d="M0-6.500 6.500 0 0 6.500-6.500 0z"/>`;

/** The bar runs past the edge of what is shown. */
const onwards = svg`<svg x="100%" y="50%" overflow="visible"><path class="onwards" d="M-7-6-1 0-7 6"/></svg>`;

function part(kind: string, from: DayNumber, to: DayNumber, row: RunwayRow, axis: TimeAxis) {
  return stretches(from, Math.min(to, axis.to + 1), row.season).map((stretch) => {
    const x = axis.at(stretch.from);
    const width = axis.at(stretch.to) - x;
    const half = stretch.resting ? RESTING : FULL;
    return svg`<rect class="${kind} ${stretch.resting ? 'resting' : ''}"
      fill=${kind === 'over' && !stretch.resting ? 'url(#over)' : nothing} x="${x}%" width="${width.toFixed(3)}%"
      y=${-half} height=${2 * half}/>`;
  });
}

/** The drawing of one food: its bar, its range, the next harvest, and the gap or the rest about it. */
export function runwayBar(row: RunwayRow, axis: TimeAxis, asOf: DayNumber): TemplateResult {
  const day = (end: End): DayNumber => end ?? axis.to + 1;
  const usual = day(row.end);
  const low = row.range ? Math.min(day(row.range.low), usual) : usual;
  const high = row.range ? Math.max(day(row.range.high), usual) : usual;
  const { nextHarvest: harvest, standing } = row;
  const days: DayLine[] = [{ x: axis.at(asOf), kind: 'as-of' }];
  return html`<svg class="plot" aria-hidden="true" focusable="false">
    ${rules(axis, days)}
    <svg y="50%" width="100%" overflow="visible">
      ${part('range', usual, high, row, axis)} ${part('sure', asOf, low, row, axis)}
      ${part('likely', low, usual, row, axis)}
      ${
        standing === 'short' && harvest !== null
          ? svg`<rect class="gap" fill="url(#short)" x="${axis.at(usual)}%" y="-5"
              width="${Math.max(0, axis.at(harvest) - axis.at(usual)).toFixed(3)}%" height="10"/>`
          : nothing
      }
      ${standing === 'over' && harvest !== null ? part('over', harvest, usual, row, axis) : nothing}
    </svg>
    ${
      axis.within(usual)
        ? svg`<svg x="${axis.at(usual)}%" y="50%" overflow="visible"><path class="end" d="M0-9v18"/></svg>`
        : onwards
    }
    ${
      harvest !== null && axis.within(harvest)
        ? svg`<svg x="${axis.at(harvest)}%" y="50%" overflow="visible">${harvestMark(row.bought)}</svg>`
        : nothing
    }
  </svg>`;
}
