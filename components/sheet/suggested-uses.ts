import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { say, spoken } from '../../src/words/index.js';
import type { GridCell } from '../grid/grid-view.js';

const COLUMN = 'use_per_week';
const MOST_NAMED = 8;

/** A food whose use per week is a published suggestion, with the cell that shows it. */
export interface SuggestedUse {
  readonly name: string;
  readonly cell: GridCell;
}

/** Foods whose use per week rests on publications: the household has neither draws nor a word of its own yet. */
export function suggestedUses(live: LiveBook, foods: string): SuggestedUse[] {
  return live.foodLines.flatMap(({ input: { row, suggested, way } }) => {
    if (!row || !suggested || row.ownUse !== null) return [];
    const published = live
      .working(foods, row.id, COLUMN)
      ?.inputs.some(({ origin }) => origin === 'published');
    if (!published) return [];
    const food = live.value(foods, row.id, 'food');
    return [{ name: `${String(food)}, ${spoken(way)}`, cell: { row: row.id, column: COLUMN } }];
  });
}

/** Says so above Foods, and leads to each figure, whose working names its source. */
export function suggestedUsesView(
  all: readonly SuggestedUse[],
  show: (cell: GridCell) => void,
): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const link = ({ name, cell }: SuggestedUse, i: number) =>
    html`${i === 0 ? '' : '; '}<button class="link" type="button" @click=${() => show(cell)}>${name}</button>`;
  const [first, rest] = [all.slice(0, MOST_NAMED), all.slice(MOST_NAMED)];
  return html`<aside class="suggested small" aria-label=${say`Published suggestions`}>
    <strong>${say`Published suggestion:`}</strong> ${say`what is used in a week of`} ${first.map(link)}${
      rest.length === 0 ? '' : ` ${say`and of ${rest.length} more`}`
    }
    ${say`is what publications reckon for a table like yours. It gives way to your own figure, or to four weeks of draws.`}
  </aside>`;
}
