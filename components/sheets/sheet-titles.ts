import type { LiveBook } from '../../src/live/live-book.js';

/** A title that no sheet has yet: the one asked for, or that with a number. */
export function freeTitle(live: LiveBook, wanted: string): string {
  const taken = new Set(live.sheets().map(({ title }) => title.toLowerCase()));
  const stem = wanted.slice(0, 55);
  let title = stem;
  for (let n = 2; taken.has(title.toLowerCase()); n++) title = `${stem} ${n}`;
  return title;
}
