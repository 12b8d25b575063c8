import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { findCrop, firstOfKin } from './crops.js';
import raw from './data/drying.json';
import { derived, figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';

/** What is published on drying a crop. Every drying yield here is recalled, and marked `from memory`. */
export interface Drying {
  readonly crop: string;
  readonly printedFor: string;
  /** Pounds as bought, for which `driedPounds` and `driedPints` stand. */
  readonly freshPounds: number;
  readonly driedPounds: Figure;
  readonly driedPints: Figure | null;
  /** Pounds dried from one pound as bought. */
  readonly driedPerFresh: Figure;
  /** Pounds as bought for one pound dried. */
  readonly freshPerDried: Figure;
  readonly note: string | null;
}

interface RawDrying {
  readonly crop: string;
  readonly fresh: number;
  readonly dried: RawFigure;
  readonly pints?: RawFigure;
  readonly note?: string;
}

const ROWS = new Map((raw.yields as unknown as readonly RawDrying[]).map((row) => [row.crop, row]));

/**
 * Pounds dried from fresh, from a recalled table of the University of Georgia.
 * Refused: `unknown-crop`, or `nothing-published`.
 */
export function drying(crop: string): Result<Drying> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const row = firstOfKin(found.value, (name) => ROWS.get(name));
  const dried = row ? figureFrom(row.value.dried, `pounds dried from ${row.value.fresh} pounds`) : null;
  if (!row || !dried) {
    return refuse(
      'nothing-published',
      say`no dried yield is known here for ${found.value.name}.`,
      say`Weigh a batch before and after, and enter your own figure.`,
    );
  }
  const fresh = row.value.fresh;
  const note = say`from ${fresh} pounds as bought`;
  return ok({
    crop: found.value.name,
    printedFor: row.crop.name,
    freshPounds: fresh,
    driedPounds: dried,
    driedPints: figureFrom(row.value.pints, `pints dried from ${fresh} pounds`),
    driedPerFresh: derived(dried, 'pounds dried per pound fresh', note, (n) => n / fresh),
    freshPerDried: derived(dried, 'pounds fresh per pound dried', note, (n) => fresh / n),
    note: row.value.note ?? null,
  });
}

/** Percent of water usually left in dried fruit or dried vegetables; recalled. */
export function finishedWater(of: 'fruit' | 'vegetable'): Figure | null {
  const row = (raw.finished as unknown as readonly { of: string; is: RawFigure }[]).find(
    (one) => one.of === of,
  );
  return figureFrom(row?.is, 'percent water');
}

/** Names of the crops with dried yields of their own. */
export const driedCrops = (): readonly string[] => [...ROWS.keys()];
