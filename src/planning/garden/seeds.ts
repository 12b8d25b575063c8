import { growing } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { ceilSafe } from '../../units/index.js';
import { say } from '../../words/index.js';
import { seedsAt } from '../growing.js';
import { isAmount } from '../words.js';
import type { InUse, OwnFigures } from './own-figures.js';
import type { HowPlanted, PlantingRow } from './types.js';

/** Seeds for a planting, and how many of them are still to be bought. */
export interface Seeds {
  readonly seeds: number;
  readonly toBuy: number;
  readonly germination: InUse;
  /** Years that seed keeps, where published. */
  readonly life: InUse | null;
  /** Seeds on hand that still count. */
  readonly counted: number;
  /** True where the packet is older than seed of the crop keeps. */
  readonly tooOld: boolean;
}

const FROM_SEED: readonly HowPlanted[] = ['direct', 'indoors', 'winter-sown'];

/** Whether a planting starts from seed. */
export const isSown = (how: HowPlanted): boolean => FROM_SEED.includes(how);

/**
 * Seeds for `plants`, at the germination in use (the least that may be sold, unless the household has its own).
 * Seed on hand counts while its packet year and the years that seed keeps reach the season.
 */
export function seedsOf(
  row: PlantingRow,
  crop: string,
  plants: number,
  seasonYear: number,
  figures: OwnFigures,
): Result<Seeds> {
  const germination = figures.inUse({ of: crop, what: 'germination' });
  if (!germination.ok) {
    const of = growing(crop);
    return refuse(
      'no-germination',
      say`No germination of seed is published here for ${crop}${
        of.ok && of.value.sow.includes('set') ? say`, which is mostly planted as sets or plants` : ''
      }.`,
      say`Write your own on Facts, in percent, as the packet or your own trial says.`,
    );
  }
  const { usual } = germination.value;
  const seeds = seedsAt(plants, usual);
  if (seeds === null) {
    return refuse(
      'bad-germination',
      say`A germination of ${usual} percent gives no plants.`,
      say`Write one above 0 and up to 100 percent on Facts.`,
    );
  }
  const found = figures.inUse({ of: crop, what: 'seed life' });
  const life = found.ok ? found.value : null;
  const tooOld = row.packetYear !== null && life !== null && seasonYear - row.packetYear > life.usual;
  const onHand = isAmount(row.seedsOnHand) ? row.seedsOnHand : 0;
  const counted = tooOld ? 0 : onHand;
  return ok({
    seeds,
    toBuy: ceilSafe(Math.max(0, seeds - counted)),
    germination: germination.value,
    life,
    counted,
    tooOld,
  });
}
