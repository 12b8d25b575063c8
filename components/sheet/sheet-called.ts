import type { LiveBook } from '../../src/live/live-book.js';

export type Sheet = ReturnType<LiveBook['sheets']>[number];

/** A sheet by its id, its kind ('shelf') or its title, in that order. */
export function sheetCalled(live: LiveBook, name: string): Sheet | undefined {
  const sheets = live.sheets();
  const lower = name.toLowerCase();
  return (
    sheets.find(({ id }) => id === name) ??
    sheets.find(({ kind }) => kind === lower) ??
    sheets.find(({ title }) => title.toLowerCase() === lower)
  );
}
