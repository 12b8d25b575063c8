import { growing } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { Origin } from '../types.js';
import type { OwnFigures } from './own-figures.js';
import { ownInches } from './plant-yield.js';
import { treeKind, treeSpacing } from './tree-yield.js';
import type { PlantingRow } from './types.js';

/** How far apart plants stand: in the row, and across it in a bed. Inches. */
export interface Spacing {
  readonly inRow: number;
  readonly across: number | null;
  readonly source: string;
  readonly origin: Origin;
  readonly acrossSource: string;
}

/**
 * The spacing of a planting: its own, the household's, else the usual published one. In a bed plants stand at the
 * close spacing each way where one is published (never closer across than their own), else row by row.
 */
export function spacingOf(row: PlantingRow, crop: string, figures: OwnFigures): Result<Spacing> {
  const of = growing(crop);
  const close = of.ok ? (of.value.intensiveSpacing?.usual ?? null) : null;
  const rows = of.ok ? (of.value.rowSpacing?.usual ?? null) : null;
  const own = ownInches(row);
  if (own !== undefined) {
    const across = close !== null ? Math.max(own, close) : rows;
    const acrossSource =
      close !== null ? say`the close spacing, or your own where it is wider` : say`the spacing of rows`;
    return ok({
      inRow: own,
      across,
      source: say`your own spacing, in this row`,
      origin: 'own',
      acrossSource,
    });
  }
  const found = figures.inUse({ of: crop, what: 'spacing' });
  if (found.ok && found.value.usual > 0) {
    const { usual, source, origin, own: typed } = found.value;
    const across = close !== null && typed !== null ? Math.max(typed, close) : (close ?? rows);
    return ok({
      inRow: usual,
      across,
      source,
      origin,
      acrossSource: close !== null ? say`the close spacing each way` : say`the spacing of rows`,
    });
  }
  const tree = treeSpacing(crop, treeKind(crop, row.variety));
  if (tree) {
    const inches = tree.usual * 12;
    return ok({
      inRow: inches,
      across: inches,
      source: tree.source,
      origin: tree.origin,
      acrossSource: say`the same each way`,
    });
  }
  return refuse(
    'no-spacing',
    say`No spacing is published here for ${crop}.`,
    say`Write the inches between plants under “Own spacing”.`,
  );
}

/** Feet of row for plants. */
export const rowFeet = (plants: number, { inRow }: Spacing): number => (plants * inRow) / 12;

/** Inches along and across in a bed; null where nothing says how far apart the rows stand. */
export function bedSpacing(
  spacing: Spacing,
  row: PlantingRow,
  crop: string,
): { readonly along: number; readonly across: number } | null {
  const of = growing(crop);
  const close = of.ok ? (of.value.intensiveSpacing?.usual ?? null) : null;
  const { inRow, across, origin } = spacing;
  if (across === null) return null;
  // At the close spacing plants stand so each way; in rows, or at one's own, by the two of them.
  const along = close !== null && origin !== 'own' && ownInches(row) === undefined ? close : inRow;
  return { along, across };
}

/** Square feet of bed for plants; null as `bedSpacing`. */
export function bedArea(plants: number, spacing: Spacing, row: PlantingRow, crop: string): number | null {
  const bed = bedSpacing(spacing, row, crop);
  return bed && (plants * bed.along * bed.across) / 144;
}
