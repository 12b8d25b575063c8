import { ok, type Result, refuse } from '../problem.js';
import { roundSig } from '../units/index.js';
import { say } from '../words/index.js';
import { MOST } from './words.js';

/** Seasons that a published figure counts for against a household's own. */
export const SEASONS_PUBLISHED = 2;

/**
 * A published figure and own ones, weighted by credibility: `Z · own mean + (1 − Z) · published`,
 * `Z = n / (n + k)`. Nothing published: the own mean. No own values: the published figure.
 * Refused: `nothing-to-learn` with neither, `bad-amount`.
 */
export function learned(
  published: number | null,
  own: readonly number[],
  seasons: number = SEASONS_PUBLISHED,
): Result<number> {
  const bad = [...own, seasons, ...(published === null ? [] : [published])].find(
    (n) => !(Math.abs(n) <= MOST),
  );
  if (bad !== undefined || seasons < 0) {
    return refuse(
      'bad-amount',
      say`One of the figures is no number that can be reckoned with.`,
      say`Check the figures.`,
    );
  }
  if (own.length === 0) {
    return published === null
      ? refuse(
          'nothing-to-learn',
          say`There is neither a published figure nor one of your own.`,
          say`Give either.`,
        )
      : ok(published);
  }
  const mean = own.reduce((sum, each) => sum + each, 0) / own.length;
  return ok(published === null ? mean : blend(published, mean, own.length, seasons));
}

function blend(published: number, mean: number, n: number, k: number): number {
  const z = n / (n + k);
  return roundSig(z * mean + (1 - z) * published, 12);
}

/** One season of a crop as it was: raw totals, never a blended value. */
export interface SeasonTotals {
  readonly pounds: number;
  readonly plants: number;
}

/** A yield with its ends. */
export interface YieldRange {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

/**
 * Yield per plant learned from seasons' totals: the own mean is Σ pounds ÷ Σ plants; low and high are the
 * published ends in the same proportion. With nothing published low and high are the mean itself.
 * Seasons without plants teach nothing. Null with neither.
 */
export function learnedYield(
  published: YieldRange | null,
  seasons: readonly SeasonTotals[],
  counts: number = SEASONS_PUBLISHED,
): YieldRange | null {
  const kept = seasons.filter(({ pounds, plants }) => plants > 0 && pounds >= 0 && pounds <= MOST);
  if (kept.length === 0) return published;
  const pounds = kept.reduce((sum, each) => sum + each.pounds, 0);
  const plants = kept.reduce((sum, each) => sum + each.plants, 0);
  const mean = pounds / plants;
  if (!published) return { low: mean, usual: mean, high: mean };
  const usual = blend(published.usual, mean, kept.length, counts);
  const scale = published.usual > 0 ? usual / published.usual : 1;
  return { low: published.low * scale, usual, high: published.high * scale };
}
