import { type Figure, figureSource, noteInWords } from '../facts/index.js';
import { roundSig } from '../units/index.js';
import { say } from '../words/index.js';
import { shortNumber } from './measure.js';
import type { Basis, Origin } from './types.js';

/** A figure by season basis: `lean` is always the end that gives less food. */
export interface Ranged {
  readonly lean: number;
  readonly usual: number;
  readonly good: number;
  /** In words, as in 'pounds a plant'. */
  readonly unit: string;
  /** Publisher and title, in words. */
  readonly source: string;
  readonly origin: Origin;
  /** What is particular: worked out rather than printed, sources that differ. */
  readonly notes: readonly string[];
}

const ORIGIN = {
  published: 'published',
  derived: 'computed',
  'from memory': 'from memory',
} as const satisfies Record<Figure['certainty'], Origin>;

/** A published figure by season basis; `lean` says which of its ends gives less food. */
export function ranged(figure: Figure, lean: 'low' | 'high', unit = figure.unit): Ranged {
  const [worst, best] = lean === 'low' ? [figure.low, figure.high] : [figure.high, figure.low];
  return {
    lean: worst,
    usual: figure.usual,
    good: best,
    unit,
    source: figureSource(figure),
    origin: ORIGIN[figure.certainty],
    notes: figure.note === undefined ? [] : [noteInWords(figure.note)],
  };
}

/** A number that has no range. */
export const exactly = (n: number, unit: string, source = 'arithmetic'): Ranged => ({
  lean: n,
  usual: n,
  good: n,
  unit,
  source,
  origin: 'computed',
  notes: [],
});

/** The end that `basis` counts on. */
export const at = (figure: Ranged, basis: Basis): number => figure[basis];

/** Least and greatest of a figure, whichever of them is the lean one. */
export const ends = ({ lean, good }: Ranged): { readonly low: number; readonly high: number } => ({
  low: Math.min(lean, good),
  high: Math.max(lean, good),
});

/** One source of several: each named once. */
export const bothSources = (one: string, other: string): string =>
  one === other || other === 'arithmetic' ? one : one === 'arithmetic' ? other : `${one}; ${other}`;

/** Where a number worked out of two others came from: from memory if either did. */
export const worstOrigin = (one: Origin, other: Origin): Origin =>
  one === 'from memory' || other === 'from memory' ? 'from memory' : 'computed';

/**
 * A figure worked out of two, end by end: the lean ends give the lean end. `unit` is that of the answer,
 * `note` says that it is worked out.
 */
export function combine(
  one: Ranged,
  other: Ranged,
  unit: string,
  note: string,
  reckon: (a: number, b: number) => number,
): Ranged {
  return {
    lean: roundSig(reckon(one.lean, other.lean), 12),
    usual: roundSig(reckon(one.usual, other.usual), 12),
    good: roundSig(reckon(one.good, other.good), 12),
    unit,
    source: bothSources(one.source, other.source),
    origin: worstOrigin(one.origin, other.origin),
    notes: [...new Set([...one.notes, ...other.notes, note])].filter((text) => text !== ''),
  };
}

/** A figure with each number changed; `note` says how, and marks it as worked out. Empty keeps its origin. */
export function changed(from: Ranged, unit: string, note: string, change: (n: number) => number): Ranged {
  return {
    lean: roundSig(change(from.lean), 12),
    usual: roundSig(change(from.usual), 12),
    good: roundSig(change(from.good), 12),
    unit,
    source: from.source,
    origin: note === '' ? from.origin : worstOrigin(from.origin, 'computed'),
    notes: note === '' ? from.notes : [...from.notes, note],
  };
}

/**
 * `main` with its ends reaching to those of `other`: what another way of measuring says belongs to the range.
 * `leanIs` says which end gives less food, `saying` names that other way in the note.
 */
export function reachingTo(
  main: Ranged,
  other: Ranged | null,
  leanIs: 'low' | 'high',
  saying: string,
): Ranged {
  if (!other) return main;
  const [worse, better] = leanIs === 'low' ? [Math.min, Math.max] : [Math.max, Math.min];
  const lean = worse(main.lean, other.lean);
  const good = better(main.good, other.good);
  if (lean === main.lean && good === main.good) return main;
  const { low, high } = ends(other);
  return {
    ...main,
    lean,
    good,
    notes: [...main.notes, say`${saying}: ${shortNumber(low)} to ${shortNumber(high)}`],
  };
}
