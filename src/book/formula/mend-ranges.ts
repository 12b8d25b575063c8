import { change, type Workbench } from '../bench.js';
import type { Change } from '../types.js';
import { formulasLeft, type Going, rememberedNames } from './gone.js';
import { referencesOf, withoutEnds } from './references.js';

/**
 * Changes to the formulas whose ranges end on rows or columns that are about to go, so that the range ends
 * on its nearest row or column that stays; and the names of what formulas will miss.
 */
export function mendedRanges(
  sheetId: string,
  part: 'row' | 'column',
  ids: readonly string[],
  bench: Workbench,
): Change[] {
  const { state } = bench;
  const going: Going = { part, sheet: sheetId, ids: new Set(ids) };
  const target = state.sheets.get(sheetId)!;
  const order = part === 'row' ? target.rowOrder : target.columnOrder;

  const neighbour = (id: string, until: string): string | undefined => {
    const end = order.indexOf(until);
    const step = order.indexOf(id) <= end ? 1 : -1;
    for (let at = order.indexOf(id); ; at += step) {
      const candidate = order.ids[at];
      if (candidate === undefined) return undefined;
      if (!going.ids.has(candidate)) return candidate;
      if (at === end) return undefined;
    }
  };

  const mend = (stored: string, home: string): string => {
    if (!stored.includes(']:[')) return stored;
    if (!referencesOf(stored, home).some((r) => r.sheet === sheetId && going.ids.has(r[part] ?? '')))
      return stored;
    return withoutEnds(
      stored,
      part,
      (sheet, id) => (sheet ?? home) === sheetId && going.ids.has(id),
      (_sheet, id, until) => neighbour(id, until),
    );
  };

  const changes: Change[] = [];
  for (const { home, row, column, stored } of formulasLeft(state, going)) {
    const path =
      row === null
        ? ['sheets', home.id, 'columns', column, 'formula']
        : ['sheets', home.id, 'rows', row, 'cells', column];
    changes.push(...change(state, path, mend(stored, home.id)));
  }
  return [...changes, ...rememberedNames(going, bench, mend)];
}
