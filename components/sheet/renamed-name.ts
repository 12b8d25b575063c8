import { html, nothing, type TemplateResult } from 'lit';
import { isFormula } from '../../src/book/index.js';
import {
  NAME_COLUMN,
  type NamingCells,
  namingCells,
  type Renamable,
  type Renaming,
  rename,
} from '../../src/live/doings/rename-named.js';
import { foodKey } from '../../src/live/food-key.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { phrase, say, spoken } from '../../src/words/index.js';

const kindNamedAt = (live: LiveBook, path: readonly string[]): Renamable | undefined =>
  (Object.keys(NAME_COLUMN) as Renamable[]).find(
    (kind) => path[1] === live.sheetOfKind(kind) && path[5] === NAME_COLUMN[kind],
  );

const isName = (value: unknown): value is string =>
  typeof value === 'string' && !isFormula(value) && foodKey(value) !== '';

/** A line of a dish that goes to another dish renames neither. */
const isOther = (live: LiveBook, row: string, to: string): boolean =>
  live
    .rowIds('dishes')
    .some(
      (each) => each !== row && foodKey(String(live.typed('dishes', each, 'dish') ?? '')) === foodKey(to),
    );

/** What an edit has just renamed, if it did just that. */
function renamedBy(live: LiveBook, { origin, changes }: BookChange): Renaming | null {
  const [only, ...more] = changes.filter(({ path }) => path[4] === 'cells');
  if (origin !== 'local' || !only || more.length > 0) return null;
  const { path, was, to } = only;
  const kind = kindNamedAt(live, path);
  if (!kind || !isName(was) || !isName(to)) return null;
  // Tomato and tomatoes are one food everywhere.
  if (foodKey(was) === foodKey(to)) return null;
  return kind === 'dishes' && isOther(live, path[3]!, to) ? null : { kind, from: was.trim(), to: to.trim() };
}

/** What was renamed on its own sheet and may still have its old name elsewhere. */
export class RenamedNames {
  #last: Renaming | null = null;

  get last(): Renaming | null {
    return this.#last;
  }

  heed(live: LiveBook, change: BookChange): void {
    const renamed = renamedBy(live, change);
    if (!renamed) {
      const isBack = change.origin === 'undo' || change.origin === 'redo';
      if (isBack && change.changes.some(({ path }) => kindNamedAt(live, path))) this.#last = null;
      return;
    }
    const { kind, to } = renamed;
    const goesOn = this.#last?.kind === kind && foodKey(this.#last.to) === foodKey(renamed.from);
    // A new name that was mended at once: what it was at first still stands elsewhere.
    const from = goesOn && this.#last ? this.#last.from : renamed.from;
    this.#last = foodKey(from) === foodKey(to) ? null : { kind, from, to };
  }

  forget(): void {
    this.#last = null;
  }
}

/** Where the book still has the old name of what this kind of sheet names. */
export const stillCalled = (live: LiveBook, kind: string, renamed: Renaming | null): NamingCells[] =>
  renamed?.kind === kind ? namingCells(live, renamed) : [];

const times = ({ title, cells }: NamingCells): string => `${title} (${cells.length})`;

const HEARD: Readonly<Record<Renamable, string>> = {
  foods: phrase('A food has another name'),
  dishes: phrase('A dish has another name'),
};

/** Offers to rename it there too; one step of undo. */
export function renamedView(
  live: LiveBook,
  { kind, from, to }: Renaming,
  places: readonly NamingCells[],
  done: (said: string | null) => void,
): TemplateResult | typeof nothing {
  if (places.length === 0) return nothing;
  const everywhere = (): void => {
    if (live.apply(rename(places)).ok) done(say`“${from}” is “${to}” everywhere now. Undo takes it back.`);
  };
  const where = places.map(times).join(', ');
  return html`<aside class="next small" role="status" aria-label=${spoken(HEARD[kind])}>
    <span
      ><strong>${say`Still called “${from}”:`}</strong> ${
        kind === 'foods'
          ? say`in ${where}. Until it is “${to}” there too, they are two foods.`
          : say`in ${where}. Until it is “${to}” there too, they are two dishes.`
      }</span
    >
    <span class="row">
      <button class="button" type="button" @click=${everywhere}>${say`Rename it there too`}</button>
      <button class="button plain" type="button" @click=${() => done(null)}>${say`Leave it`}</button>
    </span>
  </aside>`;
}
