import { spoken } from './said.js';
import type { Source } from './source-text.js';
import { ALL_YOURS, fromOwn, HINT, KEPT, NEWER, NEWER_OWN, NOT_KEPT } from './words.js';

/** How things stand, as far as it decides what is said. */
export interface StandingSaid {
  readonly tried: boolean;
  readonly own: boolean;
  readonly outdated: boolean;
  /** What the reader tries is kept. */
  readonly keeps: boolean;
  /** There are cells to write into. */
  readonly isOpen: boolean;
  /** It is open as a grid. */
  readonly isGrid: boolean;
  readonly source: Source | null;
}

/** What the line under the table says while nothing else is to be said. */
export function standingWords({ tried, own, outdated, keeps, isOpen, isGrid, source }: StandingSaid): string {
  if (outdated) return spoken(own ? NEWER_OWN : NEWER);
  if (tried) return spoken(keeps ? KEPT : NOT_KEPT);
  const from = source?.ownTitle === undefined ? (source?.ownMissing ?? '') : fromOwn(source.ownTitle);
  const hint = isGrid ? (own ? '' : ALL_YOURS) : isOpen ? HINT : '';
  return `${from} ${hint && spoken(hint)}`.trim();
}
