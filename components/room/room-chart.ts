import { scaleLinear } from 'd3-scale';
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { toIsoDay } from '../../src/planning/dates.js';
import type { DayNumber } from '../../src/planning/types.js';
import { say } from '../../src/words/index.js';
import { styled } from '../look/styled.js';
import { monthNames, rules } from '../pictures/axis-view.js';
import { timeAxis } from '../pictures/time-axis.js';
import type { StoreyRoom } from './room-model.js';
import { roomAmount, weekInWords } from './room-words.js';

const HEIGHT = 132;
const TICKS = 3;
/** Least height of a part that does not fit. */
const LEAST = 5;

/** Slanting lines over the part of a bar that does not fit, so that colour is not needed to see it. */
export const patterns: TemplateResult = html`<svg class="defs" aria-hidden="true" focusable="false">
  <defs>
    <pattern id="too-much" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect class="too-much" width="5" height="5" />
      <path class="hatch" d="M0 0v5" />
    </pattern>
  </defs>
</svg>`;

export const markOf = ({ storey }: StoreyRoom, from: DayNumber): string => `${storey}/${from}`;

/** One storey as bars, a week each, with the line of what there is room for; every week can be pointed at. */
export function roomChart(room: StoreyRoom, asOf: DayNumber, tab: string | undefined): TemplateResult {
  const { weeks, room: limit, storey } = room;
  const last = weeks.at(-1);
  const axis = timeAxis(asOf, (last?.from ?? asOf) + 7);
  const greatest = Math.max(limit ?? 0, ...weeks.map(({ taken }) => taken), 1);
  const y = scaleLinear([0, greatest], [HEIGHT, 14]).nice(TICKS);
  const labels = new Map(y.ticks(TICKS).map((n) => [roomAmount(storey, n), n]));
  const ticks = [...labels.values()].filter((n) => n > 0);
  const bar = (week: StoreyRoom['weeks'][number]): SVGTemplateResult => {
    const [x, end] = [axis.at(week.from), axis.at(week.from + 7)];
    const fits = week.over && limit !== null ? limit : week.taken;
    // Too much is seen however little it is.
    const rect = (kind: string, from: number, to: number, least = 0): SVGTemplateResult => {
      const high = Math.max(least, y(from) - y(to));
      return svg`<rect class=${kind} x="${x}%" width="${Math.max(0, end - x)}%" y=${y(from) - high} height=${high}/>`;
    };
    return week.over
      ? svg`${rect('taken full', 0, fits)}${rect('over', fits, week.taken, LEAST)}`
      : rect('taken', 0, fits);
  };
  return html`<div class="storey" data-storey=${storey}>
    <div class="plane" ${styled({ height: `${HEIGHT}px` })}>
      <svg class="bars" aria-hidden="true" focusable="false">
        ${rules(axis, [])}
        ${ticks.map((n) => svg`<line class="tick-line" x1="0" x2="100%" y1=${y(n)} y2=${y(n)}/>`)}
        ${weeks.map(bar)}
        ${limit === null ? nothing : svg`<line class="limit" x1="0" x2="100%" y1=${y(limit)} y2=${y(limit)}/>`}
      </svg>
      ${ticks.map(
        (n) =>
          html`<span class="amount" aria-hidden="true" ${styled({ top: `${y(n)}px` })}>${roomAmount(storey, n)}</span>`,
      )}
      ${
        limit === null
          ? nothing
          : html`<span class="amount limit-name" aria-hidden="true" ${styled({ top: `${y(limit)}px` })}
              >${say`room for ${roomAmount(storey, limit)}`}</span
            >`
      }
      <div class="weeks">
        ${weeks.map((week) => {
          const mark = markOf(room, week.from);
          return html`<span
            class="week ${week.over ? 'over' : ''}"
            role="img"
            data-mark=${mark}
            data-week=${toIsoDay(week.from)}
            tabindex=${mark === tab ? 0 : -1}
            aria-label=${weekInWords(room, week)}
          ></span>`;
        })}
      </div>
    </div>
    <div class="months" aria-hidden="true">${monthNames(axis)}</div>
  </div>`;
}
