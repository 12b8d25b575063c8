import type { Tool } from './bar.js';

export const OPEN_GRID = 'Open as a grid';

/** How an embedded sheet stands, as far as it decides what is offered. */
export interface Standing {
  /** The reader has numbers of their own. */
  readonly tried: boolean;
  readonly canUndo: boolean;
  /** What is shown came from other figures than there are now. */
  readonly outdated: boolean;
  /** It is the reader's own book. */
  readonly own: boolean;
  /** The reader started over, and what they had can come back. */
  readonly canBringBack: boolean;
  readonly mayOpenGrid: boolean;
  readonly isGrid: boolean;
}

/** What the line under the table can do. */
export interface Doings {
  undo(): void;
  startOver(): void;
  takeHome(): void;
  bringBack(): void;
  openGrid(): void;
  fetchGrid(): void;
  leaveGrid(): void;
}

/** The buttons that are offered as things stand. */
export function toolsFor(standing: Standing, doings: Doings): Tool[] {
  const { tried, canUndo, outdated, own, canBringBack, mayOpenGrid, isGrid } = standing;
  const whose = own ? 'your book’s' : 'the page’s own';
  const tools: (Tool | false)[] = [
    canUndo &&
      !isGrid && { label: 'Undo', title: 'Takes back what you wrote last.', run: () => doings.undo() },
    tried && {
      label: outdated ? 'Take the new figures' : 'Start over',
      title: `Shows ${whose} figures again.`,
      run: () => doings.startOver(),
    },
    tried && {
      label: 'Take home',
      title: 'Saves your numbers as a file that Croftsheet opens.',
      run: () => doings.takeHome(),
    },
    canBringBack && {
      label: 'Bring mine back',
      title: 'Shows your own numbers again.',
      run: () => doings.bringBack(),
    },
    mayOpenGrid &&
      !isGrid && {
        label: OPEN_GRID,
        title: 'Opens the sheet for editing.',
        run: () => doings.openGrid(),
        near: () => doings.fetchGrid(),
      },
    isGrid && { label: 'Back to the table', title: 'Closes the grid.', run: () => doings.leaveGrid() },
  ];
  return tools.filter((tool) => tool !== false);
}
