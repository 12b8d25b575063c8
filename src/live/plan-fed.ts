import { type CellAddress, declarationOf, referencesOf } from '../book/index.js';
import type { PlanBook } from './plan-book.js';

const ALL = '*';
const nodeOf = (sheet: string, column: string): string => `${sheet}/${column}`;

/**
 * Formula cells in kept columns that may depend on planning figures, by whole columns: a column depends on
 * those that any of its formulas names. Too many is harmless, for such cells only start from blank.
 */
export function planFed(
  formulas: Iterable<{ readonly address: CellAddress; readonly stored: string }>,
  plan: PlanBook,
): CellAddress[] {
  const all = [...formulas];
  const kept = all
    .map(({ address }) => address)
    .filter(({ sheet, column }) => {
      const kind = plan.rows.kindOf(sheet);
      return kind !== undefined && declarationOf(kind, column)?.role === 'kept';
    });
  if (kept.length === 0) return [];
  const uses = new Map<string, Set<string>>();
  for (const { address, stored } of all) {
    const node = nodeOf(address.sheet, address.column);
    const used = uses.get(node) ?? new Set<string>();
    for (const { sheet, column } of referencesOf(stored, address.sheet))
      used.add(nodeOf(sheet, column ?? ALL));
    uses.set(node, used);
  }
  const reaching = reachesPlanning(uses, plan);
  return kept.filter(({ sheet, column }) => reaching(nodeOf(sheet, column)));
}

function reachesPlanning(
  uses: ReadonlyMap<string, ReadonlySet<string>>,
  plan: PlanBook,
): (node: string) => boolean {
  const isPlanning = (node: string): boolean => {
    const [sheet, column] = node.split('/') as [string, string];
    const kind = plan.rows.kindOf(sheet);
    return kind !== undefined && (column === ALL || declarationOf(kind, column)?.role === 'planning');
  };
  return (start) => {
    const seen = new Set<string>();
    const ahead = [start];
    for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
      if (seen.has(node)) continue;
      seen.add(node);
      if (isPlanning(node)) return true;
      const [sheet, column] = node.split('/') as [string, string];
      if (column === ALL)
        for (const other of uses.keys()) if (other.startsWith(`${sheet}/`)) ahead.push(other);
      ahead.push(...(uses.get(node) ?? []));
    }
    return false;
  };
}
