import { type Result, refuse } from '../problem.js';
import type { Bridge } from '../units/index.js';
import { say } from '../words/index.js';
import { publishedGuide } from './published-guide.js';
import type { Basis, Origin, WayKept } from './types.js';

/** A published figure as planners use it: the central figure, with its ends where they are known. */
export interface GuideFigure {
  readonly low: number | null;
  readonly usual: number;
  readonly high: number | null;
  readonly unit: string;
  /** Where it is published, in words. */
  readonly source: string;
  readonly origin: Origin;
  /** What is particular: worked out rather than printed, the conditions it holds under. */
  readonly notes?: readonly string[];
}

/** What planners ask of the published facts. Each answer is a figure, or the problem that says what is lacking. */
export interface Guide {
  /** Months of best quality of a food kept in a way. */
  qualityMonths(way: WayKept, food: string): Result<GuideFigure>;
  /** Pounds of a fresh crop that go into one container (by id) of it, kept in a way. */
  poundsPerContainer(crop: string, container: string, way: WayKept): Result<GuideFigure>;
  /** What is known of a food's weight, to pass between volume and weight. Empty when nothing is. */
  bridges(food: string): readonly Bridge[];
}

/** Which end of a figure a lean plan takes: always the one that gives less food. */
export type LeanEnd = 'low' | 'high';

/** The end of `figure` that `basis` counts on; the central figure where that end is not known. */
export function atBasis(
  figure: Pick<GuideFigure, 'low' | 'usual' | 'high'>,
  basis: Basis,
  lean: LeanEnd,
): number {
  if (basis === 'usual') return figure.usual;
  const end = (basis === 'lean') === (lean === 'low') ? figure.low : figure.high;
  return end ?? figure.usual;
}

const nothing = (what: string) =>
  refuse('nothing-published', say`Nothing is published here for ${what}.`, say`Give your own figure.`);

/** Knows nothing: every figure has to be the household's own. */
export const emptyGuide: Guide = {
  qualityMonths: (way, food) => nothing(say`how long ${food} keeps its quality ${way}`),
  poundsPerContainer: (crop, container) => nothing(say`the pounds of ${crop} in one ${container}`),
  bridges: () => [],
};

/** The guide that planners use unless they are given another: the published facts of `src/facts`. */
export const defaultGuide: Guide = publishedGuide;
