import { type BookState, type CellAddress, declarationOf, referencesOf, takenIn } from '../book/index.js';
import type { PlanBook } from './plan-book.js';

const ALL = '*';
const nodeOf = (sheet: string, column: string): string => `${sheet}/${column}`;

/**
 * Formula cells on which figures may hang and which may hang on figures themselves, by whole columns: a column
 * depends on those that any of its formulas names. Those are cells of kept columns that reach a planning
 * column, and cells that name a row for a planning column taken onto an own sheet and reach such a column. Too
 * many is harmless, for such cells only start from blank.
 */
export function planFed(
  formulas: Iterable<{ readonly address: CellAddress; readonly stored: string }>,
  plan: PlanBook,
  state: BookState,
): CellAddress[] {
  const all = [...formulas];
  if (all.length === 0) return [];
  const taken = takenNodes(state);
  const cells = all.map(({ address }) => address);
  const kept = cells.filter(({ sheet, column }) => {
    const kind = plan.rows.kindOf(sheet);
    return kind !== undefined && declarationOf(kind, column)?.role === 'kept';
  });
  const naming = cells.filter(({ sheet, column }) => taken.by.has(nodeOf(sheet, column)));
  if (kept.length + naming.length === 0) return [];
  const uses = new Map<string, Set<string>>();
  for (const { address, stored } of all) {
    const node = nodeOf(address.sheet, address.column);
    const used = uses.get(node) ?? new Set<string>();
    for (const { sheet, column } of referencesOf(stored, address.sheet))
      used.add(nodeOf(sheet, column ?? ALL));
    uses.set(node, used);
  }
  const isTaken = (node: string): boolean => taken.columns.has(node);
  const isFigure = (node: string): boolean => {
    const [sheet, column] = node.split('/') as [string, string];
    const kind = plan.rows.kindOf(sheet);
    if (kind === undefined) return isTaken(node);
    return column === ALL || declarationOf(kind, column)?.role === 'planning';
  };
  const toFigure = reaching(uses, isFigure);
  const toTaken = reaching(uses, isTaken);
  return [
    ...kept.filter(({ sheet, column }) => toFigure(nodeOf(sheet, column))),
    ...naming.filter(({ sheet, column }) => toTaken(nodeOf(sheet, column))),
  ];
}

/** Planning columns on own sheets, each such sheet as a whole too, and the columns that name their rows. */
function takenNodes(state: BookState): { columns: Set<string>; by: Set<string> } {
  const columns = new Set<string>();
  const by = new Set<string>();
  for (const sheet of state.sheets.values()) {
    if (sheet.kind !== 'own') continue;
    for (const column of sheet.columns.keys()) {
      const taken = takenIn(sheet, column);
      if (!taken) continue;
      columns.add(nodeOf(sheet.id, column));
      columns.add(nodeOf(sheet.id, ALL));
      by.add(nodeOf(sheet.id, taken.by));
    }
  }
  return { columns, by };
}

/** Whether a column names, by itself or by way of others, one that is `wanted`. */
function reaching(
  uses: ReadonlyMap<string, ReadonlySet<string>>,
  wanted: (node: string) => boolean,
): (node: string) => boolean {
  const known = new Map<string, boolean>();
  return (start) => {
    const before = known.get(start);
    if (before !== undefined) return before;
    const found = look(start);
    known.set(start, found);
    return found;
  };

  function look(start: string): boolean {
    const seen = new Set<string>();
    const ahead = [start];
    for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
      if (seen.has(node)) continue;
      seen.add(node);
      if (wanted(node)) return true;
      const [sheet, column] = node.split('/') as [string, string];
      if (column === ALL)
        for (const other of uses.keys()) if (other.startsWith(`${sheet}/`)) ahead.push(other);
      ahead.push(...(uses.get(node) ?? []));
    }
    return false;
  }
}
