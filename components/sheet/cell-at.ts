import type { GridCell } from '../grid/grid-view.js';

/** The cell of the reading view that an element stands in. */
export function cellAt(element: HTMLElement): GridCell | null {
  const { row, column } = element.closest<HTMLElement>('[data-column]')?.dataset ?? {};
  return row !== undefined && column !== undefined ? { row, column } : null;
}
