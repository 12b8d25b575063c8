import type { GridCell, GridView } from '../grid/grid-view.js';

/** The panel takes room beside the grid: the figure that it explains must stay in sight, if it is still selected. */
export function keepInSight(view: () => GridView | null | undefined, cell: GridCell): void {
  requestAnimationFrame(() =>
    setTimeout(() => {
      const grid = view();
      const still = grid?.selection;
      if (still?.row === cell.row && still.column === cell.column) grid?.focus(cell);
    }),
  );
}

/** Width in rem from which the working stands beside a sheet; as in the styles. */
const WIDE = 64;

/** True where the working takes no room from the sheet. */
export function isWide(element: Element): boolean {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
  return element.clientWidth >= WIDE * rem;
}

/** Scrolls the page so far that a figure is not covered by the panel over its foot. */
export function scrollFromUnder(panel: DOMRect | undefined, figure: DOMRect | undefined): void {
  if (!panel || !figure || figure.right < panel.left || figure.left > panel.right) return;
  const hidden = figure.bottom - panel.top;
  if (hidden > 0) window.scrollBy({ top: hidden + 8 });
}
