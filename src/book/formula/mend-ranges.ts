import { change, type Workbench } from '../bench.js';
import type { Change } from '../types.js';
import { isFormula, referencesOf, withoutEnds } from './references.js';

/**
 * Changes to the formulas whose ranges end on rows or columns that are about to go, so that the range ends
 * on its nearest row or column that stays.
 */
export function mendedRanges(
  sheetId: string,
  part: 'row' | 'column',
  ids: readonly string[],
  bench: Workbench,
): Change[] {
  const { state } = bench;
  const going = new Set(ids);
  const target = state.sheets.get(sheetId)!;
  const order = part === 'row' ? target.rowOrder : target.columnOrder;

  const neighbour = (id: string, until: string): string | undefined => {
    const end = order.indexOf(until);
    const step = order.indexOf(id) <= end ? 1 : -1;
    for (let at = order.indexOf(id); ; at += step) {
      const candidate = order.ids[at];
      if (candidate === undefined) return undefined;
      if (!going.has(candidate)) return candidate;
      if (at === end) return undefined;
    }
  };

  const mend = (stored: string, home: string): string => {
    if (!referencesOf(stored, home).some((r) => r.sheet === sheetId && going.has(r[part] ?? '')))
      return stored;
    return withoutEnds(
      stored,
      part,
      (sheet, id) => (sheet ?? home) === sheetId && going.has(id),
      (_sheet, id, until) => neighbour(id, until),
    );
  };

  const changes: Change[] = [];
  for (const sheet of state.sheets.values()) {
    for (const [columnId, column] of sheet.columns) {
      if (column.formula !== undefined) {
        changes.push(
          ...change(
            state,
            ['sheets', sheet.id, 'columns', columnId, 'formula'],
            mend(column.formula, sheet.id),
          ),
        );
      }
    }
    for (const [rowId, row] of sheet.rows) {
      for (const columnId in row.cells) {
        const raw = row.cells[columnId];
        if (isFormula(raw) && raw.includes(']:[')) {
          changes.push(
            ...change(state, ['sheets', sheet.id, 'rows', rowId, 'cells', columnId], mend(raw, sheet.id)),
          );
        }
      }
    }
  }
  return changes;
}
