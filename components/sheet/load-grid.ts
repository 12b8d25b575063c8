import type { MountGrid } from '../grid/grid-view.js';

let loaded: MountGrid | null = null;

/** The grid where it has been loaded: it can then be put into the page without the page being painted before. */
export const loadedGrid = (): MountGrid | null => loaded;

/** Loads the grid and its library; after a failure, anew. */
export async function loadGrid(): Promise<MountGrid> {
  loaded ??= (await import('../grid/mount.js')).mountGrid;
  return loaded;
}
