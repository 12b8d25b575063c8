import { html, nothing, type TemplateResult } from 'lit';
import type { FigureChange, SheetChanges } from '../../src/live/what-if-figures.js';
import { HERE } from '../../src/words/here.js';
import { say } from '../../src/words/index.js';

/** So many figures of a sheet stand there at first. */
const AT_FIRST = 16;

const MANY_LEFT = (count: number): string => say`Show all ${count} figures`;

/** How many figures would change, of how many rows, in words. */
export function countInWords(changes: readonly SheetChanges[]): string {
  const figures = changes.flatMap((each) => each.figures);
  if (figures.length === 0) return say`None of these figures would change.`;
  const rows = new Set(changes.flatMap(({ sheet, figures: of }) => of.map(({ row }) => `${sheet}/${row}`)))
    .size;
  if (figures.length === 1) return say`1 figure would change.`;
  return rows === 1
    ? say`${figures.length} figures in 1 row would change.`
    : say`${figures.length} figures in ${rows} rows would change.`;
}

/** A change to be read out. */
export const changeInWords = ({ rowName, columnTitle, was, wouldBe }: FigureChange): string =>
  say`${rowName}, ${columnTitle}: ${was}, would be ${wouldBe}.`;

/** Words stand like words, amounts under each other. */
const isAmount = ({ difference, was, wouldBe }: FigureChange): string =>
  difference !== '' || was.length + wouldBe.length < 40 ? 'number' : '';

const line = (
  change: FigureChange,
  first: boolean,
  rows: number,
): TemplateResult => html`<tr class=${first ? 'first' : ''}>
  ${first ? html`<th scope="rowgroup" rowspan=${rows}>${change.rowName}</th>` : nothing}
  <th scope="row" class="figure">${change.columnTitle}</th>
  <td class="figures ${isAmount(change)}" data-of=${say`was`}>${change.was}</td>
  <td class="figures ${isAmount(change)}" data-of=${say`would be`}>${change.wouldBe}</td>
  <td class="number figures by">${change.difference}</td>
</tr>`;

/** Figures of one sheet, row by row: was, would be, difference. */
function sheetView(
  { sheet, title, figures, totals }: SheetChanges,
  all: boolean,
  showAll: (sheet: string) => void,
): TemplateResult {
  const shown = all ? figures : figures.slice(0, AT_FIRST);
  const rows = new Map<string, FigureChange[]>();
  for (const change of shown) rows.set(change.row, [...(rows.get(change.row) ?? []), change]);
  return html`<div class="scroll" role="region" aria-label=${say`${title}: figures that would change`} tabindex="0">
      <table>
        <caption>
          ${title}
        </caption>
        <thead>
          <tr>
            <th scope="col">${say`Row`}</th>
            <th scope="col">${say`Figure`}</th>
            <th scope="col" class="number">${say`Was`}</th>
            <th scope="col" class="number">${say`Would be${HERE}`}</th>
            <th scope="col" class="number">${say`Difference`}</th>
          </tr>
        </thead>
        ${[...rows.values()].map(
          (of) => html`<tbody>
            ${of.map((change, at) => line(change, at === 0, of.length))}
          </tbody>`,
        )}
        ${
          totals.length > 0
            ? html`<tfoot>
                ${totals.map(
                  ({ columnTitle, was, wouldBe, difference }) => html`<tr>
                    <th scope="row">${say`All rows`}</th>
                    <td class="figure">${columnTitle}</td>
                    <td class="number figures" data-of=${say`was`}>${was}</td>
                    <td class="number figures" data-of=${say`would be`}>${wouldBe}</td>
                    <td class="number figures by">${difference}</td>
                  </tr>`,
                )}
              </tfoot>`
            : nothing
        }
      </table>
    </div>
    ${
      figures.length > shown.length
        ? html`<button class="button" type="button" @click=${() => showAll(sheet)}>${MANY_LEFT(figures.length)}</button>`
        : nothing
    }`;
}

/** The figures that would change, sheet by sheet. */
export const changesView = (
  changes: readonly SheetChanges[],
  all: ReadonlySet<string>,
  showAll: (sheet: string) => void,
): TemplateResult => html`<div class="changes" part="changes">
  ${changes.map((each) => sheetView(each, all.has(each.sheet), showAll))}
</div>`;
