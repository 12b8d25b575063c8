import type { MountGrid } from './grid-view.js';
import { HandsontableGrid } from './handsontable/handsontable-grid.js';

/** Mounts the grid. To be reached by dynamic import only: the grid library comes with it. */
export const mountGrid: MountGrid = async (into, host) => new HandsontableGrid(into, host);
