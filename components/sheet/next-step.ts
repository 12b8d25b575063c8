import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { listInFoods, type UnlistedLine, unlistedLines } from './list-in-foods.js';

const MOST_NAMED = 6;

/** What a book still wants before its figures show: rows of Foods, or how fast things are used. */
export interface NextStep {
  readonly unlisted: readonly UnlistedLine[];
  readonly use: boolean;
}

/** Read for the sheets of the pantry only. */
export function nextStep(live: LiveBook, kind: string): NextStep | null {
  const [shelf, foods] = [live.sheetOfKind('shelf'), live.sheetOfKind('foods')];
  if (!['shelf', 'foods', 'draws'].includes(kind) || shelf === undefined || foods === undefined) return null;
  const unlisted = unlistedLines(live);
  const rows = live.rowIds(foods);
  const use =
    rows.length > 0 &&
    live.household.ledgerFrom === null &&
    rows.every((row) => live.value(foods, row, 'own_use') === null);
  return unlisted.length > 0 || use ? { unlisted, use } : null;
}

/** Names the next step above the sheet; what can be done in one press has a button. */
export function nextStepView(live: LiveBook, step: NextStep | null): TemplateResult | typeof nothing {
  if (!step) return nothing;
  const { unlisted, use } = step;
  if (unlisted.length === 0)
    return use
      ? html`<aside class="next small" aria-label=${say`Next step`}>
          <strong>${say`Next:`}</strong> ${say`write your use a week in Foods, or a draw each time something comes up.`}
        </aside>`
      : nothing;
  const names = unlisted.slice(0, MOST_NAMED).map(({ food, way }) => `${food}, ${way}`);
  const more = unlisted.length - names.length;
  return html`<aside class="next small" aria-label=${say`Next step`}>
    <span
      ><strong>${say`Not in Foods yet:`}</strong> ${say`${names.join('; ')}${more > 0 ? say`; and ${more} more` : ''}. A row there lets the book plan for it.`}</span
    >
    <button class="button" type="button" @click=${() => listInFoods(live, unlisted)}>
      ${unlisted.length === 1 ? say`Add it to Foods` : say`Add all ${unlisted.length} to Foods`}
    </button>
  </aside>`;
}
