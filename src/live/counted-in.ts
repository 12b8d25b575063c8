import type { SheetKind } from '../book/index.js';

/** Kept columns of amounts, with the column of the same row that says what the amount is counted in. */
const COUNTED_IN: { readonly [K in SheetKind]?: Readonly<Record<string, string>> } = {
  shelf: { count: 'container' },
  draws: { amount: 'container' },
  foods: { own_use: 'counted_in', fresh_use: 'counted_in', own_target: 'counted_in', carry: 'counted_in' },
  dishes: { amount: 'measure' },
  harvest: { amount: 'unit' },
  batches: { filled: 'container', failed: 'container' },
  supplies: { on_hand: 'unit', per_container: 'unit', wanted: 'unit', short: 'unit' },
};

/** The column that says what amounts of this one are counted in; undefined where none does. */
export const countedInColumn = (kind: SheetKind | undefined, column: string): string | undefined =>
  kind && COUNTED_IN[kind]?.[column];
