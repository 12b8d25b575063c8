import { html, svg, type TemplateResult } from 'lit';
import type { Chart } from '../../src/lessons/index.js';
import { numberFormat, say } from '../../src/words/index.js';

const [WIDTH, HEIGHT, LEFT, TOP] = [360, 180, 40, 14] as const;
/** Characters of a bar's name that fit a line of it. */
const FIT = 9;

/** A number as the language writes it, not parted by thousands. */
const inDigits = (n: number): string =>
  numberFormat({ useGrouping: false, maximumFractionDigits: 20 }).format(n);

/** A name on up to three short lines. */
function linesFor(label: string, bars: number): string[] {
  const fit = bars <= 3 ? FIT * 2 : bars <= 5 ? FIT + 2 : FIT;
  const lines: string[] = [];
  for (const word of label.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= fit)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word.length > fit ? `${word.slice(0, fit - 1)}…` : word);
  }
  return lines.slice(0, 3);
}

/** The bars with their lines; the picture alone, as it is printed, too. */
export function chartPicture(chart: Chart): TemplateResult {
  const { title, bars, step, unit, numbered } = chart;
  const most = Math.max(...bars.map(({ value }) => value));
  const lines = Math.ceil(most / step);
  const names = bars.map(({ label }) => linesFor(label, bars.length));
  const foot = 4 + 14 * Math.max(...names.map(({ length }) => length));
  const y = (value: number): number => TOP + (HEIGHT - TOP) * (1 - value / (lines * step));
  const room = (WIDTH - LEFT - 6) / bars.length;
  const wide = Math.min(46, room * 0.62);
  return html`<svg
    viewBox="0 0 ${WIDTH} ${HEIGHT + foot}"
    role="img"
    aria-label=${say`Bar chart: ${title}. The numbers stand in the table behind it.`}
  >
    ${Array.from({ length: lines + 1 }, (_, at) => at).map(
      (
        at,
      ) => svg`<line class=${at === 0 ? 'foot' : 'line'} x1=${LEFT} x2=${WIDTH} y1=${y(at * step)} y2=${y(at * step)}></line>
        <text x=${LEFT - 5} y=${y(at * step) + 4} text-anchor="end">${inDigits(at * step)}</text>`,
    )}
    ${bars.map(({ value }, at) => {
      const middle = LEFT + 4 + room * (at + 0.5);
      return svg`<rect class="bar" x=${middle - wide / 2} width=${wide} y=${y(value)} height=${y(0) - y(value)}></rect>
        ${numbered ? svg`<text x=${middle} y=${y(value) - 3} text-anchor="middle">${inDigits(value)}</text>` : ''}
        <text text-anchor="middle">${names[at]?.map(
          (line, row) => svg`<tspan x=${middle} y=${HEIGHT + 14 + row * 13}>${line}</tspan>`,
        )}</text>`;
    })}
    <desc>${unit}</desc>
  </svg>`;
}

/** A chart on the screen: title, picture, and the table that holds the same numbers. */
export const chartView = (chart: Chart): TemplateResult => html`<figure class="chart">
  <figcaption class="small">${chart.title}</figcaption>
  ${chartPicture(chart)}
  <details class="small">
    <summary>${say`The chart as a table`}</summary>
    <table>
      <caption class="unseen">
        ${chart.title}
      </caption>
      <tbody>
        ${chart.bars.map(
          ({ label, value }) => html`<tr>
            <th scope="row">${label}</th>
            <td class="figures">${inDigits(value)} ${chart.unit}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </details>
</figure>`;
