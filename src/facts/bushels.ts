import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { type Crop, findCrop, firstOfKin } from './crops.js';
import raw from './data/bushels.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';

/** Weight of a market container of a crop. */
export interface MarketContainer {
  readonly crop: string;
  /** 'bushel', 'lug', 'crate', 'peck': lugs, crates and bags are not bushels. */
  readonly of: string;
  readonly pounds: Figure;
}

interface RawBushel {
  readonly crop: string;
  readonly of: string;
  readonly is: RawFigure;
}

const ALL: readonly MarketContainer[] = (raw as unknown as readonly RawBushel[]).flatMap((row) => {
  const pounds = figureFrom(row.is, `pounds per ${row.of}`);
  return pounds ? [{ crop: row.crop, of: row.of, pounds }] : [];
});
const BUSHEL = new Map(ALL.filter((one) => one.of === 'bushel').map((one) => [one.crop, one.pounds]));

/** Pounds in a bushel of a crop, or null; for the other lookups. */
export const bushelOf = (crop: Crop): Figure | null =>
  firstOfKin(crop, (name) => BUSHEL.get(name))?.value ?? null;

/**
 * Pounds in a US bushel of a crop. The USDA canning guide leads where it has the crop; the range spans all
 * sources. Refused: `unknown-crop`, or `no-bushel-weight` (which names the containers that are published).
 */
export function bushelPounds(crop: string): Result<Figure> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const pounds = bushelOf(found.value);
  if (pounds) return ok(pounds);
  const others = marketContainers(found.value.name);
  const sold = others.map((one) => say`${one.of} of ${one.pounds.usual} lb`).join(', ');
  return refuse(
    'no-bushel-weight',
    sold
      ? say`no bushel weight is published here for ${found.value.name}; it is sold by the ${sold}.`
      : say`no bushel weight is published here for ${found.value.name}.`,
    say`Weigh a bushel and enter your own figure.`,
  );
}

/** Every published market container of a crop, bushels first; empty for a crop unknown or without any. */
export function marketContainers(crop: string): readonly MarketContainer[] {
  const found = findCrop(crop);
  return found.ok ? ALL.filter((one) => one.crop === found.value.name) : [];
}

/** Every market container of the tables. */
export const allMarketContainers = (): readonly MarketContainer[] => ALL;
