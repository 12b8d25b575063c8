import type { Basis } from '../types.js';
import type { OwnFigures } from './own-figures.js';
import { isPerennial } from './planting-dates.js';
import { treeKind } from './tree-yield.js';
import type { HowPlanted, PlantingRow } from './types.js';

/** Years until a tree or crown bears: by the household, else by the slowest published on a lean basis. */
export function yearsOff(
  row: PlantingRow,
  crop: string,
  how: HowPlanted,
  basis: Basis,
  figures: OwnFigures,
): number {
  if (row.nthYear === null || !isPerennial(how)) return 0;
  const years = figures.inUse({ of: crop, what: 'years to bearing' }, { kind: treeKind(crop, row.variety) });
  if (!years.ok) return 0;
  const { low, usual, high } = years.value;
  const bears = basis === 'lean' ? high : basis === 'good' ? low : usual;
  return Math.max(0, Math.ceil(bears - row.nthYear));
}
