import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import type { Entry } from './ledger.js';
import type { Stock } from './stock.js';
import type { Draw } from './types.js';
import { MOST } from './words.js';

/** A part of a draw that came from one lot. Mutable while draws are allotted: corrections shorten it. */
export interface Piece {
  readonly entry: Running;
  readonly rank: number;
  /** As first taken. */
  readonly taken: number;
  /** What corrections left of it. */
  amount: number;
}

/** A draw while it is being allotted. */
export interface Running {
  readonly entry: Entry;
  readonly pieces: Piece[];
  notFound: number;
  net: number;
  gaveBack: Map<number, number>;
  problem: Problem | null;
}

/** The usable part of a stored allotment, oldest lot first. */
export function storedOf(draw: Draw, stock: Stock): (readonly [rank: number, amount: number])[] {
  const found: (readonly [number, number])[] = [];
  for (const [id, amount] of Object.entries(draw.allotted ?? {})) {
    const rank = stock.rankOf.get(id);
    if (rank !== undefined && amount > 0 && amount <= MOST) found.push([rank, amount]);
  }
  return found.sort(([a], [b]) => a - b);
}

export const lotNotThere = (): Problem => ({
  code: 'lot-not-there',
  message: say`The lot named here is not one of this food, or was put up after this day.`,
  mend: say`Choose another lot, or clear it to take the oldest first.`,
});

export const tooMuchBack = (): Problem => ({
  code: 'gives-back-too-much',
  message: say`This gives back more than was drawn.`,
  mend: say`Check the amount; if more stands on the shelf than was written, change the count put up.`,
});
