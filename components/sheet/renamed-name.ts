import { html, nothing, type TemplateResult } from 'lit';
import { isFormula } from '../../src/book/index.js';
import { type NamingCells, namingCells, renameFood } from '../../src/live/doings/rename-food.js';
import { foodKey } from '../../src/live/food-key.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';

/** A food that Foods calls otherwise since the last edit. */
export interface RenamedFood {
  readonly from: string;
  readonly to: string;
}

const namesFood = (live: LiveBook, path: readonly string[]): boolean =>
  path[1] === live.sheetOfKind('foods') && path[5] === 'food';

/** The food that an edit has just renamed in Foods, if it did just that. */
function renamedBy(live: LiveBook, { origin, changes }: BookChange): RenamedFood | null {
  const [only, ...more] = changes.filter(({ path }) => path[4] === 'cells');
  if (origin !== 'local' || !only || more.length > 0) return null;
  const { path, was, to } = only;
  if (!namesFood(live, path)) return null;
  if (typeof was !== 'string' || typeof to !== 'string' || isFormula(was) || isFormula(to)) return null;
  // Tomato and tomatoes are one food everywhere.
  return foodKey(was) === '' || foodKey(was) === foodKey(to) ? null : { from: was.trim(), to: to.trim() };
}

/** What was renamed in Foods and may still have its old name elsewhere. */
export class RenamedFoods {
  #last: RenamedFood | null = null;

  get last(): RenamedFood | null {
    return this.#last;
  }

  heed(live: LiveBook, change: BookChange): void {
    const renamed = renamedBy(live, change);
    if (!renamed) {
      const isBack = change.origin === 'undo' || change.origin === 'redo';
      if (isBack && change.changes.some(({ path }) => namesFood(live, path))) this.#last = null;
      return;
    }
    // A new name that was mended at once: what it was at first still stands elsewhere.
    const first = this.#last && foodKey(this.#last.to) === foodKey(renamed.from) ? this.#last : renamed;
    this.#last = foodKey(first.from) === foodKey(renamed.to) ? null : { from: first.from, to: renamed.to };
  }

  forget(): void {
    this.#last = null;
  }
}

/** Where the book still has the old name. */
export const stillCalled = (live: LiveBook, renamed: RenamedFood | null): NamingCells[] =>
  renamed ? namingCells(live, renamed.from, renamed.to) : [];

const times = ({ title, cells }: NamingCells): string => `${title} (${cells.length})`;

/** Offers to rename it there too; one step of undo. */
export function renamedFoodView(
  live: LiveBook,
  renamed: RenamedFood,
  places: readonly NamingCells[],
  done: (said: string | null) => void,
): TemplateResult | typeof nothing {
  if (places.length === 0) return nothing;
  const rename = (): void => {
    const outcome = live.apply(renameFood(places));
    if (outcome.ok) done(say`“${renamed.from}” is “${renamed.to}” everywhere now. Undo takes it back.`);
  };
  return html`<aside class="next small" role="status" aria-label=${say`A food has another name`}>
    <span
      ><strong>${say`Still called “${renamed.from}”:`}</strong> ${say`in ${places.map(times).join(', ')}. Until it is “${renamed.to}” there too, they are two foods.`}</span
    >
    <span class="row">
      <button class="button" type="button" @click=${rename}>${say`Rename it there too`}</button>
      <button class="button plain" type="button" @click=${() => done(null)}>${say`Leave it`}</button>
    </span>
  </aside>`;
}
